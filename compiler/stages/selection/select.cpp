// What one build takes of a résumé, by the tags it asks for.
#include "compiler/stages/selection/select.hpp"

#include "compiler/base/ascii.hpp"

#include <algorithm>
#include <iterator>
#include <set>
#include <string_view>
#include <utility>

namespace quoin::selection {
namespace {

using Names = std::set<std::string, std::less<>>;

class Selection {
public:
    explicit Selection(std::span<const std::string> tags) {
        for (const std::string& tag : tags)
            asked_.insert(lower_case(tag));
    }

    std::vector<model::Field> fields(const std::vector<model::Field>& all) const {
        std::vector<model::Field> taken;
        std::ranges::copy_if(all, std::back_inserter(taken),
                             [&](const model::Field& field) { return takes(field.tags); });
        return taken;
    }

    std::optional<model::Section> section(const model::Section& whole) const {
        if (!takes(whole.tags)) return std::nullopt;
        model::Section part = whole;
        part.entries.clear();
        for (const model::Entry& entry : whole.entries)
            if (auto taken = this->entry(entry)) part.entries.push_back(*std::move(taken));
        if (part.entries.empty() && !whole.entries.empty()) return std::nullopt;
        return part;
    }

private:
    bool takes(const model::Tags& tags) const {
        const auto is_asked = [&](const std::string& tag) {
            return asked_.contains(lower_case(tag));
        };
        if (std::ranges::any_of(tags.except, is_asked)) return false;
        return tags.only.empty() || std::ranges::any_of(tags.only, is_asked);
    }

    // An inner bullet goes with the one it stands below.
    std::vector<model::Bullet> bullets(const std::vector<model::Bullet>& all) const {
        std::vector<model::Bullet> taken;
        bool parent = true;
        for (const model::Bullet& bullet : all) {
            const bool wanted = takes(bullet.tags);
            if (bullet.level == 1) parent = wanted;
            if (wanted && parent) taken.push_back(bullet);
        }
        return taken;
    }

    // A further position goes with the role that opens it.
    std::optional<model::Entry> position(const model::Entry& whole) const {
        if (!takes(whole.tags)) return std::nullopt;
        model::Entry part = whole;
        part.fields = fields(whole.fields);
        part.bullets = bullets(whole.bullets);
        if (!part.find(trade::FieldName::role)) return std::nullopt;
        return part;
    }

    std::optional<model::Entry> entry(const model::Entry& whole) const {
        if (!takes(whole.tags)) return std::nullopt;
        model::Entry part = whole;
        part.fields = fields(whole.fields);
        part.bullets = bullets(whole.bullets);
        part.further.clear();
        for (const model::Entry& further : whole.further)
            if (auto taken = position(further)) part.further.push_back(*std::move(taken));
        if (!part.fields.empty() || !part.bullets.empty()) return part;
        if (part.further.empty()) return std::nullopt;
        return first_further(std::move(part));
    }

    // With nothing left of the first position, the next one takes its place.
    static model::Entry first_further(model::Entry entry) {
        model::Entry first = std::move(entry.further.front());
        first.further.assign(std::next(entry.further.begin()), entry.further.end());
        return first;
    }

    Names asked_;
};

void collect(const model::Tags& tags, Names& names) {
    for (const std::string& tag : tags.only)
        names.insert(lower_case(tag));
    for (const std::string& tag : tags.except)
        names.insert(lower_case(tag));
}

void collect(const model::Entry& position, Names& names) {
    collect(position.tags, names);
    for (const model::Field& field : position.fields)
        collect(field.tags, names);
    for (const model::Bullet& bullet : position.bullets)
        collect(bullet.tags, names);
    for (const model::Entry& further : position.further)
        collect(further, names);
}

}

model::Resume select(const model::Resume& resume, std::span<const std::string> tags) {
    if (tags.empty()) return resume;
    const Selection selection{tags};
    model::Resume part = resume;
    part.heading = selection.fields(resume.heading);
    part.sections.clear();
    for (const model::Section& section : resume.sections)
        if (auto taken = selection.section(section)) part.sections.push_back(*std::move(taken));
    return part;
}

std::vector<std::string> tags_of(const model::Resume& resume) {
    Names names;
    for (const model::Field& field : resume.heading)
        collect(field.tags, names);
    for (const model::Section& section : resume.sections) {
        collect(section.tags, names);
        for (const model::Entry& entry : section.entries)
            collect(entry, names);
    }
    return {names.begin(), names.end()};
}

}
