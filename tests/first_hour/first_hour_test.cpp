// A newcomer's first hour: sources typed as people type them who have read the README alone, with
// every slip in a table beside them (NAME.slips.tsv). Each slip, of which a line may have two, gets
// one message, in the words of the table; what the message says, done to the letter, mends it; and
// nothing else is said. A line that is told with the one above it is of the stage `above`.
#include "compiler/commands/mend/mend.hpp"
#include "tests/advice/proofread.hpp"
#include "tests/fixtures/read_resume.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <sstream>
#include <string>
#include <vector>

namespace quoin::fixtures {

namespace {

namespace fs = std::filesystem;

struct LabelledSlip {
    std::size_t line = 0;
    std::string stage, words, right;
};

std::vector<std::string> split_by(const std::string& text, char sign) {
    std::vector<std::string> parts;
    std::istringstream in(text);
    for (std::string part; std::getline(in, part, sign);)
        parts.push_back(part);
    return parts;
}

std::vector<LabelledSlip> slips_in(const fs::path& table) {
    std::vector<LabelledSlip> slips;
    for (const std::string& row : split_by(contents(table), '\n')) {
        if (row.starts_with('#')) continue;
        const std::vector<std::string> cells = split_by(row, '\t');
        REQUIRE(cells.size() == 4);
        slips.push_back({std::stoul(cells[0]), cells[1], cells[2], cells[3]});
    }
    return slips;
}

// The lines that stand for each line of the source, once the slips of a stage are mended.
std::map<std::size_t, std::vector<std::string>>
lines_mended(const std::string& source, const std::vector<LabelledSlip>& slips,
             const std::vector<std::string>& stages) {
    std::map<std::size_t, std::vector<std::string>> lines;
    std::size_t number = 0;
    for (const std::string& line : split_by(source, '\n'))
        lines[++number] = {line};
    for (const LabelledSlip& slip : slips)
        if (std::ranges::find(stages, slip.stage) != stages.end())
            lines[slip.line] =
                slip.right == "-" ? std::vector<std::string>{} : split_by(slip.right, '|');
    return lines;
}

std::string whole(const std::map<std::size_t, std::vector<std::string>>& lines) {
    std::string text;
    for (const auto& [number, own] : lines)
        for (const std::string& line : own)
            text += line + '\n';
    return text;
}

// What is said of each line of the text, a note of it aside.
std::map<std::size_t, std::vector<std::string>> said_of(const Reading& reading) {
    std::map<std::size_t, std::vector<std::string>> said;
    for (const Diagnostic& one : reading.diagnostics.all())
        said[one.place.line].push_back(one.text);
    return said;
}

void check_told(const LabelledSlip& slip, const std::vector<LabelledSlip>& slips,
                const std::vector<std::string>& said) {
    CAPTURE(slip.line);
    CAPTURE(slip.words);
    std::string all;
    for (const std::string& text : said)
        all += text + '\n';
    CAPTURE(all);
    CHECK(std::ssize(said) == std::ranges::count_if(slips, [&](const LabelledSlip& other) {
              return other.line == slip.line && other.stage == slip.stage;
          }));
    CHECK(all.find(slip.words) != std::string::npos);
}

void check_reading(const std::string& source, const std::vector<LabelledSlip>& slips) {
    auto said = said_of(read_resume(source));
    for (const LabelledSlip& slip : slips)
        if (slip.stage == "set") check_told(slip, slips, said[slip.line]);
    for (const LabelledSlip& slip : slips)
        said.erase(slip.line);
    for (const auto& each : said) {
        CAPTURE(each.first);
        for (const std::string& text : each.second)
            CHECK_MESSAGE(false, "said of a line without a slip: " << text);
    }
}

// What is a finding of `proof`, once the file reads; the lines have moved by then.
void check_proof(const std::string& source, const std::vector<LabelledSlip>& slips) {
    const auto lines = lines_mended(source, slips, {"set", "above"});
    const auto proof = proof_of(whole(lines));
    for (const LabelledSlip& slip : slips) {
        if (slip.stage != "proof") continue;
        std::size_t line = 1;
        for (auto own = lines.begin(); own->first != slip.line; ++own)
            line += own->second.size();
        std::vector<std::string> said;
        for (const advice::Finding& finding : proof->proof.findings)
            if (finding.place.line == line)
                said.push_back(finding.text + "; " + finding.suggestion);
        check_told(slip, slips, said);
    }
}

}

TEST_CASE("first hour: every slip is told once, and its message mends it") {
    std::size_t sources = 0, slips_told = 0;
    for (const auto& entry :
         fs::directory_iterator(fs::path(QUOIN_SOURCE_FOLDER) / "tests/first_hour")) {
        if (entry.path().extension() != ".resume") continue;
        CAPTURE(entry.path().filename().string());
        const std::string source = contents(entry.path());
        fs::path table = entry.path();
        const auto slips = slips_in(table.replace_extension(".slips.tsv"));
        check_reading(source, slips);
        check_proof(source, slips);
        CHECK(
            read_resume(whole(lines_mended(source, slips, {"set", "above", "proof"}))).messages() ==
            "");
        ++sources;
        slips_told += slips.size();
    }
    CHECK(sources >= 3);
    CHECK(slips_told >= 60);
}

// First what `quoin mend` makes, then the messages that are left, then a page.
TEST_CASE("first hour: from nothing to a page in three rounds") {
    for (const auto& entry :
         fs::directory_iterator(fs::path(QUOIN_SOURCE_FOLDER) / "tests/first_hour")) {
        if (entry.path().extension() != ".resume") continue;
        CAPTURE(entry.path().filename().string());
        const fs::path draft = fs::temp_directory_path() / entry.path().filename();
        fs::copy_file(entry.path(), draft, fs::copy_options::overwrite_existing);
        const std::size_t before = said_of(read_resume(contents(draft))).size();
        commands::mend_input(draft.string(), {language(), read_on}, false);
        const std::size_t after = said_of(read_resume(contents(draft))).size();
        CHECK(after * 2 < before); // more than half is made by itself
        fs::remove(draft);
    }
}

}
