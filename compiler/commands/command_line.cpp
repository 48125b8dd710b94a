#include "compiler/commands/command_line.hpp"

#include "compiler/base/suggest.hpp"
#include "compiler/commands/checks/checks.hpp"
#include "compiler/commands/mend/mend.hpp"
#include "compiler/commands/proof/proof.hpp"
#include "compiler/commands/scan/scan.hpp"
#include "compiler/commands/set/set.hpp"
#include "compiler/commands/themes/themes.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cstdio>
#include <exception>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::commands {

namespace {

constexpr const char* version_text =
    "quoin 0.1.0\n"
    "Copyright (C) 2026 The quoin authors\n"
    "MIT License: free to use, change and share, without warranty\n";

constexpr const char* exit_text =
    "Exit status: 0 done, 1 errors, 2 wrong use, 3 it does not fit the page.";

// Help as GNU programs lay it out; CLI11's own layout is kept but for headings and the usage line.
class HelpLayout : public CLI::Formatter {
public:
    HelpLayout() {
        column_width(26);
        label("REQUIRED", "");
    }

    std::string make_help(const CLI::App* app, std::string name,
                          CLI::AppFormatMode mode) const override {
        return make_usage(app, name) + make_description(app) + make_groups(app, mode) +
               make_subcommands(app, mode) + '\n' + make_footer(app) + '\n';
    }

    std::string make_usage(const CLI::App* app, std::string name) const override {
        if (app->get_parent() == nullptr) return "Usage: quoin VERB [OPTION]... [FILE]...\n";
        const auto takes = [&](const char* what) {
            return app->get_option_no_throw(what) != nullptr;
        };
        return fmt::format("Usage: quoin {} [OPTION]...{}\n", name.substr(name.rfind(' ') + 1),
                           takes("files")   ? " FILE..."
                           : takes("names") ? " [NAME]..."
                                            : "");
    }

