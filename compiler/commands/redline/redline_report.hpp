// A redline in the forms that it is printed in.
#pragma once

#include "compiler/commands/redline/drafts.hpp"
#include "compiler/redlining/finding_changes.hpp"
#include "compiler/redlining/redline.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace quoin::commands {

struct PageState { // how a draft fits, as `set` has it
    std::size_t pages = 0, allowed = 0;
    double size = 0;       // pt, of the text
    double lines_free = 0; // of text, at the foot of the last page
    int lines_over = 0;    // that are too many, at the smallest setting
};

std::optional<PageState> page_state(const Proofread& one); // none if it could not be set
// "1 page at 10.8 pt, 1.2 lines free"
std::string page_state_words(const std::optional<PageState>& page);

struct Redline {
    ComparedDrafts drafts;
    redlining::Alignment alignment; // if both can be read, and so the rest
    std::vector<redlining::Change> changes;
    redlining::FindingChanges findings;

    bool compared() const { return drafts.before.readable() && drafts.after.readable(); }
};

Redline redline_of(ComparedDrafts drafts);

// Empty if nothing changed. Of drafts that cannot be compared, what can be said of the one there
// is.
std::string redline_text(const Redline& redline);
std::string redline_json(const Redline& redline);
// The new page with what is new underlined, what is gone struck through in its place, a numbered
// flag for each change, and a sheet behind it that lists them: the bytes of a tagged PDF. None if
// the new draft cannot be set, or not with the signs of the old one. `time` is document_time().
std::optional<std::string> marked_redline(const Redline& redline, const ProofTools& tools,
                                          std::optional<std::int64_t> time);

// "the theme: 'a' is now 'b'", for lists and sheets alike.
std::string change_sentence(const redlining::Change& change);
std::string headed_by(const redlining::Change& change); // "Experience: Field Survey Intern, …"

}
