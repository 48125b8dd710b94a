// Figures, commas and spellings that a résumé writes in two ways.
#include "compiler/model/wording.hpp"
#include "compiler/proof/consistency.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <map>
#include <optional>
#include <set>
#include <utility>

namespace quoin {

namespace {

struct Spot { // words of a text, and where they stand
    std::string text;
    Place place;
};

// --- numbers

struct NumberAt {
    std::size_t offset = 0;
    std::string text;
    bool grouped = false;
};

bool is_year(std::string_view figures) {
    constexpr int first = 1500, last = 2100;
    int number = 0;
    std::from_chars(figures.data(), figures.data() + figures.size(), number);
    return figures.size() == 4 && number >= first && number <= last;
}

// A name's number: Form 1040, Room 2140, ISO 9001.
bool stands_after_name(std::string_view text, std::size_t at) {
    if (at < 2 || text[at - 1] != ' ') return false;
    const std::size_t space = text.rfind(' ', at - 2);
    const std::size_t begin = space == std::string_view::npos ? 0 : space + 1;
    const char first = text[begin];
    return begin > 0 && first >= 'A' && first <= 'Z';
}

// Numbers of four figures and more.
std::vector<NumberAt> large_numbers(std::string_view text) {
    std::vector<NumberAt> numbers;
    std::size_t at = 0;
    while (at < text.size()) {
        if (!is_figure(text[at])) {
            ++at;
            continue;
        }
        std::size_t end = at;
        while (end < text.size() &&
               (is_figure(text[end]) ||
                (text[end] == ',' && end + 1 < text.size() && is_figure(text[end + 1]))))
            ++end;
        const std::string_view piece = text.substr(at, end - at);
        const char before = at > 0 ? text[at - 1] : ' ';
        const char after = end < text.size() ? text[end] : ' ';
        const bool grouped = piece.find(',') != std::string_view::npos;
        const bool whole = std::string_view(" $(~").find(before) != std::string_view::npos &&
                           std::string_view(" .,;)%").find(after) != std::string_view::npos &&
                           !(end + 1 < text.size() && after == '.' && is_figure(text[end + 1]));
        if (whole &&
            (grouped || (piece.size() >= 4 && !is_year(piece) && !stands_after_name(text, at))))
            numbers.push_back({at, std::string(piece), grouped});
        at = end;
    }
    return numbers;
}

std::string with_commas(std::string figures) {
    for (std::size_t at = figures.size(); at > 3; at -= 3)
        figures.insert(at - 3, 1, ',');
    return figures;
}

void mixed_commas(const ProofContext& context, std::vector<Finding>& findings) {
    std::optional<Spot> bare;
    std::string grouped;
    visit_texts(context.resume, [&](const TextInResume& part) {
        if (!is_wording(part)) return;
        const std::string text = part.text.plain();
        for (NumberAt& number : large_numbers(text)) {
            if (number.grouped && grouped.empty()) grouped = number.text;
            if (!number.grouped && !bare)
                bare = Spot{number.text, part.text.place(number.offset, number.text.size())};
        }
    });
    if (bare && !grouped.empty())
        report(findings, bare->place,
               in_quotes(bare->text) + " has no comma, and " + in_quotes(grouped) + " has one",
               "write '" + with_commas(bare->text) + "'");
}

constexpr std::array<std::string_view, 12> number_words{"two", "three",  "four",   "five",
                                                        "six", "seven",  "eight",  "nine",
                                                        "ten", "eleven", "twelve", "twenty"};

bool all_figures(std::string_view word) {
    return !word.empty() && std::ranges::all_of(word, is_figure);
}

// What is counted: a word in small letters, its plural ending off.
std::string counted_thing(std::string_view word) {
    constexpr std::size_t shortest = 4;
    if (word.size() < shortest ||
        !std::ranges::all_of(word, [](char c) { return c >= 'a' && c <= 'z'; }) ||
        !word.ends_with('s'))
        return {};
    return std::string(word.substr(0, word.size() - 1));
}

void words_and_figures(const ProofContext& context, std::vector<Finding>& findings) {
    std::map<std::string, std::optional<Spot>> in_figures;
    std::map<std::string, std::optional<Spot>> in_words;
    visit_texts(context.resume, [&](const TextInResume& part) {
        if (!is_wording(part)) return;
        const std::string text = part.text.plain();
        const auto words = words_in(text);
        for (std::size_t i = 0; i + 1 < words.size(); ++i) {
            const std::string thing = counted_thing(words[i + 1].word);
            if (thing.empty()) continue;
            const std::string word(words[i].word);
            const bool spelled =
                std::ranges::find(number_words, lower_case(word)) != number_words.end();
            if (!spelled && !all_figures(word)) continue;
            auto& spot = (spelled ? in_words : in_figures)[thing];
            if (!spot)
                spot = Spot{word + ' ' + std::string(words[i + 1].word),
                            part.text.place(words[i].offset, word.size())};
        }
    });
    for (const auto& [thing, spot] : in_words) {
        const auto other = in_figures.find(thing);
        if (other != in_figures.end())
            report(findings, spot->place,
                   in_quotes(spot->text) + " is counted in words, and " +
                       in_quotes(other->second->text) + " in figures",
                   "figures are seen at a glance");
    }
}

// --- serial comma

bool is_item(std::string_view text) {
    constexpr std::size_t most_words = 3;
    return !text.empty() && words_in(text).size() <= most_words && words_in(text).size() > 0 &&
           text.find_first_of(";:.()") == std::string_view::npos;
}

struct Conjunction {
    bool serial = false;
    std::size_t offset = 0;
};

// The last before `end`, and no further back than an item of a list is long.
std::size_t last_comma(std::string_view text, std::size_t end) {
    constexpr std::size_t longest = 60;
    const std::size_t begin = end > longest ? end - longest : 0;
    const std::size_t at = text.substr(begin, end - begin).rfind(", ");
    return at == std::string_view::npos ? at : begin + at;
}

// `a, b, and c` has the comma; `a, b and c` with items of one word each lacks it. Longer items
// may be clauses, and are passed over.
std::vector<Conjunction> conjunctions(std::string_view text) {
    std::vector<Conjunction> found;
    for (const std::string_view word : {" and ", " or "}) {
        for (std::size_t at = text.find(word); at != std::string_view::npos;
             at = text.find(word, at + 1)) {
            if (at == 0) continue;
            const bool serial = text[at - 1] == ',';
            const std::size_t last_end = serial ? at - 1 : at;
            const std::size_t comma = last_comma(text, last_end);
            if (comma == std::string_view::npos || comma + 2 >= last_end) continue;
            const std::string_view item = text.substr(comma + 2, last_end - comma - 2);
            const std::size_t earlier = last_comma(text, comma);
            const bool is_list = serial
                                     ? is_item(item)
                                     : words_in(item).size() == 1 && is_item(item) &&
                                           earlier != std::string_view::npos &&
                                           is_item(text.substr(earlier + 2, comma - earlier - 2));
            if (is_list) found.push_back({serial, at});
        }
    }
    return found;
}

// --- spellings

struct Pair {
    std::string_view us, gb;
};
constexpr std::array pairs{Pair{"color", "colour"},
                           Pair{"colors", "colours"},
                           Pair{"colored", "coloured"},
                           Pair{"favorite", "favourite"},
                           Pair{"labor", "labour"},
                           Pair{"behavior", "behaviour"},
                           Pair{"behavioral", "behavioural"},
                           Pair{"behaviors", "behaviours"},
                           Pair{"neighbor", "neighbour"},
                           Pair{"neighbors", "neighbours"},
                           Pair{"neighborhood", "neighbourhood"},
                           Pair{"harbor", "harbour"},
                           Pair{"honored", "honoured"},
                           Pair{"organize", "organise"},
                           Pair{"organized", "organised"},
                           Pair{"organizing", "organising"},
                           Pair{"organization", "organisation"},
                           Pair{"organizations", "organisations"},
                           Pair{"organizational", "organisational"},
                           Pair{"optimize", "optimise"},
                           Pair{"optimized", "optimised"},
                           Pair{"optimizing", "optimising"},
                           Pair{"optimization", "optimisation"},
                           Pair{"prioritize", "prioritise"},
                           Pair{"prioritized", "prioritised"},
                           Pair{"standardized", "standardised"},
                           Pair{"standardize", "standardise"},
                           Pair{"summarize", "summarise"},
                           Pair{"summarized", "summarised"},
                           Pair{"utilize", "utilise"},
                           Pair{"utilized", "utilised"},
                           Pair{"analyze", "analyse"},
                           Pair{"analyzed", "analysed"},
                           Pair{"analyzing", "analysing"},
                           Pair{"maximize", "maximise"},
                           Pair{"maximized", "maximised"},
                           Pair{"minimize", "minimise"},
                           Pair{"minimized", "minimised"},
                           Pair{"recognize", "recognise"},
                           Pair{"recognized", "recognised"},
                           Pair{"specialize", "specialise"},
                           Pair{"specialized", "specialised"},
                           Pair{"customize", "customise"},
                           Pair{"customized", "customised"},
                           Pair{"digitize", "digitise"},
                           Pair{"digitized", "digitised"},
                           Pair{"categorized", "categorised"},
                           Pair{"finalized", "finalised"},
                           Pair{"modernized", "modernised"},
                           Pair{"visualization", "visualisation"},
                           Pair{"visualized", "visualised"},
                           Pair{"synthesized", "synthesised"},
                           Pair{"center", "centre"},
                           Pair{"centers", "centres"},
                           Pair{"centered", "centred"},
                           Pair{"fiber", "fibre"},
                           Pair{"meters", "metres"},
                           Pair{"liters", "litres"},
                           Pair{"kilometers", "kilometres"},
                           Pair{"program", "programme"},
                           Pair{"programs", "programmes"},
                           Pair{"defense", "defence"},
                           Pair{"offense", "offence"},
                           Pair{"modeled", "modelled"},
                           Pair{"modeling", "modelling"},
                           Pair{"traveled", "travelled"},
                           Pair{"traveling", "travelling"},
                           Pair{"labeled", "labelled"},
                           Pair{"labeling", "labelling"},
                           Pair{"counseled", "counselled"},
                           Pair{"counselor", "counsellor"},
                           Pair{"counseling", "counselling"},
                           Pair{"fulfill", "fulfil"},
                           Pair{"enrollment", "enrolment"},
                           Pair{"skillful", "skilful"},
                           Pair{"gray", "grey"},
                           Pair{"aging", "ageing"},
                           Pair{"learned", "learnt"},
                           Pair{"maneuver", "manoeuvre"},
                           Pair{"pediatric", "paediatric"},
                           Pair{"anesthesia", "anaesthesia"},
                           Pair{"hematology", "haematology"},
                           Pair{"plow", "plough"},
                           Pair{"mold", "mould"},
                           Pair{"tire", "tyre"},
                           Pair{"aluminum", "aluminium"}};

// --- terms

// Written in one word or two, and meaning one thing either way.
constexpr std::array<std::string_view, 12> joined_terms{
    "healthcare", "website",  "database",  "dataset",    "fundraising", "spreadsheet",
    "workflow",   "timeline", "nonprofit", "coursework", "homepage",    "childcare"};

bool in_list(std::string_view word, const auto& list) {
    return std::ranges::find(list, word) != list.end();
}

std::string without_hyphens(std::string_view word) {
    std::string letters = lower_case(word);
    std::erase(letters, '-');
    return letters;
}

bool has_inner_capital(std::string_view word) {
    bool small = false, inner = false;
    for (std::size_t at = 0; at < word.size(); ++at) {
        small = small || (word[at] >= 'a' && word[at] <= 'z');
        inner = inner || (at > 0 && word[at] >= 'A' && word[at] <= 'Z');
    }
    return small && inner;
}

struct Term {
    std::string spelled; // as the first that was met
    const Text* text = nullptr;
    std::size_t offset = 0, length = 0;

