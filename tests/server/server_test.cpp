// The states of Language Server Protocol 3.17 and JSON-RPC 2.0, and what is told of a document. The
// numbers of errors are theirs.
#include "compiler/server/server.hpp"
#include "compiler/server/whole_signs.hpp"
#include "tests/fixtures/own_folder.hpp"
#include "tests/fixtures/tries.hpp"
#include "tests/server/in_process.hpp"

#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>
#include <random>
#include <string>

namespace server_test {

using namespace quoin;
using fixtures::EditorInProcess;
using server::Json;

namespace {

const std::string draft = "file:///drafts/draft.resume";

int code_of(const Json& answer) {
    return answer.contains("error") ? answer["error"]["code"].get<int>() : 0;
}

// Code and first line of each, and the first words.
std::string told(const Json& diagnostics) {
    std::string all;
    for (const Json& one : diagnostics)
        all += std::to_string(one["range"]["start"]["line"].get<int>()) + ':' +
               std::to_string(one["range"]["start"]["character"].get<int>()) + ' ' +
               one["code"].get<std::string>() + '\n';
    return all;
}

Json change_of(const std::string& text) {
    return {{"textDocument", {{"uri", draft}, {"version", 2}}},
            {"contentChanges", {{{"text", text}}}}};
}

}

TEST_CASE("server: nothing but initialize comes first, and nothing but exit after shutdown") {
    EditorInProcess editor;
    CHECK(code_of(editor.ask("textDocument/hover", fixtures::at(draft, 0, 0))) == -32002);
    CHECK(code_of(editor.ask("shutdown", nullptr)) == -32002);
    editor.open(draft, "name: Ana Reyes\n");
    CHECK(editor.session().find("/drafts/draft.resume") == nullptr);
    CHECK(code_of(editor.begin()) == 0);
    CHECK(code_of(editor.ask("initialize", EditorInProcess::utf16)) == -32600);
    CHECK(code_of(editor.ask("shutdown", nullptr)) == 0);
    CHECK(code_of(editor.ask("textDocument/hover", fixtures::at(draft, 0, 0))) == -32600);
    editor.tell("exit", nullptr);
    editor.work();
    CHECK(editor.server().ended() == 0);
}

TEST_CASE("server: exit without shutdown is 1") {
    EditorInProcess editor;
    editor.tell("exit", nullptr);
    editor.work();
    CHECK(editor.server().ended() == 1);
}

TEST_CASE("server: what is no message is refused by its number, and the next one is answered") {
    const struct {
        std::string sent; // as it comes over the line
        int code;
    } cases[] = {
        {server::framed(R"({"a":)"), -32700},
        {server::framed("\"\xFF\xFF\""), -32700},
        {server::framed(R"("\u12")"), -32700},
        {server::framed("[]"), -32600},
        {server::framed(R"({"jsonrpc":2.0})"), -32600},
        {server::framed(R"({"jsonrpc":"2.0","id":{"a":1},"method":"hover"})"), -32600},
        {server::framed(R"({"jsonrpc":"2.0","id":1,"method":1})"), -32600},
        {"GET / HTTP/1.1\r\n\r\n", -32700},
    };
    for (const auto& one : cases) {
        CAPTURE(one.sent);
        EditorInProcess editor;
        editor.begin();
        editor.send_raw(one.sent);
        editor.work();
        CHECK(code_of(editor.heard().back()) == one.code);
        CHECK(editor.heard().back()["id"].is_null());
        CHECK(code_of(editor.ask("no/such", Json::object())) == -32601);
    }
}

TEST_CASE("server: requests that cannot be answered, by number") {
    const struct {
        const char* method;
        Json params;
        int code;
    } cases[] = {
        {"textDocument/unknown", Json::object(), -32601},
        {"$/unknown", Json::object(), -32601},
        {"textDocument/didOpen", {1, 2}, -32602},
        {"textDocument/didChange", change_of("x"), -32602},
        {"textDocument/didClose", fixtures::at("no uri", 0, 0), -32602},
        {"textDocument/didClose", fixtures::at("file://other.example/a.resume", 0, 0), -32602},
        {"textDocument/didClose", fixtures::at("file:///%zz", 0, 0), -32602},
    };
    for (const auto& one : cases) {
        CAPTURE(one.method);
        EditorInProcess editor;
        editor.begin();
        CHECK(code_of(editor.ask(one.method, one.params)) == one.code);
    }
}

TEST_CASE("server: a request that is cancelled before it is begun is not answered") {
    EditorInProcess editor;
    editor.begin();
    editor.say({{"id", "a"}, {"method", "no/such"}});
    editor.tell("$/cancelRequest", {{"id", "a"}});
    editor.tell("$/cancelRequest", {{"id", "never asked"}});
    editor.work();
    CHECK(editor.heard().back()["id"] == "a");
    CHECK(code_of(editor.heard().back()) == -32800);
}

TEST_CASE("server: a fault that nobody waits for is logged") {
    EditorInProcess editor;
    editor.begin();
    editor.tell("textDocument/didChange", change_of("x"));
    editor.work();
    CHECK(editor.heard().back()["method"] == "window/logMessage");
    CHECK(editor.heard().back()["params"]["message"] ==
          "the document 'file:///drafts/draft.resume' is not open; 'textDocument/didOpen' comes "
          "first");
}

TEST_CASE("server: units of positions are those that the editor offers") {
    for (const auto& [params, units, character] :
         {std::tuple(EditorInProcess::utf16, "utf-16", 9),
          std::tuple(EditorInProcess::utf8, "utf-8", 11)}) {
        EditorInProcess editor;
        CHECK(editor.begin(params)["result"]["capabilities"]["positionEncoding"] == units);
        editor.open(draft, "name: Ana Reyes\n\nsection: Honors\n\naward: 𐐀 the the best\n");
        const Json all = editor.diagnostics(draft);
        const bool there = std::ranges::any_of(all, [&, at = character](const Json& one) {
            return one["code"] == "doubled-word" && one["range"]["start"]["line"] == 4 &&
                   one["range"]["start"]["character"] == at + 1;
        });
        CAPTURE(all.dump(1));
        CHECK(there);
    }
}

TEST_CASE("server: diagnostics have a code, its reference, a weight and what is superfluous") {
    EditorInProcess editor;
    editor.begin();
    editor.open(draft, "name: Ana Reyes\nnam: x\n");
    const Json unknown = editor.diagnostics(draft).at(0);
    CHECK(unknown["severity"] == 1);
    CHECK(unknown["code"] == "markup");
    CHECK(unknown["range"].dump() ==
          R"({"end":{"character":3,"line":1},"start":{"character":0,"line":1}})");
    editor.tell("textDocument/didChange",
                change_of("name: Ana Reyes\n\nsection: Honors\n\naward: The the best\n"));
    editor.work();
    for (const Json& one : editor.diagnostics(draft))
        if (one["code"] == "doubled-word") {
            CHECK(one["severity"] == 2); // a must
            CHECK(one["tags"] == Json{1});
            CHECK(one["codeDescription"]["href"].get<std::string>().find("/checks.txt#L") !=
                  std::string::npos);
        }
    editor.tell("textDocument/didClose", fixtures::at(draft, 0, 0));
    editor.work();
    CHECK(editor.diagnostics(draft).empty());
}

TEST_CASE("server: a page that is too long is told at the name, with the cuts") {
    EditorInProcess editor;
    editor.begin();
    std::string text = "name: Ana Reyes\n\nsection: Experience\n\nrole: Aide\nemployer: Tidal\n"
                       "dates: 2024\n";
    for (int bullet = 0; bullet < 70; ++bullet)
        text += "- Counted 212 eelgrass quadrats at nine sites of the northern shore\n";
    editor.open(draft, text);
    const Json all = editor.diagnostics(draft);
    const auto found =
        std::ranges::find_if(all, [](const Json& one) { return one["code"] == "too-long"; });
    REQUIRE(found != all.end());
    CHECK((*found)["range"]["start"]["line"] == 0);
    CHECK((*found)["severity"] == 1);
    CHECK((*found)["relatedInformation"].size() > 3);
}

// RFC 8259, section 8.2: what JSON has of one half of a sign is for each reader to say.
TEST_CASE("server: half a sign, as an editor may send it, takes a place and breaks nothing") {
    const struct {
        std::string json, whole;
    } cases[] = {
        {R"("\ud83d\ude00")", R"("\ud83d\ude00")"},
        {R"("\ud83d")", R"("\uFFFD")"},
        {R"("\ude00\ud83d")", R"("\uFFFD\uFFFD")"},
        {R"("\\ud83d")", R"("\\ud83d")"},
        {R"("\ud83d\ud83d\ude00")", R"("\uFFFD\ud83d\ude00")"},
        {R"("\u00e9")", R"("\u00e9")"},
        {R"("\)", R"("\)"},
    };
    for (const auto& one : cases)
        CHECK(server::whole_signs(one.json) == one.whole);
    EditorInProcess editor;
    editor.begin();
    editor.open(draft, "name: \n");
    editor.send(
        R"({"jsonrpc":"2.0","method":"textDocument/didChange","params":{"textDocument":{"uri":)"
        R"("file:///drafts/draft.resume","version":2},"contentChanges":[{"range":{"start":)"
        R"({"line":0,"character":6},"end":{"line":0,"character":6}},"text":"\ud83d"}]}})");
    editor.work();
    CHECK(editor.session().find("/drafts/draft.resume")->text == "name: \uFFFD\n");
}

// Of each kind of message a byte or more changed: whatever that makes of it, the next is answered.
TEST_CASE("server: messages with bytes changed at random") {
    const Json range{{"start", {{"line", 0}, {"character", 1}}},
                     {"end", {{"line", 1}, {"character", 2}}}};
    const Json document{{"uri", draft}, {"version", 2}};
    Json typed = fixtures::at(draft, 2, 0);
    typed["ch"] = "\n";
    const Json messages[] = {
        {{"method", "textDocument/codeAction"},
         {"params", {{"textDocument", document}, {"range", range}, {"context", Json::object()}}}},
        {{"method", "textDocument/didChange"},
         {"params",
          {{"textDocument", document}, {"contentChanges", {{{"range", range}, {"text", "x"}}}}}}},
        {{"method", "textDocument/completion"}, {"params", typed}},
        {{"method", "textDocument/onTypeFormatting"}, {"params", typed}},
        {{"method", "textDocument/hover"}, {"params", typed}},
    };
    std::mt19937 random(3);
    EditorInProcess editor;
    editor.begin();
    editor.open(draft, "name: Ana Reyes\n\nsection: Honors\n");
    for (int round = 0; round < tries(1'000); ++round) {
        Json message = messages[random() % std::size(messages)];
        message["jsonrpc"] = "2.0";
        message["id"] = "round " + std::to_string(round);
        std::string sent = message.dump();
        for (std::size_t changes = random() % 4; changes > 0; --changes)
            sent[random() % sent.size()] = static_cast<char>(random() % 256);
        editor.send(sent);
        editor.work();
    }
    CHECK(code_of(editor.ask("no/such", Json::object())) == -32601);
}

TEST_CASE("server: only the newest text is told of") {
    EditorInProcess editor;
    editor.begin();
    editor.open(draft, "name: Ana Reyes\n");
    const std::size_t before = editor.heard().size();
    for (int version = 2; version < 12; ++version)
        editor.tell("textDocument/didChange", change_of("nam: " + std::to_string(version)));
    editor.work();
    CHECK(editor.heard().size() == before + 1);
}

TEST_CASE("server: what is taken in is followed, in the editor and on the disk") {
    const fixtures::OwnFolder folder;
    folder.write("all.resume", "name: Ana Reyes\ninclude: parts/a.resume\n");
    folder.write("parts/a.resume", "section: Honors\n\nawar: Best\n");
    const std::string all = "file://" + (folder.path() / "all.resume").string();
    const std::string part = "file://" + (folder.path() / "parts/a.resume").string();
    EditorInProcess editor;
    editor.begin();
    // opened by itself it is read within the one that takes it in, which is on the disk
    editor.open(part, "section: Honors\n\naward: Best\nawar: x\n");
    CHECK(told(editor.diagnostics(part)) == "3:0 markup\n");
    editor.open(all, "name: Ana Reyes\ninclude: parts/a.resume\nnam: x\n");
    CHECK(told(editor.diagnostics(part)) == "3:0 markup\n");
    CHECK(told(editor.diagnostics(all)) == "2:0 markup\n");
    editor.tell("textDocument/didClose", fixtures::at(part, 0, 0));
    editor.work();
    CHECK(told(editor.diagnostics(part)) == "2:0 markup\n"); // as it is on the disk
    folder.write("parts/a.resume", "section: Honors\n\n\naward: Best\nbwar: x\n");
    editor.server().disk_changed();
    editor.work();
    CHECK(told(editor.diagnostics(part)) == "4:0 markup\n");
    CHECK(editor.session().files_read().contains(folder.path() / "parts/a.resume"));
    // what is named and is not there yet is waited for
    editor.open(part, "section: Honors\n");
    editor.tell("textDocument/didChange",
                {{"textDocument", {{"uri", all}, {"version", 2}}},
                 {"contentChanges", {{{"text", "name: Ana\ninclude: parts/b.resume"}}}}});
    editor.work();
    CHECK(editor.session().files_read().contains(folder.path() / "parts/b.resume"));
    // one that takes in itself is told so
    editor.tell("textDocument/didChange",
                {{"textDocument", {{"uri", all}, {"version", 3}}},
                 {"contentChanges", {{{"text", "include: all.resume"}}}}});
    editor.work();
    CHECK(told(editor.diagnostics(all)).find("0:9 markup") != std::string::npos);
}

TEST_CASE("server: the rules of an office are told of while they are written") {
    const std::string rules = "file:///drafts/office.rules";
    EditorInProcess editor;
    editor.begin();
    editor.open(rules, "office: Ellery State\nmust: no-such-check\nbullets: 2..99\n");
    CHECK(told(editor.diagnostics(rules)) == "1:6 markup\n2:9 markup\n");
    editor.tell("textDocument/didChange",
                {{"textDocument", {{"uri", rules}, {"version", 2}}},
                 {"contentChanges", {{{"text", "office: Ellery State\nmust: page-fill\n"}}}}});
    editor.work();
    CHECK(told(editor.diagnostics(rules)) == "");
}

TEST_CASE("server: texts that no résumé is") {
    EditorInProcess editor;
    editor.begin();
    const std::string texts[] = {std::string(2'000'000, 'x'), std::string("a\0b", 3),
                                 std::string(100'000, '\n'),  "\r\r\r\n\n\r",
                                 "include: draft.resume",     "theme: ../../etc/passwd",
                                 "\xEF\xBB\xBFname: Ana\r\n"};
    for (const std::string& text : texts) {
        editor.open(draft, text);
        CHECK(editor.diagnostics(draft).is_array());
    }
}

// Whatever way a text came about, what is told of it is what is told of it when it is opened.
TEST_CASE("server: random edits leave the diagnostics of a fresh reading") {
    const char* full = std::getenv("QUOIN_FULL");
    const int sequences = full ? 10'000 : tries(60);
    std::mt19937 random(17);
    const std::string pieces[] = {
        "\n",    "- ",          "section: ", "é",  "𐐀",    "the the ",           ": ", "*",
        "{lab}", "name: Ana\n", "\r\n",      "  ", "2026", "dates: Jun 2026 - ", "\t"};
    const std::string start = fixtures::contents(QUOIN_SOURCE_FOLDER "/samples/first-draft.resume");
    EditorInProcess edited, fresh;
    edited.begin();
    fresh.begin();
    edited.open(draft, start);
    for (int sequence = 0; sequence < sequences; ++sequence) {
        const std::size_t edits = 1 + random() % 4;
        for (std::size_t edit = 0; edit < edits; ++edit) {
            const auto line = random() % 60, from = random() % 70;
            const auto to = from + (random() % 3 == 0 ? random() % 20 : 0);
            const Json range{{"start", {{"line", line}, {"character", from}}},
                             {"end", {{"line", line}, {"character", to}}}};
            const std::string& piece = pieces[random() % std::size(pieces)];
            edited.tell("textDocument/didChange",
                        {{"textDocument", {{"uri", draft}, {"version", sequence + 2}}},
                         {"contentChanges", {{{"range", range}, {"text", piece}}}}});
        }
        if (sequence % 40 == 0) edited.tell("textDocument/didChange", change_of(start));
        edited.work();
        const std::string& text = edited.session().find("/drafts/draft.resume")->text;
        fresh.open(draft, text);
        REQUIRE(edited.diagnostics(draft) == fresh.diagnostics(draft));
        fresh.tell("textDocument/didClose", fixtures::at(draft, 0, 0));
        fresh.work();
    }
}

} // namespace server_test
