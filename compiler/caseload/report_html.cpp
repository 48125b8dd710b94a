#include "compiler/base/html_text.hpp"
#include "compiler/caseload/html_frame.hpp"
#include "compiler/caseload/report.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace quoin::caseload {

namespace {

std::string cell(std::string_view kind, std::string_view text) {
    return fmt::format("<td class=\"{}\">{}</td>", kind, in_html(text));
}

std::string number_cell(const std::string& text, double sorted_by) {
    return fmt::format("<td class=\"n\" data-v=\"{}\">{}</td>", sorted_by, in_html(text));
}

// A heading for each column; those that begin with a blank are of figures.
std::string table_head(std::initializer_list<std::string_view> titles) {
    std::string html = "<thead><tr>";
    for (const std::string_view title : titles)
        html += title.starts_with(' ')
                    ? fmt::format("<th scope=\"col\" class=\"n\">{}</th>", title.substr(1))
                    : fmt::format("<th scope=\"col\">{}</th>", title);
    return html + "</tr></thead>\n<tbody>\n";
}

std::string table_begin(std::string_view title, std::string_view id) {
    return fmt::format("<h2 id=\"{0}-title\">{1}</h2>\n", id, title);
}

std::string region_begin(std::string_view id) {
    return fmt::format("<div class=\"wide\" tabindex=\"0\" role=\"region\" "
                       "aria-labelledby=\"{0}-title\">\n<table id=\"{0}\">\n",
                       id);
}

constexpr std::string_view table_end = "</tbody>\n</table>\n</div>\n";

// --- all students

std::string who_cell(const Student& student, std::size_t at, bool linked) {
    const std::string who = in_html(student.called);
    if (!linked) return fmt::format("<th scope=\"row\">{}</th>", who);
    return fmt::format("<th scope=\"row\"><a href=\"#student-{}\">{}</a></th>", at + 1, who);
}

std::string student_row(const Student& student, std::size_t at, bool linked) {
    const Counts counts = student.now.counts();
    const bool readable = student.now.readable();
    const auto figure = [&](bool there, std::size_t value) {
        return there ? number_cell(std::to_string(value), static_cast<double>(value))
                     : number_cell("\u2013", -1);
    };
    const bool urgent = counts[0] > 0 || !readable;
    const std::string state = student.now.ready() ? "why ready" : urgent ? "why must" : "why";
    std::string html =
        fmt::format("<tr data-stage=\"{}\" data-due=\"{}\">",
                    readable ? in_html(student.now.stage) : "", student.due() ? 1 : 0);
    html += who_cell(student, at, linked) +
            fmt::format("<td class=\"{}\" data-v=\"{}\">{}</td>", state, at, in_html(student.why)) +
            figure(readable, counts[0]) + figure(readable, counts[1]) +
            cell("", readable ? student.now.stage : "\u2013") +
            cell("n", readable ? pages_words(student.now) : "\u2013") +
            cell("n", readable ? fit_words(student.now) : "\u2013") +
            figure(!student.drafts.empty(), student.drafts.size()) +
            cell("n", student.drafts.empty() ? "\u2013" : iso(student.drafts.back().day)) +
            figure(student.days.has_value(), static_cast<std::size_t>(student.days.value_or(0))) +
            fmt::format("<td class=\"n\" data-v=\"{}\">{}</td>", student.trend().value_or(0),
                        student.before ? trend_words(student) : "\u2013");
    return html + "</tr>\n";
}

constexpr std::string_view tools = R"html(<div class="tools" id="tools" hidden>
<label>Find <input type="search" id="words" autocomplete="off"></label>
<label>Stage <select id="stage"><option value="">all</option></select></label>
<label class="tick"><input type="checkbox" id="due"> due only</label>
<p id="told" role="status" class="soft"></p>
</div>
)html";

std::string students_table(const Report& report) {
    std::string html = table_begin("Who needs help first", "students");
    html += tools;
    html +=
        region_begin("students") + table_head({"Who", "Why", " Must", " Should", "Stage", " Pages",
                                               " Fit", " Drafts", " Last", " Days", " Trend"});
    const auto& students = report.caseload.students;
    for (std::size_t i = 0; i < students.size(); ++i)
        html += student_row(students[i], i, !report.anonymous);
    return html.append(table_end);
}

// --- what they have in common, and how they moved

std::string cohort_table(const Report& report) {
    if (report.common.empty()) return {};
    std::string html =
        table_begin("What to teach next", "cohort") +
        "<p class=\"soft\">The findings that most students share.</p>\n" + region_begin("cohort") +
        table_head({"What is looked at", " Students", " Findings", "Weight", "As in"});
    for (const CommonFinding& common : report.common)
        html += fmt::format("<tr><th scope=\"row\">{} <span class=\"soft\">[{}]</span></th>",
                            in_html(looked_at(common.check)), in_html(common.check)) +
                cell("n", std::to_string(common.students)) +
                cell("n", std::to_string(common.findings)) + cell("", name_of(common.weight)) +
                cell("line soft", common.example) + "</tr>\n";
    return html.append(table_end);
}

