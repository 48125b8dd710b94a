// What helps while one writes: completion, hover, symbols, folding, selection, colours.
#include "compiler/advice/proof.hpp"
#include "compiler/trade/vocabulary.hpp"
#include "tests/server/apply_edits.hpp"
#include "tests/server/in_process.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace writing_test {

using namespace quoin;
using fixtures::EditorInProcess;
using server::Json;

namespace {

const std::string draft = "file:///drafts/draft.resume";

const std::string text = "name: Ottoline Brandt\n"        // 0
                         "theme: turnstone\n"             // 1
                         "\n"                             // 2
                         "section: Experience\n"          // 3
                         "\n"                             // 4
                         "role: Field Survey Intern\n"    // 5
                         "employer: Salish Tidal Trust\n" // 6
                         "dates: Jun 2026 - present\n"    // 7
                         "- Count 212 quadrats {lab}\n"   // 8
                         "- Train the the volunteers\n"   // 9
                         "\n"                             // 10
                         "section: Languages\n"           // 11
                         "\n"                             // 12
                         "Spoken: Portuguese (basic)\n";  // 13

Json with_line(std::uint32_t line, const std::string& typed) {
    const Json range{{"start", {{"line", line}, {"character", 0}}},
                     {"end", {{"line", line}, {"character", 99}}}};
    return {{"textDocument", {{"uri", draft}, {"version", 2}}},
            {"contentChanges", {{{"range", range}, {"text", typed}}}}};
}

// The text of every item, at the end of what is typed in that line.
std::vector<std::string> completed(std::uint32_t line, const std::string& typed) {
    EditorInProcess editor;
    editor.begin();
    editor.open(draft, text);
    editor.tell("textDocument/didChange", with_line(line, typed));
    const Json answer =
        editor.ask("textDocument/completion",
                   fixtures::at(draft, line, static_cast<std::uint32_t>(typed.size())));
    std::vector<std::string> lines;
    for (const Json& item : answer["result"]["items"]) {
        const std::string after = fixtures::applied(
            typed,
            Json::array(
                {{{"range",
                   {{"start",
                     {{"line", 0}, {"character", item["textEdit"]["range"]["start"]["character"]}}},
                    {"end",
                     {{"line", 0}, {"character", item["textEdit"]["range"]["end"]["character"]}}}}},
                  {"newText", item["textEdit"]["newText"]}}}));
        lines.push_back(after);
    }
    return lines;
}

std::string hovered(std::uint32_t line, std::uint32_t character) {
    EditorInProcess editor;
    editor.begin();
    editor.open(draft, text);
    const Json answer =
        editor.ask("textDocument/hover", fixtures::at(draft, line, character))["result"];
    return answer.is_null() ? "" : answer["contents"]["value"].get<std::string>();
}

bool has(const std::vector<std::string>& lines, const std::string& line) {
    return std::ranges::find(lines, line) != lines.end();
}

}

TEST_CASE("writing: what may be written at a spot, and what may not") {
    const struct {
        std::uint32_t line;
        std::string typed, offered, not_offered;
    } cases[] = {
        {2, "pho", "phone: ", "role: "},
        {2, "na", "stage: ", "name: "}, // which stands there
        {2, "stage: gr", "stage: graduate applicant", "stage: a4"},
        {2, "paper: ", "paper: a4", "paper: letter a4"},
        {2, "theme: t", "theme: turnstone", "theme: t turnstone"},
        {2, "language: ", "language: fr", "language: xx"},
        {2, "accept: gpa", "accept: gpa-form ()", "accept: gpa"},
        {2, "accept: gpa-form (x); hi", "accept: gpa-form (x); high-school ()", ""},
        {2, "dates-as: ", "dates-as: 06/2026", ""},
        {6, "no", "note: ", "school: "},
        {6, "pl", "place: ", "role: "},
        {6, "dates: Ju", "dates: Jun 2026", "dates: June 2026"},
        {6, "dates: May 2025 - pre", "dates: May 2025 - present", ""},
        {9, "- ", "- Count", "- Counted"}, // it goes on
        {9, "- Counted {", "- Counted {lab", ""},
        {10, "section: Ex", "section: Experience", "section: experience"},
        {12, "ho", "holds: ", "role: "},
        {13, "Spoken: Portuguese (prof", "Spoken: Portuguese (professional", ""},
        {13, "for: ", "for: lab", ""},
    };
    for (const auto& one : cases) {
        CAPTURE(one.typed);
        const std::vector<std::string> lines = completed(one.line, one.typed);
        CHECK(has(lines, one.offered));
        if (!one.not_offered.empty()) CHECK_FALSE(has(lines, one.not_offered));
    }
}

// Against the tables that the model is built with and the checks are run from.
TEST_CASE(
    "writing: every label, every check and every name is offered where it fits, with advice") {
    EditorInProcess editor;
    editor.begin();
    for (const trade::Holds kind :
         {trade::Holds::education, trade::Holds::experience, trade::Holds::projects}) {
        const std::string entry =
            "name: A\n\nsection: Things\nholds: " + std::string(trade::name_of(kind)) + "\n\n";
        editor.open(draft, entry);
        const Json items =
            editor.ask("textDocument/completion", fixtures::at(draft, 5, 0))["result"]["items"];
        for (const std::string_view label : trade::labels_of(kind)) {
            const auto item = std::ranges::find_if(
                items, [&](const Json& one) { return one["label"] == std::string(label) + ": "; });
            CAPTURE(label);
            CHECK(item != items.end());
        }
        const auto whole =
            std::ranges::find_if(items, [](const Json& one) { return one["kind"] == 15; });
        CHECK(whole == items.end()); // the editor takes no snippets
    }
    editor.open(draft, "name: A\naccept: ");
    const Json checks =
        editor.ask("textDocument/completion", fixtures::at(draft, 1, 8))["result"]["items"];
    CHECK(checks.size() == advice::all_checks().size());
    for (const Json& one : checks)
        CHECK_FALSE(one["detail"].get<std::string>().empty());
}

