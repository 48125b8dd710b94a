// The verbs and the options of each, as data: the command line is read by these tables, and what
// help says is made from them.
#pragma once

#include "compiler/commands/command_line.hpp"

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::commands {

struct Given { // what stood on the command line, by the names of options
    std::vector<std::string> operands;
    std::map<std::string_view, std::string> texts;
    std::map<std::string_view, std::vector<std::string>> lists; // of options that repeat
    std::map<std::string_view, bool> flags;

    std::string text(std::string_view option) const { // empty if it was not given
        const auto found = texts.find(option);
        return found == texts.end() ? std::string{} : found->second;
    }
    bool has(std::string_view option) const {
        return !text(option).empty() || (flags.contains(option) && flags.at(option));
    }
    void clear();
    std::string all_options() const; // by which two calls can be told apart
};

struct Verb {
    std::string_view name;
    std::string_view does;
    std::string_view operands; // as usage has them; empty: none
    std::string_view missing;  // said when there is none; empty: there need be none
    std::string_view notes;    // below the options in its help
    ExitCode (*run)(const Given&);
};

struct Option {
    std::string_view verb;
    std::string_view form; // as help has it: `-o,--output FILE`; `...` at its end: it may repeat
    std::string_view does;
    std::string_view words = {};     // `kind: word, word`: it must be one of these; empty: anything
    std::string_view needs = {};     // an option without which it is wrong
    std::string_view excludes = {};  // `operands`, or an option but for the first of its words
    std::string_view refusal = {};   // said then; `{}` stands for that option's value
    std::string_view otherwise = {}; // what another verb, given it, may have been asked for

    std::string_view names() const { return form.substr(0, form.find(' ')); }
    std::string_view name() const { return names().substr(names().find("--") + 2); } // `output`
    std::string_view argument() const; // `FILE`; empty: a flag
    bool repeats() const { return form.ends_with("..."); }
};

std::span<const Verb> all_verbs(); // in the order of help
std::span<const Option> all_options();
std::span<const Option> common_options();     // of every verb
const Verb* find_verb(std::string_view name); // null if there is none
const Option* find_option(std::string_view verb, std::string_view name);

}
