// The forms findings are printed in, the reference page, and what is read of git's own files.
#include "compiler/advice/repository.hpp"
#include "compiler/base/write_file.hpp"
#include "compiler/commands/checks/checks.hpp"
#include "compiler/commands/proof/proof_report.hpp"
#include "tests/advice/proofread.hpp"

#include <nlohmann/json.hpp>

#include <cstdlib>
#include <filesystem>

namespace quoin::advice {

namespace {

namespace fs = std::filesystem;
using namespace quoin::commands; // who prints what is found
using commands::proofread;
using commands::ProofTools;

ProofTools tools() {
    return {QUOIN_DATA_FOLDER, fixtures::fonts(), fixtures::language(), fixtures::read_on};
}

struct Folder {
    fs::path path = fs::temp_directory_path() / ("quoin proof test " + std::to_string(::getpid()));
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

std::vector<std::unique_ptr<commands::Proofread>> read_all(const fs::path& path) {
    std::vector<std::unique_ptr<commands::Proofread>> all;
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

TEST_CASE("proof output: a finding as the GNU Coding Standards have it, and once for each why") {
    const Folder folder;
    std::string text = fixtures::clean_resume();
    text.replace(text.find("(360) 555-0142"), 14, "555-0142");
    text.replace(text.find("stage:"), 6, "accept: voicemail (checked)\nstage:");
    const auto path = folder.write("draft.resume", text);
    const auto one = proofread(path.string(), {}, tools());
    CHECK(proof_text(*one, false) ==
          path.string() +
              ":6:8: must [phone-form]: '555-0142' cannot be dialled: the area code is "
              "missing; write it with its area code, such as '(360) 555-0142'\n  why: " +
              std::string(find_check("phone-form")->why) + '\n' + path.string() +
              ":9:9: note: one finding of [voicemail] set aside: checked\n");
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

TEST_CASE("proof output: of more findings than can be read the text says how many") {
    const Folder folder;
    std::string text = "name: Juniper Castellane\n\nsection: Experience\n\nrole: Assistant\n"
                       "employer: Ellery State College\ndates: 2025\n";
    for (int i = 0; i < 300; ++i)
        text += "- Counted  quadrats of " + std::to_string(i) + " eelgrass beds\n";
    const auto one = proofread(folder.write("draft.resume", text).string(), {}, tools());
    const std::size_t all = one->proof.findings.size();
    REQUIRE(all > 300);
    const std::string out = proof_text(*one, true);
    CHECK(out.find(": note: " + std::to_string(all - 200) +
                   " more findings; '--format json' lists all of them\n") != std::string::npos);
    std::size_t told = 0;
    for (const char* weight : {" must [", " should [", " consider ["})
        for (std::size_t at = out.find(weight); at != out.npos; at = out.find(weight, at + 1))
            ++told;
    CHECK(told == 200);
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
    const auto json = commands::proof_json(all);
    const auto& finding = finding_of(json["files"][0]["findings"], "check", "spacing");
    CHECK(finding["place"]["line"] == 40);
    CHECK(finding["place"]["column"] == 13);
    CHECK(finding["place"]["length"] == 2);
    CHECK(finding["mend"][0]["replacement"] == " ");
    const auto sarif = commands::proof_sarif(all);
    const auto& result = finding_of(sarif["runs"][0]["results"], "ruleId", "spacing");
    const auto& region = result["locations"][0]["physicalLocation"]["region"];
    CHECK(region["startLine"] == 40);
    CHECK(region["startColumn"] == 13);
    CHECK(region["endColumn"] == 15);
    CHECK(result["fixes"][0]["artifactChanges"][0]["replacements"][0]["deletedRegion"] == region);
}

// The same in a file whose letters stand apart from their marks (Unicode Standard Annex #15, NFD):
// who applies a fix counts the characters that are in the file.
TEST_CASE("proof output: columns of a file that is not in NFC") {
    struct Case {
        const char* opening; // of a bullet, up to the doubled space
        std::size_t column;
    };
    const Case cases[] = {
        {"- Fed cafe", 11},
        {"- Fed caf\u00E9", 11},
        {"- Fed cafe\u0301", 12},
        {"- Fed e\u0301e\u0301 \u1112\u1161\u11AB", 15},
        {"- Fed \u6F22e\u0323\u0301x\u0304", 13},
    };
    for (const Case& c : cases) {
        const Folder folder;
        CAPTURE(c.opening);
        const std::string line = std::string(c.opening) + "  \u00E9, 4 fish";
        const auto path = folder.write(
            "draft.resume", "name: A B\n\nsection: Work\n\nrole: A\ndates: 2026\n" + line + '\n');
        const auto json = commands::proof_json(read_all(path));
        const auto& finding = finding_of(json["files"][0]["findings"], "check", "spacing");
        for (const auto& place : {finding["place"], finding["mend"][0]["place"]}) {
            CHECK(place["line"] == 7);
            CHECK(place["column"] == c.column);
            CHECK(place["length"] == 2);
        }
    }
}

TEST_CASE("proof output: the columns of a file that is not UTF-8 are those of what is shown") {
    const Folder folder;
    const auto json = commands::proof_json(read_all(
        folder.write("draft.resume", "name: e\u0301 " + std::string(2000, '\xCC') + "\n")));
    CHECK(json["files"][0]["read"] == false);
    CHECK(json["files"][0]["messages"][1]["place"]["column"] == 10);
}

TEST_CASE("proof output: SARIF names every check, and each result its rule") {
    const Folder folder;
    std::string text = fixtures::clean_resume();
    text.replace(text.find("stage:"), 6, "accept: voicemail (checked)\nstage:");
    const auto sarif =
        commands::proof_sarif(read_all(folder.write("a b.resume", text + "Age: 22\n")));
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
    const auto json = commands::proof_json(all);
    CHECK(json["files"][0]["read"] == false);
    CHECK(json["files"][0]["findings"].empty());
    CHECK(json["files"][0]["messages"][0]["place"]["line"] == 2);
    const auto sarif = commands::proof_sarif(all);
    CHECK(sarif["runs"][0]["invocations"][0]["executionSuccessful"] == false);
}

TEST_CASE("proof output: findings are numbered in the order of the file") {
    const Folder folder;
    const auto json =
        commands::proof_json(read_all(folder.write("draft.resume", with_columns() + "Age: 22\n")));
    for (std::size_t number = 1; const auto& finding : json["files"][0]["findings"])
        CHECK(finding["number"] == number++);
}

TEST_CASE("proof output: the summary says ready or not, what matters most, and what is good") {
    const Folder folder;
    const auto ready =
        proofread(folder.write("draft.resume", fixtures::clean_resume()).string(), {}, tools());
    const std::string good = proof_summary(*ready);
    CHECK(good.find(": ready to send\n") != std::string::npos);
    CHECK(good.find("good already: a page that holds together") != std::string::npos);
    std::string doubled = fixtures::clean_resume();
    doubled.insert(doubled.find(" 34 acres"), " ");
    const auto draft = proofread(folder.write("other.resume", doubled).string(), {}, tools());
    const std::string bad = proof_summary(*draft);
    CHECK(bad.find(": not ready: one thing to mend before anyone sees it\n  1. line 40: a doubled "
                   "space") != std::string::npos);
}

TEST_CASE("proof output: the summary of what is no page yet, and of what is not there") {
    struct Case {
        std::string text;
        stages::Choices choices;
        std::string verdict, good; // `good` is all of it
    };
    const std::string entry =
        "\nsection: Experience\n\nrole: Aide\nemployer: Trust\nplace: Astoria, "
        "OR\n";
    const Case cases[] = {
        {"name: Al Bay\n", {}, ": not ready: ", ""},
        {"name: Al Bay\nfone: 1\n",
         {},
         ": not ready: no page can be made of it yet\n  1. line 2: unknown label 'fone'",
         ""},
        {"name: Al \U0001F9B7 Bay\n",
         {},
         ": not ready: no page can be made of it yet\n  1. line 1: ",
         ""},
        {fixtures::clean_resume(),
         {.tags = {}, .theme = "nosuch", .paper = {}},
         ": not ready: no page can be made of it yet\n  1. ",
         "12 of 12 bullets carry a figure; contact details that work; every date in place and in "
         "order; a degree and its date as portals look for them"},
        {"name: Al Bay\n" + entry + "dates: Jun 2025 - Aug 2025\n- Fed fish\n- Fed crabs\n",
         {},
         ": not ready: ",
         "every date in place and in order; one hand from top to bottom; no slip "
         "of spelling"},
        {"name: Al Bay\nphone: (360) 555-0142\nemail: al.bay@ellerystate.example\naccept: "
         "dates-missing "
         "(the school lists them); spelling (art)\n" +
             entry + "- Conuted 4 fish\n",
         {},
         ": ",
         "contact details that work"},
    };
    for (const Case& c : cases) {
        const Folder folder;
        CAPTURE(c.text);
        const auto path = folder.write("draft.resume", c.text).string();
        const std::string summary = proof_summary(*proofread(path, c.choices, tools()));
        CHECK(summary.starts_with(path + c.verdict));
        const std::string good = c.good.empty() ? "" : "  good already: " + c.good + '\n';
        CHECK(summary.substr(std::min(summary.find("  good already"), summary.size())) == good);
    }
}

TEST_CASE("proof output: the summary counts what is left in words") {
    struct Case {
        std::string find, replace, verdict;
    };
    const Case cases[] = {
        {"ottoline.brandt@ellerystate", "beachbum42@ellerystate",
         ": ready to send, better after one more change\n"},
        {"", "", ": ready to send\n"},
    };
    for (const Case& c : cases) {
        const Folder folder;
        std::string text = fixtures::clean_resume();
        text.replace(text.find(c.find), c.find.size(), c.replace);
        const auto one = proofread(folder.write("a.resume", text).string(), {}, tools());
        CHECK(proof_summary(*one).find(c.verdict) != std::string::npos);
    }
}

// What must be mended is no less so for being accepted.
TEST_CASE("proof output: what is set aside is counted, and taken back for an adviser") {
    struct Case {
        std::string accept, phone, verdict, aside, roster;
    };
    const Case cases[] = {
        {"phone-form (mine)", "555-0142",
         ": not ready: 'accept' sets aside one thing that must be mended\n",
         "  set aside by 'accept': one finding of [phone-form]; --ignore-accept lists it\n",
         ": not ready; 0 must, 0 should, 0 to consider; 1 page at 10.9 pt; 1 set aside, 1 of them "
         "must\n"},
        {"voicemail (mine)", "555-0142", ": not ready: one thing to mend before anyone sees it\n",
         "  set aside by 'accept': one finding of [voicemail]; --ignore-accept lists it\n",
         ": not ready; 1 must, 0 should, 0 to consider; 1 page at 10.9 pt; 1 set aside\n"},
        {"voicemail (mine)", "(360) 555-0142", ": ready to send\n",
         "  set aside by 'accept': one finding of [voicemail]; --ignore-accept lists it\n",
         ": ready; 0 must, 0 should, 0 to consider; 1 page at 10.9 pt; 1 set aside\n"},
    };
    for (const Case& c : cases) {
        CAPTURE(c.accept);
        const Folder folder;
        std::string text = fixtures::clean_with("(360) 555-0142", c.phone);
        text.insert(text.find("updated:"), "accept: " + c.accept + "\n");
        const auto all = read_all(folder.write("a.resume", text));
        commands::Proofread& one = *all.front();
        CHECK(proof_summary(one).find(c.verdict) != std::string::npos);
        CHECK(proof_summary(one).find(c.aside) != std::string::npos);
        CHECK(proof_roster(one) == one.input + c.roster);
        const auto json = commands::summary_json(all)["files"][0];
        CHECK(json["set_aside"]["must"].get<int>() + json["set_aside"]["consider"].get<int>() == 1);
        CHECK(json["page"]["pages"] == 1);
        CHECK(proof_summary(one).find(json["text"].get<std::string>()) != std::string::npos);
        take_back_set_aside(one.proof);
        CHECK(one.proof.set_aside.empty());
        CHECK(proof_text(one, false).find("(accepted: mine)\n") != std::string::npos);
    }
}

TEST_CASE("proof output: the roster and the summary of what is no page yet") {
    const Folder folder;
    const auto all = read_all(folder.write("a.resume", "nam: Al Bay\n"));
    CHECK(proof_roster(*all.front()) ==
          all.front()->input +
              ": not ready; 0 must, 0 should, 0 to consider; no page; nothing set aside\n");
    CHECK(commands::summary_json(all)["files"][0]["page"].is_null());
}

TEST_CASE("proof output: the reference page is the one in grammar/") {
    CHECK(commands::reference_page() ==
          fixtures::contents(fs::path(QUOIN_SOURCE_FOLDER) / "grammar/checks.md"));
}

TEST_CASE("proof output: the list and the explanation name every check") {
    const std::string list = commands::list_of_checks();
    for (const Check* check : all_checks()) {
        CHECK(list.find("  " + std::string(check->name) + ' ') != std::string::npos);
        CHECK(commands::explanation_of(*check).find(check->why) != std::string::npos);
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
