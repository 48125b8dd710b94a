// The wording that messages about the model share.
#include "compiler/stages/model/wording.hpp"

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/suggest.hpp"

#include <ranges>

namespace quoin::model {

std::string in_quotes(std::string_view text) {
    return worded("'{}'", text);
}

std::string listed(std::span<const std::string_view> words) {
    const auto quoted = [](std::string_view word) { return "'" + std::string(word) + "'"; };
    return joined(words | std::views::transform(quoted), " or ");
}

std::string did_you_mean(std::string_view word, std::span<const std::string_view> candidates) {
    const auto near = nearest(word, candidates);
    return near ? "; did you mean '" + std::string{*near} + "'?" : std::string{};
}

}
