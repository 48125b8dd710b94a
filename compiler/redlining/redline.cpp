// Walks both drafts side by side along their alignment.
#include "compiler/redlining/redline.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/redlining/field_changes.hpp"
#include "compiler/redlining/setting_changes.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <iterator>

namespace quoin::redlining {

namespace {

std::string text_of(const model::Entry& entry, trade::Trait trait) {
    const auto found = std::ranges::find_if(
        entry.fields, [&](const model::Field& field) { return has(field.name, trait); });
    const auto* text =
        found == entry.fields.end() ? nullptr : std::get_if<model::Text>(&found->value);
    return text == nullptr ? std::string{} : text->plain();
}

// Of sections, entries or bullets.
template<typename Thing>
void set_places(Change& change, const Thing& was, const Thing& is) {
    change.old_place = was.place;
    change.new_place = is.place;
}

class Redliner {
public:
    explicit Redliner(const Alignment& alignment)
        : of_(alignment), before_(alignment.before), after_(alignment.after) {}

    std::vector<Change> run() {
        add(setting_changes(before_.resume->settings, after_.resume->settings));
        add(field_changes({before_.resume->heading, *before_.resume},
                          {after_.resume->heading, *after_.resume}, What::contact));
        for (std::size_t s = 0; s < after_.resume->sections.size(); ++s)
            go_through_section(s);
        for (std::size_t s = 0; s < before_.resume->sections.size(); ++s)
            if (!of_.sections.of_old[s]) go_through_removed_section(s);
        return std::move(changes_);
    }

private:
    void add(std::vector<Change> more) {
        for (Change& change : more) {
            change.section = section_;
            change.entry = entry_;
            changes_.push_back(std::move(change));
        }
    }

    Change& add(Kind kind, What what, std::string before, std::string after) {
        Change& change = changes_.emplace_back();
        change.kind = kind;
        change.what = what;
        change.section = section_;
        change.entry = entry_;
        change.before = std::move(before);
        change.after = std::move(after);
        return change;
    }

    void go_through_section(std::size_t s);
    void compare_sections(const model::Section& was, const model::Section& is);
    void go_through_removed_section(std::size_t s);
    void go_through_entry(std::size_t e, bool told);
    void compare_entries(const FlatEntry& was, const FlatEntry& is);
    void go_through_removed_entry(std::size_t e, bool told);
    void go_through_bullet(std::size_t b, bool told);
    void compare_bullets(const model::Bullet& was, const model::Bullet& is);
    void remove_bullets(std::size_t entry);

