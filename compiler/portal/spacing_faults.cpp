// Words that come out in pieces, or run together.
#include "compiler/portal/faults.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/portal/letters.hpp"

#include <algorithm>

namespace quoin::portal {

namespace {

constexpr std::size_t shortest_run = 4; // `S U M M`; three may be initials
constexpr std::size_t most_listed = 64;
constexpr std::size_t longest_word = 25;
constexpr std::size_t longest_small_word = 30; // no English word in small letters comes near

// A run of neighbours in the alphabet is a list: `A B C D`.
bool is_alphabetical(std::string_view run) {
    for (std::size_t i = 1; i < run.size(); ++i)
        if (run[i] != run[i - 1] + 1) return false;
    return true;
}

// The spaces inside stand as wide as spaces in a line, not as columns of a table.
bool stands_close(const ReadWord& a, const ReadWord& b) {
    return b.box.left - a.box.right < 0.8 * a.box.height();
}

// The spread words of a line, put together.
std::vector<std::string> spread_words(const ReadLine& line) {
    std::vector<std::string> found;
    std::string run;
    std::size_t letters = 0;
    const ReadWord* before = nullptr;
    const auto end_run = [&] {
        if (letters >= shortest_run && !is_alphabetical(run)) found.push_back(run);
        run.clear();
        letters = 0;
    };
    for (const ReadWord& word : line.words) {
        const bool single = is_single_letter(word.text);
        if (!single || (before && !stands_close(*before, word))) end_run();
        if (single) {
            run += word.text;
            ++letters;
        }
        before = &word;
    }
    end_run();
    return found;
}

struct LettersOfWord {
    std::size_t letters = 0, inner_capitals = 0; // the latter behind a small letter
    bool ascii = true;
};

LettersOfWord letters_of(std::string_view word) {
    LettersOfWord all;
    for (bool small_before = false; !word.empty();) {
        const Character character = take_character(word);
        const bool capital = is_capital(character.code);
        all.inner_capitals += capital && small_before;
        small_before = is_letter(character.code) && !capital;
        all.letters += is_letter(character.code);
        all.ascii = all.ascii && character.code < 0x80;
    }
    return all;
}

bool is_glued(std::string_view word) {
    if (word.size() <= longest_word ||
        word.find_first_of("@/\\:._=&-#%+<>(){}[]") != std::string_view::npos)
        return false;
    const LettersOfWord all = letters_of(word);
    // one inner capital may be a name, as in `McNaughton`; other scripts do not space words
    return all.letters > longest_word && all.ascii &&
           (all.inner_capitals >= 2 ||
            (all.letters > longest_small_word && all.inner_capitals == 0 &&
             count_letters(word).capitals < 2));
}

}

void check_spacing(const Evidence& evidence, ScanFaults& faults) {
    std::vector<std::string> spread, glued;
    // in the order of the file, words are cut where simple readers cut them
    for (const ReadLine& line : evidence.by_file.lines)
        for (const std::string& word : spread_words(line))
            add_once(spread, word, most_listed);
    for (const ReadLine& line : evidence.by_place.lines)
        for (const ReadWord& word : line.words)
            if (is_glued(word.text)) add_once(glued, word.text, most_listed);
    if (!spread.empty())
        report<messages::split_words>(faults, list_of(spread),
                                      spread.size() == 1 ? "comes" : "come");
    if (!glued.empty()) report<messages::glued_words>(faults, list_of(glued));
}

}
