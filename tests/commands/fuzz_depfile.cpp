// Fuzz target: names in a depfile. Whatever may be held comes back as it was, by the rules of make
// that this reads anew (GNU make 4.3, sections 4.3 and 6.1 of its manual: `$$` is a dollar, a
// backslash keeps the blank, the colon or the number sign behind it).
#include "compiler/commands/set/depfile.hpp"

#include <cstdint>
#include <cstdlib>
#include <string>
#include <vector>

namespace {

void require(bool holds) {
    if (!holds) std::abort();
}

// The first name of the text, as make reads it; what is left begins with what ended it.
std::string first_name(std::string_view& text) {
    std::string name;
    while (!text.empty()) {
        std::size_t backslashes = 0;
        while (backslashes < text.size() && text[backslashes] == '\\')
            ++backslashes;
        const std::string_view behind = text.substr(backslashes);
        const bool quotes =
            !behind.empty() && std::string_view(" #:").find(behind.front()) != behind.npos;
        name.append(quotes ? backslashes / 2 : backslashes, '\\');
        text = behind;
        if (text.empty() || (quotes && backslashes % 2 == 0) || text.front() == '\n') return name;
        if (text.starts_with("$$")) text.remove_prefix(1);
        name += text.front();
        text.remove_prefix(1);
    }
    return name;
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string name(data, data + size);
    if (name.empty() || name.find('\0') != name.npos) return 0;
    if (!quoin::commands::unholdable(name).empty()) return 0;
    const std::vector<std::string> targets{name};
    const std::vector<std::filesystem::path> prerequisites{name};
    const std::string text = quoin::commands::depfile(targets, prerequisites);
    std::string_view rest = text;
    require(first_name(rest) == name);
    require(rest.starts_with(": \\\n  "));
    rest.remove_prefix(6);
    require(first_name(rest) == name);
    require(rest.starts_with("\n\n"));
    rest.remove_prefix(2);
    require(first_name(rest) == name);
    require(rest == ":\n");
    return 0;
}