TEST_CASE("writing: an entry as a snippet is read as one") {
    EditorInProcess editor;
    editor.begin(
        {{"capabilities",
          {{"textDocument", {{"completion", {{"completionItem", {{"snippetSupport", true}}}}}}}}}});
    editor.open(draft, "name: A\n\nsection: Experience\n\n");
    const Json items =
        editor.ask("textDocument/completion", fixtures::at(draft, 4, 0))["result"]["items"];
    const auto whole =
        std::ranges::find_if(items, [](const Json& one) { return one["kind"] == 15; });
    REQUIRE(whole != items.end());
    CHECK((*whole)["insertTextFormat"] == 2);
    CHECK((*whole)["textEdit"]["newText"].get<std::string>().starts_with("role: ${1:"));
}

TEST_CASE("writing: what the pointer rests on") {
    const struct {
        std::uint32_t line, character;
        std::string told; // empty: nothing
    } cases[] = {
        {5, 1, "**role**: what you were there"},
        {1, 2, "**theme**: values: a theme's name"},
        {7, 10, "`2026-06/..` in EDTF"},
        {9, 10, "**doubled-word** (must): "},
        {4, 0, ""},
        {99, 99, ""},
    };
    for (const auto& one : cases) {
        CAPTURE(one.line);
        const std::string told = hovered(one.line, one.character);
        if (one.told.empty())
            CHECK(told == "");
        else
            CHECK(told.find(one.told) != std::string::npos);
    }
}

TEST_CASE("writing: what labels of themes and of an office's rules are for") {
    const std::string theme = "file:///drafts/mine.theme", rules = "file:///drafts/office.rules";
    EditorInProcess editor;
    editor.begin();
    editor.open(theme, "based-on: turnstone\nsize: 11 (10..12)\n\nno-such: x\n");
    editor.open(rules, "office: Ellery State\ngpa-show: 3.2\n");
    const auto told = [&](const std::string& uri, std::uint32_t line, std::uint32_t character) {
        const Json hover = editor.ask("textDocument/hover", fixtures::at(uri, line, character));
        return hover["result"].is_null() ? ""
                                         : hover["result"]["contents"]["value"].get<std::string>();
    };
    CHECK(told(theme, 1, 2).starts_with("**size**: value: the text's size in points"));
    CHECK(told(theme, 1, 9) == ""); // its value
    CHECK(told(theme, 2, 0) == "");
    CHECK(told(theme, 3, 1) == "");
    CHECK(told(rules, 1, 3).find("a GPA is shown from here on") != std::string::npos);
    CHECK(told(rules, 9, 9) == "");
}

TEST_CASE("writing: sections, entries and bullets as symbols, folds and selections") {
    EditorInProcess editor;
    editor.begin();
    editor.open(draft, text);
    const Json params{{"textDocument", {{"uri", draft}}},
                      {"positions", {{{"line", 8}, {"character", 3}}}}};
    const Json symbols = editor.ask("textDocument/documentSymbol", params)["result"];
    REQUIRE(symbols.size() == 2);
    CHECK(symbols[0]["name"] == "Experience");
    CHECK(symbols[0]["children"][0]["name"] == "Field Survey Intern");
    CHECK(symbols[0]["children"][0]["children"][0]["name"] == "Count 212 quadrats");
    CHECK(symbols[0]["children"][0]["range"]["start"]["line"] == 5);
    const Json folds = editor.ask("textDocument/foldingRange", params)["result"];
    CHECK(folds[0] == Json{{"startLine", 3}, {"endLine", 9}});
    const Json selection = editor.ask("textDocument/selectionRange", params)["result"][0];
    CHECK(selection["range"]["start"]["line"] == 8);
    CHECK(selection["parent"]["range"]["start"]["line"] == 5);
    CHECK(selection["parent"]["parent"]["range"]["start"]["line"] == 3);
    CHECK(selection["parent"]["parent"]["parent"]["range"]["start"]["line"] == 0);
}

// "Integer Encoding for Tokens" of the protocol: each relative to the one before.
TEST_CASE("writing: colours are in order and within their lines") {
    EditorInProcess editor;
    editor.begin();
    editor.open(draft, text);
    const Json data = editor.ask("textDocument/semanticTokens/full",
                                 {{"textDocument", {{"uri", draft}}}})["result"]["data"];
    REQUIRE(data.size() % 5 == 0);
    const session::TextLines lines(text);
    std::uint32_t line = 0, character = 0;
    std::string labels;
    for (std::size_t at = 0; at < data.size(); at += 5) {
        if (data[at] != 0) character = 0;
        line += data[at].get<std::uint32_t>();
        character += data[at + 1].get<std::uint32_t>();
        REQUIRE(line < lines.count());
        const auto length = data[at + 2].get<std::size_t>();
        REQUIRE(character + length <= lines.line(line).size());
        if (data[at + 3] == 0)
            labels += std::string(lines.line(line).substr(character, length)) + ' ';
    }
    CHECK(labels == "name role employer dates Spoken ");
}

} // namespace writing_test
