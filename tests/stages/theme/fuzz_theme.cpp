// Fuzz target: any bytes as a theme file, read on their own and on top of the house theme. A theme
// that is given is whole and within its bounds.
#include "compiler/stages/theme/theme.hpp"
#include "compiler/stages/theme/values.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <string>

namespace {

void require(bool condition) {
    if (!condition) std::abort();
}

void check(const quoin::theme::Theme& theme) {
    require(!theme.family.empty() && theme.size.least >= 10 && theme.size.most <= 12);
    require(theme.side_margin.least >= 36 && theme.side_margin.most <= 72);
    require(theme.forms.size() == quoin::trade::names_of<quoin::trade::Holds>().size());
    for (const quoin::theme::Style& style : theme.styles) {
        require(style.size * theme.size.least > 9.999);
        require(quoin::theme::contrast_on_white(style.colour) >= quoin::theme::least_contrast);
    }
}

void read(const std::string& bytes) {
    static const std::filesystem::path folder = std::filesystem::path(QUOIN_DATA_FOLDER) / "themes";
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto file = sources.add("fuzz.theme", bytes, diagnostics);
    if (!file) return;
    const auto theme = quoin::theme::read_theme(sources, *file, folder, diagnostics);
    require(theme.has_value() != diagnostics.has_errors());
    diagnostics.sort();
    for (const quoin::Diagnostic& one : diagnostics.all())
        require(!format(one, sources, true).empty());
    if (theme) check(*theme);
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string bytes(data, data + size);
    read(bytes);
    read("based-on: turnstone\n\n" + bytes);
    return 0;
}
