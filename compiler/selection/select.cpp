// What one build takes of a résumé, by the tags it asks for.
#include "compiler/selection/select.hpp"

#include "compiler/source/ascii.hpp"

#include <algorithm>
#include <iterator>
#include <set>
#include <string_view>
#include <utility>

namespace quoin {
namespace {

using Names = std::set<std::string, std::less<>>;

class Selection {
public:
    explicit Selection(std::span<const std::string> tags) {
        for (const std::string& tag : tags)
            asked_.insert(lower_case(tag));
    }

    std::vector<Field> fields(const std::vector<Field>& all) const {
        std::vector<Field> taken;
        std::ranges::copy_if(all, std::back_inserter(taken),
                             [&](const Field& field) { return takes(field.tags); });
        return taken;
    }

    std::optional<Section> section(const Section& whole) const {
        if (!takes(whole.tags)) return std::nullopt;
        Section part = whole;
        part.entries.clear();
        for (const Entry& entry : whole.entries)
            if (auto taken = this->entry(entry)) part.entries.push_back(*std::move(taken));
        if (part.entries.empty() && !whole.entries.empty()) return std::nullopt;
        return part;
    }

private:
    bool takes(const Tags& tags) const {
        const auto is_asked = [&](const std::string& tag) {
            return asked_.contains(lower_case(tag));
        };
        if (std::ranges::any_of(tags.except, is_asked)) return false;
        return tags.only.empty() || std::ranges::any_of(tags.only, is_asked);
    }

    // An inner bullet goes with the one it stands below.
    std::vector<Bullet> bullets(const std::vector<Bullet>& all) const {
        std::vector<Bullet> taken;
        bool parent = true;
        for (const Bullet& bullet : all) {
            const bool wanted = takes(bullet.tags);
            if (bullet.level == 1) parent = wanted;
            if (wanted && parent) taken.push_back(bullet);
        }
        return taken;
    }

    // A further position goes with the role that opens it.
    std::optional<Entry> position(const Entry& whole) const {
        if (!takes(whole.tags)) return std::nullopt;
        Entry part = whole;
        part.fields = fields(whole.fields);
        part.bullets = bullets(whole.bullets);
        if (!part.find(FieldName::role)) return std::nullopt;
        return part;
    }

    std::optional<Entry> entry(const Entry& whole) const {
        if (!takes(whole.tags)) return std::nullopt;
        Entry part = whole;
        part.fields = fields(whole.fields);
        part.bullets = bullets(whole.bullets);
        part.further.clear();
        for (const Entry& further : whole.further)
            if (auto taken = position(further)) part.further.push_back(*std::move(taken));
        if (!part.fields.empty() || !part.bullets.empty()) return part;
        if (part.further.empty()) return std::nullopt;
        return first_further(std::move(part));
    }

    // With nothing left of the first position, the next one takes its place.
    static Entry first_further(Entry entry) {
        Entry first = std::move(entry.further.front());
        first.further.assign(std::next(entry.further.begin()), entry.further.end());
        return first;
    }

    Names asked_;
};

void collect(const Tags& tags, Names& names) {
    for (const std::string& tag : tags.only)
        names.insert(lower_case(tag));
    for (const std::string& tag : tags.except)
        names.insert(lower_case(tag));
}

void collect(const Entry& position, Names& names) {
    collect(position.tags, names);
    for (const Field& field : position.fields)
        collect(field.tags, names);
    for (const Bullet& bullet : position.bullets)
        collect(bullet.tags, names);
    for (const Entry& further : position.further)
        collect(further, names);
}

}

Resume select(const Resume& resume, std::span<const std::string> tags) {
    if (tags.empty()) return resume;
    const Selection selection{tags};
    Resume part = resume;
    part.heading = selection.fields(resume.heading);
    part.sections.clear();
    for (const Section& section : resume.sections)
        if (auto taken = selection.section(section)) part.sections.push_back(*std::move(taken));
    return part;
}

std::vector<std::string> tags_of(const Resume& resume) {
    Names names;
    for (const Field& field : resume.heading)
        collect(field.tags, names);
    for (const Section& section : resume.sections) {
        collect(section.tags, names);
        for (const Entry& entry : section.entries)
            collect(entry, names);
    }
    return {names.begin(), names.end()};
}

}