std::string terms_table(const Report& report) {
    if (report.caseload.terms.empty()) return {};
    std::string html =
        table_begin("How the cohort moved", "terms") + region_begin("terms") +
        table_head({"Term", " Students", " Drafts", " Ready", " Musts each", " Shoulds each"});
    for (const TermState& state : report.caseload.terms)
        html += fmt::format("<tr><th scope=\"row\">{}</th>", state.term) +
                cell("n", std::to_string(state.students)) +
                cell("n", std::to_string(state.drafts)) + cell("n", std::to_string(state.ready)) +
                cell("n", fmt::format("{:.1f}", state.musts)) +
                cell("n", fmt::format("{:.1f}", state.shoulds)) + "</tr>\n";
    return html.append(table_end);
}

// --- a page for each student

std::string remark_item(const Remark& remark) {
    std::string html = fmt::format("<li><span class=\"{0}\">{0}</span>", name_of(remark.weight));
    if (remark.line > 0) html += fmt::format(", line {}", remark.line);
    html += ": " + in_html(remark.text);
    if (!remark.quoted.empty()) html += fmt::format(" <q>{}</q>", in_html(remark.quoted));
    return html + "</li>\n";
}

std::string how_it_fits(const Appraisal& now) {
    const std::string pages = counted(now.pages, "page", "pages");
    return now.fits ? fmt::format("{} at {:.1f} pt", pages, now.size)
                    : fmt::format("too long: {} of {} allowed", pages, now.allowed);
}

std::string standing(const Student& student) {
    std::vector<std::string> said;
    const Appraisal& now = student.now;
    if (now.readable()) said.push_back(now.stage);
    if (now.pages > 0) said.push_back(how_it_fits(now));
    if (!student.drafts.empty())
        said.push_back(fmt::format("{}, the last of {}",
                                   counted(student.drafts.size(), "draft", "drafts"),
                                   iso(student.drafts.back().day)));
    if (const std::string trend = trend_words(student); !trend.empty())
        said.push_back(trend + (trend == "as before" ? "" : " than in the draft before"));
    std::string html;
    for (const std::string& one : said)
        html += (html.empty() ? "" : "; ") + in_html(one);
    return html;
}

std::string remark_list(const std::vector<Remark>& all) {
    if (all.empty()) return {};
    std::vector<const Remark*> remarks;
    for (const Remark& remark : all)
        remarks.push_back(&remark);
    std::ranges::stable_sort(remarks, {}, [](const Remark* one) { return one->weight; });
    std::string html = "<h3>To mend, the heaviest first</h3>\n<ol>\n";
    for (const Remark* remark : remarks)
        html += remark_item(*remark);
    return html + "</ol>\n";
}

std::string student_sheet(const Student& student, std::size_t at) {
    std::string html =
        fmt::format("<section class=\"sheet\" id=\"student-{0}\" "
                    "aria-labelledby=\"name-{0}\">\n<h2 id=\"name-{0}\">{1}</h2>\n"
                    "<p class=\"soft\">{2}</p>\n<p>{3}</p>\n",
                    at + 1, in_html(student.called), standing(student), in_html(student.why));
    if (!student.now.good.empty())
        html += fmt::format("<h3>Good already</h3>\n<p>{}</p>\n", in_html(student.now.good));
    html += remark_list(student.now.remarks);
    if (!student.now.advice.empty())
        html += fmt::format("<p>{}</p>\n", in_html(student.now.advice));
    return html + "<p class=\"back\"><a href=\"#students-title\">Back to all</a></p>\n</section>\n";
}

std::string opening(const Report& report) {
    const auto& students = report.caseload.students;
    const auto count = [&](auto holds) { return std::ranges::count_if(students, holds); };
    std::string html = fmt::format(
        "<h1>Caseload</h1>\n<p class=\"soft\">as of {}</p>\n<ul class=\"sums\">\n<li><b>{}</b> "
        "résumés</li>\n<li><b>{}</b> ready</li>\n<li><b>{}</b> due</li>\n<li><b>{}</b> cannot be "
        "read</li>\n</ul>\n",
        iso(report.caseload.today), students.size(),
        count([](const Student& one) { return one.now.ready(); }),
        count([](const Student& one) { return one.due(); }),
        count([](const Student& one) { return !one.now.readable(); }));
    for (const std::string& caution : report.cautions)
        html += fmt::format("<p class=\"caution\">Caution: {}</p>\n", in_html(caution));
    return html;
}

}

std::string as_html(const Report& report) {
    std::string html(html_head);
    html += opening(report) + students_table(report) + cohort_table(report) + terms_table(report);
    const auto& students = report.caseload.students;
    for (std::size_t i = 0; i < students.size() && !report.anonymous; ++i)
        html += student_sheet(students[i], i);
    return html.append("</main>\n").append(html_script).append("</body>\n</html>\n");
}

}
