// The limits that keep a hostile PDF's reader in its place, and scans of whole files.
#include "compiler/commands/scan/scan.hpp"
#include "compiler/portal/limited_process.hpp"
#include "compiler/portal/scan.hpp"

#include <doctest/doctest.h>

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>

namespace quoin::portal {

namespace {

ToolResult shell(const std::string& script, const ToolLimits& limits = {}) {
    const Tool tool{"sh", {"-c", script}};
    return run_limited({&tool, 1}, limits).front();
}

class Folder {
public:
    Folder() {
        std::string name = (std::filesystem::temp_directory_path() / "quoin-scan-XXXXXX").string();
        path_ = ::mkdtemp(name.data());
    }
    ~Folder() { std::filesystem::remove_all(path_); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    std::filesystem::path file(const std::string& name, const std::string& bytes) const {
        std::ofstream(path_ / name, std::ios::binary) << bytes;
        return path_ / name;
    }
    const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

// Without a cross-reference table, which readers mend.
std::string small_pdf(const std::string& content) {
    return fmt::format("%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n"
                       "2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1>>endobj\n"
                       "3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 612 792]/Contents 4 0 R"
                       "/Resources<</Font<</F1 5 0 R>>>>>>endobj\n"
                       "4 0 obj<</Length {}>>stream\n{}\nendstream endobj\n"
                       "5 0 obj<</Type/Font/Subtype/Type1/BaseFont/Helvetica"
                       "/Encoding/WinAnsiEncoding>>endobj\ntrailer<</Root 1 0 R>>\n",
                       content.size(), content);
}

std::variant<Scan, std::string> scan(const std::filesystem::path& file) {
    return scan_pdf(file, QUOIN_DATA_FOLDER "/fonts/readers.conf");
}

std::string fault_of(const std::filesystem::path& file) {
    const auto result = scan(file);
    const auto* fault = std::get_if<std::string>(&result);
    return fault ? *fault : "";
}

}

TEST_CASE("scan process: output, messages and code") {
    const ToolResult result = shell("echo out; echo err >&2; exit 3");
    CHECK(result.end == ToolEnd::done);
    CHECK(result.code == 3);
    CHECK(result.output == "out\n");
    CHECK(result.messages == "err\n");
}

TEST_CASE("scan process: results come in the order of the tools") {
    std::vector<Tool> tools;
    for (int i = 0; i < 7; ++i)
        tools.push_back({"echo", {std::to_string(i)}});
    const auto results = run_limited(tools);
    REQUIRE(results.size() == 7);
    for (std::size_t i = 0; i < 7; ++i)
        CHECK(results[i].output == fmt::format("{}\n", i));
    CHECK(run_limited({}).empty());
}

TEST_CASE("scan process: nothing to read, an environment of two, no folder of ours") {
    CHECK(shell("cat").output.empty());
    CHECK(shell("pwd").output == "/\n");
    CHECK(shell("unset PWD OLDPWD SHLVL _; env | sort").output ==
          "LC_ALL=C.UTF-8\nPATH=/usr/bin:/bin\n");
    CHECK(shell("ls /proc/self/fd | wc -l").output == "4\n"); // three, and the listing's own
}

TEST_CASE("scan process: limits end a tool, and what it started") {
    ToolLimits limits;
    limits.patience = std::chrono::milliseconds(200);
    CHECK(shell("sleep 600 & sleep 600", limits).end == ToolEnd::too_long);
    limits = {};
    limits.cpu_seconds = 1;
    CHECK(shell("while :; do :; done", limits).end == ToolEnd::too_long);
    limits = {};
    limits.output = 1000;
    const ToolResult large = shell("yes", limits);
    CHECK(large.end == ToolEnd::too_large);
    CHECK(large.output.size() == 1000);
    limits = {};
    limits.memory = std::size_t{64} << 20;
    CHECK(shell("head -c 200000000 /dev/zero | tail -c 150000000 | wc -c", limits).output == "0\n");
}

TEST_CASE("scan process: a tool that talks without end on standard error does not stop us") {
    const ToolResult result = shell("head -c 1000000 /dev/zero >&2; echo done");
    CHECK(result.output == "done\n");
    CHECK(result.messages.size() == 4096);
}

TEST_CASE("scan process: no file can be written") {
    const Folder folder;
    const std::string file = (folder.path() / "x").string();
    shell("echo written > " + file);
    CHECK((!std::filesystem::exists(file) || std::filesystem::file_size(file) == 0));
}

// As fontconfig does where it has no cache yet.
TEST_CASE("scan process: a tool that would keep a cache goes on without") {
    const Folder folder;
    const ToolResult result =
        shell("head -c 9 /dev/zero > " + (folder.path() / "cache").string() + "; echo on");
    CHECK(result.end == ToolEnd::done);
    CHECK(result.output == "on\n");
}

TEST_CASE("scan process: how a tool may end otherwise") {
    struct Case {
        const char* script;
        ToolEnd end;
        int code;
    };
    for (const Case& test : {
             Case{"exit 1", ToolEnd::done, 1},
             Case{"echo Out of memory >&2; exit 1", ToolEnd::no_memory, 1},
             Case{"echo \"what(): std::bad_alloc\" >&2; kill -ABRT $$", ToolEnd::no_memory,
                  SIGABRT},
             Case{"kill -SEGV $$", ToolEnd::broken, SIGSEGV},
             Case{"kill -XCPU $$", ToolEnd::too_long, SIGXCPU},
         }) {
        CAPTURE(test.script);
        const ToolResult result = shell(test.script);
        CHECK(result.end == test.end);
        CHECK(result.code == test.code);
    }
}

TEST_CASE("scan process: a tool that is not there") {
    const Tool tool{"no-such-tool-of-quoin", {}};
    CHECK(run_limited({&tool, 1}).front().end == ToolEnd::missing);
}

TEST_CASE("scan: a file that is no PDF costs a message") {
    const Folder folder;
    CHECK(fault_of(folder.path() / "none.pdf") == "there is no such file");
    CHECK(fault_of(folder.path()) == "it is a folder; name a PDF file");
    CHECK(fault_of("/dev/null") == "it is not a regular file; name a PDF file");
    CHECK(fault_of(folder.file("empty.pdf", "")) == "it is empty");
    CHECK(fault_of(folder.file("text.pdf", "hello")) ==
          "it is not a PDF: it does not begin with '%PDF-'");
    CHECK(fault_of(folder.file("draft.pdf", std::string("PK\x03\x04", 4) + "...")) ==
          "it is not a PDF but perhaps a word processor's file; export it as PDF first");
    const auto large = folder.file("large.pdf", "%PDF-1.4");
    std::filesystem::resize_file(large, most_pdf_bytes + 1);
    CHECK(fault_of(large) == "it has 64 MiB; at most 64 MiB are read");
    CHECK(fault_of(folder.file("junk.pdf", "%PDF-1.4\njunk")) ==
          "it is damaged: 'pdfinfo' could not read it; export it again");
}

TEST_CASE("scan: a whole file") {
    const Folder folder;
    const auto result = scan(folder.file(
        "-layout.pdf", // a name that looks like an option
        small_pdf("BT /F1 20 Tf 72 740 Td (Ottoline Brandt) Tj /F1 11 Tf 0 -20 Td "
                  "(ob@ellery.example  \\(360\\) 555-0142) Tj 0 -30 Td 3 Tc (EDUCATION) Tj 0 Tc "
                  "0 -20 Td (Ellery State College, May 2027) Tj ET")));
    const auto* scanned = std::get_if<Scan>(&result);
    REQUIRE(scanned);
    CHECK(scanned->found.name == "Ottoline Brandt");
    CHECK(scanned->found.emails == std::vector<std::string>{"ob@ellery.example"});
    CHECK(scanned->found.phones == std::vector<std::string>{"(360) 555-0142"});
    std::vector<std::string> checks;
    for (const ScanFault& fault : scanned->faults)
        checks.push_back(fault.check);
    CHECK(checks ==
          std::vector<std::string>{"split-words", "no-title", "no-language", "not-tagged"});
}

TEST_CASE("scan: text in white and text without colour") {
    const Folder folder;
    const auto result = scan(folder.file(
        "hidden.pdf", small_pdf("BT /F1 12 Tf 72 700 Td (Counted the quadrats) Tj 1 g 0 -30 Td "
                                "(leadership teamwork) Tj 0 g 3 Tr 0 -30 Td (python marketing) Tj "
                                "ET 0 0 0.5 rg 60 500 300 40 re f BT /F1 12 Tf 1 g 0 Tr 72 515 Td "
                                "(white upon blue can be seen) Tj ET")));
    const auto* scanned = std::get_if<Scan>(&result);
    REQUIRE(scanned);
    REQUIRE_FALSE(scanned->faults.empty());
    CHECK(scanned->faults.front().text ==
          "4 words cannot be seen on the page: 'leadership', 'teamwork', 'python' and 1 more");
}

TEST_CASE("scan: without poppler its package is named") {
    const Folder folder;
    const std::string path = std::getenv("PATH");
    ::setenv("PATH", folder.path().c_str(), 1);
    const std::string fault = fault_of(folder.file("a.pdf", small_pdf("")));
    ::setenv("PATH", path.c_str(), 1);
    CHECK(fault == "it needs the program 'pdfinfo'; install the package poppler-utils");
}

}
