#include "compiler/redlining/marked_text.hpp"

#include "compiler/redlining/field_changes.hpp"
#include "compiler/redlining/word_changes.hpp"

#include <algorithm>
#include <string>
#include <utility>

namespace quoin::redlining {

namespace {

using model::Revised;

void append(model::Text& to, model::Text more) {
    const auto links = static_cast<std::uint32_t>(to.links.size());
    for (model::Span& span : more.spans) {
        if (span.link) *span.link += links;
        to.spans.push_back(std::move(span));
    }
    to.links.insert(to.links.end(), more.links.begin(), more.links.end());
}

// A space of neither draft, before what comes next.
void append_space(model::Text& to, const model::Text& before) {
    model::Span space;
    space.text = " ";
    if (!before.spans.empty()) space.place = before.spans.front().place;
    space.place.length = 0;
    to.spans.push_back(std::move(space));
}

// What of a span is in bytes [begin, end) of it.
model::Span cut(const model::Span& span, std::size_t begin, std::size_t end) {
    model::Span part = span;
    part.text = span.text.substr(begin, end - begin);
    if (span.text.size() == span.place.length) {
        part.place.column += static_cast<std::uint32_t>(begin);
        part.place.length = static_cast<std::uint32_t>(part.text.size());
    }
    return part;
}

Revised revised_by(Fate fate) {
    switch (fate) {
    case Fate::inserted:
        return Revised::inserted;
    case Fate::deleted:
        return Revised::deleted;
    case Fate::kept:
        break;
    }
    return Revised::not_at_all;
}

}

std::vector<Slot> merged_order(const std::vector<std::optional<std::size_t>>& new_of_old,
                               std::size_t new_count) {
    constexpr std::size_t first = static_cast<std::size_t>(-1);
    std::vector<std::vector<std::size_t>> after(new_count); // the gone, behind each of the new
    std::vector<Slot> order;
    std::size_t behind = first;
    for (std::size_t i = 0; i < new_of_old.size(); ++i) {
        if (new_of_old[i]) {
            if (*new_of_old[i] < new_count) behind = *new_of_old[i];
        } else if (behind == first) {
            order.push_back({true, i});
        } else {
            after[behind].push_back(i);
        }
    }
    for (std::size_t j = 0; j < new_count; ++j) {
        order.push_back({false, j});
        for (const std::size_t gone : after[j])
            order.push_back({true, gone});
    }
    return order;
}

void Marker::mark(model::Span& span, Revised revised) const {
    span.marks.revised = revised;
    if (revised != Revised::deleted) return;
    span.link.reset();
    span.place.file += old_files_;
}

model::Text Marker::slice(const model::Text& text, std::size_t begin, std::size_t end,
                          Revised revised) const {
    model::Text part{{}, text.links};
    std::size_t at = 0;
    for (const model::Span& span : text.spans) {
        const std::size_t from = std::max(begin, at), to = std::min(end, at + span.text.size());
        if (from < to) part.spans.push_back(cut(span, from - at, to - at));
        at += span.text.size();
    }
    for (model::Span& span : part.spans)
        mark(span, revised);
    if (revised == Revised::deleted) part.links.clear();
    return part;
}

model::Text Marker::marked(const model::Text& text, Revised revised) const {
    return slice(text, 0, text.plain().size(), revised);
}

model::Text Marker::merged(const model::Text& was, const model::Text& is) const {
    const std::string before = was.plain(), after = is.plain();
    if (same_words(before, after)) return is;
    const std::vector<Word> old_words = words_of(before), new_words = words_of(after);
    model::Text all;
    for (const Stretch& stretch : word_changes(old_words, new_words)) {
        const bool old_one = stretch.fate == Fate::deleted;
        const std::vector<Word>& words = old_one ? old_words : new_words;
        const std::size_t begin = words[stretch.begin].begin;
        model::Text part =
            slice(old_one ? was : is, begin, words[stretch.end - 1].end, revised_by(stretch.fate));
        const bool parted = stretch.begin > 0 && words[stretch.begin - 1].end < begin;
        if (!all.empty() && (parted || stretch.fate == Fate::inserted)) append_space(all, part);
        append(all, std::move(part));
    }
    return all;
}

// As the new draft prints dates.
model::Text Marker::dates_text(const model::Field& field, Revised revised) const {
    model::Span span;
    span.text = print(std::get<model::DateRange>(field.value), *after_.settings.dates_as,
                      after_.words.dates);
    span.place = field.place;
    return marked(model::Text{{std::move(span)}, {}}, revised);
}

model::Field Marker::marked(const model::Field& field, Revised revised) const {
    model::Field all = field;
    if (!field.label.empty()) all.label = marked(field.label, revised);
    if (const auto* text = std::get_if<model::Text>(&field.value)) {
        all.value = marked(*text, revised);
    } else if (auto* items = std::get_if<std::vector<model::Text>>(&all.value)) {
        for (model::Text& item : *items)
            item = marked(item, revised);
    } else {
        all.value = dates_text(field, revised);
    }
    return all;
}

// By the match, what is in both merged, and the rest marked whole.
template<typename T>
std::vector<T> Marker::merged_lists(const std::vector<T>& was, const std::vector<T>& is,
                                    const std::vector<std::optional<std::size_t>>& match) const {
    std::vector<std::optional<std::size_t>> new_of_old(was.size());
    for (std::size_t j = 0; j < is.size(); ++j)
        if (match[j]) new_of_old[*match[j]] = j;
    std::vector<T> all;
    for (const Slot& slot : merged_order(new_of_old, is.size()))
        if (slot.old_one)
            all.push_back(marked(was[slot.index], Revised::deleted));
        else if (match[slot.index])
            all.push_back(merged(was[*match[slot.index]], is[slot.index]));
        else
            all.push_back(marked(is[slot.index], Revised::inserted));
    return all;
}

model::Text Marker::merged_dates(const model::Field& was, const model::Field& is) const {
    model::Text both = dates_text(was, Revised::deleted);
    model::Text fresh = dates_text(is, Revised::inserted);
    append_space(both, fresh);
    append(both, std::move(fresh));
    return both;
}

model::Field Marker::merged(const model::Field& was, const model::Field& is) const {
    model::Field all = is;
    all.label = merged(was.label, is.label);
    const auto* old_text = std::get_if<model::Text>(&was.value);
    const auto* new_text = std::get_if<model::Text>(&is.value);
    const auto* old_items = std::get_if<std::vector<model::Text>>(&was.value);
    const auto* new_items = std::get_if<std::vector<model::Text>>(&is.value);
    const auto* old_dates = std::get_if<model::DateRange>(&was.value);
    const auto* new_dates = std::get_if<model::DateRange>(&is.value);
    if (old_text != nullptr && new_text != nullptr)
        all.value = merged(*old_text, *new_text);
    else if (old_items != nullptr && new_items != nullptr)
        all.value = merged_lists(*old_items, *new_items, match_items(*old_items, *new_items));
    else if (old_dates != nullptr && new_dates != nullptr && !(*old_dates == *new_dates))
        all.value = merged_dates(was, is);
    return all;
}

std::vector<model::Field> Marker::merged(const std::vector<model::Field>& was,
                                         const std::vector<model::Field>& is) const {
    return merged_lists(was, is, match_fields({was, before_}, {is, after_}));
}

}
