// Words of which a reader aloud has to know more: their language, or what they are short for.
#pragma once

#include "compiler/stages/model/resume.hpp"

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::composition {

struct GlossedRange { // bytes [begin, end) of a text
    std::size_t begin = 0, end = 0;
    std::uint32_t gloss = 0; // index
};

// The glosses' words in a tree of their signs, so that a text is read once, however many there are.
// Typographic signs stand for the typed ones, and a space that does not break for one that does.
class GlossTree {
public:
    GlossTree() = default;
    explicit GlossTree(std::span<const std::string> words);

    // Where they stand in a text between the ends of words, the longest where several do.
    std::vector<GlossedRange> ranges_in(std::string_view text) const;

private:
    struct Node {
        std::map<char32_t, std::uint32_t> next;
        std::optional<std::uint32_t> gloss; // that ends here
    };

    GlossedRange longest_at(std::string_view text, std::size_t at) const;

    std::vector<Node> nodes_{1};
};

// As they are written and, for what is set so, in all capitals of `language` (BCP 47).
class GlossedWords {
public:
    GlossedWords(std::span<const model::Gloss> glosses, const std::string& language);

    const GlossTree& tree(bool all_capitals) const { return all_capitals ? capitals_ : typed_; }

private:
    GlossTree typed_, capitals_;
};

}
