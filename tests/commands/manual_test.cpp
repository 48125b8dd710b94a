// The manual and the program tell of the same options: its pages, as they were built, against the
// table that the command line is read by.
#include "compiler/commands/verbs.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>
#include <string>

namespace quoin::commands {

namespace {

std::filesystem::path manual_folder() {
    return std::filesystem::path(QUOIN_DATA_FOLDER).parent_path() / "man";
}

// As it is read: a minus is typed `\-`.
std::string manual_page(const std::string& name) {
    std::ifstream file(manual_folder() / "man1" / (name + ".1"));
    const std::string roff{std::istreambuf_iterator<char>(file), {}};
    return std::regex_replace(roff, std::regex(R"(\\-)"), "-");
}

// The long options that stand as heads below OPTIONS.
std::set<std::string> options_in(const std::string& page) {
    const std::size_t begin = page.find("\n.SH OPTIONS\n");
    const std::string section = page.substr(begin, page.find("\n.SH ", begin + 1) - begin);
    const std::regex head(R"(\n\.TP\n[^\n]*\\fB--([a-z-]+)\\fP)");
    std::set<std::string> names;
    for (std::sregex_iterator at(section.begin(), section.end(), head), end; at != end; ++at)
        names.insert((*at)[1]);
    return names;
}

}

TEST_CASE("manual: each verb's page has its options, and no other") {
    for (const Verb& verb : all_verbs()) {
        CAPTURE(verb.name);
        std::set<std::string> table{"help"};
        for (const Option& option : common_options())
            table.emplace(option.name());
        for (const Option& option : all_options())
            if (option.verb == verb.name) table.emplace(option.name());
        CHECK(options_in(manual_page("quoin-" + std::string(verb.name))) == table);
    }
    CHECK(options_in(manual_page("quoin")) == std::set<std::string>{"help", "version"});
}

TEST_CASE("manual: each verb has a page, and the program's page names it") {
    const std::string program = manual_page("quoin");
    std::set<std::string> pages, wanted{"quoin.1"};
    for (const auto& entry : std::filesystem::directory_iterator(manual_folder() / "man1"))
        pages.insert(entry.path().filename());
    for (const Verb& verb : all_verbs()) {
        wanted.insert("quoin-" + std::string(verb.name) + ".1");
        CHECK(program.find("\n.BR quoin-" + std::string(verb.name) + " (1)\n") !=
              std::string::npos);
    }
    CHECK(pages == wanted);
}

}
