// The rules of the offices that résumés belong to: found, and each file read once.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/office/office.hpp"

#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>

namespace quoin::advice {

struct OfficeChoice {  // what the command line asks for
    std::string file;  // empty: the one that is found beside or above the résumé
    bool none = false; // no office's rules at all
};

// One file, whose rules may name all checks and the themes of that folder. None after an error.
std::optional<office::Office> read_rules(const Sources& sources, std::uint32_t file,
                                         const std::filesystem::path& themes,
                                         Diagnostics& diagnostics);

// One hand asks first for every résumé that others then ask for: from then on nothing changes, and
// any number may ask.
class Offices {
public:
    // `themes` is the folder of themes.
    Offices(std::filesystem::path themes, OfficeChoice choice);

    // Of a résumé by its path; empty: of standard input, looked for from the working folder. Null
    // if there are none, or if they are at fault, which diagnostics() says.
    const office::Office* of(const std::filesystem::path& resume);

    // Of every file that was read.
    const Diagnostics& diagnostics() const { return diagnostics_; }
    const Sources& sources() const { return sources_; }

private:
    const office::Office* read(const std::filesystem::path& path);

    std::filesystem::path themes_;
    OfficeChoice choice_;
    Sources sources_;
    Diagnostics diagnostics_;
    std::map<std::filesystem::path, std::unique_ptr<office::Office>> read_; // null: at fault
    std::map<std::filesystem::path, const office::Office*> by_folder_;
};

}
