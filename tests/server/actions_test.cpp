// What an editor is offered about a finding, applied to the text as an editor would.
#include "tests/fixtures/own_folder.hpp"
#include "tests/server/apply_edits.hpp"
#include "tests/server/in_process.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <string>

using namespace quoin;
using fixtures::applied;
using fixtures::EditorInProcess;
using server::Json;

namespace {

const std::string draft = "file:///drafts/draft.resume";

Json actions_at(EditorInProcess& editor, std::uint32_t line, std::uint32_t character,
                const Json& only = nullptr) {
    const Json at{{"line", line}, {"character", character}};
    Json context{{"diagnostics", editor.diagnostics(draft)}};
    if (!only.is_null()) context["only"] = only;
    return editor.ask("textDocument/codeAction", {{"textDocument", {{"uri", draft}}},
                                                  {"range", {{"start", at}, {"end", at}}},
                                                  {"context", context}})["result"];
}

// The one whose title begins so; null if there is none.
Json titled(const Json& actions, const std::string& beginning) {
    for (const Json& one : actions)
        if (one["title"].get<std::string>().starts_with(beginning)) return one;
    return {};
}

}

TEST_CASE("actions: what is done about a finding") {
    const std::string text = "name: Ana Reyes\n\nsection: Honors\n\naward: The the best prize\n"
                             "by: Tidal  Trust\n\naward: One of of many\n"
                             "\nsection: Summary\n\ntext: Biologist with fondnes of nine sites\n";
    const struct {
        std::uint32_t line, character;
        std::string title;
        std::string before, after; // what becomes what
    } cases[] = {
        {4, 8, "Mend: ", "The the best", "The best"},
        {4, 8, "Mend all 2 of 'doubled-word' in this file", "of of many", "of many"},
        {4, 8, "Set 'doubled-word' aside", "Reyes\n\nsection",
         "Reyes\naccept: doubled-word ()\n\nsection"},
        {11, 22, "Add 'fondnes' to", "Reyes\n\nsection", "Reyes\nwords: fondnes\n\nsection"},
        {11, 22, "Write 'fondness'", "fondnes of", "fondness of"},
        {0, 0, "Make all safe mends", "Tidal  Trust", "Tidal Trust"},
    };
    for (const auto& one : cases) {
        CAPTURE(one.title);
        EditorInProcess editor;
        editor.begin();
        editor.open(draft, text);
        const Json all = actions_at(editor, one.line, one.character);
        const Json action = titled(all, one.title);
        CAPTURE(all.dump(1));
        REQUIRE(action.is_object());
        const std::string changed = applied(text, action["edit"]["changes"][draft]);
        CHECK(changed.find(one.before) == std::string::npos);
        CHECK(changed.find(one.after) != std::string::npos);
    }
}

TEST_CASE("actions: mistyped lines become markup") {
    EditorInProcess editor;
    editor.begin();
    const std::string text =
        "name: Ana Reyes\n\nsection: Experience\n\nrole: Aide\n\xE2\x80\xA2 Led\n";
    editor.open(draft, text);
    const Json action = titled(actions_at(editor, 5, 0), "Mend: ");
    REQUIRE(action.is_object());
    CHECK(applied(text, action["edit"]["changes"][draft]).ends_with("\n- Led\n"));
}

TEST_CASE("actions: entries in the order of their dates, with their lines") {
    const struct {
        std::string before, after; // empty: nothing is offered
    } cases[] = {
        {"award: A\ndates: 2021\n- One of 3\n\n# of the second\naward: B\ndates: May 2024\n",
         "# of the second\naward: B\ndates: May 2024\n\naward: A\ndates: 2021\n- One of 3\n"},
        {"award: A\ndates: 2021\n\naward: B\ndates: 2023\n\naward: C\ndates: 2022\n",
         "award: B\ndates: 2023\n\naward: C\ndates: 2022\n\naward: A\ndates: 2021\n"},
        {"award: A\ndates: 2024\n\naward: B\ndates: 2023\n", ""},
        {"award: A\ndates: 2021\n\naward: B\n", ""},
    };
    const std::string head = "name: Ana Reyes\n\nsection: Honors\nholds: honors\n\n";
    for (const auto& one : cases) {
        CAPTURE(one.before);
        EditorInProcess editor;
        editor.begin();
        editor.open(draft, head + one.before);
        const Json action = titled(actions_at(editor, 6, 0), "Put the entries");
        CHECK(action.is_null() == one.after.empty());
        if (!action.is_null())
            CHECK(applied(head + one.before, action["edit"]["changes"][draft]) == head + one.after);
    }
}

TEST_CASE("actions: only those of a kind that is asked for") {
    EditorInProcess editor;
    editor.begin();
    editor.open(draft, "name: Ana Reyes\n\nsection: Honors\n\naward: The the best prize\n");
    for (const Json& one : actions_at(editor, 4, 8, {"source"}))
        CHECK(one["kind"] == "source.fixAll.quoin");
    CHECK(actions_at(editor, 4, 8, {"source"}).size() == 1);
    CHECK(actions_at(editor, 4, 8, {"refactor"}).empty());
}

