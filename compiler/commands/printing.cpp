#include "compiler/commands/printing.hpp"

#include "compiler/base/write_file.hpp"
#include "compiler/commands/messages.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <span>

namespace quoin::commands {

std::string all_messages(const Diagnostics& diagnostics, const Sources& sources, bool excerpts) {
    constexpr std::size_t most = 100; // a file that is wrong all through is not a résumé
    std::string out;
    const auto& all = diagnostics.all();
    for (const Diagnostic& diagnostic : std::span(all).first(std::min(most, all.size())))
        out += format(diagnostic, sources, excerpts) + '\n';
    if (all.size() > most)
        out += fmt::format("quoin: {}\n", fill<messages::more_like_these>(all.size() - most));
    return out;
}

void print_messages(std::string_view messages) {
    std::fwrite(messages.data(), 1, messages.size(), stderr);
}

bool print_output(std::string_view verb, std::string_view text) {
    const auto fault = write_file("-", text);
    if (fault) fmt::print(stderr, "quoin {}: {}\n", verb, *fault);
    return !fault;
}

ExitCode wrong_use(std::string_view verb, std::string_view text) {
    fmt::print(stderr, "quoin {}: {}\n", verb, text);
    return ExitCode::wrong_use;
}

}
