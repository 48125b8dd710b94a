// A résumé's texts as words, each with where it stands: what terms are looked for in.
#pragma once

#include "compiler/stages/model/resume.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace quoin::matching {

constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

struct Spot {                      // indices into the résumé
    std::size_t section = nowhere; // nowhere: in the heading
    std::size_t entry = nowhere;
    std::size_t further = nowhere; // nowhere: the entry itself
    std::size_t bullet = nowhere;
    std::size_t field = nowhere;
    std::size_t item = nowhere; // of a list

    bool operator==(const Spot&) const = default;
    auto operator<=>(const Spot&) const = default;
};

enum class Where { bullet, head, list, prose }; // head: a role, a degree, an employer
std::string_view name_of(Where where);

struct WordOfText {
    std::string lower, stem;
    std::size_t offset = 0, length = 0; // bytes of the text
};

struct TextOfResume {
    Spot spot;
    Where where{};
    bool job = false; // it names a role or an employer
    const model::Text* text = nullptr;
    std::string plain;
    std::vector<WordOfText> words;
};

// In the order of the source. Contact lines are none of them.
std::vector<TextOfResume> texts_of(const model::Resume& resume);

std::vector<WordOfText> words_of(std::string_view plain);

}
