// Reading the command line, by the tables of verbs and options.
#include "compiler/commands/read_command_line.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/printable.hpp"
#include "compiler/base/suggest.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <filesystem>
#include <span>
#include <sstream>
#include <string_view>
#include <system_error>
#include <utility>

namespace quoin::commands {

std::string Given::all_options() const {
    std::string all;
    for (const auto& [name, option_text] : texts)
        all += std::string(name) + '=' + option_text + '\n';
    for (const auto& [name, list] : lists)
        for (const std::string& one : list)
            all += std::string(name) + '=' + one + '\n';
    for (const auto& [name, is_given] : flags)
        if (is_given) all += std::string(name) + '\n';
    return all;
}

// The options stay: what reads the command line holds on to them.
void Given::clear() {
    operands.clear();
    for (auto& [name, one] : texts)
        one.clear();
    for (auto& [name, list] : lists)
        list.clear();
    for (auto& [name, is_given] : flags)
        is_given = false;
}

namespace {

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

    std::string make_usage(const CLI::App* app, std::string) const override {
        const Verb* verb = find_verb(app->get_name());
        if (!verb) return "Usage: quoin VERB [OPTION]... [FILE]...\n";
        return fmt::format("Usage: quoin {} [OPTION]...{}{}\n", verb->name,
                           verb->operands.empty() ? "" : " ", verb->operands);
    }

