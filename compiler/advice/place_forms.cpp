// Places written in two forms: "City, ST" and "City".
#include "compiler/advice/consistency.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/trade/lists.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>

namespace quoin::advice {

namespace {

enum class PlaceForm { city, code, state, short_state, no_comma };

struct FormedPlace {
    const model::Field* field = nullptr;
    PlaceForm form{};
    std::string city;
};

// A city alone is one or two words with capitals, neither a ship nor a camp: Port Ellery.
bool may_be_city(std::string_view text) {
    constexpr std::size_t most_words = 2;
    const auto words = words_in(text);
    if (words.empty() || words.size() > most_words || text.size() <= 3) return false;
    if (text.find_first_of(",.(/&") != std::string_view::npos) return false;
    for (const WordAt& word : words)
        if (!is_capitalised(word.word)) return false;
    const std::string lower = lower_case(text);
    return !is_one_of(lower_case(words.front().word), List::no_city) &&
           !is_one_of(lower, List::of_the_world) && !is_one_of(text, trade::List::state_names);
}

// None for what is no place of the US, and for what has more than two parts.
std::optional<FormedPlace> formed(const model::Field& field, const std::string& text) {
    if (has_digit(text)) return std::nullopt;
    if (const std::size_t comma = text.find(", "); comma != std::string::npos) {
        const std::string city = text.substr(0, comma), end = text.substr(comma + 2);
        if (is_one_of(end, trade::List::state_codes))
            return FormedPlace{&field, PlaceForm::code, city};
        if (is_one_of(end, trade::List::state_names))
            return FormedPlace{&field, PlaceForm::state, city};
        if (is_one_of(end, List::short_states))
            return FormedPlace{&field, PlaceForm::short_state, city};
        return std::nullopt;
    }
    const std::size_t space = text.rfind(' ');
    if (space != std::string::npos && is_one_of(text.substr(space + 1), trade::List::state_codes))
        return FormedPlace{&field, PlaceForm::no_comma, text.substr(0, space)};
    if (!may_be_city(text)) return std::nullopt;
    return FormedPlace{&field, PlaceForm::city, text};
}

std::vector<FormedPlace> formed_places(const TextsRead& texts) {
    std::vector<FormedPlace> places;
    for (const TextInResume& part : texts) {
        if (!part.field || !has(part.field->name, trade::Trait::locates)) continue;
        if (auto place = formed(*part.field, part.plain)) places.push_back(*std::move(place));
    }
    return places;
}

// A name alone is a city that lacks its state if it has one elsewhere, or if all others have one.
void drop_unsure(std::vector<FormedPlace>& places) {
    constexpr std::ptrdiff_t several = 2;
    const auto has_state = [](const FormedPlace& one) { return one.form != PlaceForm::city; };
    const auto with_state = std::ranges::count_if(places, has_state);
    const auto alone = std::ssize(places) - with_state;
    const bool others_have = with_state >= several && alone == 1;
    const std::vector<FormedPlace> all = places;
    std::erase_if(places, [&](const FormedPlace& one) {
        if (has_state(one) || others_have) return false;
        return std::ranges::none_of(all, [&](const FormedPlace& other) {
            return has_state(other) && other.city == one.city;
        });
    });
}

PlaceForm usual_form(const std::vector<FormedPlace>& places) {
    std::map<PlaceForm, std::size_t> counts;
    for (const FormedPlace& place : places)
        ++counts[place.form];
    return std::ranges::max_element(places, {},
                                    [&](const FormedPlace& place) { return counts[place.form]; })
        ->form;
}

// `Salem, Orgeon`, `Spokane, WS`: no state, and nearly one.
void state_slips(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::array<std::string_view, 16> elsewhere{"AB", "BC", "MB", "NB", "NL", "NS",
                                                         "NT", "NU", "ON", "PE", "QC", "SK",
                                                         "YT", "UK", "EU", "PQ"};
    const auto names = listed(trade::List::state_names);
    for (const TextInResume& part : context.texts) {
        if (!part.field || !has(part.field->name, trade::Trait::locates)) continue;
        const std::string& text = part.plain;
        const std::size_t comma = text.rfind(", ");
        if (comma == text.npos || has_digit(text)) continue;
        const std::string end = text.substr(comma + 2);
        if (is_one_of(end, trade::List::state_codes) || is_one_of(end, trade::List::state_names))
            continue;
        const bool code = end.size() == 2 && std::ranges::all_of(end, is_capital_letter) &&
                          !is_one_of(end, elsewhere);
        const std::string meant = end.size() > 3 && !is_one_of(end, List::short_states)
                                      ? did_you_mean(end, names)
                                      : std::string{};
        if (!code && meant.empty()) continue;
        Finding& finding = report<messages::no_state>(
            findings, part.text.place(comma + 2, end.size()), in_quotes(end));
        finding.weight = Weight::must;
        if (!meant.empty()) finding.suggestion = meant.substr(2);
    }
}

}

void place_forms(const ProofContext& context, std::vector<Finding>& findings) {
    state_slips(context, findings);
    std::vector<FormedPlace> places = formed_places(context.texts);
    drop_unsure(places);
    if (places.empty()) return;
    const PlaceForm usual = usual_form(places);
    const auto example = std::ranges::find(places, usual, &FormedPlace::form);
    for (const FormedPlace& each : places)
        if (each.form != usual) {
            report<messages::place_forms>(findings, each.field->place,
                                          in_quotes(plain_in(each.field)),
                                          in_quotes(plain_in(example->field)));
            return;
        }
}

}
