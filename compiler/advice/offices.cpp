#include "compiler/advice/offices.hpp"

#include "compiler/advice/proof.hpp"
#include "compiler/base/message.hpp"
#include "compiler/office/find.hpp"
#include "compiler/office/read.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <utility>

namespace quoin::advice {

std::optional<office::Office> read_rules(const Sources& sources, std::uint32_t file,
                                         const std::filesystem::path& themes,
                                         Diagnostics& diagnostics) {
    office::Known names{{}, theme::theme_names(themes)};
    for (const Check* check : all_checks())
        names.checks.push_back(check->name);
    return office::read_rules(sources, file, names, diagnostics);
}

Offices::Offices(std::filesystem::path themes, OfficeChoice choice)
    : themes_(std::move(themes)), choice_(std::move(choice)) {}

const office::Office* Offices::of(const std::filesystem::path& resume) {
    if (choice_.none) return nullptr;
    if (!choice_.file.empty()) return read(choice_.file);
    const auto [known, is_new] = by_folder_.try_emplace(resume.parent_path(), nullptr);
    if (!is_new) return known->second;
    if (const auto path = office::find_rules(resume)) known->second = read(*path);
    return known->second;
}

const office::Office* Offices::read(const std::filesystem::path& path) {
    const auto [known, is_new] = read_.try_emplace(path, nullptr);
    if (!is_new) return known->second.get();
    const auto file = sources_.read(path, diagnostics_);
    if (!file) return nullptr;
    if (auto office = read_rules(sources_, *file, themes_, diagnostics_))
        known->second = std::make_unique<office::Office>(std::move(*office));
    diagnostics_.sort();
    return known->second.get();
}

}
