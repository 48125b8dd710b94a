// Two wordings compared word by word, by a shortest edit script (Myers, "An O(ND) Difference
// Algorithm and Its Variations", Algorithmica 1, 1986).
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::redlining {

struct Word { // or a sign that stands before or after one
    std::string_view text;
    std::size_t begin = 0, end = 0; // bytes
};

// White parts them and is none of them, a space that does not break included.
std::vector<Word> words_of(std::string_view text);

enum class Fate { kept, deleted, inserted };

struct Stretch { // of words next to each other with one fate: [begin, end), of the old or new words
    Fate fate{};
    std::size_t begin = 0, end = 0; // kept and inserted: of the new ones; deleted: of the old ones
};

// As few words deleted and inserted as can be; what is deleted stands before what is inserted for
// it. Wordings that share next to nothing and are very long are taken to be deleted and inserted
// whole between what they begin and end with alike.
std::vector<Stretch> word_changes(const std::vector<Word>& before, const std::vector<Word>& after);

}
