// The caseload: every résumé below an adviser's folders, looked at on all processors, who needs
// help first at the top.
#pragma once

#include "compiler/caseload/drafts.hpp"
#include "compiler/caseload/find_resumes.hpp"
#include "compiler/caseload/look.hpp"
#include "compiler/caseload/student.hpp"

#include <atomic>
#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace quoin::caseload {

struct TermState { // how the cohort stood when a term ended, or stands in it
    std::string term{};
    std::size_t students = 0; // who had a draft by then
    std::size_t drafts = 0;   // written in the term
    std::size_t ready = 0;
    double musts = 0, shoulds = 0; // a student's, on the mean

    bool operator==(const TermState&) const = default;
};

struct Caseload {
    Day today{};
    std::vector<Student> students{}; // who needs help first; of equals, by name
    std::vector<TermState> terms{};  // oldest first; empty if they were not asked for
    std::size_t done = 0, all = 0;   // less than all: it was stopped
};

struct Wanted {
    bool terms = false;    // how they moved
    bool texts = false;    // what is said of each finding, not only which there are
    bool examples = false; // the lines of those that may be shown to others
};

struct Watch { // by whom a run is followed
    // As each is done: how many of how many, and which.
    std::function<void(std::size_t done, std::size_t all, const std::string& what)> progress{};
    const std::atomic<bool>* stop = nullptr; // null: nothing stops it
};

Caseload read_caseload(const std::vector<Found>& resumes, const Means& means, const Drafts& drafts,
                       const Wanted& wanted, const Watch& watch);

void put_in_order(std::vector<Student>& students);

// Spring to May, summer to August, fall to December: common practice of US colleges.
std::string term_of(Day day); // "Fall 2026"

}
