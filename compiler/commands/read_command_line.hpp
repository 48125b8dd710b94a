// From the words of a command line to what is asked for.
#pragma once

#include "compiler/commands/verbs.hpp"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace CLI {
class App;
}

namespace quoin::commands {

struct Asked {
    enum class What { verb, help, version, nothing_right };
    What what{};
    const Verb* verb = nullptr; // to be run
    // What is to be said: the help, the version, why nothing can be run; of a verb, what of it does
    // not go together, if anything.
    std::string text;
};

class CommandLine {
public:
    // Of a verb that is named the options alone: nine tenths of the work are the others'.
    explicit CommandLine(std::string_view verb = {});
    ~CommandLine();
    CommandLine(const CommandLine&) = delete;
    CommandLine& operator=(const CommandLine&) = delete;

    Asked read(std::vector<std::string> words);   // without the program's name
    const Given& given() const { return given_; } // of what was read last
    std::string help_on(std::string_view verb) const;

private:
    Given given_;
    std::unique_ptr<CLI::App> app_;
};

}
