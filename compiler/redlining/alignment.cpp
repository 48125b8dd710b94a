#include "compiler/redlining/alignment.hpp"

#include <algorithm>
#include <functional>
#include <map>

namespace quoin::redlining {

namespace {

constexpr double least_section = 0.5, least_entry = 0.42, least_bullet = 0.4;
constexpr double least_elsewhere = 0.7; // under another parent
constexpr double none_but_equals = 2;

using Likeness = std::function<double(std::size_t, std::size_t)>;
using Indices = std::vector<std::size_t>;

std::vector<Item> items_at(const std::vector<Item>& items, const Indices& at) {
    std::vector<Item> chosen;
    for (const std::size_t i : at)
        chosen.push_back(items[i]);
    return chosen;
}

class Matcher { // of one row
public:
    Matcher(const std::vector<Item>& before, const std::vector<Item>& after, Likeness likeness)
        : before_(before), after_(after), likeness_(std::move(likeness)) {
        match_.of_old.resize(before.size());
        match_.of_new.resize(after.size());
        match_.moved.resize(after.size());
    }

    // What is not matched yet, each under its parent.
    void match_under(const Match& parents, const Indices& old_parents, const Indices& new_parents,
                     double least) {
        std::map<std::size_t, std::pair<Indices, Indices>> groups; // by the new parent
        for (std::size_t i = 0; i < before_.size(); ++i)
            if (const auto parent = parents.of_old[old_parents[i]]; parent && !match_.of_old[i])
                groups[*parent].first.push_back(i);
        for (std::size_t j = 0; j < after_.size(); ++j)
            if (!match_.of_new[j]) groups[new_parents[j]].second.push_back(j);
        for (const auto& [parent, group] : groups)
            match(group.first, group.second, least);
    }

    // Whatever its parent.
    void match_anywhere(double least) {
        Indices old_ones, new_ones;
        for (std::size_t i = 0; i < before_.size(); ++i)
            if (!match_.of_old[i]) old_ones.push_back(i);
        for (std::size_t j = 0; j < after_.size(); ++j)
            if (!match_.of_new[j]) new_ones.push_back(j);
        match(old_ones, new_ones, least);
    }

    Match take() { return std::move(match_); }

private:
    void match(const Indices& old_ones, const Indices& new_ones, double least) {
        if (old_ones.empty() || new_ones.empty()) return;
        const auto of_chosen = [&](std::size_t i, std::size_t j) {
            return least > 1 ? 0 : likeness_(old_ones[i], new_ones[j]);
        };
        for (const auto& [i, j] :
             pairs_of(items_at(before_, old_ones), items_at(after_, new_ones), of_chosen, least))
            match_.add(old_ones[i], new_ones[j]);
    }

    const std::vector<Item>& before_;
    const std::vector<Item>& after_;
    Likeness likeness_;
    Match match_;
};

void mark_out_of_order(Match& match, const Indices& news) {
    Indices olds;
    for (const std::size_t j : news)
        olds.push_back(*match.of_new[j]);
    for (const std::size_t out : out_of_order(olds))
        match.moved[news[out]] = true;
}

// Those of one parent that a longest run in the old order leaves out, and those of another.
void find_moved(Match& match, const Match& parents, const Indices& old_parents,
                const Indices& new_parents) {
    std::map<std::size_t, Indices> stayed; // new ones, by their parent
    for (std::size_t j = 0; j < match.of_new.size(); ++j) {
        if (!match.of_new[j]) continue;
        if (parents.of_new[new_parents[j]] == old_parents[*match.of_new[j]])
            stayed[new_parents[j]].push_back(j);
        else
            match.moved[j] = true;
    }
    for (const auto& [parent, news] : stayed)
        mark_out_of_order(match, news);
}

Indices sections_of(const Flat& flat) {
    Indices all;
    for (const FlatEntry& entry : flat.entries)
        all.push_back(entry.section);
    return all;
}

Indices entries_of(const Flat& flat) {
    Indices all;
    for (const FlatBullet& bullet : flat.bullets)
        all.push_back(bullet.entry);
    return all;
}

Match match_sections(const Flat& before, const Flat& after) {
    Matcher matcher(before.section_items, after.section_items, [&](std::size_t i, std::size_t j) {
        return likeness(before.section_items[i].words, after.section_items[j].words);
    });
    matcher.match_anywhere(least_section);
    Match match = matcher.take();
    const Match root{{0}, {0}, {false}};
    find_moved(match, root, Indices(before.section_items.size()),
               Indices(after.section_items.size()));
    return match;
}

Match match_entries(const Flat& before, const Flat& after, const Match& sections) {
    Matcher matcher(before.entry_items, after.entry_items, [&](std::size_t i, std::size_t j) {
        return likeness(before.entries[i], after.entries[j]);
    });
    const Indices olds = sections_of(before), news = sections_of(after);
    matcher.match_under(sections, olds, news, none_but_equals);
    matcher.match_anywhere(none_but_equals);
    matcher.match_under(sections, olds, news, least_entry);
    matcher.match_anywhere(least_elsewhere);
    Match match = matcher.take();
    find_moved(match, sections, olds, news);
    return match;
}

Match match_bullets(const Flat& before, const Flat& after, const Match& entries) {
    Matcher matcher(before.bullet_items, after.bullet_items, [&](std::size_t i, std::size_t j) {
        return likeness(before.bullet_items[i].words, after.bullet_items[j].words);
    });
    const Indices olds = entries_of(before), news = entries_of(after);
    matcher.match_under(entries, olds, news, none_but_equals);
    matcher.match_anywhere(none_but_equals);
    matcher.match_under(entries, olds, news, least_bullet);
    matcher.match_anywhere(least_elsewhere);
    Match match = matcher.take();
    find_moved(match, entries, olds, news);
    return match;
}

}

Alignment align(const model::Resume& before, const model::Resume& after) {
    Alignment alignment{flatten(before), flatten(after), {}, {}, {}};
    alignment.sections = match_sections(alignment.before, alignment.after);
    alignment.entries = match_entries(alignment.before, alignment.after, alignment.sections);
    alignment.bullets = match_bullets(alignment.before, alignment.after, alignment.entries);
    return alignment;
}

}
