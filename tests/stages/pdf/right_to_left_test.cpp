// Order on the line against ICU's bidirectional algorithm (Unicode Standard Annex #9).
#include "compiler/stages/pdf/right_to_left.hpp"

#include "compiler/base/utf8.hpp"

#include <doctest/doctest.h>
#include <unicode/ubidi.h>
#include <unicode/unistr.h>

#include <cstddef>
#include <memory>
#include <string_view>
#include <vector>

namespace {

using quoin::pdf::ShownGlyph;

// One a character; all are from the Basic Multilingual Plane. Its number is its id.
std::vector<ShownGlyph> glyphs_of(std::string_view text) {
    std::vector<ShownGlyph> glyphs;
    while (!text.empty()) {
        ShownGlyph& glyph = glyphs.emplace_back();
        glyph.text = quoin::take_character(text).bytes;
        glyph.id = static_cast<std::uint32_t>(glyphs.size() - 1);
    }
    return glyphs;
}

std::vector<std::int32_t> ids(const std::vector<ShownGlyph>& glyphs) {
    std::vector<std::int32_t> order;
    for (const ShownGlyph& glyph : glyphs)
        order.push_back(static_cast<std::int32_t>(glyph.id));
    return order;
}

std::vector<std::int32_t> order_by_icu(std::string_view text) {
    const auto line =
        icu::UnicodeString::fromUTF8(icu::StringPiece(text.data(), static_cast<int>(text.size())));
    const std::unique_ptr<UBiDi, decltype(&ubidi_close)> bidi(ubidi_open(), ubidi_close);
    UErrorCode fault = U_ZERO_ERROR;
    ubidi_setPara(bidi.get(), line.getBuffer(), line.length(), 0, nullptr, &fault);
    std::vector<std::int32_t> order(static_cast<std::size_t>(line.length()));
    ubidi_getVisualMap(bidi.get(), order.data(), &fault);
    REQUIRE(U_SUCCESS(fault));
    return order;
}

}

TEST_CASE("right to left: glyphs come where the bidirectional algorithm has them") {
    for (const std::string_view text :
         {"Mara Ibsen", "שלום", "משה כהן", "Name: משה כהן, Port Ellery", "א", "אב-גד הו",
          "שלום, רב.", "نور الحسن", "Amal (نور الحسن)", "בן and בת", "Unit 12, שלום רב",
          "שָלוֹם רָב"}) {
        CAPTURE(text);
        auto glyphs = glyphs_of(text);
        quoin::pdf::set_right_to_left(glyphs);
        CHECK(ids(glyphs) == order_by_icu(text));
    }
}

TEST_CASE("right to left: what several glyphs stand for is told by the first of them") {
    auto glyphs = glyphs_of("אבגד");
    glyphs[1].actual_text = "ב";
    glyphs[1].actual_length = 2; // with the one behind it
    quoin::pdf::set_right_to_left(glyphs);
    CHECK(ids(glyphs) == std::vector<std::int32_t>{3, 2, 1, 0});
    CHECK(glyphs[1].actual_length == 2);
    CHECK(glyphs[2].actual_length == 0);
}
