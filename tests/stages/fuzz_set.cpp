// Fuzz target: the whole way to the page and its bytes. What is read twice comes out as the same
// bytes, though the second time the shapes of its words are known.
#include "compiler/stages/pdf/pdf.hpp"
#include "compiler/stages/plain/plain.hpp"
#include "compiler/stages/typeset.hpp"
#include "tests/held_files.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <utility>

namespace quoin::stages {

namespace {

const std::filesystem::path data_of_target{QUOIN_DATA_FOLDER};

fonts::Fonts& fonts_of_target() {
    static const std::unique_ptr<fonts::Fonts> all = [] {
        Sources sources;
        Diagnostics diagnostics;
        return fonts::Fonts::open(sources, data_of_target / "fonts", diagnostics);
    }();
    return *all;
}

const theme::Theme& theme_of_target() {
    static const std::optional<theme::Theme> house = [] {
        Sources sources;
        Diagnostics diagnostics;
        const auto asks = sources.add("fuzz.resume", "name: A\n", diagnostics);
        return theme_for({}, {}, sources, *asks, data_of_target, diagnostics);
    }();
    return *house;
}

struct Page {
    std::string pdf, plain;

    bool operator==(const Page&) const = default;
};

std::optional<Page> page_of(const std::string& input) {
    Sources sources;
    Diagnostics diagnostics;
    std::string text = test::hold_words_and_part(sources, input);
    const auto file = sources.add("fuzz.resume", std::move(text), diagnostics);
    if (!file) return std::nullopt;
    auto resume = selected_resume(sources, *file, {}, data_of_target, diagnostics);
    if (!resume) return std::nullopt;
    const auto set = typeset_in(*std::move(resume), theme_of_target(), data_of_target,
                                fonts_of_target(), diagnostics);
    if (!set) return std::nullopt;
    const pages::Pages pages = make_pages(*set, fit_or_draft(*set));
    return Page{pdf::write_pdf(set->composition, pages, std::nullopt),
                plain::plain_text(set->composition)};
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string input(data, data + size);
    const auto page = page_of(input);
    if (page && page_of(input) != page) std::abort();
    return 0;
}

}
