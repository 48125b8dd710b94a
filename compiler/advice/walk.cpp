// Ways through the model that checks share.
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"

#include "compiler/base/message.hpp"
#include "compiler/trade/schools.hpp"

#include <algorithm>
#include <array>

namespace quoin::advice {

namespace {

constexpr std::array<std::string_view, 21> number_names{
    "zero",     "one",     "two",     "three",     "four",     "five",     "six",
    "seven",    "eight",   "nine",    "ten",       "eleven",   "twelve",   "thirteen",
    "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty"};

// U+2019 within a word is its apostrophe.
std::size_t apostrophe_at(std::string_view text, std::size_t at) {
    if (text[at] == '\'' || text[at] == '-') return 1;
    return text[at] == '\xE2' && text.substr(at).starts_with("\u2019") ? 3 : 0;
}

// General punctuation, U+2000 to U+206F, and the no-break space part words.
std::size_t sign_at(std::string_view text, std::size_t at) {
    if (text[at] != '\xC2' && text[at] != '\xE2') return 0;
    const std::string_view rest = text.substr(at);
    if (rest.starts_with("\u00A0")) return 2;
    if (rest.size() >= 3 && rest[0] == '\xE2' && (rest[1] == '\x80' || rest[1] == '\x81')) return 3;
    return 0;
}

// Bytes at `at` that go on with the word before them; 0 if it is over.
std::size_t bytes_going_on(std::string_view text, std::size_t at) {
    if (at == text.size()) return 0;
    if (is_letter_or_figure(text[at])) return 1;
    const std::size_t next = at + apostrophe_at(text, at);
    if (next > at && next < text.size() && is_word_byte(text[next]) && sign_at(text, next) == 0)
        return next - at;
    return is_word_byte(text[at]) && sign_at(text, at) == 0 ? 1 : 0;
}

void visit_field(const model::Field& field, bool in_heading,
                 const std::function<void(const TextInResume&)>& visit) {
    if (!field.label.empty()) visit({field.label, &field, nullptr, in_heading});
    if (const model::Text* text = text_in(&field)) visit({*text, &field, nullptr, in_heading});
    if (const auto* items = items_in(&field))
        for (const model::Text& item : *items)
            visit({item, &field, nullptr, in_heading});
}

void visit_entry(const model::Entry& entry, const std::function<void(const TextInResume&)>& visit) {
    for (const model::Field& field : entry.fields)
        visit_field(field, false, visit);
    for (const model::Bullet& bullet : entry.bullets)
        visit({bullet.text, nullptr, &bullet, false});
    for (const model::Entry& further : entry.further)
        visit_entry(further, visit);
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

void visit_texts(const model::Resume& resume,
                 const std::function<void(const TextInResume&)>& visit) {
    for (const model::Field& field : resume.heading)
        visit_field(field, true, visit);
    for (const model::Section& section : resume.sections) {
        visit({section.title, nullptr, nullptr, false});
        for (const model::Entry& entry : section.entries)
            visit_entry(entry, visit);
    }
}

std::vector<WordAt> words_in(std::string_view text) {
    constexpr std::size_t usual_length = 6; // of a word with the blank behind it
    std::vector<WordAt> words;
    words.reserve(text.size() / usual_length + 1);
    for (std::size_t at = 0; at < text.size();) {
        if (const std::size_t sign = sign_at(text, at); sign > 0 || !is_word_byte(text[at])) {
            at += std::max<std::size_t>(sign, 1);
            continue;
        }
        std::size_t end = at;
        while (const std::size_t more = bytes_going_on(text, end))
            end += more;
        words.push_back({text.substr(at, end - at), at});
        at = end;
    }
    return words;
}

std::optional<int> number_named(std::string_view word) {
    const auto* name = std::ranges::find(number_names, word);
    return name == number_names.end()
               ? std::nullopt
               : std::optional(static_cast<int>(name - number_names.begin()));
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
