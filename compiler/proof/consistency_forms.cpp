// Capitals of titles and roles, and forms of places.
#include "compiler/model/wording.hpp"
#include "compiler/proof/consistency.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>

namespace quoin {

namespace {

constexpr std::array<std::string_view, 20> minor_words{
    "a",  "an", "and", "as",  "at", "but",  "by",   "for",  "from", "in",
    "of", "on", "or",  "the", "to", "with", "into", "over", "per",  "via"};

enum class Case { title, sentence, all_capitals, small };

std::string_view name_of(Case which) {
    switch (which) {
    case Case::title:
        return "Capitals for Each Word";
    case Case::sentence:
        return "Capital for the first word";
    case Case::all_capitals:
        return "ALL CAPITALS";
    case Case::small:
        break;
    }
    return "small letters";
}

bool is_capital(char c) {
    return c >= 'A' && c <= 'Z';
}

bool is_small(char c) {
    return c >= 'a' && c <= 'z';
}

// Titles of works are written as they are called; what is in parentheses is an aside.
std::string plain_words(const Text& text) {
    std::string words;
    for (const Span& span : text.spans)
        if (!span.marks.emphasis) words += span.text;
    return words.substr(0, words.find('('));
}

// None where it cannot be told: one word, or some words with capitals and some without.
std::optional<Case> case_of(const Text& text) {
    const std::string plain = plain_words(text);
    const auto words = words_in(plain);
    std::size_t capitals = 0, smalls = 0, letters = 0;
    bool any_small = false;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string_view word = words[i].word;
        letters += word.size();
        any_small = any_small || std::ranges::any_of(word, is_small);
        const bool minor = std::ranges::find(minor_words, lower_case(word)) != minor_words.end();
        const bool acronym = word.size() > 1 && is_capital(word[1]);
        if (i == 0 || minor || acronym || has_digit(word)) continue;
        if (is_capital(word.front())) ++capitals;
        if (is_small(word.front())) ++smalls;
    }
    constexpr std::size_t longer_than_acronym = 5;
    if (words.empty()) return std::nullopt;
    if (!any_small)
        return letters > longer_than_acronym ? std::optional(Case::all_capitals) : std::nullopt;
    if (is_small(words.front().word.front()))
        return smalls >= capitals ? std::optional(Case::small) : std::nullopt;
    if (capitals > 0 && smalls == 0) return Case::title;
    if (smalls > 0 && capitals == 0) return Case::sentence;
    return std::nullopt;
}

struct Cased {
    const Text* text = nullptr;
    Place place;
    Case its_case{};
};

void add_case(const Text* text, Place place, std::vector<Cased>& all) {
    if (!text) return;
    if (const auto its_case = case_of(*text)) all.push_back({text, place, *its_case});
}

// The value most have; of equals the one that stands first.
template<typename Item, typename Value>
Value most_common(const std::vector<Item>& items, Value Item::*value) {
    std::map<Value, std::size_t> counts;
    for (const Item& item : items)
        ++counts[item.*value];
    const Item* best = &items.front();
    for (const Item& item : items)
        if (counts[item.*value] > counts[best->*value]) best = &item;
    return best->*value;
}

void report_cases(const std::vector<Cased>& all, const char* what, std::vector<Finding>& findings) {
    if (all.empty()) return;
    const Case usual = most_common(all, &Cased::its_case);
    for (const Cased& each : all)
        if (each.its_case != usual)
            return report(findings, each.place,
                          in_quotes(each.text->plain()) + " is written with " +
                              std::string(name_of(each.its_case)) + ", other " + what + " with " +
                              std::string(name_of(usual)),
                          "write them in one way");
}

// --- places

struct State {
    std::string_view code, name;
};
constexpr std::array states{State{"AL", "Alabama"},
                            State{"AK", "Alaska"},
                            State{"AZ", "Arizona"},
                            State{"AR", "Arkansas"},
                            State{"CA", "California"},
                            State{"CO", "Colorado"},
                            State{"CT", "Connecticut"},
                            State{"DE", "Delaware"},
                            State{"DC", "District of Columbia"},
                            State{"FL", "Florida"},
                            State{"GA", "Georgia"},
                            State{"HI", "Hawaii"},
                            State{"ID", "Idaho"},
                            State{"IL", "Illinois"},
                            State{"IN", "Indiana"},
                            State{"IA", "Iowa"},
                            State{"KS", "Kansas"},
                            State{"KY", "Kentucky"},
                            State{"LA", "Louisiana"},
                            State{"ME", "Maine"},
                            State{"MD", "Maryland"},
                            State{"MA", "Massachusetts"},
                            State{"MI", "Michigan"},
                            State{"MN", "Minnesota"},
                            State{"MS", "Mississippi"},
                            State{"MO", "Missouri"},
                            State{"MT", "Montana"},
                            State{"NE", "Nebraska"},
                            State{"NV", "Nevada"},
                            State{"NH", "New Hampshire"},
                            State{"NJ", "New Jersey"},
                            State{"NM", "New Mexico"},
                            State{"NY", "New York"},
                            State{"NC", "North Carolina"},
                            State{"ND", "North Dakota"},
                            State{"OH", "Ohio"},
                            State{"OK", "Oklahoma"},
                            State{"OR", "Oregon"},
                            State{"PA", "Pennsylvania"},
                            State{"RI", "Rhode Island"},
                            State{"SC", "South Carolina"},
                            State{"SD", "South Dakota"},
                            State{"TN", "Tennessee"},
                            State{"TX", "Texas"},
                            State{"UT", "Utah"},
                            State{"VT", "Vermont"},
                            State{"VA", "Virginia"},
                            State{"WA", "Washington"},
                            State{"WV", "West Virginia"},
                            State{"WI", "Wisconsin"},
                            State{"WY", "Wyoming"}};

enum class PlaceForm { city, code, state };

struct FormedPlace {
    const Field* field = nullptr;
    PlaceForm form{};
};

// None for other countries, for "Remote" and for what has more than two parts.
std::optional<PlaceForm> form_of(const std::string& text) {
    constexpr std::array<std::string_view, 7> nowhere{"remote",  "online",  "virtual",  "hybrid",
                                                      "on-site", "various", "worldwide"};
    const std::string lower = lower_case(text);
    for (const std::string_view word : nowhere)
        if (has_phrase(lower, word)) return std::nullopt;
    if (text.empty() || has_digit(text)) return std::nullopt;
    const std::size_t comma = text.find(", ");
    if (comma == std::string::npos)
        // a state or a country alone is no city
        return text.size() > 3 && text.find_first_of(",(/") == std::string::npos &&
                       std::ranges::find(states, text, &State::name) == states.end()
                   ? std::optional(PlaceForm::city)
                   : std::nullopt;
    const std::string end = text.substr(comma + 2);
    if (std::ranges::find(states, end, &State::code) != states.end()) return PlaceForm::code;
    if (std::ranges::find(states, end, &State::name) != states.end()) return PlaceForm::state;
    return std::nullopt;
}

std::vector<FormedPlace> formed_places(const Resume& resume) {
    std::vector<FormedPlace> places;
    visit_texts(resume, [&](const TextInResume& part) {
        if (!part.field) return;
        if (part.field->name != FieldName::place && part.field->name != FieldName::address) return;
        if (const auto form = form_of(part.text.plain())) places.push_back({part.field, *form});
    });
    return places;
}

}

void capitals(const ProofContext& context, std::vector<Finding>& findings) {
    std::vector<Cased> titles, roles;
    for (const Section& section : context.resume.sections)
        add_case(&section.title, section.place, titles);
    for (const Position& position :
         positions(context.resume, {Holds::experience, Holds::activities}))
        if (const Field* role = position.entry->find(FieldName::role))
            add_case(text_in(role), role->place, roles);
    report_cases(titles, "titles", findings);
    report_cases(roles, "roles", findings);
}

void place_forms(const ProofContext& context, std::vector<Finding>& findings) {
    const std::vector<FormedPlace> places = formed_places(context.resume);
    if (places.empty()) return;
    const PlaceForm usual = most_common(places, &FormedPlace::form);
    const auto example = std::ranges::find(places, usual, &FormedPlace::form);
    for (const FormedPlace& each : places)
        if (each.form != usual)
            return report(findings, each.field->place,
                          in_quotes(plain_in(each.field)) + " is written in another form than " +
                              in_quotes(plain_in(example->field)),
                          "write all places as city and state, such as 'Port Ellery, WA'");
}

}
