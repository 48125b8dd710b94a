#include "compiler/commands/messages.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <span>

namespace quoin {

std::string all_messages(const Diagnostics& diagnostics, const Sources& sources, bool excerpts) {
    constexpr std::size_t most = 100; // a file that is wrong all through is not a résumé
    std::string out;
    const auto& all = diagnostics.all();
    for (const Diagnostic& diagnostic : std::span(all).first(std::min(most, all.size())))
        out += format(diagnostic, sources, excerpts) + '\n';
    if (all.size() > most) out += fmt::format("quoin: {} more like these\n", all.size() - most);
    return out;
}

}
