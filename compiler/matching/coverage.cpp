#include "compiler/matching/coverage.hpp"

#include "compiler/matching/term_search.hpp"

#include <algorithm>
#include <array>
#include <tuple>

namespace quoin::matching {

namespace {

Verdict verdict_of(const std::vector<Showing>& showings) {
    if (showings.empty()) return Verdict::missing;
    const auto in_work = [](const Showing& s) { return is_found(s.how) && s.where != Where::list; };
    if (std::ranges::any_of(showings, in_work)) return Verdict::shown;
    const auto found = [](const Showing& s) { return is_found(s.how); };
    return std::ranges::any_of(showings, found) ? Verdict::list_only : Verdict::not_found;
}

void add_to(Share& share, const TermCoverage& covered) {
    share.weight += covered.term->weight;
    share.shown += covered.term->weight * credit(covered.verdict);
    ++share.terms;
    if (covered.verdict == Verdict::missing) ++share.missing;
}

// A list of a language or a credential is where it belongs.
bool is_at_home_in_list(const postings::Term& term) {
    return term.kind == postings::Kind::language || term.kind == postings::Kind::credential;
}

TermCoverage covered_by(const postings::Term& term, std::vector<Showing> showings) {
    std::ranges::stable_sort(showings, {}, &Showing::how);
    const Verdict verdict = verdict_of(showings);
    const bool is_shown = verdict == Verdict::list_only && is_at_home_in_list(term);
    return {&term, std::move(showings), is_shown ? Verdict::shown : verdict};
}

Share& share_of(Coverage& coverage, postings::Standing standing) {
    if (standing == postings::Standing::required) return coverage.required;
    if (standing == postings::Standing::preferred) return coverage.preferred;
    return coverage.rest;
}

}

std::string_view name_of(Nearness nearness) {
    constexpr std::array<std::string_view, 5> names{"the same words", "another form",
                                                    "the other form of an acronym",
                                                    "another spelling", "a near form"};
    return names[static_cast<std::size_t>(nearness)];
}

std::string_view name_of(Verdict verdict) {
    constexpr std::array<std::string_view, 4> names{"shown", "only in a list", "spelled otherwise",
                                                    "missing"};
    return names[static_cast<std::size_t>(verdict)];
}

Coverage cover(const model::Resume& resume, const postings::Posting& posting,
               const english::WordList& words) {
    const std::vector<TextOfResume> texts = texts_of(resume);
    const TermSearch search(resume, texts, words);
    Coverage coverage;
    for (const postings::Term& term : posting.terms) {
        if (!term.listed || coverage.terms.size() == most_terms) break;
        TermCoverage covered = covered_by(term, search.showings(term));
        add_to(share_of(coverage, term.standing), covered);
        coverage.terms.push_back(std::move(covered));
    }
    return coverage;
}

}