    Place place() const { return text->place(offset, length); }
};

class Terms {
public:
    explicit Terms(std::vector<Finding>& findings) : findings_(findings) {}

    void add(const Term& term) {
        constexpr std::size_t shortest = 5;
        const std::string& word = term.spelled;
        if (word.size() < shortest || has_digit(word)) return;
        const std::string key = without_hyphens(word);
        const auto [found, is_new] = seen_.emplace(key, term);
        if (is_new || told_.contains(key)) return;
        const std::string& before = found->second.spelled;
        const bool hyphens = lower_case(before) != lower_case(word);
        const bool letters_differ =
            !hyphens && before != word && (has_inner_capital(before) || has_inner_capital(word));
        if (!hyphens && !letters_differ) return;
        told_.insert(key);
        report(findings_, term.place(),
               in_quotes(word) + " is written " + in_quotes(before) + " in line " +
                   std::to_string(found->second.place().line),
               "write it in one way");
    }

private:
    std::vector<Finding>& findings_;
    std::map<std::string, Term> seen_;
    std::set<std::string> told_;
};

bool may_hold_terms(const TextInResume& part) {
    return is_wording(part) || (part.field && part.field->name == FieldName::group);
}

}

void number_forms(const ProofContext& context, std::vector<Finding>& findings) {
    mixed_commas(context, findings);
    words_and_figures(context, findings);
}

void serial_comma(const ProofContext& context, std::vector<Finding>& findings) {
    std::vector<std::pair<Place, bool>> all;
    visit_texts(context.resume, [&](const TextInResume& part) {
        if (!is_wording(part)) return;
        for (const Conjunction& each : conjunctions(part.text.plain()))
            all.emplace_back(part.text.place(each.offset + 1, 3), each.serial);
    });
    const auto serial = static_cast<std::size_t>(
        std::ranges::count_if(all, [](const auto& each) { return each.second; }));
    if (serial == 0 || serial == all.size()) return;
    const bool usual = serial * 2 >= all.size();
    std::vector<Place> odd;
    for (const auto& [place, has] : all)
        if (has != usual) odd.push_back(place);
    report(findings, odd.front(),
           std::string(usual ? "no comma" : "a comma") + " before the last of a list in " +
               (odd.size() == 1 ? "line " : "lines ") + lines_listed(odd) + ", and " +
               (usual ? "one" : "none") + " elsewhere",
           usual ? "put it in" : "take it out");
}

void spelling_region(const ProofContext& context, std::vector<Finding>& findings) {
    std::vector<std::pair<Spot, const Pair*>> british, american;
    visit_texts(context.resume, [&](const TextInResume& part) {
        if (!is_wording(part)) return;
        const std::string text = part.text.plain();
        for (std::size_t i = 0; const WordAt& word : words_in(text)) {
            // within a sentence a capital makes it a name
            const bool opens = i++ == 0;
            const bool capital = word.word.front() >= 'A' && word.word.front() <= 'Z';
            if (capital && !opens) continue;
            const std::string lower = lower_case(word.word);
            for (const Pair& pair : pairs) {
                if (lower != pair.gb && lower != pair.us) continue;
                (lower == pair.gb ? british : american)
                    .emplace_back(Spot{std::string(word.word),
                                       part.text.place(word.offset, word.word.size())},
                                  &pair);
            }
        }
    });
    if (british.empty() || american.empty()) return;
    const bool in_britain = *context.resume.settings.language == "en-GB";
    const auto& odd = in_britain ? american : british;
    const auto& usual = in_britain ? british : american;
    for (const auto& [spot, pair] : odd)
        report(findings, spot.place,
               in_quotes(spot.text) + " is spelled as in " +
                   (in_britain ? "the US, and " : "Britain, and ") +
                   in_quotes(usual.front().first.text) + " as in " +
                   (in_britain ? "Britain" : "the US"),
               "'" + std::string(in_britain ? pair->gb : pair->us) + "'");
}

void term_forms(const ProofContext& context, std::vector<Finding>& findings) {
    Terms terms(findings);
    visit_texts(context.resume, [&](const TextInResume& part) {
        if (!may_hold_terms(part)) return;
        const std::string text = part.text.plain();
        const auto words = words_in(text);
        for (std::size_t i = 0; i < words.size(); ++i) {
            const WordAt& word = words[i];
            terms.add({std::string(word.word), &part.text, word.offset, word.word.size()});
            if (i + 1 == words.size()) continue;
            const WordAt& next = words[i + 1];
            const std::size_t length = next.offset + next.word.size() - word.offset;
            if (in_list(lower_case(word.word) + lower_case(next.word), joined_terms) &&
                length == word.word.size() + next.word.size() + 1)
                terms.add({lower_case(word.word) + '-' + lower_case(next.word), &part.text,
                           word.offset, length});
        }
    });
}

}
