#include "compiler/commands/printing.hpp"

#include "compiler/base/printable.hpp"
#include "compiler/base/write_file.hpp"
#include "compiler/commands/colour.hpp"
#include "compiler/stages/messages.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <span>
#include <string>

namespace quoin::commands {

namespace {

bool put(std::string_view verb, std::string_view text) {
    const auto fault = write_file("-", text);
    if (fault) tell_of(verb, *fault);
    return !fault;
}

}

std::string all_messages(const Diagnostics& diagnostics, const Sources& sources, bool excerpts) {
    constexpr std::size_t most = 100; // a file that is wrong all through is not a résumé
    std::string out;
    const auto& all = diagnostics.all();
    for (const Diagnostic& diagnostic : std::span(all).first(std::min(most, all.size())))
        out += format(diagnostic, sources, excerpts) + '\n';
    if (all.size() > most)
        out +=
            fmt::format("quoin: {}\n", fill<stages::messages::more_like_these>(all.size() - most));
    return out;
}

void print_messages(std::string_view messages) {
    const std::string text = with_colours(printable(messages), STDERR_FILENO);
    std::fwrite(text.data(), 1, text.size(), stderr);
}

bool shows_excerpts() {
    return ::isatty(STDERR_FILENO) == 1;
}

void print_all(const Diagnostics& diagnostics, const Sources& sources) {
    print_messages(all_messages(diagnostics, sources, shows_excerpts()));
}

void tell_of(std::string_view verb, std::string_view text) {
    print_messages(fmt::format("quoin {}: {}\n", verb, on_one_line(text)));
}

bool print_output(std::string_view verb, std::string_view text) {
    return ::isatty(STDOUT_FILENO) == 1 ? put(verb, printable(text)) : put(verb, text);
}

bool print_report(std::string_view verb, std::string_view text) {
    return put(verb, with_colours(printable(text), STDOUT_FILENO));
}

ExitCode wrong_use(std::string_view verb, std::string_view text) {
    tell_of(verb, text);
    return ExitCode::wrong_use;
}

}
