// As text: columns that are as wide as what stands in them.
#include "compiler/caseload/report.hpp"

#include "compiler/advice/proof.hpp"
#include "compiler/base/printable.hpp"
#include "compiler/base/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace quoin::caseload {

namespace {

using Cells = std::vector<std::string>;

std::size_t columns_of(std::string_view text) {
    int columns = 0;
    while (!text.empty())
        columns += terminal_columns(take_character(text).code);
    return static_cast<std::size_t>(std::max(columns, 0));
}

std::string laid_out(const Cells& row, const std::vector<std::size_t>& widths,
                     const std::vector<bool>& to_right) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i) {
        const std::string room(widths[i] - columns_of(row[i]), ' ');
        line += (to_right[i] ? room + row[i] : row[i] + room) + "  ";
    }
    return line.substr(0, line.find_last_not_of(' ') + 1);
}

// Figures stand to the right; what is last is as long as it is.
std::string laid_out(const std::vector<Cells>& rows, const std::vector<bool>& to_right) {
    std::vector<std::size_t> widths(to_right.size());
    for (const Cells& row : rows)
        for (std::size_t i = 0; i < row.size(); ++i)
            widths[i] = std::max(widths[i], columns_of(row[i]));
    std::string text;
    for (const Cells& row : rows)
        text += on_one_line(laid_out(row, widths, to_right)) + '\n';
    return text;
}

Cells row_of(const Student& student) {
    const Counts counts = student.now.counts();
    const bool readable = student.now.readable();
    return {student.called,
            readable ? student.now.stage : "-",
            pages_words(student.now),
            fit_words(student.now),
            readable ? std::to_string(counts[0]) : "-",
            readable ? std::to_string(counts[1]) : "-",
            student.drafts.empty() ? "-" : std::to_string(student.drafts.size()),
            student.drafts.empty() ? "-" : iso(student.drafts.back().day),
            student.days ? std::to_string(*student.days) : "-",
            student.before ? trend_words(student) : "-",
            student.why};
}

std::string head_line(const Report& report) {
    const auto& students = report.caseload.students;
    const auto count = [&](auto holds) {
        return static_cast<std::size_t>(std::ranges::count_if(students, holds));
    };
    const std::size_t unread = count([](const Student& one) { return !one.now.readable(); });
    std::string line = students.size() == report.of ? "" : fmt::format("{} of ", students.size());
    line += fmt::format("{} on {}: {} ready, {} due", counted(report.of, "résumé", "résumés"),
                        iso(report.caseload.today),
                        count([](const Student& one) { return one.now.ready(); }),
                        count([](const Student& one) { return one.due(); }));
    if (unread > 0) line += fmt::format(", {} cannot be read", unread);
    return line + '\n';
}

std::string students_text(const Report& report) {
    std::vector<Cells> rows{{"who", "stage", "pages", "fit", "must", "should", "drafts", "last",
                             "days", "trend", "why"}};
    for (const Student& student : report.caseload.students)
        rows.push_back(row_of(student));
    const std::vector<bool> to_right{false, false, true, true,  true, true,
                                     true,  false, true, false, false};
    return head_line(report) + laid_out(rows, to_right);
}

std::string cohort_text(const Report& report) {
    std::string text;
    for (const CommonFinding& common : report.common) {
        text += fmt::format("{} of {}: {} [{}], {}\n", common.students,
                            report.caseload.students.size(), name_of(common.weight), common.check,
                            counted(common.findings, "finding", "findings"));
        text += fmt::format("  {}\n", looked_at(common.check));
        if (!common.example.empty()) text += fmt::format("  as in: {}\n", common.example);
    }
    return head_line(report) + (text.empty() ? "nothing found\n" : text);
}

std::string terms_text(const Report& report) {
    std::vector<Cells> rows{{"term", "students", "drafts", "ready", "musts each", "shoulds each"}};
    for (const TermState& state : report.caseload.terms)
        rows.push_back({state.term, std::to_string(state.students), std::to_string(state.drafts),
                        std::to_string(state.ready), fmt::format("{:.1f}", state.musts),
                        fmt::format("{:.1f}", state.shoulds)});
    return head_line(report) + laid_out(rows, {false, true, true, true, true, true});
}

}

std::string looked_at(std::string_view name) {
    const advice::Check* check = advice::find_check(name);
    return check ? std::string(check->looks_at) : std::string();
}

std::string as_text(const Report& report, View view) {
    if (view == View::cohort) return cohort_text(report);
    return view == View::terms ? terms_text(report) : students_text(report);
}

}
