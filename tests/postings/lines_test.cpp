// Text and HTML to lines.
#include "compiler/postings/lines.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using quoin::postings::html_lines;
using quoin::postings::is_html;
using quoin::postings::Line;
using quoin::postings::text_lines;

namespace {

std::string shown(const std::vector<Line>& lines) {
    std::string text;
    for (const Line& line : lines)
        text += (line.heading ? "# " : line.item ? "- " : "  ") + line.text + '\n';
    return text;
}

}

TEST_CASE("postings: lines of plain text") {
    struct Row {
        const char* text;
        const char* lines;
    };
    const Row rows[] = {
        {"MUST HAVE\n\xE2\x80\xA2Knife skills\n* A card\n1) Patience\n",
         "# MUST HAVE\n- Knife skills\n- A card\n- Patience\n"},
        {"Requirements:\n - Two years of\n   work at a bench\n",
         "# Requirements:\n- Two years of work at a bench\n"},
        {"The crew runs samples from the boat to\nthe bench every day.\n\nWe pay well.\n",
         "  The crew runs samples from the boat to the bench every day.\n  We pay well.\n"},
        {"What you'll do\n\nBuild boats.\n", "# What you'll do\n  Build boats.\n"},
        {"The work\nBuild boats.\n", "# The work\n  Build boats.\n"},
        {"tempera\xC2\xADture\xC2\xA0logs\n-----\n", "  temperature logs\n"},
        {"\xE2\x9C\x85 Draft releases\n\xE2\x9C\x85 has strong writing\n",
         "- Draft releases\n- has strong writing\n"},
        {"\xE2\x9C\xA6 What the day holds\n\n\xE2\x80\xA2 Count orders\n",
         "# What the day holds\n- Count orders\n"},
        {"3. WHAT WE NEED\n\n  3.1  Inventory control\n  (a) Lifting\n",
         "# WHAT WE NEED\n- Inventory control\n- Lifting\n"},
        {"Minimum Qualifications\n\nAn associate degree.\n",
         "# Minimum Qualifications\n  An associate degree.\n"},
        {"", ""},
    };
    for (const Row& row : rows)
        CHECK(shown(text_lines(row.text)) == row.lines);
}

TEST_CASE("postings: lines know where they stand") {
    const auto lines = text_lines("Cook\n\n\nMust have:\n- Knife skills\n");
    REQUIRE(lines.size() == 3);
    CHECK(lines[0].number == 1);
    CHECK(lines[1].number == 4);
    CHECK(lines[2].number == 5);
}

TEST_CASE("postings: lines of HTML are what a reader sees") {
    struct Row {
        const char* html;
        const char* lines;
    };
    const Row rows[] = {
        {"<h3>The work</h3><ul><li>Collect <b>water samples</b><li>Run tests</ul>",
         "# The work\n- Collect water samples\n- Run tests\n"},
        {"<p><b>Duties</b><br>Weld hulls.</p>", "# Duties\n  Weld hulls.\n"},
        {"<p>A driver&rsquo;s&nbsp;license &amp; care</p>", "  A driver's license & care\n"},
        {"<script>var a = '<p>no</p>';</script><style>p{}</style><p>Yes</p>", "  Yes\n"},
        {"<p hidden>a</p><p style='display: none'>b</p><div aria-hidden=true>c</div><p>d</p>",
         "  d\n"},
        {"<dl><dt>Accounts payable</dt><dd>Code invoices.</dd></dl>",
         "# Accounts payable\n- Code invoices.\n"},
        {"<table><tr><th>Hours<td>40</table>", "# Hours\n- 40\n"},
        {"<table><tr><td>Spanish<td>A plus</table>", "- Spanish - A plus\n"},
        {"<nav>Home</nav><p>One<p>Two", "  One\n  Two\n"},
        {"<li>\xE2\x98\x85 Rust</li>", "- Rust\n"},
        {"</p></div><", ""},
    };
    for (const Row& row : rows)
        CHECK(shown(html_lines(row.html)) == row.lines);
}

TEST_CASE("postings: elements that nest without end are read so far") {
    std::string deep;
    for (int i = 0; i < 100000; ++i)
        deep += "<div>";
    CHECK(html_lines("<p>First</p>" + deep + "last").size() >= 1);
}

TEST_CASE("postings: what is HTML") {
    for (const char* html : {"<!DOCTYPE html><p>x", "<HTML>", "x <p>y</p>", "<ul><li>a</li></ul>"})
        CHECK(is_html(html));
    for (const char* text : {"pay < 20 and > 10", "", "Cook. C++ <vector>"})
        CHECK(!is_html(text));
}

TEST_CASE("postings: what a page's own styles hide is not there") {
    const auto text = [](const std::string& style, const std::string& attributes) {
        std::string all;
        const std::string page =
            "<html><head><style>" + style + "</style></head><body><p " + attributes + ">Kelp</p>";
        for (const Line& line : html_lines(page))
            all += line.text;
        return all;
    };
    for (const char* style :
         {"display:none", "visibility: hidden", "opacity: 0", "font-size:1px", "font-size:0",
          "position:absolute; left:-9999px", "text-indent:-999em", "display:none!important",
          "clip: rect(0 0 0 0)"}) {
        CAPTURE(style);
        CHECK(text("", "style='" + std::string(style) + "'").empty());
        CHECK(
            text("p{margin:0} .x, .gone{" + std::string(style) + "}", "class='wide gone'").empty());
        CHECK(text("#gone{" + std::string(style) + "}", "id=gone").empty());
    }
    for (const char* style : {"font-size:12px", "opacity:.9", "left:-4px", "display:block"})
        CHECK(text(".gone{" + std::string(style) + "}", "class=gone") == "Kelp");
    CHECK(text("@media print{.gone{display:none}}", "class=gone") == "Kelp");
    CHECK(text(".menu .gone{display:none}", "class=gone") == "Kelp");
    CHECK(text("}{.gone{display:none", "class=gone") == "Kelp");
}