// The example of the README: seven lines too long, 91 characters in seven places of two files.
TEST_CASE("actions: the cuts bring the page onto its paper, and the page is told") {
    const std::string folder = "file://" QUOIN_SOURCE_FOLDER "/samples/";
    const std::string uri = folder + "marine-biology.resume";
    const std::string part = folder + "shared/brandt-education.resume";
    const std::string part_text =
        fixtures::contents(QUOIN_SOURCE_FOLDER "/samples/shared/brandt-education.resume");
    const std::string text =
        "size: 11.3\nmargins: 1\n" +
        fixtures::contents(QUOIN_SOURCE_FOLDER "/samples/marine-biology.resume");
    EditorInProcess editor;
    editor.begin();
    editor.open(part, part_text);
    editor.open(uri, text);
    const auto state = [&] {
        return editor
            .ask("textDocument/codeLens",
                 {{"textDocument", {{"uri", uri}}}})["result"][0]["command"]["title"]
            .get<std::string>();
    };
    CHECK(state() == "7 lines too long for 1 page");
    const Json everywhere{{"start", {{"line", 0}, {"character", 0}}},
                          {"end", {{"line", 999}, {"character", 0}}}};
    const Json action =
        titled(editor.ask("textDocument/codeAction",
                          {{"textDocument", {{"uri", uri}}},
                           {"range", everywhere},
                           {"context", {{"diagnostics", Json::array()}}}})["result"],
               "Cut the fewest words there are: 91 characters in 7 places");
    REQUIRE(action.is_object());
    const Json& changes = action["edit"]["changes"];
    editor.open(part, applied(part_text, changes[part]));
    editor.open(uri, applied(text, changes[uri]));
    CHECK(state().starts_with("1 page, 11.3 pt, "));
    const Json hints = editor.ask("textDocument/inlayHint", {{"textDocument", {{"uri", uri}}},
                                                             {"range", everywhere}})["result"];
    CHECK(hints[0]["label"] == state());
    for (const Json& hint : hints)
        if (hint != hints[0]) CHECK(hint["label"].get<std::string>().starts_with("\u2212"));
}

TEST_CASE(
    "actions: the page is told once, above the name where the editor shows what stands there") {
    struct Told {
        Json capabilities;
        std::size_t hints;
    };
    for (const Told& one : {Told{Json::object(), 1}, Told{{{"codeLens", Json::object()}}, 0}}) {
        EditorInProcess editor;
        editor.begin({{"capabilities", {{"textDocument", one.capabilities}}}});
        editor.open(draft, "name: Ana Reyes\n");
        const Json range{{"start", {{"line", 0}, {"character", 0}}},
                         {"end", {{"line", 9}, {"character", 0}}}};
        const Json document{{"uri", draft}};
        CHECK(editor.ask("textDocument/codeLens", {{"textDocument", document}})["result"].size() ==
              1);
        CHECK(editor
                  .ask("textDocument/inlayHint",
                       {{"textDocument", document}, {"range", range}})["result"]
                  .size() == one.hints);
    }
}

TEST_CASE("actions: the PDF is set from the newest text, and is not where it cannot be") {
    const fixtures::OwnFolder folder;
    const std::string uri = "file://" + (folder.path() / "draft.resume").string();
    EditorInProcess editor;
    editor.begin();
    editor.open(uri, "name: Ana Reyes\n\nsection: Honors\n\naward: Tide Prize\ndates: 2025\n");
    const Json set{{"command", "quoin.set"}, {"arguments", {{{"uri", uri}}}}, {"workDoneToken", 7}};
    CHECK(editor.ask("workspace/executeCommand", set)["result"]["uri"] ==
          "file://" + (folder.path() / "draft.pdf").string());
    CHECK(fixtures::contents(folder.path() / "draft.pdf").starts_with("%PDF-"));
    Json set_for{{"command", "quoin.set"},
                 {"arguments", {{{"uri", uri}, {"posting", "file:///tmp/intern.txt"}}}}};
    CHECK(editor.ask("workspace/executeCommand", set_for)["result"]["uri"] ==
          "file://" + (folder.path() / "draft.for-intern.pdf").string());
    CHECK(fixtures::contents(folder.path() / "draft.for-intern.pdf") == "%PDF-for-posting");
    for (const char* posting : {"file:///tmp/intern.exe", "intern.txt", ""}) {
        set_for["arguments"][0]["posting"] = posting;
        CHECK(editor.ask("workspace/executeCommand", set_for)["error"]["code"] == -32803);
    }
    const Json marked{{"command", "quoin.marked"}, {"arguments", {{{"uri", uri}}}}};
    const std::string target = (folder.path() / "draft.marked.pdf").string();
    CHECK(editor.ask("workspace/executeCommand", marked)["result"]["uri"] == "file://" + target);
    CHECK(fixtures::contents(target) == "%PDF-marked");
    const auto size = std::filesystem::file_size(folder.path() / "draft.pdf");
    editor.tell("textDocument/didChange", {{"textDocument", {{"uri", uri}, {"version", 2}}},
                                           {"contentChanges", {{{"text", "nam: x"}}}}});
    CHECK(editor.ask("workspace/executeCommand", set)["error"]["code"] == -32803);
    CHECK(std::filesystem::file_size(folder.path() / "draft.pdf") == size);
    CHECK(editor.ask("workspace/executeCommand",
                     {{"command", "rm"}, {"arguments", {{{"uri", uri}}}}})["error"]["code"] ==
          -32602);
}
