// A document laid out: what becomes what, twice the same, and the same page for every sample and
// for random files, byte by byte.
#include "compiler/base/utf8.hpp"
#include "compiler/server/laid_out.hpp"
#include "compiler/stages/pdf/pdf.hpp"
#include "tests/every_page.hpp"
#include "tests/fixtures/own_folder.hpp"
#include "tests/fixtures/tries.hpp"
#include "tests/server/apply_edits.hpp"
#include "tests/server/in_process.hpp"

#include <doctest/doctest.h>

#include <cstdlib>
#include <optional>
#include <random>
#include <string>

namespace layout_test {

using namespace quoin;
using fixtures::EditorInProcess;
using server::Json;
using server::laid_out;

namespace {

const std::string draft = "file:///drafts/draft.resume";

// None if it cannot be set.
std::optional<std::string> pdf_of(const std::string& text, const std::filesystem::path& path) {
    Sources sources;
    Diagnostics diagnostics;
    sources.hold(path, text);
    const auto file = sources.read(path, diagnostics);
    if (!file) return std::nullopt;
    const auto typeset =
        stages::typeset(sources, *file, {}, QUOIN_DATA_FOLDER, composed::fonts(), diagnostics);
    if (!typeset) return std::nullopt;
    return pdf::write_pdf(typeset->composition, make_pages(*typeset, fit_or_draft(*typeset)), 0);
}

void check_layout(const std::string& text, const std::filesystem::path& path) {
    const std::string once = laid_out(text);
    CHECK(laid_out(once) == once);
    CHECK((pdf_of(once, path) == pdf_of(text, path)));
}

Json tags_params(const std::string& uri, std::uint32_t line, std::uint32_t character) {
    Json params = fixtures::at(uri, line, character);
    params["context"] = {{"includeDeclaration", true}};
    return params;
}

}

TEST_CASE("layout: what becomes what") {
    const std::string words = "words and words and words and words and words and words and words";
    const struct {
        std::string before, after;
    } cases[] = {
        {"NAME:Ana\n", "name: Ana\n"},
        {"name:   Ana  ", "name: Ana\n"},
        {"name: Ana\n\n\n\nsection: Honors\n", "name: Ana\n\nsection: Honors\n"},
        {"name: Ana\nsection: Honors\naward: A\n", "name: Ana\n\nsection: Honors\naward: A\n"},
        {"name: Ana\r\n\r\n", "name: Ana\n"},
        {"# a  comment  \nname: Ana\n", "# a  comment  \nname: Ana\n"},
        {"name: Ana\n\nsection: Skills\n\nSeaMen Ship:  a,b\n",
         "name: Ana\n\nsection: Skills\n\nSeaMen Ship: a,b\n"},
        {"name: Ana\n\nsection: Experience\n\nrole: Aide\n-  Led\n      it\n",
         "name: Ana\n\nsection: Experience\n\nrole: Aide\n- Led it\n"},
        {"name: Ana\n\nsection: Experience\n\nrole: Aide\n- " + words + ' ' + words + '\n',
         "name: Ana\n\nsection: Experience\n\nrole: Aide\n- " + words +
             " words and words and words and\n  words and words and words and words\n"},
        {"", ""},
    };
    for (const auto& one : cases) {
        CAPTURE(one.before);
        CHECK(laid_out(one.before) == one.after);
    }
}

TEST_CASE("layout: every sample sets to the same bytes, and twice laid out is once") {
    for (const auto& path : every_page::samples()) {
        CAPTURE(path.string());
        check_layout(fixtures::contents(path), path);
    }
}

TEST_CASE("layout: random files set to the same bytes") {
    const char* full = std::getenv("QUOIN_FULL");
    const int files = full ? 1'000 : tries(80);
    std::mt19937 random(5);
    const std::string pieces[] = {"name: Ana Reyes\n",
                                  "section: Experience\n",
                                  "\n",
                                  "\n\n",
                                  "ROLE: Aide\n",
                                  "employer:Tidal\n",
                                  "- Led 3 crews ",
                                  "-- deep\n",
                                  "\n  folded on ",
                                  "dates: 2024\n",
                                  "# note\n",
                                  "{lab}\n",
                                  "*strong* ",
                                  "\\ ",
                                  "a: b ",
                                  "- ",
                                  "\t",
                                  "\r\n",
                                  "section: Skills\n",
                                  "Tools: R, QGIS\n",
                                  "words that go on and on over the whole of the line ",
                                  "\u2022 x\n"};
    for (int file = 0; file < files; ++file) {
        std::string text = "name: Ana Reyes\n\nsection: Experience\n\n";
        for (std::size_t count = random() % 40; count > 0; --count)
            text += pieces[random() % std::size(pieces)];
        CAPTURE(text);
        check_layout(text, "/drafts/draft.resume");
    }
}

TEST_CASE("layout: bullets as they are typed") {
    const struct {
        std::string before;
        std::uint32_t line, character;
        std::string typed, after;
    } cases[] = {
        {"- Led\n\n", 1, 0, "\n", "- Led\n- \n"},
        {"-- Led\n\n", 1, 0, "\n", "-- Led\n-- \n"},
        {"- Led\n- \n\n", 2, 0, "\n", "- Led\n\n\n"},
        {"role: Aide\n\n", 1, 0, "\n", "role: Aide\n\n"},
        {"* ", 0, 2, " ", "- "},
        {"\u2022 ", 0, 2, " ", "- "},
        {"role: * ", 0, 8, " ", "role: * "},
        {"", 0, 0, "\n", ""},
    };
    for (const auto& one : cases) {
        CAPTURE(one.before);
        EditorInProcess editor;
        editor.begin();
        editor.open(draft, one.before);
        Json params = fixtures::at(draft, one.line, one.character);
        params["ch"] = one.typed;
        CHECK(fixtures::applied(one.before, editor.ask("textDocument/onTypeFormatting",
                                                       params)["result"]) == one.after);
        const Json whole = editor.ask("textDocument/formatting", params)["result"];
        CHECK(fixtures::applied(one.before, whole) == laid_out(one.before));
    }
}

TEST_CASE("layout: a tag has another name in every file that the résumé takes in") {
    const fixtures::OwnFolder folder;
    const std::string part_text =
        "section: Honors {!lab}\n\naward: Best {lab field}\nfor: field lab\n";
    folder.write("part.resume", part_text);
    const std::string text = "name: Ana Reyes\ninclude: part.resume\nphone: (360) 555-0142 {lab}\n";
    const std::string all = "file://" + (folder.path() / "all.resume").string();
    const std::string part = "file://" + (folder.path() / "part.resume").string();
    EditorInProcess editor;
    editor.begin();
    editor.open(all, text);
    CHECK(editor.ask("textDocument/references", tags_params(all, 2, 24))["result"].size() == 4);
    CHECK(editor.ask("textDocument/references", tags_params(all, 0, 2))["result"].empty());
    Json params = tags_params(all, 2, 24);
    params["newName"] = "bench";
    const Json changes = editor.ask("textDocument/rename", params)["result"]["changes"];
    CHECK(fixtures::applied(text, changes[all]) == replaced(text, "{lab}", "{bench}"));
    CHECK(fixtures::applied(part_text, changes[part]) == replaced(part_text, "lab", "bench"));
    params["newName"] = "no name";
    CHECK(editor.ask("textDocument/rename", params)["error"]["code"] == -32803);
    CHECK(editor.ask("textDocument/definition", tags_params(all, 1, 12))["result"]["uri"] == part);
    CHECK(editor.ask("textDocument/documentLink", tags_params(all, 0, 0))["result"][0]["target"] ==
          part);
}

} // namespace layout_test
