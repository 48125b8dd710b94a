// The safe mends of a résumé and of all that it takes in, made round after round: what is left
// reads as a résumé of the same shape, without a fault that was not there.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/english/language.hpp"
#include "compiler/office/office.hpp"
#include "compiler/stages/model/resume.hpp"

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>

namespace quoin::advice {

// The bytes of every file of the résumé; standard input has the empty path.
using Texts = std::map<std::filesystem::path, std::string>;
Texts texts_of(const Sources& sources);

struct MendMeans {
    const english::Language& language;
    model::Date read_on;
    const office::Office* office = nullptr; // whose rules it is read by; null: nobody's
};

struct SourceReading {
    std::filesystem::path words; // the folder of the words that a page says by itself
    Sources sources;
    Diagnostics diagnostics;
    std::optional<std::uint32_t> file; // the one that was named
    std::optional<model::Resume> resume;

    void build();
    std::pair<std::size_t, std::size_t> faults() const; // what weighs more first
};
using ReadingOwner = std::unique_ptr<SourceReading>;

using MendsMade = std::map<std::filesystem::path, std::size_t>; // how many, in each file

struct AllMended {
    ReadingOwner last; // null if nothing was changed
    MendsMade made;
    Diagnostics left; // at their places in the last reading, else in the first
};
AllMended mend_all(const SourceReading& first, const MendMeans& means);

}
