// Order on the line against ICU's bidirectional algorithm (Unicode Standard Annex #9).
#include "compiler/stages/pdf/right_to_left.hpp"

#include "compiler/base/utf8.hpp"

#include <doctest/doctest.h>
#include <unicode/ubidi.h>
#include <unicode/unistr.h>

#include <algorithm>
#include <cstddef>
#include <memory>
#include <numeric>
#include <string_view>
#include <vector>

namespace {

using quoin::pdf::ShownGlyph;

constexpr double tracking = 0.05, word_space = 0.1;

// One a character, each of another width; all from the Basic Multilingual Plane.
std::vector<ShownGlyph> glyphs_of(std::string_view text) {
    std::vector<ShownGlyph> glyphs;
    while (!text.empty()) {
        ShownGlyph& glyph = glyphs.emplace_back();
        glyph.text = quoin::take_character(text).bytes;
        glyph.advance = 0.3 + 0.01 * static_cast<double>(glyphs.size());
        glyph.space = glyph.text == " ";
    }
    return glyphs;
}

double width_of(const ShownGlyph& glyph) {
    return glyph.advance + tracking + (glyph.space ? word_space : 0);
}

std::vector<double> places_of(const std::vector<ShownGlyph>& glyphs) {
    std::vector<double> places;
    double pen = 0;
    for (const ShownGlyph& glyph : glyphs) {
        places.push_back(pen + glyph.x_offset);
        pen += width_of(glyph);
    }
    return places;
}

std::vector<std::size_t> from_left_to_right(const std::vector<double>& places) {
    std::vector<std::size_t> order(places.size());
    std::iota(order.begin(), order.end(), 0U);
    std::ranges::sort(order, {}, [&](std::size_t i) { return places[i]; });
    return order;
}

std::vector<std::size_t> order_by_icu(std::string_view text) {
    const auto line =
        icu::UnicodeString::fromUTF8(icu::StringPiece(text.data(), static_cast<int>(text.size())));
    const std::unique_ptr<UBiDi, decltype(&ubidi_close)> bidi(ubidi_open(), ubidi_close);
    UErrorCode fault = U_ZERO_ERROR;
    ubidi_setPara(bidi.get(), line.getBuffer(), line.length(), 0, nullptr, &fault);
    std::vector<int32_t> order(static_cast<std::size_t>(line.length()));
    ubidi_getVisualMap(bidi.get(), order.data(), &fault);
    REQUIRE(U_SUCCESS(fault));
    return {order.begin(), order.end()};
}

}

TEST_CASE("right to left: letters stand where the bidirectional algorithm has them, side by side") {
    for (const std::string_view text :
         {"Mara Ibsen", "שלום", "משה כהן", "Name: משה כהן, Port Ellery", "א", "אב-גד הו",
          "שלום, רב.", "نور الحسن", "Amal (نور الحسن)", "בן and בת", "Unit 12, שלום רב"}) {
        CAPTURE(text);
        auto glyphs = glyphs_of(text);
        quoin::pdf::set_right_to_left(glyphs, tracking, word_space);
        const auto places = places_of(glyphs);
        const auto order = from_left_to_right(places);
        CHECK(order == order_by_icu(text));
        double pen = 0;
        for (const std::size_t i : order) {
            CHECK(places[i] == doctest::Approx(pen));
            pen += width_of(glyphs[i]);
        }
    }
}

TEST_CASE("right to left: a mark goes with the letter it stands on") {
    auto glyphs = glyphs_of("ab שָ בָ"); // qamats, of no width
    glyphs[4].advance = glyphs[7].advance = -tracking;
    quoin::pdf::set_right_to_left(glyphs, tracking, word_space);
    const auto places = places_of(glyphs);
    CHECK(places[4] == doctest::Approx(places[3]));
    CHECK(places[7] == doctest::Approx(places[6]));
    CHECK(places[6] < places[3]);
}
