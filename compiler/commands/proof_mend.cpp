// `quoin proof --mend`: the safe mends, made in the source files.
#include "compiler/commands/proof_report.hpp"

#include "compiler/commands/line_diff.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/model/build.hpp"
#include "compiler/output/write_file.hpp"
#include "compiler/proof/mend.hpp"
#include "compiler/proof/walk.hpp"

#include <fmt/format.h>

#include <map>
#include <unistd.h>

namespace quoin {

namespace {

constexpr int most_rounds = 8; // an edit that overlapped another waits for the next round

using EditsByFile = std::map<std::uint32_t, std::vector<Edit>>;

// Of the whole résumé, whatever a build for a tag would leave out.
EditsByFile edits_of(const Sources& sources, const Resume& resume, const ProofTools& tools) {
    const ProofContext context{.sources = sources,
                               .resume = resume,
                               .typeset = nullptr,
                               .today = resume.settings.updated->value_or(tools.read_on),
                               .language = tools.language,
                               .read_on = tools.read_on,
                               .everything = true};
    EditsByFile edits;
    for (Finding& finding : run_proof(context).findings)
        for (Edit& edit : finding.safe_mend)
            edits[edit.place.file].push_back(std::move(edit));
    return edits;
}

struct Change {
    std::string name; // the file's, as messages show it
    std::string target;
    std::string before, after;
    std::size_t made = 0;
};

// The first file again and again until nothing is left to mend in it.
void mend_further(const std::string& name, Change& change, const ProofTools& tools) {
    for (int round = 1; round < most_rounds; ++round) {
        Sources sources;
        Diagnostics diagnostics;
        const auto file = sources.add(name, change.after, diagnostics);
        const auto resume = file ? build_resume(sources, *file, diagnostics) : std::nullopt;
        if (!resume) return;
        EditsByFile edits = edits_of(sources, *resume, tools);
        const Mended mended = mend(sources.file(*file), std::move(edits[*file]));
        if (mended.made == 0 || mended.bytes == change.after) return;
        change.after = mended.bytes;
        change.made += mended.made;
    }
}

std::string told(const Change& change) {
    return fmt::format("{}: {} made\n", change.name, counted(change.made, "mend", "mends"));
}

}

MendOutcome mend_input(const std::string& input, const ProofTools& tools, bool dry_run) {
    MendOutcome outcome;
    Sources sources;
    Diagnostics diagnostics;
    const bool standard = input == "-";
    const auto file =
        standard ? sources.read_standard_input(diagnostics) : sources.read(input, diagnostics);
    const auto resume = file ? build_resume(sources, *file, diagnostics) : std::nullopt;
    diagnostics.sort();
    outcome.messages = all_messages(diagnostics, sources, isatty(STDERR_FILENO) == 1);
    outcome.failed = !resume;
    if (!resume) return outcome;
    std::vector<Change> changes;
    EditsByFile all = edits_of(sources, *resume, tools);
    all.try_emplace(*file);
    for (auto& [index, edits] : all) {
        const SourceFile& source = sources.file(index);
        Mended mended = mend(source, std::move(edits));
        changes.push_back({source.name, source.path.string(), source.bytes, std::move(mended.bytes),
                           mended.made});
        if (index == *file && mended.made > 0)
            mend_further(standard ? source.name : source.path.string(), changes.back(), tools);
    }
    for (const Change& change : changes) {
        if (dry_run) {
            outcome.output += line_diff(change.name, change.before, change.after);
            continue;
        }
        const bool first = change.name == sources.file(*file).name;
        if (standard && first) outcome.output += change.after;
        if (change.after == change.before) continue;
        outcome.messages += told(change);
        if (standard && first) continue;
        if (const auto fault = write_file(change.target, change.after)) {
            outcome.messages += fmt::format("{}: error: {}\n", change.name, *fault);
            outcome.failed = true;
        }
    }
    return outcome;
}

}