    std::string make_positionals(const CLI::App*) const override { return {}; }
    std::string make_option_opts(const CLI::Option* option) const override {
        return option->get_type_size() == 0 ? "" : ' ' + option->get_type_name();
    }
};

// A validator that takes one of a few words; the fault names them.
CLI::Validator one_of(const std::string& words) {
    const std::size_t colon = words.find(": ");
    return CLI::Validator(
        [kind = words.substr(0, colon),
         known = CLI::detail::split(words.substr(colon + 2), ',')](std::string& given) {
            const std::string small = lower_case(given);
            for (std::string word : known)
                if (CLI::detail::trim(word) == small) return given = small, std::string{};
            return fmt::format("unknown {} '{}'; expected {}", kind, given,
                               fmt::join(known, " or"));
        },
        "");
}

void add_option(CLI::App& app, const Option& row, Given& given) {
    const std::string names(row.names()), does(row.does);
    if (row.argument().empty()) {
        app.add_flag(names, given.flags[row.name()], does);
        return;
    }
    CLI::Option* option = row.repeats() ? app.add_option(names, given.lists[row.name()], does)
                                        : app.add_option(names, given.texts[row.name()], does);
    option->type_name(std::string(row.argument()));
    if (row.repeats()) option->expected(1)->allow_extra_args(false)->take_all();
    if (!row.words.empty()) option->check(one_of(std::string(row.words)));
    if (!row.needs.empty()) option->needs(app.get_option(fmt::format("--{}", row.needs)));
}

std::string version_text() {
    const std::string_view commit = built_from();
    return fmt::format("quoin {}{}\n"
                       "Copyright (C) 2026 The quoin authors\n"
                       "MIT License: free to use, change and share, without warranty\n",
                       version(), commit.empty() ? "" : fmt::format(" (built from {})", commit));
}

void add_verb(CLI::App& app, const Verb& verb, Given& given) {
    CLI::App* sub = app.add_subcommand(std::string(verb.name), std::string(verb.does));
    sub->group("Verbs")->footer(std::string(verb.notes));
    if (!verb.operands.empty())
        sub->add_option("operands", given.operands)->required(!verb.missing.empty());
    for (const Option& row : all_options())
        if (row.verb == verb.name) add_option(*sub, row, given);
    for (const Option& row : common_options())
        add_option(*sub, row, given);
}

std::unique_ptr<CLI::App> make_app(Given& given, const Verb* only) {
    auto app =
        std::make_unique<CLI::App>("Typeset and check résumés written in plain text.", "quoin");
    app->formatter(std::make_shared<HelpLayout>());
    app->set_version_flag("-V,--version", version_text(), "print the version and exit");
    app->set_help_flag("-h,--help", "print this help and exit");
    app->require_subcommand(1);
    app->footer("'quoin VERB --help' says more of a verb.\n\n" +
                std::string(find_verb("themes")->notes));
    for (const Verb& verb : only ? std::span(only, 1) : all_verbs())
        add_verb(*app, verb, given);
    return app;
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

// The verb's operand, as an example has it: none where there need be none.
std::string operand_of(const Verb& verb) {
    return verb.missing.empty()
               ? ""
               : ' ' + std::string(verb.operands.substr(0, verb.operands.find('.')));
}

// What an unknown option asks that one other verb does, or one that it is likely to be asked of;
// empty if there is none.
std::string asked_of_another(std::string_view option) {
    const auto rows = all_options();
    const auto named = [&](const Option& row) { return row.name() == option; };
    const auto likely = [&](const Option& row) { return named(row) && !row.otherwise.empty(); };
    auto row = std::ranges::find_if(rows, likely);
    if (row == rows.end() && std::ranges::count_if(rows, named) == 1)
        row = std::ranges::find_if(rows, named);
    if (row == rows.end()) return {};
    return fmt::format("--{0} goes with the verb {1}; write 'quoin {1} --{0}{2}{3}{4}'{5}{6}",
                       option, row->verb, row->argument().empty() ? "" : " ", row->argument(),
                       operand_of(*find_verb(row->verb)), row->otherwise.empty() ? "" : ", or ",
                       row->otherwise);
}

std::string unknown_option(const CLI::App& verb, const std::string& word) {
    const std::string_view name = std::string_view(word).substr(2, word.find('=') - 2);
    if (std::string answer = asked_of_another(name); !answer.empty()) return answer;
    const Verb* meant = find_verb(name);
    if (!meant || meant->name == verb.get_name()) return {};
    return fmt::format("--{0} is a verb of its own; write 'quoin {0}{1}'", name,
                       operand_of(*meant));
}

// `quoin draft.resume`, `quoin draft`: a file where the verb should be; empty if it is none.
std::string file_for_verb(const std::string& word) {
    for (const std::string& name : {word, word + ".resume"})
        if (std::error_code fault;
            name.ends_with(".resume") && std::filesystem::exists(name, fault))
            return fmt::format("'{0}' is a file, and a verb is required; write 'quoin set {0}'",
                               name);
    if (!word.ends_with(".resume")) return {};
    return fmt::format("'{0}' is no verb; write 'quoin set {0}' to typeset a file", word);
}

std::string describe_extra(const CLI::App& app, const CLI::App* verb, const std::string& word) {
    const std::vector<std::string> known = known_words(verb ? *verb : app);
    const std::vector<std::string_view> candidates(known.begin(), known.end());
    const auto meant = nearest(word, candidates);
    if (verb && !meant && word.starts_with("--"))
        if (std::string answer = unknown_option(*verb, word); !answer.empty()) return answer;
    if (!verb && !word.starts_with('-'))
        if (std::string answer = file_for_verb(word); !answer.empty()) return answer;
    const char* kind = word.starts_with('-') ? "option" : verb ? "argument" : "verb";
    return fmt::format("unknown {} '{}'{}", kind, word,
                       meant ? fmt::format("; did you mean '{}'?", *meant) : "");
}

std::string describe(const CLI::App& app, const CLI::App* verb, const CLI::ParseError& fault) {
    const std::vector<std::string> extra = app.remaining(true);
    if (!extra.empty()) return describe_extra(app, verb, extra.front());
    if (!verb) return "a verb is required";
    if (dynamic_cast<const CLI::RequiredError*>(&fault) != nullptr)
        return std::string(find_verb(verb->get_name())->missing);
    return fault.what();
}

std::string wrong_use_text(const CLI::App& app, const CLI::ParseError& fault) {
    const auto chosen = app.get_subcommands();
    const CLI::App* verb = chosen.empty() ? nullptr : chosen.front();
    const std::string name = verb ? ' ' + verb->get_name() : "";
    return fmt::format("quoin{}: {}\nTry 'quoin{} --help' for more information.\n", name,
                       on_one_line(describe(app, verb, fault)), name);
}

// What is said of two that were given and do not go together; empty if all do.
std::string contradiction(const Verb& verb, const Given& given) {
    for (const Option& row : all_options()) {
        if (row.verb != verb.name || row.excludes.empty() || !given.has(row.name())) continue;
        const Option* other = find_option(verb.name, row.excludes);
        const std::string value = given.text(row.excludes);
        const bool stands = other ? !value.empty() && other->words.find(": " + value + ',') ==
                                                          std::string_view::npos
                                  : !given.operands.empty();
        if (stands) return fmt::format(fmt::runtime(row.refusal), value);
    }
    return {};
}

// The one long option of the verb that begins so; the word itself if none does, or several.
std::string whole_option(const CLI::App& verb, const std::string& word) {
    const std::size_t end = std::min(word.find('='), word.size());
    std::vector<std::string> meant;
    for (const CLI::Option* option : verb.get_options())
        for (const std::string& name : option->get_lnames())
            if (("--" + name).starts_with(word.substr(0, end))) meant.push_back("--" + name);
    const bool is_whole = std::ranges::find(meant, word.substr(0, end)) != meant.end();
    return meant.size() == 1 && !is_whole ? meant.front() + word.substr(end) : word;
}

// What was given, its options whole: `--ver` is `--verify` of `set` (POSIX leaves long options to
// programs; GNU ones take any beginning that tells them apart).
std::vector<std::string> whole_words(const CLI::App& app, std::vector<std::string> words) {
    const CLI::App* verb = &app;
    for (std::string& word : words) {
        if (word == "--") break;
        if (word.starts_with("--"))
            word = whole_option(*verb, word);
        else if (verb == &app && find_verb(word))
            verb = app.get_subcommand(word);
    }
    return words;
}

}

CommandLine::CommandLine(std::string_view verb) : app_(make_app(given_, find_verb(verb))) {}

CommandLine::~CommandLine() = default;

Asked CommandLine::read(std::vector<std::string> words) {
    given_.clear();
    try {
        words = whole_words(*app_, std::move(words));
        std::ranges::reverse(words); // as CLI11 takes a list of them
        app_->parse(std::move(words));
    } catch (const CLI::Success& success) {
        std::ostringstream text;
        app_->exit(success, text);
        const bool version = success.get_name() == "CallForVersion";
        return {version ? Asked::What::version : Asked::What::help, nullptr, text.str()};
    } catch (const CLI::ParseError& fault) {
        return {Asked::What::nothing_right, nullptr, wrong_use_text(*app_, fault)};
    }
    const Verb& verb = *find_verb(app_->get_subcommands().front()->get_name());
    return {Asked::What::verb, &verb, contradiction(verb, given_)};
}

std::string CommandLine::help_on(std::string_view verb) const {
    return verb.empty() ? app_->help() : app_->get_subcommand(std::string(verb))->help();
}

}
