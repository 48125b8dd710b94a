// Help is made from the tables of verbs; the references come with the program, as text.
#include "compiler/commands/help/help.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/commands/help/table_json.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/pager.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/verbs.hpp"

#include <fmt/format.h>

#include <cstdio>
#include <string_view>

namespace quoin::commands {

namespace {

constexpr std::string_view references[] = {"markup", "themes", "checks", "office"};

ExitCode refuse_topic(const std::string& topic) {
    std::vector<std::string_view> known(std::begin(references), std::end(references));
    for (const Verb& verb : all_verbs())
        known.push_back(verb.name);
    return wrong_use("help",
                     "there is no help on " + in_quotes(topic) + did_you_mean(topic, known));
}

// False if it cannot be read, which is said.
bool add_reference(const std::string& topic, std::string& text) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.read(data_folder() / "reference" / (topic + ".txt"), diagnostics);
    if (!file)
        print_messages(all_messages(diagnostics, sources, false));
    else
        text += (text.empty() ? "" : "\n") + sources.file(*file).bytes;
    return file.has_value();
}

}

ExitCode run_help(const HelpRequest& request) {
    if (request.format == "json")
        return print_output("help", table_json(references)) ? ExitCode::done : ExitCode::errors;
    std::string text = request.topics.empty() ? help_on({}) : "";
    for (const std::string& topic : request.topics) {
        const bool is_verb = find_verb(topic) != nullptr,
                   is_reference = is_one_of(topic, references);
        if (!is_verb && !is_reference) return refuse_topic(topic);
        if (is_verb) text += (text.empty() ? "" : "\n") + help_on(topic);
        if (is_reference && !add_reference(topic, text)) return ExitCode::errors;
    }
    return show_text("help", text) ? ExitCode::done : ExitCode::errors;
}

}
