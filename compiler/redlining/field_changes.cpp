#include "compiler/redlining/field_changes.hpp"

#include "compiler/base/ascii.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace quoin::redlining {

namespace {

using Texts = std::vector<model::Text>;

// The words from `begin` to `end` as they stand in their text.
std::string stretch_text(std::string_view text, const std::vector<Word>& words, std::size_t begin,
                         std::size_t end) {
    return std::string(text.substr(words[begin].begin, words[end - 1].end - words[begin].begin));
}

std::vector<Piece> pieces_of(std::string_view was, std::string_view is) {
    const std::vector<Word> before = words_of(was), after = words_of(is);
    std::vector<Piece> pieces;
    for (const Stretch& stretch : word_changes(before, after)) {
        const bool old_one = stretch.fate == Fate::deleted;
        pieces.push_back({stretch.fate, stretch_text(old_one ? was : is, old_one ? before : after,
                                                     stretch.begin, stretch.end)});
    }
    return pieces;
}

bool all_figured(const std::vector<Piece>& pieces) {
    return std::ranges::all_of(pieces, [](const Piece& piece) {
        if (piece.fate == Fate::kept) return true;
        const std::vector<Word> words = words_of(piece.text);
        return std::ranges::all_of(words, [](const Word& word) { return has_digit(word.text); });
    });
}

// A sign for the marks of each byte but white, so that seams between spans and spaces tell nothing.
std::string marks_of(const model::Text& text) {
    std::string signs;
    for (const model::Span& span : text.spans) {
        const int sign = (span.marks.strong ? 1 : 0) + (span.marks.emphasis ? 2 : 0) +
                         (span.marks.underline ? 4 : 0);
        for (const Word& word : words_of(span.text))
            signs.append(word.end - word.begin, static_cast<char>('0' + sign));
    }
    return signs;
}

std::string links_of(const model::Text& text) {
    std::string all;
    for (const std::string& link : text.links)
        all += (all.empty() ? "" : " ") + link;
    return all;
}

Change changed(Nature nature, std::string before, std::string after) {
    Change change;
    change.kind = Kind::changed;
    change.nature = nature;
    change.before = std::move(before);
    change.after = std::move(after);
    return change;
}

class FieldComparison {
public:
    FieldComparison(const Fields& before, const Fields& after, What what)
        : before_(before), after_(after), what_(what) {}

    std::vector<Change> run() {
        const FieldMatch match = match_fields(before_, after_);
        std::vector<bool> kept(before_.all.size());
        for (std::size_t j = 0; j < after_.all.size(); ++j) {
            if (match[j]) kept[*match[j]] = true;
            field(match[j] ? &before_.all[*match[j]] : nullptr, after_.all[j]);
        }
        for (std::size_t i = 0; i < before_.all.size(); ++i)
            if (!kept[i]) removed(before_.all[i]);
        return std::move(changes_);
    }

private:
    void add(Change change, const model::Field* was, const model::Field* is) {
        change.what = change.what == What::item ? What::item : what_;
        change.label = label_of(is == nullptr ? *was : *is);
        if (was != nullptr && change.old_place.line == 0) change.old_place = was->place;
        if (is != nullptr && change.new_place.line == 0) change.new_place = is->place;
        changes_.push_back(std::move(change));
    }

    void removed(const model::Field& was) {
        Change change = changed({}, plain_value(was, before_.resume), {});
        change.kind = Kind::removed;
        add(std::move(change), &was, nullptr);
    }

    void field(const model::Field* was, const model::Field& is) {
        if (was == nullptr) {
            Change change = changed({}, {}, plain_value(is, after_.resume));
            change.kind = Kind::added;
            return add(std::move(change), nullptr, &is);
        }
        if (label_of(*was) != label_of(is))
            add(changed(Nature::label, label_of(*was), label_of(is)), was, &is);
        value(*was, is);
        if (was->tags != is.tags)
            add(changed(Nature::tags, words_for(was->tags), words_for(is.tags)), was, &is);
    }

