// A résumé proofread from text, with its page, as `quoin proof` does it.
#pragma once

#include "compiler/advice/proof.hpp"
#include "compiler/stages/typeset.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::fixtures {

constexpr model::Date read_on{2026, 11, std::nullopt, 20}; // all tests are read on this day

inline const english::Language& language() {
    static const english::Language one{std::filesystem::path(QUOIN_DATA_FOLDER)};
    return one;
}

inline fonts::Fonts& fonts() {
    static Sources sources;
    static Diagnostics diagnostics;
    static const std::unique_ptr<fonts::Fonts> one = fonts::Fonts::open(
        sources, std::filesystem::path(QUOIN_DATA_FOLDER) / "fonts", diagnostics);
    REQUIRE(one != nullptr);
    return *one;
}

inline std::string contents(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    REQUIRE(in.good());
    return {std::istreambuf_iterator<char>(in), {}};
}

inline std::string clean_resume() {
    return contents(std::filesystem::path(QUOIN_SOURCE_FOLDER) / "tests/advice/clean.resume");
}

// The clean résumé with one piece replaced.
inline std::string clean_with(const std::string& find, const std::string& replace) {
    std::string text = clean_resume();
    const std::size_t at = text.find(find);
    REQUIRE(at != std::string::npos);
    return text.replace(at, find.size(), replace);
}

struct ProofOf {
    Sources sources;
    Diagnostics diagnostics;
    std::optional<model::Resume> resume;
    std::optional<stages::Typeset> typeset;
    advice::Proof proof;

    std::vector<advice::Finding> of(std::string_view check) const {
        std::vector<advice::Finding> found;
        for (const auto* all : {&proof.findings, &proof.reminders})
            for (const advice::Finding& finding : *all)
                if (finding.check == check) found.push_back(finding);
        return found;
    }
};

struct HowRead {
    model::Date day = read_on;
    bool with_page = false;
    std::function<void(stages::Typeset&)> change = {}; // of the page, before it is looked at
    std::vector<std::string> tags = {};
    std::filesystem::path path = {}; // read from there, not from the text
    const office::Office* office = nullptr;
};

inline std::unique_ptr<ProofOf> proof_of(const std::string& text, const HowRead& reading = {}) {
    auto one = std::make_unique<ProofOf>();
    const auto file = reading.path.empty()
                          ? one->sources.add("draft.resume", text, one->diagnostics)
                          : one->sources.read(reading.path, one->diagnostics);
    REQUIRE(file);
    stages::Choices choices;
    choices.tags = reading.tags;
    one->resume =
        selected_resume(one->sources, *file, choices, QUOIN_DATA_FOLDER, one->diagnostics);
    if (!one->resume)
        for (const Diagnostic& diagnostic : one->diagnostics.all())
            MESSAGE(format(diagnostic, one->sources));
    REQUIRE(one->resume);
    if (reading.with_page) {
        one->typeset = typeset_selected(*one->resume, one->sources, *file, choices,
                                        QUOIN_DATA_FOLDER, fonts(), one->diagnostics);
        REQUIRE(one->typeset);
        if (reading.change) reading.change(*one->typeset);
    }
    const auto texts = advice::read_texts(*one->resume, language());
    one->proof =
        quoin::advice::run_proof({.sources = one->sources,
                                  .resume = *one->resume,
                                  .typeset = one->typeset ? &*one->typeset : nullptr,
                                  .today = one->resume->settings.updated->value_or(reading.day),
                                  .language = language(),
                                  .texts = texts,
                                  .bullets = advice::read_bullets(*one->resume, texts, language()),
                                  .read_on = reading.day,
                                  .everything = reading.tags.empty(),
                                  .office = reading.office});
    return one;
}

// What one check says of the clean résumé with one piece replaced.
struct CheckCase {
    std::string_view check;
    std::string find, replace;
    std::string told; // a piece of what is said; empty: nothing is
};

inline void check_each(std::span<const CheckCase> cases) {
    for (const CheckCase& one : cases) {
        CAPTURE(one.check);
        CAPTURE(one.replace);
        std::string all;
        for (const advice::Finding& finding :
             proof_of(clean_with(one.find, one.replace))->of(one.check))
            all += finding.text + "; " + finding.suggestion + '\n';
        CAPTURE(all);
        CHECK(one.told.empty() == all.empty());
        CHECK(all.find(one.told) != std::string::npos);
    }
}

}
