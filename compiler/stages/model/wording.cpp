// The wording that messages about the model share.
#include "compiler/stages/model/wording.hpp"

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/suggest.hpp"

namespace quoin::model {

std::string in_quotes(std::string_view text) {
    return worded("'{}'", text);
}

std::string listed(std::span<const std::string_view> words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) text += i + 1 == words.size() ? " or " : ", ";
        text.append("'").append(words[i]).append("'");
    }
    return text;
}

std::string did_you_mean(std::string_view word, std::span<const std::string_view> candidates) {
    const auto near = nearest(word, candidates);
    return near ? "; did you mean '" + std::string{*near} + "'?" : std::string{};
}

}
