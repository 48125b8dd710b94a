// What may be written at a spot.
#pragma once

#include "compiler/server/spot.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace quoin::server {

enum class CandidateKind { // "CompletionItemKind"
    text = 1,
    property = 10,
    value = 12,
    keyword = 14,
    snippet = 15,
    file = 17,
};

struct Candidate {
    std::string text; // shown, and what is typed is compared with
    CandidateKind kind = CandidateKind::value;
    std::string advice;   // one line
    std::string inserted; // empty: the text; of a snippet its body
    std::string more = {};
};

struct Candidates {
    std::vector<Candidate> all;
    std::size_t typed = 0; // bytes before the position that they take the place of
};

struct Completing {
    Desk& desk;
    const std::filesystem::path& path;
    const DocumentSpot& spot;
    const session::State* last; // may be null, and older than the text

    const model::Settings* settings() const {
        return last && last->read.resume ? &last->read.resume->settings : nullptr;
    }
    trade::Stage stage() const {
        return settings() ? *settings()->stage : trade::Stage::undergraduate;
    }
};

// completed_lines.cpp: labels that fit and do not stand there yet, and whole entries.
Candidates line_candidates(const Completing& at);
// completed_values.cpp: of what stands behind a label.
Candidates value_candidates(const Completing& at);
// completed_bullets.cpp: verbs in the tense of the entry.
Candidates bullet_candidates(const Completing& at);
// Tags in use, within braces; none elsewhere.
Candidates tag_candidates(const Completing& at);

}
