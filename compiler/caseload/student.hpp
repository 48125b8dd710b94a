// A row of the caseload: whose résumé, how it stands, and why it is where it is.
#pragma once

#include "compiler/caseload/appraisal.hpp"
#include "compiler/caseload/drafts.hpp"
#include "compiler/caseload/find_resumes.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace quoin::caseload {

constexpr int usual_stale_months = 6; // common practice: a term

struct Standing { // how a draft stood
    Day day{};
    Counts counts{};
    bool ready = false;

    bool operator==(const Standing&) const = default;
};

struct Student {
    Found place{};
    std::string called{}; // the name on the résumé, else that of the file; or "Student 17"
    Appraisal now{};
    std::vector<Draft> drafts{};    // oldest first
    std::optional<Counts> before{}; // of the last draft but one, where it could be read
    std::optional<int> days{};      // since the last
    // The last draft of each term that there was one in, oldest first; where they were asked for.
    std::vector<Standing> at_ends{};
    // Made from the rest by weigh()
    double need = 0;   // who has the most is seen first
    std::string why{}; // in words, the heaviest first

    bool stale() const; // no draft for longer than the office allows
    bool due() const { return !now.ready() || stale(); }
    // Change of what must be mended, else of what should: less is better.
    std::optional<int> trend() const;
};

void weigh(Student& student);

std::string counted(std::size_t count, std::string_view one, std::string_view several);
std::string trend_words(const Student& student);   // "2 must fewer", "as before"; empty: not known
std::string fit_words(const Appraisal& appraisal); // "11.2 pt", "too long"
std::string pages_words(const Appraisal& appraisal); // "1", "2 of 1"

}
