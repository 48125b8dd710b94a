#include "compiler/caseload/terms.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

namespace quoin::caseload {

namespace {

struct Term {
    int year = 0;
    std::size_t part = 0; // of the year

    auto operator<=>(const Term&) const = default;
    Term next() const { return part == 2 ? Term{year + 1, 0} : Term{year, part + 1}; }
};

constexpr std::array<std::string_view, 3> parts{"Spring", "Summer", "Fall"};

Term term_at(Day day) {
    const std::chrono::year_month_day date(day);
    const auto month = static_cast<unsigned>(date.month());
    constexpr unsigned may = 5, august = 8;
    return {static_cast<int>(date.year()), month <= may ? 0U : month <= august ? 1U : 2U};
}

std::string words_of(const Term& term) {
    return fmt::format("{} {}", parts.at(term.part), term.year);
}

struct Sums {
    std::size_t students = 0, drafts = 0, ready = 0, musts = 0, shoulds = 0;
};

// How a student stood at the end of each term, from that of the first draft on.
std::map<Term, const Standing*> standings(const Student& student, const Term& last) {
    std::map<Term, const Standing*> all;
    for (const Standing& standing : student.at_ends)
        all[term_at(standing.day)] = &standing;
    if (all.empty()) return all;
    const Standing* stood = nullptr;
    for (Term term = all.begin()->first; term <= last; term = term.next())
        stood = all.try_emplace(term, stood).first->second;
    return all;
}

void add(Sums& sums, const Standing& standing) {
    ++sums.students;
    sums.musts += standing.counts[0];
    sums.shoulds += standing.counts[1];
    if (standing.ready) ++sums.ready;
}

Term last_term(const std::vector<Student>& students) {
    Term last;
    for (const Student& student : students)
        for (const Standing& standing : student.at_ends)
            last = std::max(last, term_at(standing.day));
    return last;
}

double mean(std::size_t sum, std::size_t count) {
    return count == 0 ? 0 : static_cast<double>(sum) / static_cast<double>(count);
}

}

std::string term_of(Day day) {
    return words_of(term_at(day));
}

std::vector<Draft> last_of_terms(const std::vector<Draft>& drafts) {
    std::map<Term, const Draft*> of_terms;
    for (const Draft& draft : drafts)
        of_terms[term_at(draft.day)] = &draft;
    std::vector<Draft> last;
    for (const auto& [term, draft] : of_terms)
        last.push_back(*draft);
    return last;
}

std::vector<TermState> terms_of(const std::vector<Student>& students) {
    const Term last = last_term(students);
    std::map<Term, Sums> all;
    for (const Student& student : students) {
        for (const Draft& draft : student.drafts)
            ++all[term_at(draft.day)].drafts;
        for (const auto& [term, standing] : standings(student, last))
            add(all[term], *standing);
    }
    std::vector<TermState> states;
    for (const auto& [term, sums] : all)
        states.push_back({words_of(term), sums.students, sums.drafts, sums.ready,
                          mean(sums.musts, sums.students), mean(sums.shoulds, sums.students)});
    return states;
}

}
