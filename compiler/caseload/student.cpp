#include "compiler/caseload/student.hpp"

#include "compiler/caseload/messages.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace quoin::caseload {

namespace {

// What each thing adds to a student's need. No musts outweigh one that cannot be read at all, and
// no shoulds one must; time adds as long as there is something to do.
constexpr double of_fault = 1000, of_must = 10, of_too_long = 15, of_should = 1, of_worse = 5;
constexpr double of_ten_days = 1;
constexpr std::size_t most_counted = 9; // of musts, and of shoulds
constexpr int most_days = 180, worth_naming = 14;
constexpr int days_in_month = 30;

double capped(std::size_t count) {
    return static_cast<double>(std::min(count, most_counted));
}

double need_of(const Student& student) {
    const auto [musts, shoulds, considers] = student.now.counts();
    double need = student.now.readable() ? 0 : of_fault;
    need += of_must * capped(musts) + of_should * capped(shoulds);
    if (student.now.readable() && !student.now.fits) need += of_too_long;
    if (student.trend().value_or(0) > 0) need += of_worse;
    if (student.due()) need += of_ten_days * std::min(student.days.value_or(0), most_days) / 10;
    return need;
}

std::string days_words(const Student& student) {
    return "no draft for " + counted(static_cast<std::size_t>(*student.days), "day", "days");
}

std::string fault_words(const Appraisal& now) {
    const bool says_so = now.fault.starts_with("cannot be read");
    std::string words = says_so ? now.fault : fill<messages::cannot_be_read>(now.fault);
    return now.fault_line == 0 ? words : fmt::format("{} (line {})", words, now.fault_line);
}

std::vector<std::string> reasons(const Student& student) {
    const auto [musts, shoulds, considers] = student.now.counts();
    std::vector<std::string> said;
    if (!student.now.readable()) said.push_back(fault_words(student.now));
    if (musts > 0) said.push_back(counted(musts, "must", "musts"));
    if (student.now.readable() && !student.now.fits)
        said.push_back(student.now.allowed == 1
                           ? "too long for its page"
                           : fmt::format("too long for its {} pages", student.now.allowed));
    if (student.trend().value_or(0) > 0) said.push_back("worse than the draft before");
    const bool waits = student.due() && student.days.value_or(0) >= worth_naming;
    if (waits) said.push_back(days_words(student));
    if (musts == 0 && shoulds > 0) said.push_back(counted(shoulds, "should", "shoulds"));
    return said;
}

}

std::string counted(std::size_t count, std::string_view one, std::string_view several) {
    return fmt::format("{} {}", count, count == 1 ? one : several);
}

bool Student::stale() const {
    return days && *days > days_in_month * now.stale_months.value_or(usual_stale_months);
}

std::optional<int> Student::trend() const {
    if (!before || !now.readable()) return std::nullopt;
    const Counts counts = now.counts();
    const auto change = [&](std::size_t weight) {
        return static_cast<int>(counts.at(weight)) - static_cast<int>(before->at(weight));
    };
    return change(0) != 0 ? change(0) : change(1);
}

void weigh(Student& student) {
    student.need = need_of(student);
    const std::vector<std::string> said = reasons(student);
    student.why.clear();
    for (const std::string& reason : said)
        student.why += (student.why.empty() ? "" : ", ") + reason;
    if (said.empty()) student.why = "ready";
}

std::string trend_words(const Student& student) {
    const auto trend = student.trend();
    if (!trend) return {};
    if (*trend == 0) return "as before";
    const bool of_musts = student.now.counts()[0] != student.before->at(0);
    return fmt::format("{} {} {}", std::abs(*trend), of_musts ? "must" : "should",
                       *trend < 0 ? "fewer" : "more");
}

std::string fit_words(const Appraisal& appraisal) {
    if (!appraisal.readable() || appraisal.pages == 0) return "-";
    return appraisal.fits ? fmt::format("{:.1f} pt", appraisal.size) : "too long";
}

std::string pages_words(const Appraisal& appraisal) {
    if (!appraisal.readable() || appraisal.pages == 0) return "-";
    if (appraisal.pages <= appraisal.allowed) return std::to_string(appraisal.pages);
    return fmt::format("{} of {}", appraisal.pages, appraisal.allowed);
}

}
