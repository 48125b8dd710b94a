// Safe mends: what they change, and that they change nothing else, to the byte.
#include "compiler/advice/mend.hpp"
#include "compiler/base/write_file.hpp"
#include "compiler/commands/mend/line_diff.hpp"
#include "compiler/commands/mend/mend.hpp"
#include "tests/advice/proofread.hpp"
#include "tests/fixtures/run_command.hpp"

#include <algorithm>
#include <array>
#include <csignal>
#include <cstdio>
#include <fcntl.h>
#include <filesystem>
#include <optional>
#include <sys/resource.h>
#include <unistd.h>

namespace quoin::advice::mend_test {

namespace {

using fixtures::run;

namespace fs = std::filesystem;

struct Folder { // of its own, taken away at the end
    fs::path path = fs::temp_directory_path() / ("quoin mend test " + std::to_string(::getpid()));
    Folder() { fs::create_directories(path); }
    ~Folder() { fs::remove_all(path); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    std::string write(const std::string& name, const std::string& bytes) const {
        const std::string target = (path / name).string();
        REQUIRE_FALSE(write_file(target, bytes));
        return target;
    }
};

class NoRoom { // no file may grow: what is written fails, for root too
public:
    NoRoom() {
        ::getrlimit(RLIMIT_FSIZE, &limit_);
        const rlimit none{0, limit_.rlim_max};
        ::setrlimit(RLIMIT_FSIZE, &none);
    }
    ~NoRoom() {
        ::setrlimit(RLIMIT_FSIZE, &limit_);
        std::signal(SIGXFSZ, handler_);
    }
    NoRoom(const NoRoom&) = delete;
    NoRoom& operator=(const NoRoom&) = delete;

private:
    void (*handler_)(int) = std::signal(SIGXFSZ, SIG_IGN);
    rlimit limit_{};
};

commands::MendTools tools() {
    return {fixtures::language(), fixtures::read_on};
}

std::string mended(const std::string& bytes) {
    const Folder folder;
    const std::string target = folder.write("draft.resume", bytes);
    const commands::MendOutcome outcome = commands::mend_input(target, tools(), false);
    CAPTURE(outcome.messages);
    CHECK_FALSE(outcome.failed);
    return fixtures::contents(target);
}

std::string with_crlf(std::string text) {
    for (std::size_t at = text.find('\n'); at != std::string::npos; at = text.find('\n', at + 2))
        text.replace(at, 1, "\r\n");
    return text;
}

// Bullets below an entry; its lines as they are after the mend.
std::string entry(const std::string& dates, const std::string& bullets) {
    return "name: Ottoline Brandt\n\nsection: Experience\n\nrole: Field Intern\nemployer: Salish "
           "Tidal Trust\nplace: Anacortes, WA\ndates: " +
           dates + "\n" + bullets;
}

struct MendCase {
    std::string before, after;
};

const std::string dates = "Jun 2026 - Aug 2026";

const MendCase cases[] = {
    // spaces
    {"- Counted  212 plots\n- Mapped\t 9 sites , twice\n",
     "- Counted 212 plots\n- Mapped 9 sites, twice\n"},
    {"- Read a value \\ \\ b and 9 plots\n- Fed 4 fish\n",
     "- Read a value \\ \\ b and 9 plots\n- Fed 4 fish\n"},
    // a fold, tags, marks and comments stay
    {"- Counted  *212  plots* and\n   9 sites {lab}\n# two  spaces\n- Fed 4 fish\n",
     "- Counted *212 plots* and\n   9 sites {lab}\n# two  spaces\n- Fed 4 fish\n"},
    // doubled words
    {"- Mapped the the edge of 9 bays\n- Fed 4 fish\n",
     "- Mapped the edge of 9 bays\n- Fed 4 fish\n"},
    {"- Mapped the the  the edge of 9 bays\n- Fed 4 fish\n",
     "- Mapped the edge of 9 bays\n- Fed 4 fish\n"},
    // over a fold it is told, and left
    {"- Mapped the\n  the edge of 9 bays\n- Fed 4 fish\n",
     "- Mapped the\n  the edge of 9 bays\n- Fed 4 fish\n"},
    // dashes
    {"- Led crew of 6 - largest of 9\n- Fed 4 fish\n",
     "- Led crew of 6 -- largest of 9\n- Fed 4 fish\n"},
    {"- Read tides 2019 - 2021 and 12-15 logs\n- Fed 4 fish\n",
     "- Read tides 2019 - 2021 and 12-15 logs\n- Fed 4 fish\n"},
    // ends of bullets, to what most have
    {"- Fed 4 fish.\n- Fed 5 crabs {lab}\n- Fed *6 seals*\n",
     "- Fed 4 fish\n- Fed 5 crabs {lab}\n- Fed *6 seals*\n"},
    {"- Fed 4 fish.\n- Fed 5 crabs. {lab}\n- Fed *6 seals*\n",
     "- Fed 4 fish.\n- Fed 5 crabs. {lab}\n- Fed *6 seals.*\n"},
    {"- Fed 4 fish.\n- Fed 5 crabs\n- Fed 6 seals of Pellworth Inc.\n",
     "- Fed 4 fish\n- Fed 5 crabs\n- Fed 6 seals of Pellworth Inc.\n"},
    // abbreviations that end a bullet, and signs that need no full stop after them
    {"- Cut 4 boards to 1/16 in.\n- Fed 5 crabs\n- Fed 6 seals\n",
     "- Cut 4 boards to 1/16 in.\n- Fed 5 crabs\n- Fed 6 seals\n"},
    {"- Weighed 40 lbs.\n- Moved 3 doz.\n- Ran 9 sq. mi.\n- Fed 6 seals for 2 yrs.\n- Fed 5 "
     "crabs\n",
     "- Weighed 40 lbs.\n- Moved 3 doz.\n- Ran 9 sq. mi.\n- Fed 6 seals for 2 yrs.\n- Fed 5 "
     "crabs\n"},
    {"- Mapped 9 bays of Wash.\n- Rose at 5 a.m.\n- Fed 5 crabs\n- Fed 6 seals\n",
     "- Mapped 9 bays of Wash.\n- Rose at 5 a.m.\n- Fed 5 crabs\n- Fed 6 seals\n"},
    {"- Hosed 9 tanks for the wash.\n- Logged 4 crabs brought in.\n- Fed 5 crabs\n- Fed 6 seals\n"
     "- Fed 7 eels\n",
     "- Hosed 9 tanks for the wash\n- Logged 4 crabs brought in\n- Fed 5 crabs\n- Fed 6 seals\n"
     "- Fed 7 eels\n"},
    {"- Fed 4 fish, 5 crabs…\n- Wrote \"9 Tides.\"\n- Fed 5 crabs.\n- Fed 6 seals.\n",
     "- Fed 4 fish, 5 crabs…\n- Wrote \"9 Tides.\"\n- Fed 5 crabs.\n- Fed 6 seals.\n"},
    // a sign after tags would be an error
    {"- Fed 4 fish {lab} .\n- Fed  5 crabs {lab} , daily\n",
     "- Fed 4 fish {lab} .\n- Fed 5 crabs {lab} , daily\n"},
    {"- Fed 4 fish {lab}. {lab}\n- Fed 5 crabs\n- Fed 6 seals\n",
     "- Fed 4 fish {lab}. {lab}\n- Fed 5 crabs\n- Fed 6 seals\n"},
    // a mark that would lose its word
    {"- Mapped *the* the edge of 9 bays\n- Fed 4 fish\n",
     "- Mapped *the* the edge of 9 bays\n- Fed 4 fish\n"},
    // words that stand twice in earnest
    {"- Taught 40 staff to log in in Spanish\n- Signed on on 9 days\n- Turned  over over 40 "
     "stones\n",
     "- Taught 40 staff to log in in Spanish\n- Signed on on 9 days\n- Turned over over 40 "
     "stones\n"},
    {"- Fed fish in in 4 tanks\n- Read 9 tides for for 3 weeks\n",
     "- Fed fish in 4 tanks\n- Read 9 tides for 3 weeks\n"},
    {"- Wrote \"The The Tide\" and 4 notes\n- Read /of of/ twice in in 9 weeks\n",
     "- Wrote \"The The Tide\" and 4 notes\n- Read /of of/ twice in 9 weeks\n"},
    // letters outside ASCII before the place
    {"- Réseau  of 9 Ångström  tables\n- Fed 4 fish\n",
     "- Réseau of 9 Ångström tables\n- Fed 4 fish\n"},
    // the same with letters and accents apart (NFD): they stay apart
    {"- Re\u0301seau  of 9 A\u030Angstro\u0308m  tables\n- Fed 4 fish\n",
     "- Re\u0301seau of 9 A\u030Angstro\u0308m tables\n- Fed 4 fish\n"},
    {"- Cafe\u0301  \u6F22  \u00E9tude, e\u0301  \u2014  \u1112\u1161\u11AB  "
     "\U0001F469\u200D\U0001F52C\n- Fed 4 fish\n",
     "- Cafe\u0301 \u6F22 \u00E9tude, e\u0301 \u2014 \u1112\u1161\u11AB "
     "\U0001F469\u200D\U0001F52C\n- Fed 4 fish\n"},
};

}

TEST_CASE("mend: what is mended, byte for byte, whatever the line ends and the mark") {
    for (const MendCase& c : cases) {
        CAPTURE(c.before);
        const std::string before = entry(dates, c.before), after = entry(dates, c.after);
        CHECK(mended(before) == after);
        CHECK(mended(with_crlf(before)) == with_crlf(after));
        CHECK(mended("\xEF\xBB\xBF" + before) == "\xEF\xBB\xBF" + after);
        // the last line without an end
        CHECK(mended(before.substr(0, before.size() - 1)) == after.substr(0, after.size() - 1));
    }
}

TEST_CASE("mend: degrees") {
    const auto with_degree = [](const std::string& degree) {
        return "name: Ottoline Brandt\n\nsection: Education\n\nschool: Ellery State College\n"
               "degree: " +
               degree + "\ngraduation: May 2027 (expected)\n";
    };
    const MendCase degrees[] = {
        {"Bachelor's of Science in Biology", "Bachelor of Science in Biology"},
        {"Masters of Social Work {lab}", "Master of Social Work {lab}"},
        {"BS in Arts", "BS in Arts"}, // which degree it is, only its owner knows
        {"Bachelor of Arts in English", "Bachelor of Arts in English"},
    };
    for (const MendCase& c : degrees) {
        CAPTURE(c.before);
        CHECK(mended(with_degree(c.before)) == with_degree(c.after));
    }
}

TEST_CASE("mend: forms of dates, to the one asked for, else the one used most") {
    const auto with_dates = [](const std::string& setting, const std::string& one,
                               const std::string& two, const std::string& three) {
        return "name: Ottoline Brandt\n" + setting +
               "\nsection: Experience\n\nrole: A\ndates: " + one + "\n\nrole: B\ndates: " + two +
               "\n\nrole: C\ndates: " + three + "\n";
    };
    CHECK(mended(with_dates("", "Jun 2026 - present", "06/2025 - 08/2025", "Sep 2024")) ==
          with_dates("", "Jun 2026 - present", "Jun 2025 - Aug 2025", "Sep 2024"));
    CHECK(mended(with_dates("dates-as: 2026-06\n", "Jun 2026 - present", "06/2025 to 08/2025",
                            "Fall 2024")) == with_dates("dates-as: 2026-06\n", "2026-06 - present",
                                                        "2025-06 to 2025-08", "Fall 2024"));
}

TEST_CASE("mend: a mended file has nothing left to mend, and a second time changes nothing") {
    std::string all = "name: Ottoline Brandt\n\nsection: Experience\n";
    for (const MendCase& c : cases)
        all += "\nrole: Field Intern\nemployer: Trust\ndates: 06/2025 - Aug 2025\n" + c.before;
    const std::string once = mended(all);
    CHECK(once != all);
    CHECK(mended(once) == once);
    // all but those over a fold
    const auto again = fixtures::proof_of(once);
    for (const Finding& finding : again->proof.findings) {
        CAPTURE(finding.text);
        CHECK(finding.safe_mend.empty());
    }
}

TEST_CASE("mend: a file that is taken in is mended too, and a dry run writes nothing") {
    const Folder folder;
    const std::string part = "section: Experience\n\nrole: A\ndates: Jun 2026\n- Fed  4 fish\n";
    const std::string part_path = folder.write("part.resume", part);
    const std::string whole = "name: Ottoline  Brandt\ninclude: part.resume\n";
    const std::string path = folder.write("draft.resume", whole);
    const commands::MendOutcome dry = commands::mend_input(path, tools(), true);
    CHECK(fixtures::contents(path) == whole);
    CHECK(fixtures::contents(part_path) == part);
    CHECK(dry.output.find("-name: Ottoline  Brandt\n+name: Ottoline Brandt\n") !=
          std::string::npos);
    CHECK(dry.output.find("-- Fed  4 fish\n+- Fed 4 fish\n") != std::string::npos);
    const commands::MendOutcome wet = commands::mend_input(path, tools(), false);
    CHECK(wet.output.empty());
    CHECK(wet.messages.find("draft.resume: one mend made\n") != std::string::npos);
    CHECK(fixtures::contents(path) == "name: Ottoline Brandt\ninclude: part.resume\n");
    CHECK(fixtures::contents(part_path).find("- Fed 4 fish") != std::string::npos);
}

TEST_CASE("mend: a stream of the process is no file to write over") {
    const Folder folder;
    const std::string bytes = "name: Ottoline  Brandt\n";
    const std::string path = folder.write("draft.resume", bytes);
    const int descriptor = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    REQUIRE(descriptor >= 0);
    const commands::MendOutcome outcome =
        commands::mend_input("/dev/fd/" + std::to_string(descriptor), tools(), false);
    ::close(descriptor);
    CHECK(outcome.output == "name: Ottoline Brandt\n");
    CHECK(fixtures::contents(path) == bytes);
}

TEST_CASE("mend: a file with errors stays as it is") {
    const Folder folder;
    const std::string bytes = "name: Ottoline  Brandt\nfone: 555\n";
    const std::string path = folder.write("draft.resume", bytes);
    const commands::MendOutcome outcome = commands::mend_input(path, tools(), false);
    CHECK(outcome.failed);
    CHECK(outcome.messages.find("unknown label 'fone'") != std::string::npos);
    CHECK(fixtures::contents(path) == bytes);
}

TEST_CASE("mend: the good edits among bad ones, with no more questions than are allowed") {
    std::vector<Edit> edits;
    for (std::uint32_t line = 1; line <= 64; ++line)
        edits.push_back({{0, line, 1, 1}, ""});
    for (const std::vector<std::uint32_t>& bad :
         std::initializer_list<std::vector<std::uint32_t>>{{}, {1}, {64}, {7, 8, 40}}) {
        std::size_t questions = 0;
        const auto are_good = [&](const std::vector<Edit>& some) {
            ++questions;
            return std::ranges::none_of(some, [&](const Edit& edit) {
                return std::ranges::find(bad, edit.place.line) != bad.end();
            });
        };
        std::vector<Edit> expected = edits;
        std::erase_if(expected, [&](const Edit& edit) { return !are_good({edit}); });
        questions = 0;
        CHECK(good_edits(edits, 1000, are_good) == expected);
        CHECK(questions <= 1 + bad.size() * 2 * 6); // log2 of 64
        questions = 0;
        CHECK(good_edits(edits, 5, are_good).size() <= expected.size());
        CHECK(questions <= 5);
    }
}

TEST_CASE("mend: what cannot be written is not said to be made") {
    const Folder folder;
    const std::string before = entry(dates, "- Fed  4 fish\n");
    const std::string path = folder.write("draft.resume", before);
    std::optional<commands::MendOutcome> outcome;
    {
        const NoRoom no_room;
        outcome = commands::mend_input(path, tools(), false);
    }
    CHECK(outcome->failed);
    CHECK(outcome->messages.find("cannot write") != std::string::npos);
    CHECK(outcome->messages.find("made") == std::string::npos);
    CHECK(fixtures::contents(path) == before);
}

TEST_CASE("mend: edits that overlap or lie within a letter are left") {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("a", "e\u0301tude one\ntwo\n", diagnostics);
    REQUIRE(file);
    const auto at = [](std::uint32_t line, std::uint32_t column, std::uint32_t length) {
        return Place{0, line, column, length};
    };
    // text: é is two bytes, bytes: it is three
    const Mended one = mend(sources.file(*file), {{at(1, 3, 4), "TUDE"},
                                                  {at(1, 5, 2), "overlaps"},
                                                  {at(1, 2, 1), "within a letter"},
                                                  {at(2, 1, 3), "2"},
                                                  {at(9, 1, 1), "no such line"},
                                                  {at(2, 0, 0), "no column"}});
    CHECK(one.made == 2);
    CHECK(one.bytes == "e\u0301TUDE one\n2\n");
}

// diff and patch of GNU diffutils and patch as the outside readers, where they are installed.
TEST_CASE("line diff: patch makes of the one text the other") {
    const Folder folder;
    const std::string before = "a\nb\nc\nd\ne\nf\ng\nh\ni\nj\nk\nl\nm\r\nn";
    for (const std::string& after :
         {std::string("A\nb\nc\nd\ne\nf\ng\nh\ni\nj\nk\nl\nm\r\nn"),
          std::string("a\nB\nC\nd\ne\nf\ng\nh\ni\nj\nk\nL\nm\r\nN"),
          std::string("a\nb\nc\nd\nE\nf\ng\nh\ni\nj\nk\nL\nM\r\nn"), before}) {
        const std::string diff = commands::line_diff("draft.resume", before, after);
        CHECK(diff.empty() == (before == after));
        if (before == after || run("command -v patch").empty()) continue;
        folder.write("draft.resume", before);
        folder.write("a.diff", diff);
        run("cd '" + folder.path.string() + "' && patch --binary -s -p0 < a.diff");
        CHECK(fixtures::contents(folder.path / "draft.resume") == after);
        folder.write("before", before);
        folder.write("after", after);
        const std::string theirs = run("cd '" + folder.path.string() + "' && diff -u before after");
        CHECK(diff.substr(diff.find("@@")) == theirs.substr(theirs.find("@@")));
    }
}

}
