#include "compiler/commands/themes/themes.hpp"

#include "compiler/base/data_places.hpp"
#include "compiler/base/json_text.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/set/set.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

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
    bool is_house = false;
};

std::string themes_text(const std::vector<Listed>& all) {
    std::vector<std::string> names;
    std::size_t widest = 0;
    for (const Listed& theme : all) {
        names.push_back(theme.name + (theme.is_house ? " (house)" : ""));
        widest = std::max(widest, names.back().size());
    }
    std::string list;
    for (std::size_t i = 0; i < all.size(); ++i)
        list += fmt::format("{:<{}}  {}\n", names[i], widest, all[i].use);
    return list;
}

// grammar/schemas/themes.schema.json holds its form.
std::string themes_json(const std::vector<Listed>& all) {
    auto themes = nlohmann::ordered_json::array();
    for (const Listed& theme : all)
        themes.push_back({{"name", theme.name}, {"house", theme.is_house}, {"use", theme.use}});
    return json_text({{"version", 1}, {"themes", std::move(themes)}});
}

// Themes that cannot be read are reported instead.
ExitCode list_themes(const std::filesystem::path& folder, bool is_for_programs) {
    Sources sources;
    Diagnostics diagnostics;
    std::vector<Listed> all;
    for (const std::string& name : theme::theme_names(folder))
        if (const auto theme = theme::read_theme(sources, folder, name, folder, {}, diagnostics))
            all.push_back({name, theme->use, name == theme::house_theme});
    if (is_for_programs ? !print_output("themes", themes_json(all))
                        : !print_report("themes", themes_text(all)))
        return ExitCode::errors;
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
    if (request.specimen.empty()) return list_themes(themes_in(data), request.format == "json");
    return set_specimen(request, data);
}

}
