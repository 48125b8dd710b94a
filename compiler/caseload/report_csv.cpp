// As CSV: RFC 4180, with a line of headings, lines that end in CR LF, and nothing in it that a
// spreadsheet takes for a formula (common practice: such a cell gets an apostrophe before it).
#include "compiler/caseload/report.hpp"

#include <fmt/format.h>

namespace quoin::caseload {

namespace {

using Cells = std::vector<std::string>;

std::string cell_of(std::string_view value) {
    std::string cell;
    constexpr std::string_view opens_formula = "=+-@\t\r";
    if (!value.empty() && opens_formula.find(value.front()) != opens_formula.npos) cell = "'";
    cell += value;
    if (cell.find_first_of("\",\r\n") == cell.npos) return cell;
    std::string quoted = "\"";
    for (const char c : cell)
        quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
    return quoted + '"';
}

std::string line_of(const Cells& cells) {
    std::string line;
    for (std::size_t i = 0; i < cells.size(); ++i)
        line += (i > 0 ? "," : "") + cell_of(cells[i]);
    return line + "\r\n";
}

std::string trend_word(const std::optional<int>& trend) {
    if (!trend) return "";
    return *trend < 0 ? "better" : *trend > 0 ? "worse" : "same";
}

// Numbers, or nothing where there is none to be had.
Cells cells_of(const Student& student) {
    const Appraisal& now = student.now;
    const Counts counts = now.counts();
    const auto figure = [&](bool there, std::size_t value) {
        return there ? std::to_string(value) : std::string();
    };
    return {student.called,
            student.place.path.string(),
            now.stage,
            figure(now.pages > 0, now.pages),
            figure(now.pages > 0, now.allowed),
            now.readable() ? (now.fits ? "fits" : "too long") : "",
            now.fits ? fmt::format("{:.1f}", now.size) : "",
            figure(now.readable(), counts[0]),
            figure(now.readable(), counts[1]),
            figure(now.readable(), counts[2]),
            figure(!student.drafts.empty(), student.drafts.size()),
            student.drafts.empty() ? "" : iso(student.drafts.back().day),
            student.days ? std::to_string(*student.days) : "",
            trend_word(student.trend()),
            student.why};
}

std::string students_csv(const Report& report) {
    std::string csv =
        line_of({"who", "file", "stage", "pages", "pages allowed", "fit", "text size", "must",
                 "should", "consider", "drafts", "last", "days", "trend", "why"});
    for (const Student& student : report.caseload.students)
        csv += line_of(cells_of(student));
    return csv;
}

std::string cohort_csv(const Report& report) {
    std::string csv = line_of({"check", "weight", "students", "findings", "example"});
    for (const CommonFinding& common : report.common)
        csv += line_of({common.check, std::string(name_of(common.weight)),
                        std::to_string(common.students), std::to_string(common.findings),
                        common.example});
    return csv;
}

std::string terms_csv(const Report& report) {
    std::string csv =
        line_of({"term", "students", "drafts", "ready", "musts each", "shoulds each"});
    for (const TermState& state : report.caseload.terms)
        csv += line_of({state.term, std::to_string(state.students), std::to_string(state.drafts),
                        std::to_string(state.ready), fmt::format("{:.2f}", state.musts),
                        fmt::format("{:.2f}", state.shoulds)});
    return csv;
}

}

std::string as_csv(const Report& report, View view) {
    if (view == View::cohort) return cohort_csv(report);
    return view == View::terms ? terms_csv(report) : students_csv(report);
}

}
