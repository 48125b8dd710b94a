// Fuzz target: any bytes as a theme file, an even number of them on their own, an odd one on top of
// the house theme. A theme that is given is whole and within its bounds.
#include "compiler/stages/theme/theme.hpp"
#include "compiler/stages/theme/values.hpp"
#include "compiler/trade/vocabulary.hpp"
#include "tests/held_files.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <optional>
#include <sstream>
#include <string>

namespace {

namespace fs = std::filesystem;

const fs::path& folder() {
    static const fs::path one = fs::path(QUOIN_DATA_FOLDER) / "themes";
    return one;
}

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

// The house theme without styles and all ways but the first: to read those again for each input
// would take most of the time.
std::string short_of(const std::string& house) {
    std::istringstream lines(house);
    std::string kept;
    bool skip = false;
    for (std::string line; std::getline(lines, line);) {
        if (line.empty()) skip = false;
        if (line.starts_with("style:")) skip = true;
        const bool is_way = line.starts_with("way");
        if (is_way) skip = line.starts_with("way:") && !line.ends_with("dates in line");
        if (!skip && !is_way && !line.starts_with('#')) kept += line + '\n';
    }
    return kept;
}

quoin::test::HeldFiles held_themes() {
    quoin::test::HeldFiles held = quoin::test::files_in(folder());
    std::string& house = held.at(folder() / "turnstone.theme");
    house = short_of(house);
    return held;
}

// Those that an input may be based on, or take icons of.
void hold_themes(quoin::Sources& sources) {
    static const quoin::test::HeldFiles held = held_themes();
    sources.read_by(
        [](const fs::path& path) -> std::optional<std::string> {
            const auto found = held.find(path);
            return found == held.end() ? std::nullopt : std::optional(found->second);
        },
        {});
}

// Whether it is a theme.
bool read(const std::string& bytes) {
    quoin::Sources sources;
    hold_themes(sources);
    quoin::Diagnostics diagnostics;
    const auto file = sources.add("fuzz.theme", bytes, diagnostics);
    if (!file) return false;
    const auto theme = quoin::theme::read_theme(sources, *file, folder(), diagnostics);
    require(theme.has_value() != diagnostics.has_errors());
    diagnostics.sort();
    for (const quoin::Diagnostic& one : diagnostics.all())
        require(!format(one, sources, true).empty());
    if (theme) check(*theme);
    return theme.has_value();
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string base = "based-on: turnstone\n\n", bytes(data, data + size);
    static const bool base_is_whole = read(base);
    require(base_is_whole);
    read(size % 2 == 0 ? bytes : base + bytes);
    return 0;
}
