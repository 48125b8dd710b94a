// Ways through the model that checks share.
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"

#include "compiler/base/message.hpp"
#include "compiler/trade/schools.hpp"

#include <algorithm>
#include <array>
#include <span>

namespace quoin::advice {

namespace {

constexpr std::array<std::string_view, 21> number_names{
    "zero",     "one",     "two",     "three",     "four",     "five",     "six",
    "seven",    "eight",   "nine",    "ten",       "eleven",   "twelve",   "thirteen",
    "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty"};
constexpr std::array<std::string_view, 8> tens{"twenty", "thirty",  "forty",  "fifty",
                                               "sixty",  "seventy", "eighty", "ninety"};

std::optional<int> place_in(std::string_view word, std::span<const std::string_view> names) {
    const auto name = std::ranges::find(names, word);
    return name == names.end() ? std::nullopt
                               : std::optional(static_cast<int>(name - names.begin()));
}

}

const model::Field* Position::find(trade::FieldName name) const {
    const model::Field* own = entry->find(name);
    return own ? own : head->find(name);
}

std::vector<Position> positions(const model::Resume& resume,
                                std::initializer_list<trade::Holds> kinds) {
    std::vector<Position> all;
    for (const model::Section& section : resume.sections) {
        if (!is_one_of(section.holds, kinds)) continue;
        for (const model::Entry& entry : section.entries) {
            all.push_back({&section, &entry, &entry});
            for (const model::Entry& further : entry.further)
                all.push_back({&section, &entry, &further});
        }
    }
    return all;
}

const model::Text* text_in(const model::Field* field) {
    return field ? std::get_if<model::Text>(&field->value) : nullptr;
}

const std::vector<model::Text>* items_in(const model::Field* field) {
    return field ? std::get_if<std::vector<model::Text>>(&field->value) : nullptr;
}

const model::DateRange* dates_in(const model::Field* field) {
    return field ? std::get_if<model::DateRange>(&field->value) : nullptr;
}

std::string plain_in(const model::Field* field) {
    const model::Text* text = text_in(field);
    return text ? text->plain() : std::string{};
}

const model::Field* naming_field(const model::Entry& entry) {
    for (const trade::Trait trait : {trade::Trait::calls, trade::Trait::else_calls}) {
        const auto found = std::ranges::find_if(
            entry.fields, [&](const model::Field& field) { return has(field.name, trait); });
        if (found != entry.fields.end()) return &*found;
    }
    return nullptr;
}

std::string called(const model::Entry& entry) {
    const std::string name = plain_in(naming_field(entry));
    return name.empty() ? fill<messages::this_entry>() : in_quotes(name);
}

Place place_of(const model::Entry& entry) {
    const model::Field* field = naming_field(entry);
    return field ? field->place : entry.place;
}

std::optional<int> number_named(std::string_view word) {
    if (const auto small = place_in(word, number_names)) return small;
    const std::size_t hyphen = word.find('-');
    const auto ten = place_in(word.substr(0, hyphen), tens);
    if (!ten) return std::nullopt;
    const int whole = 10 * (*ten + 2);
    if (hyphen == word.npos) return whole;
    const auto unit = place_in(word.substr(hyphen + 1), std::span(number_names).subspan(1, 9));
    return unit ? std::optional(whole + *unit + 1) : std::nullopt;
}

std::string in_words(std::size_t count) {
    constexpr std::size_t most_in_words = 12;
    if (count == 0) return "no";
    return count > most_in_words ? std::to_string(count) : std::string(number_names.at(count));
}

std::string counted(std::size_t count, std::string_view one, std::string_view several) {
    return in_words(count) + ' ' + std::string(count == 1 ? one : several);
}

std::string some_of(const std::vector<std::string>& words, std::size_t most) {
    return joined(words, " and ", most, in_quotes);
}

std::string lines_listed(const std::vector<Place>& places) {
    constexpr std::size_t most = 6; // and one more, rather than "and 1 more"
    const auto line_of = [](const Place& place) { return std::to_string(place.line); };
    return joined(places, " and ", places.size() > most + 1 ? most : all_of_them, line_of);
}

bool is_before_college(const model::Entry& entry) {
    return trade::is_before_college(plain_in(entry.find(trade::FieldName::school)),
                                    plain_in(entry.find(trade::FieldName::degree)));
}

bool is_student(trade::Stage stage) {
    return stage == trade::Stage::undergraduate || stage == trade::Stage::recent_graduate;
}

std::vector<Place> source_lines(const model::Text& text) {
    std::vector<Place> lines;
    for (const model::Span& span : text.spans) {
        const Place& place = span.place;
        if (place.line == 0 || place.column == 0) continue;
        if (lines.empty() || lines.back().line != place.line || lines.back().file != place.file) {
            lines.push_back(place);
            continue;
        }
        Place& last = lines.back();
        const std::uint32_t end = std::max(last.column + last.length, place.column + place.length);
        last.column = std::min(last.column, place.column);
        last.length = end - last.column;
    }
    return lines;
}

void add_office(Finding& finding, std::string said) {
    finding.office += (finding.office.empty() ? "" : "; ") + std::move(said);
}

Finding& judged_by(const ProofContext& context, office::LimitOf limit, Finding& finding) {
    const office::Asked* asked = context.rules().set_by(limit);
    if (asked) {
        const office::LimitRow& row = office::row_of(limit);
        add_office(finding, context.office->says(fill<messages::office_sets>(
                                                     row.label, value_text(row, context.limits())),
                                                 *asked));
    }
    return finding;
}

std::string_view source_at(const Sources& sources, const Place& place) {
    const std::string_view line = sources.file(place.file).line(place.line);
    if (place.column == 0) return line;
    const std::size_t begin = std::min<std::size_t>(place.column - 1, line.size());
    return line.substr(begin, place.length);
}

}
