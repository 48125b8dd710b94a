// What the job is called: a posting that seeks a planning technician asks for no planning
// technician.
#pragma once

#include "compiler/postings/parts.hpp"
#include "compiler/postings/phrases.hpp"

#include <set>
#include <span>
#include <string>

namespace quoin::postings {

class JobTitle {
public:
    explicit JobTitle(std::span<const Statement> statements);

    // Nothing but words of the title, of which the last is who does the work; where something is
    // required it may have been another's work: six months as a nursing assistant.
    bool is_named_by(const Phrase& phrase, const Statement& statement) const;

private:
    std::set<std::string> words_; // in small letters
};

}
