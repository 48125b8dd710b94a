#include "compiler/commands/themes/themes.hpp"

#include "compiler/commands/installation.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/set/set.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <string>
#include <utility>
#include <vector>

namespace quoin::commands {

namespace {

struct Listed {
    std::string name, use;
};

// Themes that cannot be read are reported instead.
ExitCode list_themes(const std::filesystem::path& folder) {
    Sources sources;
    Diagnostics diagnostics;
    std::vector<Listed> all;
    for (const std::string& name : theme::theme_names(folder))
        if (const auto theme = theme::read_theme(sources, folder, name, folder, {}, diagnostics))
            all.push_back({name == theme::house_theme ? name + " (house)" : name, theme->use});
    std::size_t widest = 0;
    for (const Listed& theme : all)
        widest = std::max(widest, theme.name.size());
    std::string list;
    for (const Listed& theme : all)
        list += fmt::format("{:<{}}  {}\n", theme.name, widest, theme.use);
    if (!print_report("themes", list)) return ExitCode::errors;
    diagnostics.sort();
    for (const Diagnostic& diagnostic : diagnostics.all())
        print_messages(format(diagnostic, sources, false) + '\n');
    return diagnostics.all().empty() && !all.empty() ? ExitCode::done : ExitCode::errors;
}

ExitCode set_specimen(const ThemesRequest& request, const std::filesystem::path& data) {
    SetRequest set;
    set.inputs = {(data / "specimen.resume").string()};
    set.choices.theme = request.specimen;
    set.at_preferred = true;
    set.output = request.output.empty()
                     ? std::filesystem::path(request.specimen).stem().string() + ".pdf"
                     : request.output;
    return run_set(set);
}

}

ExitCode run_themes(const ThemesRequest& request) {
    const std::filesystem::path data = data_folder();
    if (request.specimen.empty()) return list_themes(data / "themes");
    return set_specimen(request, data);
}

}
