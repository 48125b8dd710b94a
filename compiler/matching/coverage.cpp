#include "compiler/matching/coverage.hpp"

#include "compiler/matching/choices_met.hpp"
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
    const auto done = [](const Showing& s) { return is_shown_so(s.how) && s.where != Where::list; };
    if (std::ranges::none_of(showings, found)) return Verdict::not_found;
    return std::ranges::any_of(showings, done) ? Verdict::shown : Verdict::list_only;
}

// A list of a language or a credential is where it belongs.
bool is_at_home_in_list(const postings::Term& term) {
    return term.kind == postings::Kind::language || term.kind == postings::Kind::credential;
}

TermCoverage covered_by(const postings::Term& term, std::vector<Showing> showings) {
    std::ranges::stable_sort(showings, {}, &Showing::how);
    const Verdict verdict = verdict_of(showings);
    const bool is_shown = verdict == Verdict::list_only && is_at_home_in_list(term);
    return {&term, std::move(showings), is_shown ? Verdict::shown : verdict, {}, false};
}

}

std::string_view name_of(Nearness nearness) {
    constexpr std::array<std::string_view, 8> names{
        "the same words", "another form",     "the other form of an acronym",
        "implied",        "another spelling", "a near form",
        "other words",    "one of its kind"};
    return names[static_cast<std::size_t>(nearness)];
}

std::string_view name_of(Verdict verdict) {
    constexpr std::array<std::string_view, 5> names{"shown", "only in a list", "said otherwise",
                                                    "missing", "another will do"};
    return names[static_cast<std::size_t>(verdict)];
}

Coverage cover(const model::Resume& resume, const postings::Posting& posting,
               const english::WordList& words) {
    const std::vector<TextOfResume> texts = texts_of(resume);
    const TermSearch search(resume, texts, words);
    Coverage coverage;
    for (const postings::Term& term : posting.terms) {
        if (!term.listed || coverage.terms.size() == most_terms) break;
        coverage.terms.push_back(covered_by(term, search.showings(term)));
    }
    settle_choices(coverage);
    return coverage;
}

}
