// Whole files proofread and mended: nothing crashes or hangs, every place is within its line, and
// the mends that are taken, as `quoin mend` takes them, leave a file that reads as a résumé
// again, with the same words on the page but for those that were mended. What is read twice, one
// input in eight, is judged and mended to the same bytes.
#include "compiler/advice/mend.hpp"
#include "compiler/advice/proof.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/stages/model/build.hpp"
#include "tests/held_files.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <functional>
#include <iterator>
#include <optional>
#include <set>
#include <string>
#include <vector>

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
    bytes = test::hold_words_and_part(sources, std::move(bytes));
    const auto file = sources.add("fuzz.resume", std::move(bytes), diagnostics);
    if (!file) return std::nullopt;
    return model::build_resume(sources, *file, QUOIN_DATA_FOLDER "/themes/words", diagnostics);
}

bool read(Read& out, std::string bytes) {
    constexpr model::Date day{2026, 11, std::nullopt, 20};
    out.resume = resume_of(out.sources, std::move(bytes));
    if (!out.resume) return false;
    const auto texts = read_texts(*out.resume, language());
    out.proof = run_proof({.sources = out.sources,
                           .resume = *out.resume,
                           .today = out.resume->settings.updated->value_or(day),
                           .language = language(),
                           .texts = texts,
                           .bullets = read_bullets(*out.resume, texts, language()),
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

std::multiset<std::string> words_on_page(const model::Resume& resume) {
    std::multiset<std::string> words;
    for (const TextInResume& part : read_texts(resume, language()))
        for (const WordAt& word : part.words)
            words.emplace(part.small(word));
    return words;
}

// An edit takes the words that it stands on, and may part or join those beside it.
void require_words_kept(const Read& before, const Read& after, const std::vector<Edit>& edits) {
    std::size_t may_go = 0;
    for (const Edit& edit : edits)
        may_go += words_in(source_at(before.sources, edit.place)).size() + 2;
    const auto old_words = words_on_page(*before.resume), new_words = words_on_page(*after.resume);
    std::vector<std::string> lost;
    std::ranges::set_difference(old_words, new_words, std::back_inserter(lost));
    require(lost.size() <= may_go);
}

// Judged again from its bytes.
void require_same_again(const Read& first, const std::string& bytes) {
    Read again;
    require(read(again, bytes));
    require(std::ranges::equal(
        first.proof.findings, again.proof.findings, [](const Finding& a, const Finding& b) {
            return a.check == b.check && a.place == b.place && a.text == b.text &&
                   a.suggestion == b.suggestion && a.safe_mend == b.safe_mend;
        }));
}

// It takes as long as all else, and what hangs on more than the input does so for many.
bool is_read_twice(const std::string& bytes) {
    return std::hash<std::string>{}(bytes) % 8 == 0;
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
    const std::string part = bytes.substr(std::min(bytes.find('\f'), bytes.size()));
    std::optional<Read> before;
    std::vector<Edit> made;
    for (int round = 0; round < 4; ++round) {
        Read now;
        if (!read(now, bytes)) {
            require(round == 0);
            return 0;
        }
        if (before) require_words_kept(*before, now, made);
        if (round == 0 && is_read_twice(bytes)) require_same_again(now, bytes);
        constexpr std::size_t most_questions = 40;
        const SourceFile& file = now.sources.file(0);
        const std::vector<Edit> edits =
            good_edits(check_findings(now), most_questions, [&](const std::vector<Edit>& some) {
                Sources after;
                return resume_of(after, mend(file, some).bytes + part).has_value();
            });
        const Mended mended = mend(file, edits);
        if (mended.made == 0) return 0;
        require(mended.bytes == mend(file, edits).bytes);
        bytes = mended.bytes + part;
        made = edits;
        before = std::move(now);
    }
    return 0;
}

}
