// The verbs that need no page, and what is wrong use of them: to the letter, as the program says
// it.
#include "compiler/commands/command_line.hpp"

#include "compiler/commands/verbs.hpp"

#include <doctest/doctest.h>

#include <cstdio>
#include <string>
#include <unistd.h>
#include <vector>

namespace quoin::commands {

namespace {

// What goes to one of the process's own streams for as long as this is there.
class Caught {
public:
    explicit Caught(std::FILE* stream) : stream_(stream), kept_(::dup(::fileno(stream))) {
        std::fflush(stream_);
        ::dup2(::fileno(into_), ::fileno(stream_));
    }
    ~Caught() { release(); }
    Caught(const Caught&) = delete;
    Caught& operator=(const Caught&) = delete;

    std::string text() {
        release();
        std::string text;
        std::rewind(into_);
        for (int c = std::fgetc(into_); c != EOF; c = std::fgetc(into_))
            text += static_cast<char>(c);
        std::fclose(into_);
        return text;
    }

private:
    void release() {
        if (kept_ < 0) return;
        std::fflush(stream_);
        ::dup2(kept_, ::fileno(stream_));
        ::close(kept_);
        kept_ = -1;
    }

    std::FILE* stream_;
    std::FILE* into_ = std::tmpfile();
    int kept_;
};

struct Said {
    int code;
    std::string out, err;
};

Said say(std::vector<std::string> words) {
    words.insert(words.begin(), "quoin");
    std::vector<char*> arguments;
    for (std::string& word : words)
        arguments.push_back(word.data());
    Caught out(stdout), err(stderr);
    const int code = run_command_line(static_cast<int>(arguments.size()), arguments.data());
    return {code, out.text(), err.text()};
}

}

TEST_CASE("command line: wrong use of proof, mend and checks, to the letter") {
    struct Case {
        std::vector<std::string> words;
        const char* message;
        bool hint = false; // at the verb's help
    };
    const char* no_file = "a résumé file is required; use - for standard input";
    const char* mend = "--mend is a verb of its own; write 'quoin mend FILE'";
    const char* dry_run = "--dry-run goes with the verb mend; write 'quoin mend --dry-run FILE'";
    const char* explain =
        "--explain goes with the verb set; write 'quoin set --explain FILE', or for "
        "what a check looks at and why, 'quoin checks NAME'";
    const char* reference =
        "--reference goes with the verb checks; write 'quoin checks --reference'";
    const Case cases[] = {
        {{"proof"}, no_file, true},
        {{"proof", "--mend", "a.resume"}, mend, true},
        {{"proof", "a.resume", "--mend"}, mend, true},
        {{"proof", "--mend"}, mend, true},
        {{"proof", "--mend", "--dry-run", "a.resume"}, mend, true},
        {{"proof", "--marked", "a.pdf", "--mend", "a.resume"}, mend, true},
        {{"proof", "--dry-run", "a.resume"}, dry_run, true},
        {{"proof", "--list"},
         "--list goes with the verb checks; write 'quoin checks --list'",
         true},
        {{"proof", "--explain"}, explain, true},
        {{"proof", "--explain", "spacing"}, explain, true},
        {{"proof", "--explain=spacing"}, explain, true},
        {{"proof", "--reference"}, reference, true},
        {{"proof", "--strct", "a"}, "unknown option '--strct'; did you mean '--strict'?", true},
        {{"proof", "--format", "sarif", "--summary", "a.resume"},
         "--summary is text or JSON, and does not go with --format sarif"},
        {{"proof", "--format", "json", "--roster", "a.resume"},
         "--roster is text; --summary --format json tells programs the same"},
        {{"proof", "--summary", "--roster", "a.resume"},
         "--roster is a line, --summary is several; give one"},
        {{"proof", "--marked", "a.pdf", "a.resume", "b.resume"},
         "'a.pdf' is not a folder; with several files, --marked names the folder they go to"},
        {{"proof", "--marked", "/tmp", "a.resume", "b/a.resume"},
         "two outputs would be written to '/tmp/a.marked.pdf'"},
        {{"mend"}, no_file, true},
        {{"mend", "--dry-run"}, no_file, true},
        {{"mend", "-", "-"}, "standard input can be read once; give - once"},
        {{"mend", "--dry-rn", "a"}, "unknown option '--dry-rn'; did you mean '--dry-run'?", true},
        {{"mend", "--for", "lab", "a.resume"}, "unknown option '--for'", true},
        {{"mend", "--mend", "a.resume"}, "unknown option '--mend'", true},
        {{"checks", "two-line"}, "there is no check 'two-line'; did you mean 'two-lines'?"},
        {{"checks", "spacing", "spacng"}, "there is no check 'spacng'; did you mean 'spacing'?"},
        {{"checks", "nothing-like-it"}, "there is no check 'nothing-like-it'"},
        {{"checks", "--reference", "spacing"},
         "--reference is the page of all checks, and takes no names"},
        {{"checks", "--explain", "spacing"}, explain, true},
        {{"proof", "--specimen=x"},
         "--specimen goes with the verb themes; write 'quoin themes --specimen NAME'",
         true},
        {{"set", "--themes", "x", "a.resume"},
         "unknown option '--themes'; did you mean '--theme'?",
         true},
        {{"tailor"}, "a résumé and a posting are required; use - for standard input", true},
        {{"tailor", "a.resume", "-o", "b.resume"},
         "a résumé and a posting are required, as in 'quoin tailor everything.resume posting.txt "
         "-o draft.resume'"},
        {{"tailor", "a.resume", "b.txt"},
         "an output is required, for the résumé itself is never changed: name one with -o"},
        {{"tailor", "-", "-", "-o", "b.resume"}, "standard input can be read once; give - once"},
        {{"set", "-", "--posting", "-"}, "standard input can be read once; give - once"},
        {{"set", "a.resume", "--posting", "b.pdf", "-o", "b.pdf"},
         "'b.pdf' is a source and would be overwritten; name another output with -o"},
        {{"help", "mrkup"}, "there is no help on 'mrkup'; did you mean 'markup'?"},
    };
    for (const Case& c : cases) {
        const Said said = say(c.words);
        const std::string verb = "quoin " + c.words.front();
        const std::string hint = "Try '" + verb + " --help' for more information.\n";
        CHECK(said.code == 2);
        CHECK(said.out.empty());
        CHECK(said.err == verb + ": " + c.message + '\n' + (c.hint ? hint : ""));
    }
}

TEST_CASE("command line: help of verbs and of what they read") {
    const Said all = say({"help"}), set = say({"help", "set"});
    CHECK(all.code == 0);
    CHECK(all.out == say({"--help"}).out);
    CHECK(all.out == say({"-h"}).out);
    CHECK(set.out == say({"set", "--help"}).out);
    CHECK(set.out == say({"set", "-h"}).out);
    CHECK(set.out.starts_with("Usage: quoin set [OPTION]... FILE...\n"));
    CHECK(say({"help", "markup"}).out.starts_with("The résumé markup, version 1\n===="));
    const Said themes = say({"help", "themes"}); // a verb and a reference
    CHECK(themes.out.starts_with(say({"themes", "-h"}).out + "\nThe theme language\n"));
    CHECK(
        say({"help", "set", "checks"}).out.starts_with(set.out + '\n' + say({"checks", "-h"}).out));
    CHECK(say({"-V"}).out == say({"--version"}).out);
    CHECK(say({"-V"}).out.starts_with(std::string("quoin ") + version()));
    CHECK(say({"-V"}).out.find(built_from()) != std::string::npos);
}

TEST_CASE("command line: every option of the table is in the help of its verb, and every verb's") {
    const std::string all = help_on({});
    for (const Verb& verb : all_verbs()) {
        CAPTURE(verb.name);
        CHECK(all.find("\n  " + std::string(verb.name) + ' ') != std::string::npos);
        CHECK(help_on(verb.name).starts_with("Usage: quoin " + std::string(verb.name)));
    }
    for (const Option& option : all_options()) {
        CAPTURE(option.form);
        REQUIRE(find_verb(option.verb));
        CHECK(help_on(option.verb).find("--" + std::string(option.name())) != std::string::npos);
        CHECK(find_option(option.verb, option.name()) == &option);
        if (!option.needs.empty()) CHECK(find_option(option.verb, option.needs));
        const bool other = option.excludes.empty() || option.excludes == "operands";
        CHECK((other || find_option(option.verb, option.excludes)));
    }
}

TEST_CASE("command line: a mistyped verb is named") {
    CHECK(say({"mned", "a.resume"})
              .err.starts_with("quoin: unknown verb 'mned'; did you mean 'mend'?\n"));
    CHECK(say({"check"}).err.starts_with("quoin: unknown verb 'check'; did you mean 'checks'?\n"));
    const std::string too_long(300, 'x'); // for the name of a file
    CHECK(say({too_long}).code == 2);
    CHECK(say({too_long}).err.starts_with("quoin: unknown verb '" + too_long + "'\n"));
}

TEST_CASE("command line: checks are listed, and explained in the order they are named") {
    const Said listed = say({"checks"});
    CHECK(listed.code == 0);
    CHECK(listed.out.find("\n  two-lines ") != std::string::npos);
    const Said one = say({"checks", "spacing"}), other = say({"checks", "two-lines"});
    CHECK(one.out.starts_with("spacing ("));
    const Said both = say({"checks", "two-lines", "spacing"});
    CHECK(both.code == 0);
    CHECK(both.out == other.out + '\n' + one.out);
    CHECK(say({"checks", "--reference"}).out.starts_with("# What proof checks\n"));
}

TEST_CASE("command line: beginnings of options, a file where the verb should be") {
    CHECK(say({"checks", "--ref"}).out == say({"checks", "--reference"}).out);
    CHECK(say({"set", "--ver"}).err == "quoin set: a résumé file is required; use - for standard "
                                       "input\nTry 'quoin set --help' for more information.\n");
    CHECK(
        say({"set", "--p", "a"}).err.starts_with("quoin set: unknown option '--p'")); // of several
    CHECK(say({"draft.resume"})
              .err.starts_with("quoin: 'draft.resume' is no verb; write 'quoin set draft.resume' "
                               "to typeset a file\n"));
    CHECK(say({"scan", "-"}).err.starts_with("quoin scan: a PDF is read back and forth"));
    CHECK(say({"set", "--paper", "A4", "no.resume"}).err == "no.resume: error: no such file\n");
    CHECK(say({"set", "--entry", "1", "no.resume"}).err.starts_with("quoin set: --entry requires"));
}

}
