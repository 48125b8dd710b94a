#include "compiler/caseload/asked.hpp"

#include <algorithm>

namespace quoin::caseload {

namespace {

bool is_wanting(const Student& student, std::string_view what) {
    const Counts counts = student.now.counts();
    if (what == "must") return counts[0] > 0;
    if (what == "should") return counts[1] > 0;
    if (what == "fit") return student.now.readable() && !student.now.fits;
    if (what == "reading") return !student.now.readable();
    return student.stale(); // `draft`
}

bool has_finding(const Student& student, std::string_view check) {
    return std::ranges::find(student.now.remarks, check, &Remark::check) !=
           student.now.remarks.end();
}

}

bool is_asked_for(const Student& student, const Asked& asked) {
    const bool dated = !student.drafts.empty();
    const Day last = dated ? student.drafts.back().day : Day();
    return (!asked.due || student.due()) &&
           (asked.stage.empty() || student.now.stage == asked.stage) &&
           (asked.needs.empty() || is_wanting(student, asked.needs)) &&
           (asked.check.empty() || has_finding(student, asked.check)) &&
           (!asked.since || (dated && last >= *asked.since)) &&
           (!asked.until || (dated && last <= *asked.until));
}

void keep_asked(std::vector<Student>& students, const Asked& asked) {
    std::erase_if(students, [&](const Student& student) { return !is_asked_for(student, asked); });
    if (asked.first > 0 && students.size() > asked.first)
        students.erase(students.begin() + static_cast<std::ptrdiff_t>(asked.first), students.end());
}

}
