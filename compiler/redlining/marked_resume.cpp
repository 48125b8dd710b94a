#include "compiler/redlining/marked_resume.hpp"

#include "compiler/redlining/marked_text.hpp"

#include <map>
#include <utility>

namespace quoin::redlining {

namespace {

using model::Revised;
using Indices = std::vector<std::size_t>;

class ResumeMarker {
public:
    ResumeMarker(const Alignment& alignment, std::uint32_t old_files)
        : of_(alignment), before_(alignment.before), after_(alignment.after),
          marker_(*before_.resume, *after_.resume, old_files) {}

    model::Resume run() {
        model::Resume all = *after_.resume;
        all.heading = marker_.merged(before_.resume->heading, after_.resume->heading);
        all.sections.clear();
        for (const Slot& slot : merged_order(of_.sections.of_old, after_.resume->sections.size()))
            all.sections.push_back(slot.old_one ? gone_section(slot.index) : section(slot.index));
        return all;
    }

private:
    // Of the old ones under one parent, where each is among the new ones under another: none if it
    // is gone, past the end if it is elsewhere.
    static std::vector<std::optional<std::size_t>> places(const Indices& olds, const Indices& news,
                                                          const Match& match) {
        std::map<std::size_t, std::size_t> at;
        for (std::size_t j = 0; j < news.size(); ++j)
            at.emplace(news[j], j);
        std::vector<std::optional<std::size_t>> found;
        for (const std::size_t old_one : olds) {
            const auto& other = match.of_old[old_one];
            const auto there = other ? at.find(*other) : at.end();
            if (!other)
                found.emplace_back();
            else
                found.emplace_back(there == at.end() ? news.size() : there->second);
        }
        return found;
    }

    model::Section section(std::size_t s) const;
    model::Section gone_section(std::size_t s) const;
    model::Entry entry(std::size_t e) const;
    model::Entry gone_entry(std::size_t e) const;
    model::Bullet bullet(std::size_t b) const;
    model::Bullet gone_bullet(std::size_t b) const;
    static void add(model::Entry entry, bool further, std::vector<model::Entry>& entries);
    static bool is_further(const FlatEntry& entry) { return entry.entry != entry.head; }

    const Alignment& of_;
    const Flat& before_;
    const Flat& after_;
    Marker marker_;
};

// A further position goes under the entry before it.
void ResumeMarker::add(model::Entry entry, bool further, std::vector<model::Entry>& entries) {
    if (further && !entries.empty())
        entries.back().further.push_back(std::move(entry));
    else
        entries.push_back(std::move(entry));
}

model::Section ResumeMarker::section(std::size_t s) const {
    model::Section all = after_.resume->sections[s];
    all.entries.clear();
    const auto old_one = of_.sections.of_new[s];
    all.title = old_one ? marker_.merged(before_.resume->sections[*old_one].title, all.title)
                        : marker_.marked(all.title, Revised::inserted);
    const Indices& news = after_.entries_of[s];
    const Indices olds = old_one ? before_.entries_of[*old_one] : Indices{};
    for (const Slot& slot : merged_order(places(olds, news, of_.entries), news.size()))
        if (slot.old_one)
            add(gone_entry(olds[slot.index]), is_further(before_.entries[olds[slot.index]]),
                all.entries);
        else
            add(entry(news[slot.index]), is_further(after_.entries[news[slot.index]]), all.entries);
    return all;
}

model::Section ResumeMarker::gone_section(std::size_t s) const {
    model::Section all = before_.resume->sections[s];
    all.title = marker_.marked(all.title, Revised::deleted);
    all.entries.clear();
    for (const std::size_t e : before_.entries_of[s])
        if (!of_.entries.of_old[e]) add(gone_entry(e), is_further(before_.entries[e]), all.entries);
    return all;
}

model::Entry ResumeMarker::entry(std::size_t e) const {
    model::Entry all = *after_.entries[e].entry;
    all.bullets.clear();
    all.further.clear();
    const auto old_one = of_.entries.of_new[e];
    if (old_one)
        all.fields = marker_.merged(before_.entries[*old_one].entry->fields, all.fields);
    else
        for (model::Field& field : all.fields)
            field = marker_.marked(field, Revised::inserted);
    const Indices& news = after_.bullets_of[e];
    const Indices olds = old_one ? before_.bullets_of[*old_one] : Indices{};
    for (const Slot& slot : merged_order(places(olds, news, of_.bullets), news.size()))
        all.bullets.push_back(slot.old_one ? gone_bullet(olds[slot.index])
                                           : bullet(news[slot.index]));
    return all;
}

model::Bullet ResumeMarker::bullet(std::size_t b) const {
    model::Bullet all = *after_.bullets[b].bullet;
    const auto old_one = of_.bullets.of_new[b];
    all.text = old_one ? marker_.merged(before_.bullets[*old_one].bullet->text, all.text)
                       : marker_.marked(all.text, Revised::inserted);
    return all;
}

model::Bullet ResumeMarker::gone_bullet(std::size_t b) const {
    model::Bullet all = *before_.bullets[b].bullet;
    all.text = marker_.marked(all.text, Revised::deleted);
    return all;
}

model::Entry ResumeMarker::gone_entry(std::size_t e) const {
    model::Entry all = *before_.entries[e].entry;
    all.bullets.clear();
    all.further.clear();
    for (model::Field& field : all.fields)
        field = marker_.marked(field, Revised::deleted);
    for (const std::size_t b : before_.bullets_of[e])
        if (!of_.bullets.of_old[b]) all.bullets.push_back(gone_bullet(b));
    return all;
}

}

model::Resume marked_resume(const Alignment& alignment, std::uint32_t old_files) {
    return ResumeMarker(alignment, old_files).run();
}

}
