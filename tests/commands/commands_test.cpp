// What stands around the stages: the plan of outputs. The program as a whole is tested
// from outside, in tests/outside.
#include "compiler/commands/outputs.hpp"

#include <doctest/doctest.h>

#include <filesystem>

using namespace quoin;
using namespace quoin::commands;

TEST_CASE("outputs: where they go") {
    struct Case {
        std::vector<std::string> inputs;
        std::string output, plain;
        std::string pdf_of_last, plain_of_last;
    };
    const Case cases[] = {
        {{"a.resume"}, "", "", "a.pdf", ""},
        {{"drafts/a.resume"}, "", "", "drafts/a.pdf", ""},
        {{"a"}, "", "", "a.pdf", ""},
        {{"a.resume"}, "b.pdf", "", "b.pdf", ""},
        {{"a.resume"}, "", "b.txt", "", "b.txt"},
        {{"a.resume"}, "b.pdf", "b.txt", "b.pdf", "b.txt"},
        {{"-"}, "", "", "-", ""},
        {{"-"}, "x.pdf", "", "x.pdf", ""},
        {{"a.resume", "b.resume"}, "", "", "b.pdf", ""},
        {{"a.resume", "x/b.resume"}, "/tmp", "", "/tmp/b.pdf", ""},
        {{"a.resume", "b.resume"}, "", "/tmp", "", "/tmp/b.txt"},
    };
    for (const Case& c : cases) {
        quoin::commands::SetRequest request;
        request.inputs = c.inputs;
        request.output = c.output;
        request.plain = c.plain;
        std::vector<quoin::commands::Outputs> outputs;
        CAPTURE(c.inputs.back());
        CHECK_FALSE(plan_outputs(request, outputs).has_value());
        REQUIRE(outputs.size() == c.inputs.size());
        CHECK(outputs.back().pdf == c.pdf_of_last);
        CHECK(outputs.back().plain == c.plain_of_last);
    }
}

TEST_CASE("outputs: what cannot be asked for, to the letter") {
    struct Case {
        std::vector<std::string> inputs;
        std::string output, deps;
        std::string fault;
    };
    const Case cases[] = {
        {{"-", "a.resume"}, "", "", "standard input is one résumé; give - alone"},
        {{"a.resume", "b.resume"},
         "x.pdf",
         "",
         "'x.pdf' is not a folder; with several files, -o names the folder they go to"},
        {{"a.resume", "x/a.resume"}, "/tmp", "", "two outputs would be written to '/tmp/a.pdf'"},
        {{"CMakeLists.txt"},
         "CMakeLists.txt",
         "",
         "'CMakeLists.txt' is a source and would be overwritten; name another output with -o"},
        {{"draft.pdf"},
         "",
         "",
         "'draft.pdf' has the name of a PDF; name the text that the PDF is made from, such as "
         "'draft.resume'"},
        {{"a.resume"}, "-", "a.d", "--deps needs an output that is a file; name one with -o"},
    };
    std::filesystem::current_path(QUOIN_SOURCE_FOLDER);
    for (const Case& c : cases) {
        quoin::commands::SetRequest request;
        request.inputs = c.inputs;
        request.output = c.output;
        request.deps = c.deps;
        std::vector<quoin::commands::Outputs> outputs;
        CAPTURE(c.fault);
        CHECK(plan_outputs(request, outputs) == c.fault);
    }
}

TEST_CASE("outputs: one file under two spellings of its name") {
    std::filesystem::current_path(QUOIN_SOURCE_FOLDER);
    for (const char* plain : {"none.pdf", "./none.pdf", "tests/../none.pdf", "../none.pdf"}) {
        quoin::commands::SetRequest request;
        request.inputs = {"a.resume"};
        request.output = "none.pdf";
        request.plain = plain;
        std::vector<quoin::commands::Outputs> outputs;
        CAPTURE(plain);
        CHECK(plan_outputs(request, outputs).has_value() == (std::string(plain) != "../none.pdf"));
    }
}

TEST_CASE("outputs: no file that was read is written over") {
    std::filesystem::current_path(QUOIN_SOURCE_FOLDER);
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    REQUIRE(sources.read("samples/nursing.resume", diagnostics));
    struct Case {
        const char* output;
        bool is_source;
    };
    for (const Case& c : {Case{"samples/nursing.resume", true},
                          {"tests/../samples/nursing.resume", true},
                          {"samples/accounting.resume", false},
                          {"samples/none.pdf", false},
                          {"/dev/null", false},
                          {"-", false},
                          {"", false}}) {
        CAPTURE(c.output);
        CHECK(quoin::commands::would_write_over(c.output, sources) == c.is_source);
    }
}
