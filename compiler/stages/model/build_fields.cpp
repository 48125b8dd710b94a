// One labelled line as a field: its value read as its label asks, and its tags.
#include "compiler/stages/model/build_steps.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/stages/model/contact_links.hpp"
#include "compiler/stages/model/dates_meant.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/text_pieces.hpp"

#include <algorithm>
#include <utility>

namespace quoin::model {
namespace {

Text linked(const syntax::Value& value, std::optional<std::string> uri) {
    Text text = read_plain(value);
    if (!uri) return text;
    text.links.push_back(*std::move(uri));
    for (Span& span : text.spans)
        span.link = 0;
    return text;
}

std::vector<Text> items(const Text& text, std::string_view separators) {
    std::vector<Text> parts{text};
    for (const char separator : separators) {
        std::vector<Text> finer;
        for (const Text& part : parts)
            std::ranges::move(split(part, separator), std::back_inserter(finer));
        parts = std::move(finer);
    }
    return parts;
}

// Whether what mends the fault leaves none.
bool mends(const DateFault& fault, const JoinedValue& value, const LocalDates& dates) {
    std::string mended = value.text();
    mended.replace(fault.offset, fault.length, fault.mend);
    return !fault.mend.empty() && std::holds_alternative<DateRange>(read_dates(mended, dates));
}

std::optional<DateRange> read_range(const syntax::Node& node, const LocalDates& dates,
                                    Diagnostics& diagnostics) {
    const JoinedValue value{node.value};
    auto result = read_dates(value.text(), dates);
    if (auto* range = std::get_if<DateRange>(&result)) {
        for (WrittenDate& date : range->written)
            date.place = value.place(date.offset, date.length);
        return std::move(*range);
    }
    auto& fault = std::get<DateFault>(result);
    if (const auto meant = dates_meant(value.text(), dates); meant && !mends(fault, value, dates)) {
        const Place whole = value.place(0, value.text().size());
        const bool one_line = node.value.slices.size() == 1;
        diagnostics.error(whole, fill<messages::dates_meant>(in_quotes(value.text()), *meant),
                          one_line ? Edits{{whole, *meant}} : Edits{});
        return std::nullopt;
    }
    const Place place = value.place(fault.offset, fault.length);
    diagnostics.error(place, std::move(fault.text),
                      fault.mend.empty() ? Edits{} : Edits{{place, std::move(fault.mend)}});
    return std::nullopt;
}

// False after an error.
bool read_value(trade::ValueKind kind, const syntax::Node& node, Field& field,
                const LocalDates& dates, Diagnostics& diagnostics) {
    switch (kind) {
    case trade::ValueKind::items:
        field.value = items(read_text(node.value, diagnostics), ";");
        break;
    case trade::ValueKind::group:
        field.value = items(read_text(node.value, diagnostics), ";,");
        break;
    case trade::ValueKind::dates: {
        const auto range = read_range(node, dates, diagnostics);
        if (!range) return false;
        field.value = *range;
        break;
    }
    case trade::ValueKind::phone:
        field.value = linked(node.value, phone_uri(JoinedValue{node.value}.text()));
        break;
    case trade::ValueKind::email:
        field.value = linked(node.value, email_uri(JoinedValue{node.value}.text()));
        break;
    case trade::ValueKind::link:
        field.value = read_link(node.value, diagnostics);
        break;
    case trade::ValueKind::text:
    case trade::ValueKind::setting:
    case trade::ValueKind::tags:
        field.value = read_text(node.value, diagnostics);
        break;
    }
    return true;
}

std::optional<Field> read(trade::FieldName name, trade::ValueKind kind, const syntax::Node& node,
                          const LocalDates& dates, Diagnostics& diagnostics) {
    Field field;
    field.name = name;
    field.tags = read_tags(node.tags);
    field.label_place = node.label.place;
    field.place = node.value.place();
    if (!read_value(kind, node, field, dates, diagnostics)) return std::nullopt;
    const auto* parts = std::get_if<std::vector<Text>>(&field.value);
    if (parts && parts->empty()) {
        diagnostics.error(field.place, fill<messages::no_items>(in_quotes(node.label.text)));
        return std::nullopt;
    }
    return field;
}

bool is_tag_character(char c) {
    return is_small_letter(c) || is_figure(c) || c == '-' || c == '_';
}

bool is_tag(std::string_view name) {
    return !name.empty() && std::ranges::all_of(name, is_tag_character);
}

}

Tags read_tags(const std::vector<syntax::TagMark>& marks) {
    Tags tags;
    std::set<std::pair<std::string, bool>> seen;
    for (const syntax::TagMark& mark : marks) {
        std::string name = lower_case(mark.name);
        if (name == keep_tag && !mark.leaves_out) {
            tags.keep = true;
            continue;
        }
        if (!seen.emplace(name, mark.leaves_out).second) continue;
        (mark.leaves_out ? tags.except : tags.only).push_back(std::move(name));
    }
    return tags;
}

std::optional<Field> read_field(const trade::Word& word, const syntax::Node& node,
                                const LocalDates& dates, Diagnostics& diagnostics) {
    return read(std::get<trade::FieldName>(word.means), word.value, node, dates, diagnostics);
}

std::optional<Field> read_group(const syntax::Node& node, Diagnostics& diagnostics) {
    auto field = read(trade::FieldName::group, trade::ValueKind::group, node, {}, diagnostics);
    if (field)
        field->label = read_plain(syntax::Value{{syntax::Slice{node.spelled, node.label.place}}});
    return field;
}

std::optional<Tags> read_tags_line(const syntax::Node& node, Diagnostics& diagnostics) {
    const JoinedValue value{node.value};
    if (!node.tags.empty()) {
        diagnostics.error(node.tags.front().place, fill<messages::braces_after_for>());
        return std::nullopt;
    }
    std::vector<syntax::TagMark> marks;
    const std::string& text = value.text();
    for (std::size_t start = 0; start != std::string::npos;) {
        const std::size_t end = std::min(text.find_first_of(" \t", start), text.size());
        syntax::TagMark mark{lower_case(text.substr(start, end - start)), false, {}};
        if (mark.name.starts_with('!')) {
            mark.leaves_out = true;
            mark.name.erase(0, 1);
        }
        if (!is_tag(mark.name)) {
            diagnostics.error(value.place(start, end - start),
                              fill<messages::no_tag>(in_quotes(text.substr(start, end - start))));
            return std::nullopt;
        }
        marks.push_back(std::move(mark));
        start = text.find_first_not_of(" \t", end);
    }
    return read_tags(marks);
}

void refuse_tags(const syntax::Node& node, Diagnostics& diagnostics) {
    if (node.tags.empty()) return;
    diagnostics.error(node.tags.front().place,
                      fill<messages::takes_no_tags>(in_quotes(node.label.text)));
}

bool Standing::has(const trade::Word& word) const {
    const auto* name = std::get_if<trade::FieldName>(&word.means);
    return name && before_.contains(*name);
}

bool Standing::add(const trade::Word& word, const Tags& tags, const syntax::Node& node,
                   std::string_view mend, Diagnostics& diagnostics) {
    if (word.repeats) return true;
    const auto [entry, first] = before_.try_emplace(std::get<trade::FieldName>(word.means));
    Before& before = entry->second;
    const bool clash = !first && (tags.empty() || before.untagged);
    if (first) before.first_line = node.label.place.line;
    before.untagged = before.untagged || tags.empty();
    if (before.tags.emplace(tags.only, tags.except).second && !clash) return true;
    diagnostics.error(node.label.place, fill<messages::field_stands_twice>(
                                            in_quotes(word.label), before.first_line, mend));
    return false;
}

}