    std::string make_positionals(const CLI::App*) const override { return {}; }
    std::string make_option_opts(const CLI::Option* option) const override {
        return option->get_type_size() == 0 ? "" : ' ' + option->get_type_name();
    }
};

// A validator that takes one of a few words; the fault names them.
CLI::Validator one_of(std::string what, std::vector<std::string> words) {
    return CLI::Validator(
        [what = std::move(what), words = std::move(words)](const std::string& given) {
            if (std::ranges::find(words, given) != words.end()) return std::string{};
            return fmt::format("unknown {} '{}'; expected {}", what, given,
                               fmt::join(words, " or "));
        },
        "");
}

void add_set(CLI::App& app, SetRequest& request) {
    CLI::App* set = app.add_subcommand("set", "Typeset a résumé as a tagged one-page PDF.");
    set->group("Verbs");
    set->add_option("files", request.inputs)->required();
    set->add_option("-o,--output", request.output,
                    "write the PDF to FILE, or each of several into the folder FILE")
        ->type_name("FILE");
    set->add_option("--for", request.choices.tags, "keep what is tagged TAG; may be repeated")
        ->type_name("TAG")
        ->expected(1)
        ->allow_extra_args(false)
        ->take_all();
    set->add_option("--theme", request.choices.theme, "the theme's name, or a path to a theme file")
        ->type_name("NAME");
    set->add_option("--paper", request.paper, "letter or a4")
        ->type_name("SIZE")
        ->check(one_of("paper size", {"letter", "a4"}));
    set->add_option("--plain", request.plain,
                    "write the text for a portal's form to FILE; without -o, no PDF is written")
        ->type_name("FILE");
    set->add_flag("--explain", request.explain,
                  "print why the page is set as it is, and what the next better setting lacks");
    set->add_flag("--draft", request.draft,
                  "set what does not fit too, as small as allowed, on as many pages as it takes");
    set->add_option("--deps", request.deps, "write what the outputs depend on to FILE, for make")
        ->type_name("FILE");
    set->add_flag("--verify", request.verify,
                  "read the PDF back before it is written; a word lost is an error");
    set->footer(
        "A FILE of - is standard input, and as an output standard output. Without -o the PDF\n"
        "goes beside its source: draft.resume to draft.pdf.\n\n" +
        std::string(exit_text));
}

void add_themes(CLI::App& app, ThemesRequest& request) {
    CLI::App* themes =
        app.add_subcommand("themes", "List the themes, or set a specimen page of one.");
    themes->group("Verbs");
    CLI::Option* specimen =
        themes
            ->add_option("--specimen", request.specimen,
                         "set a page that shows all of a theme: its name, or a path")
            ->type_name("NAME");
    themes
        ->add_option("-o,--output", request.output,
                     "write the specimen to FILE instead of NAME.pdf")
        ->type_name("FILE")
        ->needs(specimen);
    themes->footer(std::string(exit_text));
}

void add_proof(CLI::App& app, ProofRequest& request) {
    CLI::App* proof =
        app.add_subcommand("proof", "Proofread a résumé: what to mend, where, and why.");
    proof->group("Verbs");
    proof->add_option("files", request.inputs)->required();
    proof->add_option("--for", request.choices.tags, "proofread the build for TAG; may be repeated")
        ->type_name("TAG")
        ->expected(1)
        ->allow_extra_args(false)
        ->take_all();
    proof->add_option("--theme", request.choices.theme, "the theme to set the page in, as for set")
        ->type_name("NAME");
    proof->add_option("--paper", request.paper, "letter or a4")
        ->type_name("SIZE")
        ->check(one_of("paper size", {"letter", "a4"}));
    proof->add_flag("--strict", request.strict, "fail for what should be mended, too");
    proof->add_flag("--summary", request.summary,
                    "say in a few lines what matters most, and what is good already");
    proof
        ->add_option("--marked", request.marked,
                     "write the page to FILE, a PDF, with every finding noted at its words")
        ->type_name("FILE");
    proof->add_option("--format", request.format, "text, json or sarif")
        ->type_name("FORMAT")
        ->check(one_of("format", {"text", "json", "sarif"}));
    proof->footer(
        "A FILE of - is standard input. Findings that the résumé accepts are set aside:\n"
        "accept: NAME (reason).\n\n"
        "Exit status: 0 nothing that must be mended, 1 something, or errors, 2 wrong use.");
}

void add_mend(CLI::App& app, MendRequest& request) {
    CLI::App* mend =
        app.add_subcommand("mend", "Make the mends that change form alone, in the file.");
    mend->group("Verbs");
    mend->add_option("files", request.inputs)->required();
    mend->add_flag("--dry-run", request.dry_run, "print what would change, and change nothing");
    mend->footer(
        "A FILE of - is standard input, mended to standard output. The whole file is mended,\n"
        "whatever its tags.\n\n"
        "Exit status: 0 done, 1 errors, 2 wrong use.\n"
        "To mend is not to judge: it is 1 for errors alone, whatever is left.");
}

void add_checks(CLI::App& app, ChecksRequest& request) {
    CLI::App* checks =
        app.add_subcommand("checks", "List what proof looks at, or explain the checks named.");
    checks->group("Verbs");
    checks->add_option("names", request.names);
    checks->add_flag("--reference", request.reference, "print the reference page of all checks");
    checks->footer(
        "Without a NAME the names of all checks are listed; with some, what each looks at and why\n"
        "is printed.\n\n"
        "Exit status: 0 done, 1 it cannot be written, 2 wrong use.");
}

void add_scan(CLI::App& app, ScanRequest& request) {
    CLI::App* scan =
        app.add_subcommand("scan", "Tell what an applicant portal gets out of any PDF.");
    scan->group("Verbs");
    scan->add_option("files", request.inputs)->required();
    scan->add_option("--format", request.format, "text, to be read, or json, for programs")
        ->type_name("FORMAT")
        ->check(one_of("format", {"text", "json"}));
    scan->footer(
        "Prints the text in reading order, what is found in it, and what is wrong. Poppler's\n"
        "tools (Debian package poppler-utils) read each file, under limits of their own.\n\n"
        "Exit status: 0 nothing is wrong, 1 faults or a file that cannot be read, 2 wrong use.");
}

// The options of `app` and, for the top level, its verbs: what a mistyped word may have meant.
std::vector<std::string> known_words(const CLI::App& app) {
    std::vector<std::string> words;
    for (const CLI::Option* option : app.get_options())
        for (const std::string& name : option->get_lnames())
            words.push_back("--" + name);
    for (const CLI::App* verb : app.get_subcommands(nullptr))
        words.push_back(verb->get_name());
    return words;
}

// What a word asks of proof that another verb does, and how it is written; null if none does.
const char* asked_of_another(std::string_view word) {
    struct Asked {
        std::string_view option;
        const char* answer;
    };
    constexpr Asked asked[] = {
        {"--mend", "--mend is a verb of its own; write 'quoin mend FILE'"},
        {"--dry-run", "--dry-run goes with the verb mend; write 'quoin mend --dry-run FILE'"},
        {"--list", "--list is a verb of its own; write 'quoin checks'"},
        {"--explain", "--explain is a verb of its own; write 'quoin checks NAME'"},
        {"--reference", "--reference goes with the verb checks; write 'quoin checks --reference'"},
    };
    const auto found = std::ranges::find(asked, word.substr(0, word.find('=')), &Asked::option);
    return found == std::end(asked) ? nullptr : found->answer;
}

std::string describe(const CLI::App& app, const CLI::ParseError& fault) {
    const auto chosen = app.get_subcommands();
    const CLI::App& level = chosen.empty() ? app : *chosen.front();
    const std::vector<std::string> extra = app.remaining(true);
    if (!extra.empty()) {
        const std::string& word = extra.front();
        const char* answer = app.got_subcommand("proof") ? asked_of_another(word) : nullptr;
        if (answer) return answer;
        const std::vector<std::string> known = known_words(level);
        const std::vector<std::string_view> candidates(known.begin(), known.end());
        const auto meant = nearest(word, candidates);
        const char* kind = word.starts_with('-') ? "option" : chosen.empty() ? "verb" : "argument";
        return fmt::format("unknown {} '{}'{}", kind, word,
                           meant ? fmt::format("; did you mean '{}'?", *meant) : "");
    }
    if (chosen.empty()) return "a verb is required";
    if (dynamic_cast<const CLI::RequiredError*>(&fault) != nullptr)
        return chosen.front()->get_name() == "scan"
                   ? "a PDF file is required"
                   : "a résumé file is required; use - for standard input";
    return fault.what();
}

int report_wrong_use(const CLI::App& app, const CLI::ParseError& fault) {
    const auto chosen = app.get_subcommands();
    const std::string verb = chosen.empty() ? "" : ' ' + chosen.front()->get_name();
    fmt::print(stderr, "quoin{}: {}\nTry 'quoin{} --help' for more information.\n", verb,
               describe(app, fault), verb);
    return static_cast<int>(ExitCode::wrong_use);
}

int parse_and_run(int argc, char** argv) {
    CLI::App app("Typeset and check résumés written in plain text.", "quoin");
    app.formatter(std::make_shared<HelpLayout>());
    app.set_version_flag("--version", version_text, "print the version and exit");
    app.set_help_flag("--help", "print this help and exit");
    app.require_subcommand(1);
    app.footer("'quoin VERB --help' says more of a verb.\n\n" + std::string(exit_text));

    SetRequest set_request;
    add_set(app, set_request);
    ProofRequest proof_request;
    add_proof(app, proof_request);
    MendRequest mend_request;
    add_mend(app, mend_request);
    ChecksRequest checks_request;
    add_checks(app, checks_request);
    ScanRequest scan_request;
    add_scan(app, scan_request);
    ThemesRequest themes_request;
    add_themes(app, themes_request);
    try {
        app.parse(argc, argv);
    } catch (const CLI::Success& success) {
        return app.exit(success);
    } catch (const CLI::ParseError& fault) {
        return report_wrong_use(app, fault);
    }
    if (app.got_subcommand("themes")) return static_cast<int>(run_themes(themes_request));
    if (app.got_subcommand("scan")) return static_cast<int>(run_scan(scan_request));
    if (app.got_subcommand("proof")) return static_cast<int>(run_proof_command(proof_request));
    if (app.got_subcommand("mend")) return static_cast<int>(run_mend(mend_request));
    if (app.got_subcommand("checks")) return static_cast<int>(run_checks(checks_request));
    return static_cast<int>(run_set(set_request));
}

}

int run_command_line(int argc, char** argv) {
    try {
        return parse_and_run(argc, argv);
    } catch (const std::exception& fault) {
        fmt::print(stderr,
                   "quoin: internal error: {}\nThis is a fault in quoin; please report it.\n",
                   fault.what());
    }
    return static_cast<int>(ExitCode::errors);
}

}
