// The forms findings are printed in, the reference page, and what is read of git's own files.
#include "compiler/commands/proof_report.hpp"
#include "compiler/output/write_file.hpp"
#include "compiler/proof/repository.hpp"
#include "tests/proofread.hpp"

#include <nlohmann/json.hpp>

#include <cstdlib>
#include <filesystem>

namespace quoin {

namespace {

namespace fs = std::filesystem;

ProofTools tools() {
    return {QUOIN_DATA_FOLDER, fixtures::fonts(), fixtures::language(), fixtures::read_on};
}

struct Folder {
    fs::path path = fs::temp_directory_path() / "quoin proof test";
    Folder() { fs::create_directories(path); }
    ~Folder() { fs::remove_all(path); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    fs::path write(const std::string& name, const std::string& bytes) const {
        fs::create_directories((path / name).parent_path());
        REQUIRE_FALSE(write_file((path / name).string(), bytes));
        return path / name;
    }
};

std::vector<std::unique_ptr<Proofread>> read_all(const fs::path& path) {
    std::vector<std::unique_ptr<Proofread>> all;
    all.push_back(proofread(path.string(), {}, tools()));
    return all;
}

// The clean résumé with a tab, é, U+10400 and a wide character before a doubled space.
std::string with_columns() {
    std::string text = fixtures::clean_resume();
    const std::string bullet = "- Mapped 34 acres of eelgrass edge";
    const std::size_t at = text.find(bullet);
    REQUIRE(at != std::string::npos);
    return text.replace(at, bullet.size(), "- Mapped\té 界  34 acres of eelgrass edge");
}

const nlohmann::ordered_json& finding_of(const nlohmann::ordered_json& findings, const char* key,
                                         const std::string& check) {
    for (const auto& finding : findings)
        if (finding[key] == check) return finding;
    FAIL("no such finding");
    return findings;
}

// GNU git's own files: an index of version 2 with one entry (gitformat-index(5)).
std::string index_with(const std::string& path) {
    std::string index = "DIRC";
    index += std::string("\0\0\0\2\0\0\0\1", 8);
    index += std::string(60, '\1'); // times, mode, size, object name
    index += static_cast<char>(path.size() >> 8);
    index += static_cast<char>(path.size());
    return index + path + std::string(4, '\0');
}

}

TEST_CASE("proof output: one line for each finding, as the GNU Coding Standards have it") {
    const Folder folder;
    std::string text = fixtures::clean_resume();
    text.replace(text.find("(360) 555-0142"), 14, "555-0142");
    text.replace(text.find("stage:"), 6, "accept: voicemail (checked)\nstage:");
    const auto path = folder.write("draft.resume", text);
    const auto one = proofread(path.string(), {}, tools());
    CHECK(proof_text(*one, false) ==
          path.string() +
              ":6:8: must [phone-form]: '555-0142' cannot be dialled: the area code is "
              "missing; write it with its area code, such as '(360) 555-0142'\n" +
              path.string() + ":9:9: note: one finding of [voicemail] set aside: checked\n");
    const std::string full = proof_text(*one, true);
    CHECK(full.find("\n  phone: 555-0142\n         ^~~~~~~~\n  why: A number with a figure") !=
          std::string::npos);
    CHECK(full.ends_with(": 1 must, 0 should, 0 to consider\n"));
}

TEST_CASE("proof output: the caution is said once") {
    const Folder folder;
    std::string text = fixtures::clean_resume() + "Age: 22\nHeight: 6 feet\n";
    const auto one = proofread(folder.write("draft.resume", text).string(), {}, tools());
    const std::string out = proof_text(*one, false);
    const std::size_t first = out.find("  caution: Local law and the employer's own rules decide");
    CHECK(first != std::string::npos);
    CHECK(out.find("caution:", first + 10) == std::string::npos);
}

// One line gives three different columns: GNU counts what a terminal shows, SARIF and JSON count
// characters (SARIF 2.1.0, section 3.14.17: unicodeCodePoints).
TEST_CASE("proof output: columns") {
    const Folder folder;
    const auto path = folder.write("draft.resume", with_columns());
    const auto all = read_all(path);
    const std::string text = proof_text(*all.front(), false);
    // a tab to column 17, é, a space, a wide character: the doubled space is column 21
    CHECK(text.find(":40:21: must [spacing]") != std::string::npos);
    const auto json = proof_json(all);
    const auto& finding = finding_of(json["files"][0]["findings"], "check", "spacing");
    CHECK(finding["place"]["line"] == 40);
    CHECK(finding["place"]["column"] == 13);
    CHECK(finding["place"]["length"] == 2);
    CHECK(finding["mend"][0]["replacement"] == " ");
    const auto sarif = proof_sarif(all);
    const auto& result = finding_of(sarif["runs"][0]["results"], "ruleId", "spacing");
    const auto& region = result["locations"][0]["physicalLocation"]["region"];
    CHECK(region["startLine"] == 40);
    CHECK(region["startColumn"] == 13);
    CHECK(region["endColumn"] == 15);
    CHECK(result["fixes"][0]["artifactChanges"][0]["replacements"][0]["deletedRegion"] == region);
}

TEST_CASE("proof output: SARIF names every check, and each result its rule") {
    const Folder folder;
    std::string text = fixtures::clean_resume();
    text.replace(text.find("stage:"), 6, "accept: voicemail (checked)\nstage:");
    const auto sarif = proof_sarif(read_all(folder.write("a b.resume", text + "Age: 22\n")));
    CHECK(sarif["version"] == "2.1.0");
    const auto& run = sarif["runs"][0];
    CHECK(run["columnKind"] == "unicodeCodePoints");
    const auto& rules = run["tool"]["driver"]["rules"];
    CHECK(rules.size() == all_checks().size());
    CHECK(run["results"].size() >= 2);
    for (const auto& result : run["results"])
        CHECK(rules[result["ruleIndex"].get<std::size_t>()]["id"] == result["ruleId"]);
    const auto& aside = finding_of(run["results"], "ruleId", "voicemail");
    CHECK(aside["suppressions"][0]["justification"] == "checked");
    const std::string uri =
        aside["locations"][0]["physicalLocation"]["artifactLocation"]["uri"].get<std::string>();
    CHECK(uri.ends_with("/a%20b.resume"));
}

TEST_CASE("proof output: errors in the file come with their places, and no findings") {
    const Folder folder;
    const auto all = read_all(folder.write("draft.resume", "name: A B\nfone: 555\n"));
    const auto json = proof_json(all);
    CHECK(json["files"][0]["read"] == false);
    CHECK(json["files"][0]["findings"].empty());
    CHECK(json["files"][0]["messages"][0]["place"]["line"] == 2);
    const auto sarif = proof_sarif(all);
    CHECK(sarif["runs"][0]["invocations"][0]["executionSuccessful"] == false);
}

TEST_CASE("proof output: findings are numbered in the order of the file") {
    const Folder folder;
    const auto json =
        proof_json(read_all(folder.write("draft.resume", with_columns() + "Age: 22\n")));
    for (std::size_t number = 1; const auto& finding : json["files"][0]["findings"])
        CHECK(finding["number"] == number++);
}

TEST_CASE("proof output: the summary says ready or not, what matters most, and what is good") {
    const Folder folder;
    const auto ready =
        proofread(folder.write("draft.resume", fixtures::clean_resume()).string(), {}, tools());
    const std::string good = proof_summary(*ready, fixtures::language());
    CHECK(good.find(": ready to send\n") != std::string::npos);
    CHECK(good.find("good already: a page that holds together") != std::string::npos);
    const auto draft =
        proofread(folder.write("other.resume", with_columns()).string(), {}, tools());
    const std::string bad = proof_summary(*draft, fixtures::language());
    CHECK(bad.find(": not ready: one thing to mend before anyone sees it\n  1. line 40: a doubled "
                   "space") != std::string::npos);
}

TEST_CASE("proof output: the reference page is the one in grammar/") {
    CHECK(reference_page() ==
          fixtures::contents(fs::path(QUOIN_SOURCE_FOLDER) / "grammar/checks.md"));
}

TEST_CASE("proof output: the list and the explanation name every check") {
    const std::string list = list_of_checks();
    for (const Check* check : all_checks()) {
        CHECK(list.find("  " + std::string(check->name) + ' ') != std::string::npos);
        CHECK(explanation_of(*check).find(check->why) != std::string::npos);
    }
}

TEST_CASE("repository: tracked, and sent where everyone can look") {
    struct Case {
        const char* url;
        const char* tracked;
        const char* host; // "" for silence
    };
    const Case cases[] = {
        {"https://github.com/obrandt/papers.git", "drafts/fall.resume", "github.com"},
        {"git@github.com:obrandt/papers.git", "drafts/fall.resume", "github.com"},
        {"ssh://git@gitlab.com:22/obrandt/papers.git", "drafts/fall.resume", "gitlab.com"},
        {"https://github.com/obrandt/papers.git", "fall.resume", ""},
        {"https://github.com/obrandt/papers.git", "drafts/fall.resume.bak", ""},
        {"https://git.ellerystate.example/obrandt/papers.git", "drafts/fall.resume", ""},
        {"/srv/git/github.com/papers.git", "drafts/fall.resume", ""},
    };
    for (const Case& c : cases) {
        CAPTURE(c.url);
        CAPTURE(c.tracked);
        const Folder folder;
        const auto file = folder.write("drafts/fall.resume", "name: Ottoline Brandt\n");
        folder.write(".git/config", std::string("[remote \"origin\"]\n\turl = ") + c.url + "\n");
        folder.write(".git/index", index_with(c.tracked));
        CHECK(public_host(file).value_or("") == c.host);
    }
    const Folder folder; // no repository at all
    CHECK_FALSE(public_host(folder.write("a.resume", "")).has_value());
    CHECK_FALSE(public_host("").has_value());
}

TEST_CASE("repository: the check speaks of the number in a file that everyone can read") {
    const Folder folder;
    const auto file = folder.write("fall.resume", fixtures::clean_resume());
    CHECK(fixtures::proof_of("", {.path = file})->of("public-repository").empty());
    folder.write(".git/config", "[remote \"origin\"]\n\turl = https://github.com/o/p\n");
    folder.write(".git/index", index_with("fall.resume"));
    const auto found = fixtures::proof_of("", {.path = file})->of("public-repository");
    REQUIRE(found.size() == 1);
    CHECK(found.front().place.line == 6);
    CHECK(found.front().text.find("everybody can read this number") != std::string::npos);
}

}
