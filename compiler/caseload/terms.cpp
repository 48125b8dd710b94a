#include "compiler/caseload/terms.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <utility>

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

// Which draft a student had at the end of each term, from that of the first on.
std::map<Term, const Draft*> drafts_at_ends(const Student& student, const Term& last) {
    std::map<Term, const Draft*> at_ends;
    for (const Draft& draft : student.drafts)
        at_ends[term_at(draft.day)] = &draft;
    if (at_ends.empty()) return at_ends;
    const Draft* had = nullptr;
    for (Term term = at_ends.begin()->first; term <= last; term = term.next())
        had = at_ends.try_emplace(term, had).first->second;
    return at_ends;
}

class Summing {
public:
    Summing(Look& look, const Drafts& drafts, const Term& last)
        : look_(look), drafts_(drafts), last_(last) {}

    std::map<Term, Sums> sums;

    void add(const Student& student) {
        for (const Draft& draft : student.drafts)
            ++sums[term_at(draft.day)].drafts;
        const Draft* counted = nullptr;
        Appraisal had;
        for (const auto& [term, draft] : drafts_at_ends(student, last_)) {
            if (draft != std::exchange(counted, draft)) had = at(student, *draft);
            add(sums[term], had);
        }
    }

private:
    Appraisal at(const Student& student, const Draft& draft) {
        if (&draft == &student.drafts.back()) return student.now;
        auto had = earlier_draft(look_, drafts_, student.place.path, draft);
        return had ? *std::move(had) : Appraisal{.fault = "it has gone"};
    }

    static void add(Sums& to, const Appraisal& had) {
        const Counts counts = had.counts();
        ++to.students;
        to.musts += counts[0];
        to.shoulds += counts[1];
        if (had.readable() && had.fits && counts[0] == 0) ++to.ready;
    }

    Look& look_;
    const Drafts& drafts_;
    Term last_;
};

double mean(std::size_t sum, std::size_t count) {
    return count == 0 ? 0 : static_cast<double>(sum) / static_cast<double>(count);
}

}

std::string term_of(Day day) {
    return words_of(term_at(day));
}

std::vector<TermState> terms_of(const std::vector<Student>& students, Look& look,
                                const Drafts& drafts) {
    Term last;
    for (const Student& student : students)
        for (const Draft& draft : student.drafts)
            last = std::max(last, term_at(draft.day));
    Summing summing(look, drafts, last);
    for (const Student& student : students)
        summing.add(student);
    std::vector<TermState> states;
    for (const auto& [term, sums] : summing.sums)
        states.push_back({words_of(term), sums.students, sums.drafts, sums.ready,
                          mean(sums.musts, sums.students), mean(sums.shoulds, sums.students)});
    return states;
}

}
