// One résumé proofread, and the forms that its findings are printed in.
#pragma once

#include "compiler/advice/offices.hpp"
#include "compiler/advice/proofread.hpp"
#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/base/source_map.hpp"
#include "compiler/english/language.hpp"
#include "compiler/stages/typeset.hpp"

#include <nlohmann/json_fwd.hpp>

#include <array>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::commands {

using advice::Proofread;
using advice::ProofTools;

std::unique_ptr<Proofread> proofread(const std::string& input, const stages::Choices& choices,
                                     const ProofTools& tools);
using Proofreads = std::span<const std::unique_ptr<Proofread>>;

// "must [two-lines]: …" after its place, one a line, and once for each check why; with `excerpts`,
// the source lines too.
std::string proof_text(const Proofread& one, bool excerpts);
nlohmann::ordered_json proof_json(Proofreads all);
nlohmann::ordered_json proof_sarif(Proofreads all);                      // SARIF 2.1.0
std::string proof_for_programs(Proofreads all, std::string_view format); // "json" or "sarif"
std::string proof_summary(const Proofread& one);
nlohmann::ordered_json summary_json(Proofreads all);
std::string proof_roster(const Proofread& one); // one line

using Counts = std::array<std::size_t, 3>; // by advice::Weight

struct PageTaken { // by the résumé, as far as it can be typeset
    std::size_t pages = 0, allowed = 0;
    double size = 0; // pt, of the text
};

struct Verdict {
    std::string_view word; // "ready", "nearly ready" or "not ready"
    std::string readiness; // "ready to send"
    std::string good;      // what is good already, parted by `;`; may be empty
    Counts found{}, set_aside{};
    std::vector<const advice::Finding*> first; // of each check that matters most, one; the heaviest
    std::optional<PageTaken> page;
};
Verdict verdict_of(const Proofread& one);

// The pages of the résumé as `set` makes them (as a draft, if they are too many), every finding a
// numbered note at its words, and a sheet behind them that lists the notes: the bytes of a tagged
// PDF. It must have been typeset. `time` is document_time().
std::string marked_proof(const Proofread& one, const ProofTools& tools,
                         std::optional<std::int64_t> time);

// Columns as editors and SARIF count them: in the characters of the file as it is on the disk.
class Columns {
public:
    explicit Columns(const Sources& sources) : sources_(sources) {}
    CharacterColumns of(const Place& place); // which has a line
    const Sources& sources() const { return sources_; }

private:
    const Sources& sources_;
    std::map<std::uint32_t, SourceMap> maps_;
};

}
