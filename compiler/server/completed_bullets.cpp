#include "compiler/advice/bullet_wording.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/english/lists.hpp"
#include "compiler/server/completing.hpp"

#include <algorithm>
#include <set>

namespace quoin::server {

namespace {

// Verbs of the writer's trade, in the past; the list has a hyphen for a blank.
std::set<std::string> past_verbs() {
    std::set<std::string> verbs;
    each_listed(english::lines_of(english::List::done_to),
                [&](std::string_view, std::string_view said) {
                    for (std::string& verb : parted(said, " ")) {
                        std::ranges::replace(verb, '-', ' ');
                        verbs.insert(verb);
                    }
                });
    return verbs;
}

// The entry that the line stands in, as it was last read.
const model::Entry* entry_at(const session::State& last, std::uint32_t file, std::uint32_t line) {
    const model::Entry* found = nullptr;
    const auto look_at = [&](const model::Entry& entry) {
        if (entry.place.file == file && entry.place.line <= line) found = &entry;
    };
    for (const model::Section& section : last.read.resume->sections)
        for (const model::Entry& entry : section.entries) {
            look_at(entry);
            for (const model::Entry& further : entry.further)
                look_at(further);
        }
    return found;
}

bool goes_on_now(const Completing& at) {
    if (!at.last || !at.last->read.resume) return false;
    const auto file = at.last->file_at(at.path);
    const model::Entry* entry = file ? entry_at(*at.last, *file, at.spot.line) : nullptr;
    if (!entry) return false;
    const session::Means& means = at.desk.session.means();
    const auto& read = at.last->read;
    const advice::ProofContext context{.sources = read.sources,
                                       .resume = *read.resume,
                                       .today =
                                           read.resume->settings.updated->value_or(means.read_on),
                                       .language = means.language,
                                       .texts = read.texts,
                                       .bullets = read.bullets};
    return when_done(*entry, context) == advice::WhenDone::current;
}

}

Candidates bullet_candidates(const Completing& at) {
    Candidates candidates;
    if (at.spot.value.find(' ') != std::string::npos) return candidates;
    candidates.typed = at.spot.value.size();
    const bool current = goes_on_now(at);
    const english::Language& language = at.desk.session.means().language;
    for (const std::string& verb : past_verbs()) {
        const auto base = current ? language.base_of(verb) : std::nullopt;
        if (current && !base) continue;
        std::string word = current ? *base : verb;
        if (!word.empty()) word.front() = verb.front(); // a capital, as it opens the line
        candidates.all.push_back(
            {word,
             CandidateKind::keyword,
             current ? "in the present, for it goes on" : "in the past, for it is done",
             {}});
    }
    return candidates;
}

}
