// Whole files proofread and mended: nothing crashes or hangs, every place is within its line, and
// the mends that are taken, as `quoin mend` takes them, leave a file that reads as a résumé
// again.
#include "compiler/advice/mend.hpp"
#include "compiler/advice/proof.hpp"
#include "compiler/stages/model/build.hpp"

#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <optional>
#include <string>

namespace quoin::advice {

namespace {

const english::Language& language() {
    static const english::Language one{std::filesystem::path(QUOIN_DATA_FOLDER)};
    return one;
}

struct Read {
    Sources sources;
    std::optional<model::Resume> resume;
    Proof proof;
};

std::optional<model::Resume> resume_of(Sources& sources, std::string bytes) {
    Diagnostics diagnostics;
    const auto file = sources.add("fuzz.resume", std::move(bytes), diagnostics);
    if (!file) return std::nullopt;
    return model::build_resume(sources, *file, QUOIN_DATA_FOLDER "/themes/words", diagnostics);
}

bool read(Read& out, std::string bytes) {
    constexpr model::Date day{2026, 11, std::nullopt, 20};
    out.resume = resume_of(out.sources, std::move(bytes));
    if (!out.resume) return false;
    out.proof = run_proof({.sources = out.sources,
                           .resume = *out.resume,
                           .today = out.resume->settings.updated->value_or(day),
                           .language = language(),
                           .bullets = read_bullets(*out.resume, language()),
                           .read_on = day});
    return true;
}

void require(bool holds) {
    if (!holds) std::abort();
}

bool is_within(const Place& place, const Sources& sources) {
    if (place.line == 0 || place.column == 0) return true;
    const auto& file = sources.file(place.file);
    return place.line <= file.line_starts.size() &&
           place.column - 1 + place.length <= file.line(place.line).size();
}

std::vector<Edit> check_findings(const Read& read) {
    std::vector<Edit> edits;
    for (const Finding& finding : read.proof.findings) {
        require(is_within(finding.place, read.sources));
        require(find_check(finding.check) != nullptr);
        for (const Edit& edit : finding.safe_mend) {
            require(is_within(edit.place, read.sources));
            if (edit.place.file == 0) edits.push_back(edit);
        }
    }
    return edits;
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    std::string bytes(data, data + size);
    for (int round = 0; round < 4; ++round) {
        Read now;
        if (!read(now, bytes)) {
            require(round == 0);
            return 0;
        }
        constexpr std::size_t most_questions = 40;
        const SourceFile& file = now.sources.file(0);
        const std::vector<Edit> edits =
            good_edits(check_findings(now), most_questions, [&](const std::vector<Edit>& some) {
                Sources after;
                return resume_of(after, mend(file, some).bytes).has_value();
            });
        const Mended mended = mend(file, edits);
        if (mended.made == 0) return 0;
        bytes = mended.bytes;
    }
    return 0;
}

}
