// Characters that are no letters to a portal: ligatures, private use, replacement characters.
#include "compiler/portal/faults.hpp"

#include "compiler/base/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace quoin::portal {

namespace {

bool is_ligature(char32_t code) { // Unicode's Alphabetic Presentation Forms, the Latin ones
    return code >= 0xFB00 && code <= 0xFB06;
}

bool is_private(char32_t code) {
    return (code >= 0xE000 && code <= 0xF8FF) || (code >= 0xF0000 && code <= 0x10FFFF);
}

bool is_replacement(char32_t code) {
    return code == 0xFFFD;
}

struct Seen {
    std::vector<std::string> words;
    std::size_t count = 0; // characters

    void add(const std::string& word, std::size_t characters) {
        if (characters == 0) return;
        constexpr std::size_t shown = 64;
        count += characters;
        if (words.size() < shown) words.push_back(word);
    }
};

template<typename Kind>
std::size_t count_of(std::string_view word, const Kind& kind) {
    std::size_t count = 0;
    while (!word.empty())
        count += kind(take_character(word).code);
    return count;
}

struct AllSeen {
    Seen ligatures, private_letters, private_signs, replacements;
};

void look_at(const std::string& word, AllSeen& seen) {
    const std::size_t characters = count_of(word, [](char32_t) { return true; });
    const std::size_t hidden = count_of(word, is_private);
    // alone it is a bullet or an icon, whose loss costs nothing but itself
    (characters == hidden && characters <= 2 ? seen.private_signs : seen.private_letters)
        .add(word, hidden);
    seen.ligatures.add(word, count_of(word, is_ligature));
    seen.replacements.add(word, count_of(word, is_replacement));
}

AllSeen look(const Reading& reading) {
    AllSeen seen;
    for (const ReadLine& line : reading.lines)
        for (const ReadWord& word : line.words)
            if (!all_ascii(word.text)) look_at(word.text, seen);
    return seen;
}

std::string count_in_characters(std::size_t count) {
    return fmt::format("{} {}", count, count == 1 ? "character" : "characters");
}

}

void check_characters(const Evidence& evidence, ScanFaults& faults) {
    const AllSeen seen = look(evidence.by_place);
    if (seen.replacements.count > 0)
        report<messages::unreadable_characters>(
            faults, count_in_characters(seen.replacements.count), list_of(seen.replacements.words));
    if (seen.private_letters.count > 0)
        report<messages::private_characters>(faults,
                                             count_in_characters(seen.private_letters.count));
    if (seen.private_signs.count > 0)
        report<messages::private_signs>(faults, count_in_characters(seen.private_signs.count));
    if (seen.ligatures.count > 0)
        report<messages::ligatures>(faults, list_of(seen.ligatures.words));
}

}
