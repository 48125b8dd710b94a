// Places written in two forms: "City, ST" and "City".
#include "compiler/advice/consistency.hpp"
#include "compiler/stages/model/wording.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>

namespace quoin::advice {

namespace {

struct State {
    std::string_view code, name, short_name; // the last as newspapers have it; empty: none
};
constexpr std::array states{State{"AL", "Alabama", "Ala."},
                            State{"AK", "Alaska", ""},
                            State{"AZ", "Arizona", "Ariz."},
                            State{"AR", "Arkansas", "Ark."},
                            State{"CA", "California", "Calif."},
                            State{"CO", "Colorado", "Colo."},
                            State{"CT", "Connecticut", "Conn."},
                            State{"DE", "Delaware", "Del."},
                            State{"DC", "District of Columbia", ""},
                            State{"FL", "Florida", "Fla."},
                            State{"GA", "Georgia", "Ga."},
                            State{"HI", "Hawaii", ""},
                            State{"ID", "Idaho", ""},
                            State{"IL", "Illinois", "Ill."},
                            State{"IN", "Indiana", "Ind."},
                            State{"IA", "Iowa", ""},
                            State{"KS", "Kansas", "Kan."},
                            State{"KY", "Kentucky", "Ky."},
                            State{"LA", "Louisiana", "La."},
                            State{"ME", "Maine", ""},
                            State{"MD", "Maryland", "Md."},
                            State{"MA", "Massachusetts", "Mass."},
                            State{"MI", "Michigan", "Mich."},
                            State{"MN", "Minnesota", "Minn."},
                            State{"MS", "Mississippi", "Miss."},
                            State{"MO", "Missouri", "Mo."},
                            State{"MT", "Montana", "Mont."},
                            State{"NE", "Nebraska", "Neb."},
                            State{"NV", "Nevada", "Nev."},
                            State{"NH", "New Hampshire", "N.H."},
                            State{"NJ", "New Jersey", "N.J."},
                            State{"NM", "New Mexico", "N.M."},
                            State{"NY", "New York", "N.Y."},
                            State{"NC", "North Carolina", "N.C."},
                            State{"ND", "North Dakota", "N.D."},
                            State{"OH", "Ohio", ""},
                            State{"OK", "Oklahoma", "Okla."},
                            State{"OR", "Oregon", "Ore."},
                            State{"PA", "Pennsylvania", "Pa."},
                            State{"RI", "Rhode Island", "R.I."},
                            State{"SC", "South Carolina", "S.C."},
                            State{"SD", "South Dakota", "S.D."},
                            State{"TN", "Tennessee", "Tenn."},
                            State{"TX", "Texas", ""},
                            State{"UT", "Utah", ""},
                            State{"VT", "Vermont", "Vt."},
                            State{"VA", "Virginia", "Va."},
                            State{"WA", "Washington", "Wash."},
                            State{"WV", "West Virginia", "W.Va."},
                            State{"WI", "Wisconsin", "Wis."},
                            State{"WY", "Wyoming", "Wyo."}};

enum class PlaceForm { city, code, state, short_state, no_comma };

struct FormedPlace {
    const model::Field* field = nullptr;
    PlaceForm form{};
    std::string city;
};

// Of the world, and so complete without a state.
constexpr std::array<std::string_view, 108> of_the_world{
    "american samoa", "amsterdam",    "argentina",   "athens",    "auckland",  "australia",
    "austria",        "bangkok",      "barcelona",   "beijing",   "belgium",   "belize",
    "berlin",         "bogota",       "brazil",      "brussels",  "budapest",  "buenos aires",
    "cairo",          "cambodia",     "canada",      "cape town", "chile",     "china",
    "colombia",       "copenhagen",   "costa rica",  "cuba",      "denmark",   "dubai",
    "dublin",         "ecuador",      "edinburgh",   "egypt",     "england",   "ethiopia",
    "finland",        "florence",     "france",      "geneva",    "germany",   "ghana",
    "glasgow",        "greece",       "guam",        "guatemala", "haiti",     "havana",
    "hong kong",      "iceland",      "india",       "indonesia", "ireland",   "israel",
    "istanbul",       "italy",        "jamaica",     "japan",     "jerusalem", "jordan",
    "kenya",          "kuwait",       "kyoto",       "lima",      "lisbon",    "london",
    "madrid",         "malaysia",     "manila",      "melbourne", "mexico",    "mexico city",
    "milan",          "montreal",     "morocco",     "mumbai",    "nepal",     "new delhi",
    "new zealand",    "nigeria",      "norway",      "osaka",     "oslo",      "panama",
    "paris",          "peru",         "philippines", "poland",    "portugal",  "prague",
    "puerto rico",    "rome",         "saipan",      "scotland",  "seoul",     "shanghai",
    "singapore",      "south africa", "south korea", "spain",     "sweden",    "switzerland",
    "sydney",         "taipei",       "taiwan",      "tokyo",     "toronto",   "vienna"};

// A city alone is one or two words with capitals, neither a ship nor a camp: Port Ellery.
bool may_be_city(std::string_view text) {
    constexpr std::array<std::string_view, 20> first_of_others{
        "uss",     "usns",   "camp",     "fort",     "base",      "naval",     "joint",
        "at",      "open",   "multiple", "deployed", "several",   "remote",    "online",
        "virtual", "hybrid", "on-site",  "various",  "worldwide", "nationwide"};
    constexpr std::size_t most_words = 2;
    const auto words = words_in(text);
    if (words.empty() || words.size() > most_words || text.size() <= 3) return false;
    if (text.find_first_of(",.(/&") != std::string_view::npos) return false;
    for (const WordAt& word : words)
        if (word.word.front() < 'A' || word.word.front() > 'Z') return false;
    const std::string lower = lower_case(text);
    return std::ranges::find(first_of_others, lower_case(words.front().word)) ==
               first_of_others.end() &&
           std::ranges::find(of_the_world, lower) == of_the_world.end() &&
           std::ranges::find(states, text, &State::name) == states.end();
}

template<typename Member>
bool is_state(std::string_view text, Member member) {
    return !text.empty() && std::ranges::find(states, text, member) != states.end();
}

// None for what is no place of the US, and for what has more than two parts.
std::optional<FormedPlace> formed(const model::Field& field, const std::string& text) {
    if (has_digit(text)) return std::nullopt;
    if (const std::size_t comma = text.find(", "); comma != std::string::npos) {
        const std::string city = text.substr(0, comma), end = text.substr(comma + 2);
        if (is_state(end, &State::code)) return FormedPlace{&field, PlaceForm::code, city};
        if (is_state(end, &State::name)) return FormedPlace{&field, PlaceForm::state, city};
        if (is_state(end, &State::short_name))
            return FormedPlace{&field, PlaceForm::short_state, city};
        return std::nullopt;
    }
    const std::size_t space = text.rfind(' ');
    if (space != std::string::npos && is_state(text.substr(space + 1), &State::code))
        return FormedPlace{&field, PlaceForm::no_comma, text.substr(0, space)};
    if (!may_be_city(text)) return std::nullopt;
    return FormedPlace{&field, PlaceForm::city, text};
}

std::vector<FormedPlace> formed_places(const model::Resume& resume) {
    std::vector<FormedPlace> places;
    visit_texts(resume, [&](const TextInResume& part) {
        if (!part.field) return;
        if (part.field->name != trade::FieldName::place &&
            part.field->name != trade::FieldName::address)
            return;
        if (auto place = formed(*part.field, part.text.plain()))
            places.push_back(*std::move(place));
    });
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

}

void place_forms(const ProofContext& context, std::vector<Finding>& findings) {
    std::vector<FormedPlace> places = formed_places(context.resume);
    drop_unsure(places);
    if (places.empty()) return;
    const PlaceForm usual = usual_form(places);
    const auto example = std::ranges::find(places, usual, &FormedPlace::form);
    for (const FormedPlace& each : places)
        if (each.form != usual)
            return report(findings, each.field->place,
                          model::in_quotes(plain_in(each.field)) +
                              " is written in another form than " +
                              model::in_quotes(plain_in(example->field)),
                          "write all places as city and state, such as 'Port Ellery, WA'");
}

}
