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

// The glosses' words in a tree of their signs from the last to the first, so that a text is read
// once, however many there are and however long (A. V. Aho and M. J. Corasick, "Efficient String
// Matching", Communications of the ACM 18 (1975) 333-340). Typographic signs stand for the typed
// ones, and a space that does not break for one that does.
class GlossTree {
public:
    GlossTree() = default;
    explicit GlossTree(std::span<const std::string> words);

    // Where they stand in a text between the ends of words, the longest where several do.
    std::vector<GlossedRange> ranges_in(std::string_view text) const;

private:
    struct Sign {
        char32_t code = 0;
        std::size_t end = 0; // byte
    };
    using Signs = std::vector<Sign>;
    struct Node {
        std::map<char32_t, std::uint32_t> next;
        std::optional<std::uint32_t> gloss; // that begins here
        std::size_t length = 0;             // in signs
        std::uint32_t fallback = 0;         // of its longest beginning that is in the tree
        std::uint32_t shorter = 0;          // the longest gloss that is such a one; 0: none
    };

    static Signs signs_of(std::string_view text);
    void link_beginnings();
    std::uint32_t step(std::uint32_t node, char32_t code) const;
    const Node* longest_at(std::size_t begin, std::uint32_t node, const Signs& signs) const;

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
