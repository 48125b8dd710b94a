// A term in the texts of a résumé, by stems, acronyms, studies, spellings, near forms and other
// names.
#pragma once

#include "compiler/matching/coverage.hpp"
#include "compiler/matching/studies.hpp"
#include "compiler/matching/term_forms.hpp"

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace quoin::matching {

class TermSearch {
public:
    // All of these must outlive the search.
    TermSearch(const model::Resume& resume, const std::vector<TextOfResume>& texts,
               const english::WordList& words);

    // At most one in a text.
    std::vector<Showing> showings(const postings::Term& term) const;

private:
    struct Found {
        std::size_t first = 0, last = 0; // words of the text
        Nearness how{};
    };

    bool may_stand(const std::vector<std::string>& stems) const; // all are somewhere
    std::vector<TermForm> forms_of(const postings::Term& term) const;
    std::optional<Found> find(const TextOfResume& text, const TermForm& form) const;
    std::optional<Found> find_spelled(const TextOfResume& text, const TermForm& form) const;
    bool is_spelled_otherwise(const std::string& typed, const std::string& meant) const;
    Showing showing(const TextOfResume& text, const Found& found) const;

    const std::vector<TextOfResume>& texts_;
    const english::WordList& words_;
    Studies studies_;
    std::set<std::string> stems_; // of all texts
    std::map<std::vector<std::string>, std::vector<std::vector<std::string>>> other_forms_;
};

}
