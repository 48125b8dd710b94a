#include "compiler/redlining/finding_changes.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <tuple>

namespace quoin::redlining {

namespace {

struct Landmark { // where a thing begins, and what it is called in both drafts
    std::uint32_t file = 0, line = 0;
    std::string thing;

    bool operator<(const Landmark& other) const {
        return std::tie(file, line) < std::tie(other.file, other.line);
    }
};

// By the numbers of the new draft; `own` parts what the other draft has not.
std::string called(char kind, std::size_t index, const Match* match) {
    if (match == nullptr) return kind + std::to_string(index);
    const auto& other = match->of_old[index];
    return kind + (other ? std::to_string(*other) : "-" + std::to_string(index));
}

// Of the old draft, the matches say what each is called in the new.
std::vector<Landmark> landmarks(const Flat& flat, const Alignment* as_old) {
    std::vector<Landmark> all;
    const auto add = [&](const Place& place, std::string thing) {
        if (place.line != 0) all.push_back({place.file, place.line, std::move(thing)});
    };
    const auto add_fields = [&](const std::vector<model::Field>& fields, const std::string& of) {
        for (const model::Field& field : fields)
            add(field.label_place, of + '/' + label_of(field));
    };
    const model::Resume& resume = *flat.resume;
    add_fields(resume.heading, "");
    for (std::size_t s = 0; s < resume.sections.size(); ++s)
        add(resume.sections[s].place, called('s', s, as_old ? &as_old->sections : nullptr));
    for (std::size_t e = 0; e < flat.entries.size(); ++e) {
        const std::string thing = called('e', e, as_old ? &as_old->entries : nullptr);
        add(flat.entries[e].entry->place, thing);
        add_fields(flat.entries[e].entry->fields, thing);
    }
    for (std::size_t b = 0; b < flat.bullets.size(); ++b)
        add(flat.bullets[b].bullet->place, called('b', b, as_old ? &as_old->bullets : nullptr));
    std::stable_sort(all.begin(), all.end());
    return all;
}

std::string thing_at(const Place& place, const std::vector<Landmark>& landmarks) {
    const Landmark here{place.file, place.line, {}};
    const auto next = std::upper_bound(landmarks.begin(), landmarks.end(), here);
    if (place.line == 0 || next == landmarks.begin() || (next - 1)->file != place.file) return {};
    return (next - 1)->thing;
}

using Findings = std::vector<const advice::Finding*>;

using Counts = std::map<std::string, std::size_t>;

bool take_one(Counts& from, const std::string& key) {
    const auto found = from.find(key);
    if (found == from.end() || found->second == 0) return false;
    --found->second;
    return true;
}

// Takes out of both what has one key.
template<typename OldKey, typename NewKey>
void take_equals(Findings& olds, Findings& news, const OldKey& old_key, const NewKey& new_key) {
    Counts waiting;
    for (const advice::Finding* finding : olds)
        ++waiting[old_key(*finding)];
    Counts both;
    std::erase_if(news, [&](const advice::Finding* finding) {
        const std::string key = new_key(*finding);
        const bool is_old = take_one(waiting, key);
        if (is_old) ++both[key];
        return is_old;
    });
    std::erase_if(
        olds, [&](const advice::Finding* finding) { return take_one(both, old_key(*finding)); });
}

Findings pointers(const std::vector<advice::Finding>& findings) {
    Findings all;
    for (const advice::Finding& finding : findings)
        all.push_back(&finding);
    return all;
}

}

FindingChanges finding_changes(const Alignment& alignment, const advice::Proof& before,
                               const advice::Proof& after) {
    Findings olds = pointers(before.findings), news = pointers(after.findings);
    const auto old_marks = landmarks(alignment.before, &alignment);
    const auto new_marks = landmarks(alignment.after, nullptr);
    const auto at = [](const std::vector<Landmark>& marks) {
        return [&marks](const advice::Finding& finding) {
            return std::string(finding.check) + '\n' + thing_at(finding.place, marks);
        };
    };
    const auto words = [](const advice::Finding& finding) {
        return std::string(finding.check) + '\n' + finding.text;
    };
    take_equals(olds, news, at(old_marks), at(new_marks));
    take_equals(olds, news, words, words);
    return {std::move(olds), std::move(news)};
}

}
