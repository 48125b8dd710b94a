// Text with edits made as Language Server Protocol 3.17 has an editor make them ("TextEdit[]"): all
// places are those of the text before.
#pragma once

#include "compiler/session/text_lines.hpp"

#include <nlohmann/json.hpp>

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace quoin::fixtures {

inline std::string applied(std::string text, const nlohmann::json& edits,
                           session::Units units = session::Units::utf16) {
    struct Piece {
        std::size_t begin, end;
        std::string text;
    };
    std::vector<Piece> pieces;
    const std::string before = text;
    const session::TextLines lines(before);
    const auto offset = [&](const nlohmann::json& at) {
        return lines.offset_of(
            {at["line"].get<std::uint32_t>(), at["character"].get<std::uint32_t>()}, units);
    };
    for (const auto& edit : edits)
        pieces.push_back({offset(edit["range"]["start"]), offset(edit["range"]["end"]),
                          edit["newText"].get<std::string>()});
    std::ranges::stable_sort(pieces, {}, &Piece::begin);
    for (auto piece = pieces.rbegin(); piece != pieces.rend(); ++piece) {
        if (piece != pieces.rbegin()) CHECK(piece->end <= std::prev(piece)->begin);
        text.replace(piece->begin, piece->end - piece->begin, piece->text);
    }
    return text;
}

}
