#include "compiler/transcription/style_table.hpp"

#include <charconv>
#include <cmath>

namespace quoin::transcription {

namespace {

template<typename Value>
void inherit(std::optional<Value>& own, const std::optional<Value>& inherited) {
    if (!own) own = inherited;
}

}

StyleLook StyleTable::whole(std::string_view id) const {
    constexpr int deepest = 20; // a circle ends there
    StyleLook look;
    std::string next(id);
    for (int depth = 0; depth < deepest && !next.empty(); ++depth) {
        const auto found = styles_.find(next);
        if (found == styles_.end()) break;
        const StyleLook& style = found->second;
        inherit(look.size, style.size);
        inherit(look.left, style.left);
        inherit(look.above, style.above);
        inherit(look.strong, style.strong);
        inherit(look.slanted, style.slanted);
        inherit(look.listed, style.listed);
        inherit(look.outline, style.outline);
        next = style.parent;
    }
    return look;
}

std::optional<double> number_of(std::string_view text) {
    double number = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), number);
    if (read.ec != std::errc() || !std::isfinite(number) || std::abs(number) > 1e6)
        return std::nullopt;
    return number;
}

std::optional<double> points_of(std::string_view length) {
    const auto number = number_of(length);
    if (!number) return std::nullopt;
    if (length.ends_with("in")) return *number * 72;
    if (length.ends_with("cm")) return *number * 72 / 2.54;
    if (length.ends_with("mm")) return *number * 72 / 25.4;
    return length.ends_with("pt") ? number : std::nullopt;
}

}