    void value(const model::Field& was, const model::Field& is) {
        const auto* old_text = std::get_if<model::Text>(&was.value);
        const auto* new_text = std::get_if<model::Text>(&is.value);
        if (old_text != nullptr && new_text != nullptr) {
            if (auto change = text_change(*old_text, *new_text)) add(*std::move(change), &was, &is);
            return;
        }
        const auto* old_items = std::get_if<Texts>(&was.value);
        const auto* new_items = std::get_if<Texts>(&is.value);
        if (old_items != nullptr && new_items != nullptr)
            return items(*old_items, *new_items, was, is);
        dates(was, is);
    }

    // As the new draft prints both: what the form of dates alone changes is the setting's.
    void dates(const model::Field& was, const model::Field& is) {
        const auto* old_dates = std::get_if<model::DateRange>(&was.value);
        const auto* new_dates = std::get_if<model::DateRange>(&is.value);
        if (old_dates != nullptr && new_dates != nullptr && *old_dates == *new_dates) return;
        std::string before = plain_value(was, after_.resume),
                    after = plain_value(is, after_.resume);
        if (!same_words(before, after))
            add(changed(Nature::dates, std::move(before), std::move(after)), &was, &is);
    }

    void items(const Texts& before, const Texts& after, const model::Field& was,
               const model::Field& is);
    void order(const FieldMatch& match, const model::Field& was, const model::Field& is);

    Fields before_, after_;
    What what_;
    std::vector<Change> changes_;
};

Change item_change(Kind kind, const model::Text* was, const model::Text* is) {
    Change change =
        changed({}, was == nullptr ? "" : was->plain(), is == nullptr ? "" : is->plain());
    change.kind = kind;
    change.what = What::item;
    if (was != nullptr) change.old_place = was->place(0, was->plain().size());
    if (is != nullptr) change.new_place = is->place(0, is->plain().size());
    return change;
}

void FieldComparison::items(const Texts& before, const Texts& after, const model::Field& was,
                            const model::Field& is) {
    const FieldMatch match = match_items(before, after);
    std::vector<bool> kept(before.size());
    for (std::size_t j = 0; j < after.size(); ++j) {
        if (!match[j]) {
            add(item_change(Kind::added, nullptr, &after[j]), nullptr, &is);
            continue;
        }
        kept[*match[j]] = true;
        if (auto change = text_change(before[*match[j]], after[j])) {
            const Change places = item_change(Kind::changed, &before[*match[j]], &after[j]);
            change->what = What::item;
            change->old_place = places.old_place;
            change->new_place = places.new_place;
            add(*std::move(change), &was, &is);
        }
    }
    for (std::size_t i = 0; i < before.size(); ++i)
        if (!kept[i]) add(item_change(Kind::removed, &before[i], nullptr), &was, &is);
    order(match, was, is);
}

void FieldComparison::order(const FieldMatch& match, const model::Field& was,
                            const model::Field& is) {
    std::vector<std::size_t> olds;
    for (const auto& old_one : match)
        if (old_one) olds.push_back(*old_one);
    if (std::ranges::is_sorted(olds)) return;
    add(changed(Nature::order, plain_value(was, before_.resume), plain_value(is, after_.resume)),
        &was, &is);
}

constexpr double least_item = 0.5;

Item item_of(std::string text) {
    std::vector<std::string> words = sorted_words(text);
    return {std::move(text), std::move(words)};
}

std::vector<Item> items_of(const std::vector<model::Text>& texts) {
    std::vector<Item> items;
    for (const model::Text& text : texts)
        items.push_back(item_of(text.plain()));
    return items;
}

using Indices = std::vector<std::size_t>;

std::map<std::string, Indices> by_label(const Fields& fields) {
    std::map<std::string, Indices> found;
    for (std::size_t i = 0; i < fields.all.size(); ++i)
        found[label_of(fields.all[i])].push_back(i);
    return found;
}

// The groups that go with none yet.
Indices groups_left(const Fields& fields, const std::vector<bool>& taken) {
    Indices left;
    for (std::size_t i = 0; i < fields.all.size(); ++i)
        if (!taken[i] && fields.all[i].name == trade::FieldName::group) left.push_back(i);
    return left;
}

std::vector<Item> items_of(const Fields& fields, const Indices& indices) {
    std::vector<Item> items;
    for (const std::size_t i : indices)
        items.push_back(item_of(plain_value(fields.all[i], fields.resume)));
    return items;
}

class FieldMatching {
public:
    FieldMatching(const Fields& before, const Fields& after)
        : before_(before), after_(after), match_(after.all.size()), taken_(before.all.size()),
          matched_(after.all.size()) {}

