// A school, what it awards, and the facts beside: each told by its words.
#include "compiler/transcription/entry_fields.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

namespace quoin::transcription {

namespace {

struct Caption {
    std::string_view words, label;
};

// What introduces a fact, before a colon or the fact itself (common practice).
constexpr std::array<Caption, 32> captions = {{{"relevant coursework:", "courses"},
                                               {"relevant courses:", "courses"},
                                               {"related coursework:", "courses"},
                                               {"selected coursework:", "courses"},
                                               {"key courses:", "courses"},
                                               {"coursework:", "courses"},
                                               {"courses:", "courses"},
                                               {"honors:", "honors"},
                                               {"honours:", "honors"},
                                               {"honors and awards:", "honors"},
                                               {"awards:", "honors"},
                                               {"senior thesis:", "thesis"},
                                               {"honors thesis:", "thesis"},
                                               {"thesis:", "thesis"},
                                               {"activities:", "activities"},
                                               {"activities and clubs:", "activities"},
                                               {"minors:", "minor"},
                                               {"minor:", "minor"},
                                               {"minor in ", "minor"},
                                               {"major:", "major"},
                                               {"major in ", "major"},
                                               {"cumulative gpa", "gpa"},
                                               {"overall gpa", "gpa"},
                                               {"grade point average", "gpa"},
                                               {"cumulative grade average", "gpa"},
                                               {"grade average", "gpa"},
                                               {"honors gpa", "gpa"},
                                               {"major gpa", "gpa"},
                                               {"minors in ", "minor"},
                                               {"coursework in ", "courses"},
                                               {"coursework includes ", "courses"},
                                               {"gpa", "gpa"}}};

// `3.62 / 4.00`, `3.4`, `3.71/4.0 (cumulative)`
bool is_average(std::string_view text) {
    return text.size() > 2 && text.size() < 24 && is_figure(text[0]) &&
           (text[1] == '.' || text[1] == ',') && is_figure(text[2]) &&
           text.find_first_of(";") == text.npos;
}

// Items of such a label are parted by semicolons; what begins with a figure tells more of the one
// before it: `President's List, 3 terms`.
std::string as_items(std::string_view text) {
    if (text.find(';') != text.npos) return std::string(text);
    std::string items;
    for (const std::string_view part : comma_parts(text))
        items.append(items.empty() ? "" : is_figure(part.front()) ? ", " : "; ").append(part);
    return items;
}

std::optional<DraftField> captioned(std::string_view text) {
    constexpr std::size_t longest_of_average = 24; // `Nursing` of `Nursing GPA 3.7`
    const std::string lower = lower_case(text);
    for (const Caption& caption : captions) {
        if (!lower.starts_with(caption.words)) continue;
        const std::string_view value = trimmed(text.substr(caption.words.size()), " :,");
        if (value.empty()) return std::nullopt;
        if (caption.label == "gpa" && !is_average(value)) return std::nullopt;
        const bool field = caption.label == "minor" || caption.label == "major";
        if (field && (value.size() > 50 || value.find('.') != value.npos)) return std::nullopt;
        const bool items = caption.label == "courses" || caption.label == "honors" ||
                           caption.label == "activities";
        return DraftField{std::string(caption.label), items ? as_items(value) : std::string(value)};
    }
    if (const std::size_t at = lower.find(" gpa "); at < longest_of_average)
        if (const std::string_view of = text.substr(0, at), value = text.substr(at + 5);
            std::ranges::all_of(of, is_ascii_letter) && is_average(value))
            return DraftField{"gpa", fmt::format("{} ({})", value, of)};
    if (lower.ends_with(" gpa") && is_average(text))
        return DraftField{"gpa", std::string(trimmed(text.substr(0, text.size() - 4)))};
    if (lower.starts_with("dean's list") || lower.starts_with("dean\u2019s list") ||
        lower.starts_with("president's list") || lower.starts_with("magna cum") ||
        lower.starts_with("summa cum") || lower.starts_with("cum laude"))
        return DraftField{"honors", as_items(text)};
    return std::nullopt;
}

std::optional<std::vector<DraftField>> facts_parted(const std::string& row, std::string_view sign) {
    std::vector<DraftField> fields;
    for (const std::string_view part : pieces_of(row, sign)) {
        auto field = captioned(trimmed(part));
        if (!field) return std::nullopt;
        fields.push_back(std::move(*field));
    }
    return fields.empty() ? std::nullopt : std::optional(std::move(fields));
}

// All facts of a row, where all of it is facts: `GPA 3.7 · Honors: …`.
std::optional<std::vector<DraftField>> facts_in(const std::string& text) {
    std::string row = text;
    for (const std::string_view sign : {" | ", " \u2022 ", " \u2013 "})
        row = replaced(row, sign, " \u00B7 ");
    if (lower_case(row).find("gpa") != std::string::npos)
        for (const std::string_view sign : {"; ", ", "})
            if (auto fields = facts_parted(row, sign)) return fields;
    return facts_parted(row, " \u00B7 ");
}

// `Nursing GPA 3.7` of `3.7 (Nursing)`, beside another average.
std::string average_as_it_stood(const std::string& value) {
    const std::size_t open = value.find(" (");
    if (open == std::string::npos) return "GPA " + value;
    return std::string(trimmed(value.substr(open), " ()")) + " GPA " + value.substr(0, open);
}

void add_fact(DraftField field, DraftEntry& entry) {
    DraftField* there = entry.find(field.label);
    if (!there)
        entry.fields.push_back(std::move(field));
    else if (field.label == "honors" || field.label == "courses" || field.label == "activities")
        there->value += "; " + field.value;
    else
        entry.bullets.push_back(
            {field.label == "gpa" ? average_as_it_stood(field.value) : field.value, 1});
}

struct SchoolAndDegree {
    std::string school, degree;
    std::vector<DraftField> facts;
    bool sure = true;
    bool no_school = false; // none of the names tells that it is one
};

void append_part(std::string& text, std::string_view part) {
    text.append(text.empty() ? "" : ", ").append(part);
}

// `Associate in Business (GPA 3.9)`
std::string_view take_facts_in_parentheses(std::string_view text, SchoolAndDegree& to) {
    const std::size_t open = text.rfind('(');
    if (open == text.npos || !text.ends_with(')')) return text;
    auto fact = captioned(trimmed(text.substr(open), "()"));
    if (!fact) return text;
    to.facts.push_back(std::move(*fact));
    return trimmed(text.substr(0, open));
}

// A name with commas in it, part by part; what tells nothing goes with the part before it.
void take_name(const HeadPiece& piece, SchoolAndDegree& to) {
    std::string* last = nullptr;
    for (const std::string_view whole : comma_parts(piece.text)) {
        const std::string_view part = take_facts_in_parentheses(whole, to);
        if (part.empty()) continue;
        if (auto fact = captioned(part)) {
            to.facts.push_back(std::move(*fact));
            last = nullptr;
            continue;
        }
        const bool degree = names_degree(part);
        const bool stands_in = to.no_school && to.school.empty() && !to.degree.empty();
        const bool school =
            names_school(part) || (stands_in && !degree && leans_to_role(part) < -1.5);
        if (degree && (!school || to.degree.empty() || !to.school.empty()))
            last = &to.degree;
        else if (school)
            last = &to.school;
        else if (!last || (last == &to.school && to.degree.empty()))
            last = to.school.empty() == to.degree.empty() || !to.school.empty() ? &to.degree
                                                                                : &to.school;
        append_part(*last, part);
    }
}

// Of two names, where only one tells what it is, the other is the other.
SchoolAndDegree school_and_degree(const std::vector<HeadPiece>& names) {
    SchoolAndDegree result;
    const auto is_degree = [](const HeadPiece& piece) { return names_degree(piece.text); };
    const auto is_school = [](const HeadPiece& piece) { return names_school(piece.text); };
    const auto degree = std::ranges::find_if(names, is_degree);
    const bool has_school = std::ranges::any_of(names, is_school);
    result.no_school = !has_school;
    if (names.size() > 1 && !has_school && degree != names.end()) {
        const auto& other = degree == names.begin() ? names[1] : names.front();
        result.school = other.text;
        result.sure = false;
        for (const HeadPiece& piece : names)
            if (&piece != &other) take_name(piece, result);
        return result;
    }
    for (const HeadPiece& piece : names)
        take_name(piece, result);
    if (!has_school && degree == names.end()) result.sure = false;
    return result;
}

// `Kelder Falls Community College, Kelder Falls`: the town, where nothing else is the place.
void add_school(const std::string& school, const HeadPieces& pieces, DraftEntry& entry) {
    const auto parts = comma_parts(school);
    if (pieces.places.empty() && parts.size() > 1 && may_be_town(parts.back())) {
        const auto cut = static_cast<std::size_t>(parts.back().data() - school.data());
        entry.add("school", std::string(trimmed(school.substr(0, cut), " ,")));
        entry.add("place", std::string(parts.back()));
        return;
    }
    entry.add("school", school);
    if (!pieces.places.empty()) entry.add("place", pieces.places.front());
}

}

bool opens_with_fact(const std::string& text) {
    const std::string lower = lower_case(text);
    return std::ranges::any_of(captions, [&](const Caption& caption) {
        return lower.starts_with(caption.words) && caption.label != "major";
    });
}

bool states_facts(const std::string& text) {
    return facts_in(text).has_value();
}

DraftEntry education_entry(const RowsOfEntry& rows, const PageFacts& facts) {
    RowsOfEntry names = rows;
    names.heads.clear();
    names.items.clear();
    std::vector<DraftField> found;
    for (const OldRow& row : rows.heads) {
        const auto in_row = names.heads.empty() ? std::nullopt : facts_in(row.text());
        if (in_row)
            found.insert(found.end(), in_row->begin(), in_row->end());
        else
            names.heads.push_back(row);
    }
    for (const OldRow& row : rows.items)
        if (const auto in_row = facts_in(row.text()))
            found.insert(found.end(), in_row->begin(), in_row->end());
        else
            names.items.push_back(row);
    DraftEntry entry = begin_entry(names);
    entry.old = begin_entry(rows).old;
    HeadPieces pieces = pieces_of_heads(names.heads, facts.towns, facts.languages);
    settle_places(pieces, facts.habits);
    entry.heads = pieces.text;
    const SchoolAndDegree named = school_and_degree(pieces.names);
    add_school(named.school, pieces, entry);
    entry.add("degree", named.degree);
    for (const DraftField& field : named.facts)
        add_fact(field, entry);
    const bool span = std::ranges::any_of(pieces.dates, &DatesOnLine::range);
    add_dates(pieces, span ? "dates" : "graduation", entry);
    if (rows.dates_guessed) entry.guesses.emplace_back(span ? "dates" : "graduation");
    for (const DraftField& field : found)
        add_fact(field, entry);
    if (pieces.place_guessed) entry.guesses.emplace_back("place");
    if (!named.sure) {
        if (entry.find("school")) entry.guesses.emplace_back("school");
        if (entry.find("degree")) entry.guesses.emplace_back("degree");
    }
    return entry;
}

}
