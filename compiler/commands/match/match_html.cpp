#include "compiler/commands/match/match_report.hpp"

#include "compiler/base/html_text.hpp"
#include "compiler/base/lists.hpp"

#include <fmt/format.h>

namespace quoin::commands {

namespace {

using matching::TermCoverage;

// Contrast of every pair is 4.5 to 1 or more in both schemes (WCAG 2.1, 1.4.3); what a verdict is
// stands in words, and colour only goes with it.
constexpr std::string_view head = R"(<!DOCTYPE html>
<html lang="en-US">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{title}</title>
<style>
:root {{ color-scheme: light dark; --ink: #1c2326; --soft: #4d595e; --ground: #fcfbf8; --line: #c9cfcf;
  --full: #2f6f62; --empty: #dfe4e2; --mark: #8a3b12; }}
@media (prefers-color-scheme: dark) {{ :root {{ --ink: #e8ebea; --soft: #b3bdbb; --ground: #171c1e;
  --line: #3d4749; --full: #7fc4b4; --empty: #2d3638; --mark: #f0a987; }} }}
* {{ box-sizing: border-box; }}
body {{ margin: 0 auto; max-width: 62rem; padding: 1.5rem 1rem 3rem; color: var(--ink);
  background: var(--ground); font: 1rem/1.45 "Gentium Plus", Georgia, serif; }}
h1 {{ font-size: 1.5rem; line-height: 1.2; margin: 0 0 .25rem; overflow-wrap: anywhere; }}
h2 {{ font-size: 1.1rem; margin: 1.75rem 0 .5rem; }}
p {{ margin: .25rem 0; }}
.soft {{ color: var(--soft); }}
.shares {{ list-style: none; margin: 1rem 0 0; padding: 0; display: grid; gap: .5rem; }}
.shares li {{ display: grid; grid-template-columns: 6rem minmax(4rem, 16rem) 1fr; gap: .25rem .75rem;
  align-items: center; }}
.bar {{ height: .7rem; background: var(--empty); border: 1px solid var(--line); }}
.bar span {{ display: block; height: 100%; background: var(--full); }}
.scroll {{ overflow-x: auto; }}
table {{ border-collapse: collapse; width: 100%; font-size: .95rem; }}
th, td {{ text-align: left; vertical-align: top; padding: .3rem .6rem .3rem 0;
  border-bottom: 1px solid var(--line); }}
thead th {{ font-weight: 600; white-space: nowrap; }}
tbody th {{ font-weight: 600; }}
td:last-child, th:last-child {{ padding-right: 0; }}
.missing td.verdict {{ color: var(--mark); font-weight: 600; }}
@media (max-width: 40rem) {{ .shares li {{ grid-template-columns: 6rem 1fr; }}
  .shares li > :last-child {{ grid-column: 1 / -1; }} .from, .kind {{ display: none; }} }}
@media print {{ .from {{ display: none; }} @page {{ margin: 1.2cm; }} body {{ max-width: none; padding: 0; font-size: 8pt;
  background: none; }} h1 {{ font-size: 13pt; }} h2 {{ font-size: 10pt; margin: 6pt 0 2pt; }}
  table {{ font-size: 7.25pt; }} th, td {{ padding: .6pt 6pt .6pt 0; }} ul {{ margin: 2pt 0; }} .shares {{ gap: 2pt; margin-top: 4pt; }} }}
</style>
</head>
<body>
<main>
<h1>{title}</h1>
<p class="soft">{caution}</p>
)";

std::string file_name(const std::string& path) {
    return path.substr(path.rfind('/') + 1);
}

std::string share_item(std::string_view what, const matching::Share& share) {
    if (share.terms == 0) return {};
    const double percent = share.of_one() * 100;
    return fmt::format("<li><span>{}</span><span class=\"bar\" aria-hidden=\"true\"><span "
                       "style=\"width:{:.0f}%\"></span></span><span>{:.0f} % by weight; {} of {} "
                       "terms are there</span></li>\n",
                       what, percent, percent, share.terms - share.missing, share.terms);
}

std::string where_cell(const TermCoverage& covered) {
    if (covered.showings.empty()) return {};
    const matching::Showing& first = covered.showings.front();
    std::string text = "line " + lines_of_showings(covered);
    if (first.how != matching::Nearness::exact)
        text += fmt::format(", as \u201C{}\u201D", first.words);
    if (first.how >= matching::Nearness::near || first.how == matching::Nearness::implied)
        text += fmt::format(", {}", name_of(first.how));
    return text;
}

bool is_soft_and_missing(const TermCoverage& covered) {
    return covered.verdict == matching::Verdict::missing &&
           covered.term->kind == postings::Kind::soft_skill;
}

std::string term_row(const TermCoverage& covered) {
    const postings::Term& term = *covered.term;
    const bool soft = is_soft_and_missing(covered);
    return fmt::format("<tr{}><th scope=\"row\">{}</th><td>{}</td><td class=\"kind\">{}</td><td "
                       "class=\"verdict\">{}"
                       "</td><td>{}</td><td class=\"from soft\">{}</td></tr>\n",
                       covered.verdict == matching::Verdict::missing && !soft ? " class=\"missing\""
                                                                              : "",
                       in_html(name_of_term(covered)), name_of(term.standing), name_of(term.kind),
                       soft ? "let a bullet show it" : name_of(covered.verdict),
                       in_html(where_cell(covered)), in_html(term.sentence));
}

std::string terms_table(const Match& match) {
    std::string html =
        "<h2>Terms</h2>\n<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Terms "
        "of the posting\">\n"
        "<table>\n<thead><tr><th scope=\"col\">The posting says</th><th scope=\"col\">it is</th>"
        "<th scope=\"col\" class=\"kind\">kind</th><th scope=\"col\">the r\u00E9sum\u00E9</th><th "
        "scope=\"col\">where</th>"
        "<th scope=\"col\" class=\"from\">the posting's sentence</th></tr></thead>\n<tbody>\n";
    for (const matching::Verdict verdict :
         {matching::Verdict::missing, matching::Verdict::list_only, matching::Verdict::not_found,
          matching::Verdict::shown, matching::Verdict::spared})
        for (const TermCoverage& covered : told_terms(match, most_told))
            if (covered.verdict == verdict && !covered.told_with_first) html += term_row(covered);
    html += "</tbody>\n</table>\n</div>\n";
    const std::size_t all = match.coverage.terms.size();
    if (all <= most_told) return html;
    return html + fmt::format("<p>And {} that weigh less.</p>\n", all - most_told);
}

std::string conditions_list(const postings::Posting& posting) {
    if (posting.conditions.empty()) return {};
    std::string html = "<h2>Conditions, which no share counts: be ready to answer</h2>\n<ul>\n";
    for (const postings::Condition& condition : posting.conditions)
        html +=
            fmt::format("<li>{}: {}</li>\n", in_html(condition.about), in_html(condition.sentence));
    return html + "</ul>\n";
}

std::string order_list(const Match& match) {
    std::string html;
    for (const matching::RankedEntry& entry : match.order)
        if (entry.reordered)
            html += fmt::format("<li>{}: lines {}</li>\n",
                                in_html(name_of_entry(match.resume, entry.spot)),
                                lines_in_order(match, entry));
    if (html.empty()) return html;
    return "<h2>Bullets in the order that serves this posting</h2>\n<ul>\n" + html + "</ul>\n";
}

std::string groupings_list(const Match& match) {
    std::string html;
    for (const matching::Grouping& grouping : match.groupings)
        html += fmt::format("<h2>In {}, if you part it for this posting</h2>\n<ul>\n"
                            "<li>Relevant: {}</li>\n<li>Additional: {}</li>\n</ul>\n",
                            in_html(match.resume.sections[grouping.section].title.plain()),
                            in_html(entries_of_group(match, grouping, true)),
                            in_html(entries_of_group(match, grouping, false)));
    return html;
}

}

std::string match_html(const Match& match) {
    const std::string title = in_html(
        fmt::format("{} against {}", file_name(match.resume_name), file_name(match.posting_name)));
    std::string html =
        fmt::format(head, fmt::arg("title", title), fmt::arg("caution", match_caution));
    html += "<ul class=\"shares\">\n" + share_item("required", match.coverage.required) +
            share_item("preferred", match.coverage.preferred) +
            share_item("the rest", match.coverage.rest) + "</ul>\n";
    return html + terms_table(match) + conditions_list(match.posting) + order_list(match) +
           groupings_list(match) + "</main>\n</body>\n</html>\n";
}

}