    FieldMatch run() {
        const auto olds = by_label(before_);
        for (const auto& [label, news] : by_label(after_))
            if (const auto found = olds.find(label); !label.empty() && found != olds.end())
                match_alike(found->second, news, least_value, true);
        match_alike(groups_left(before_, taken_), groups_left(after_, matched_), least_item, false);
        return std::move(match_);
    }

private:
    static constexpr double least_value = 0.3;

    // With one label two that are the only ones belong together, whatever they say.
    void match_alike(const Indices& olds, const Indices& news, double least, bool one_label) {
        const std::vector<Item> was = items_of(before_, olds), is = items_of(after_, news);
        const bool only = one_label && olds.size() == 1 && news.size() == 1;
        const auto alike = [&](std::size_t a, std::size_t b) {
            return only ? 1 : likeness(was[a].words, is[b].words);
        };
        for (const auto& [i, j] : pairs_of(was, is, alike, least)) {
            match_[news[j]] = olds[i];
            matched_[news[j]] = taken_[olds[i]] = true;
        }
    }

    Fields before_, after_;
    FieldMatch match_;
    std::vector<bool> taken_, matched_;
};

}

std::optional<Change> text_change(const model::Text& was, const model::Text& is) {
    std::string before = was.plain(), after = is.plain();
    if (!same_words(before, after)) {
        std::vector<Piece> pieces = pieces_of(before, after);
        const bool figures = all_figured(pieces);
        Change change = changed(figures ? Nature::figures : Nature::wording, std::move(before),
                                std::move(after));
        change.pieces = std::move(pieces);
        return change;
    }
    if (links_of(was) != links_of(is)) return changed(Nature::link, links_of(was), links_of(is));
    if (marks_of(was) != marks_of(is))
        return changed(Nature::marks, std::move(before), std::move(after));
    return std::nullopt;
}

FieldMatch match_fields(const Fields& before, const Fields& after) {
    return FieldMatching(before, after).run();
}

std::vector<Change> field_changes(const Fields& before, const Fields& after, What what) {
    return FieldComparison(before, after, what).run();
}

FieldMatch match_items(const std::vector<model::Text>& before,
                       const std::vector<model::Text>& after) {
    const std::vector<Item> old_items = items_of(before), new_items = items_of(after);
    FieldMatch match(after.size());
    const auto alike = [&](std::size_t i, std::size_t j) {
        return likeness(old_items[i].words, new_items[j].words);
    };
    for (const auto& [i, j] : pairs_of(old_items, new_items, alike, least_item))
        match[j] = i;
    return match;
}

bool same_words(std::string_view a, std::string_view b) {
    return a == b || std::ranges::equal(words_of(a), words_of(b), {}, &Word::text, &Word::text);
}

std::string words_for(const model::Tags& tags) {
    std::string all;
    for (const std::string& tag : tags.only)
        all += (all.empty() ? "" : " ") + tag;
    for (const std::string& tag : tags.except)
        all += (all.empty() ? "!" : " !") + tag;
    if (tags.keep) all += all.empty() ? "keep" : " keep";
    return all.empty() ? all : '{' + all + '}';
}

}