    const Alignment& of_;
    const Flat& before_;
    const Flat& after_;
    std::string section_, entry_;
    std::vector<Change> changes_;
};

void Redliner::compare_sections(const model::Section& was, const model::Section& is) {
    if (auto change = text_change(was.title, is.title)) {
        change->what = What::section;
        if (change->nature != Nature::marks) change->nature = Nature::label;
        add({*std::move(change)});
    }
    if (was.tags != is.tags) {
        Change& change = add(Kind::changed, What::section, words_for(was.tags), words_for(is.tags));
        change.nature = Nature::tags;
        change.old_place = was.place;
        change.new_place = is.place;
    }
}

void Redliner::go_through_section(std::size_t s) {
    const model::Section& section = after_.resume->sections[s];
    section_ = section.title.plain();
    entry_.clear();
    const auto old_one = of_.sections.of_new[s];
    if (!old_one) {
        add(Kind::added, What::section, {}, section_).new_place = section.place;
    } else {
        const model::Section& was = before_.resume->sections[*old_one];
        if (of_.sections.moved[s])
            set_places(add(Kind::moved, What::section, section_, section_), was, section);
        compare_sections(was, section);
    }
    for (const std::size_t e : after_.entries_of[s])
        go_through_entry(e, !old_one);
    if (!old_one) return;
    section_ = section.title.plain();
    for (const std::size_t e : before_.entries_of[*old_one])
        if (!of_.entries.of_old[e]) go_through_removed_entry(e, false);
}

void Redliner::go_through_removed_section(std::size_t s) {
    const model::Section& section = before_.resume->sections[s];
    section_ = section.title.plain();
    entry_.clear();
    add(Kind::removed, What::section, section_, {}).old_place = section.place;
    for (const std::size_t e : before_.entries_of[s])
        if (!of_.entries.of_old[e]) go_through_removed_entry(e, true);
}

// `told`: all of it is, with the section that holds it.
void Redliner::go_through_entry(std::size_t e, bool told) {
    const FlatEntry& entry = after_.entries[e];
    entry_ = name_of_entry(entry);
    const auto old_one = of_.entries.of_new[e];
    if (!old_one && !told)
        add(Kind::added, What::entry, {}, after_.entry_items[e].key).new_place = entry.entry->place;
    if (old_one) {
        const FlatEntry& was = before_.entries[*old_one];
        if (of_.entries.moved[e]) {
            const std::string from = before_.resume->sections[was.section].title.plain();
            set_places(add(Kind::moved, What::entry, from, section_), *was.entry, *entry.entry);
        }
        compare_entries(was, entry);
    }
    for (const std::size_t b : after_.bullets_of[e])
        go_through_bullet(b, !old_one);
    if (old_one) remove_bullets(*old_one);
}

void Redliner::compare_entries(const FlatEntry& was, const FlatEntry& is) {
    add(field_changes({was.entry->fields, *before_.resume}, {is.entry->fields, *after_.resume},
                      What::field));
    if (was.entry->tags == is.entry->tags) return;
    Change& change =
        add(Kind::changed, What::entry, words_for(was.entry->tags), words_for(is.entry->tags));
    change.nature = Nature::tags;
    change.old_place = was.entry->place;
    change.new_place = is.entry->place;
}

void Redliner::go_through_removed_entry(std::size_t e, bool told) {
    const FlatEntry& entry = before_.entries[e];
    entry_ = name_of_entry(entry);
    if (!told)
        add(Kind::removed, What::entry, before_.entry_items[e].key, {}).old_place =
            entry.entry->place;
}

void Redliner::remove_bullets(std::size_t entry) {
    for (const std::size_t b : before_.bullets_of[entry]) {
        if (of_.bullets.of_old[b]) continue;
        const model::Bullet& bullet = *before_.bullets[b].bullet;
        add(Kind::removed, What::bullet, bullet.text.plain(), {}).old_place = bullet.place;
    }
}

void Redliner::go_through_bullet(std::size_t b, bool told) {
    const model::Bullet& bullet = *after_.bullets[b].bullet;
    const auto old_one = of_.bullets.of_new[b];
    if (!old_one) {
        if (!told) add(Kind::added, What::bullet, {}, bullet.text.plain()).new_place = bullet.place;
        return;
    }
    const model::Bullet& was = *before_.bullets[*old_one].bullet;
    if (of_.bullets.moved[b]) {
        const FlatEntry& from = before_.entries[before_.bullets[*old_one].entry];
        set_places(add(Kind::moved, What::bullet, name_of_entry(from), bullet.text.plain()), was,
                   bullet);
    }
    compare_bullets(was, bullet);
}

void Redliner::compare_bullets(const model::Bullet& was, const model::Bullet& is) {
    const auto note = [&](Nature nature, std::string before, std::string after) {
        Change& change = add(Kind::changed, What::bullet, std::move(before), std::move(after));
        change.nature = nature;
        set_places(change, was, is);
    };
    if (auto change = text_change(was.text, is.text)) {
        change->what = What::bullet;
        set_places(*change, was, is);
        add({*std::move(change)});
    }
    if (was.level != is.level)
        note(Nature::level, std::to_string(was.level), std::to_string(is.level));
    if (was.tags != is.tags) note(Nature::tags, words_for(was.tags), words_for(is.tags));
}

}

std::string_view name_of(Kind kind) {
    constexpr std::array<std::string_view, 4> names{"added", "removed", "moved", "changed"};
    return names[static_cast<std::size_t>(kind)];
}

std::string_view name_of(What what) {
    constexpr std::array<std::string_view, 7> names{"setting", "contact", "section", "entry",
                                                    "field",   "item",    "bullet"};
    return names[static_cast<std::size_t>(what)];
}

std::string_view name_of(Nature nature) {
    constexpr std::array<std::string_view, 10> names{
        "wording", "figures", "dates", "marks", "link", "order", "level", "tags", "label", "value"};
    return names[static_cast<std::size_t>(nature)];
}

std::string name_of_entry(const FlatEntry& entry) {
    std::string name = text_of(*entry.entry, trade::Trait::calls);
    std::string of = text_of(*entry.entry, trade::Trait::else_calls);
    if (of.empty()) of = text_of(*entry.head, trade::Trait::else_calls);
    if (!name.empty() && !of.empty()) name += ", ";
    return name + of;
}

std::vector<Change> redline(const Alignment& alignment) {
    return Redliner(alignment).run();
}

}
