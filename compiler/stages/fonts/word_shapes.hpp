// Words as a face has shaped them: half of a page's are spaces and words that it has already, and
// nearly all of a next page's.
#pragma once

#include "compiler/stages/fonts/fonts.hpp"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <mutex>
#include <string>
#include <unordered_map>
#include <vector>

namespace quoin::fonts {

struct ShapedGlyph {
    std::uint32_t id = 0;
    std::int32_t advance = 0, x_offset = 0, y_offset = 0; // font units
    std::uint32_t cluster = 0; // the first of the word's characters that it stands for
};

using ShapedWord = std::vector<ShapedGlyph>;

class WordShapes { // safe to use from several threads
public:
    std::shared_ptr<const ShapedWord> find(const std::string& key) const; // null: none is kept
    // No more than `most` are: memory stays flat however many pages are set.
    void keep(std::string key, std::shared_ptr<const ShapedWord> word);

private:
    static constexpr std::size_t most = 8192;

    mutable std::mutex mutex_; // guards words_
    std::unordered_map<std::string, std::shared_ptr<const ShapedWord>> words_;
};

WordShapes& word_shapes_of(const Face& face); // as long as the face is open

}
