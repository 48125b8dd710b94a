// Text that is too small to read, or cannot be seen at all.
#include "compiler/portal/faults.hpp"

#include "compiler/portal/letters.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::portal {

namespace {

constexpr double small = 8; // pt; common practice has 10 to 12
constexpr double tiny = 5;

void check_sizes(const Evidence& evidence, ScanFaults& faults) {
    std::size_t small_letters = 0, tiny_letters = 0;
    for (const LookOfText& text : evidence.looks.texts) {
        if (text.size < small) small_letters += text.letters;
        if (text.size < tiny) tiny_letters += text.letters;
    }
    if (tiny_letters >= few_letters) report<messages::tiny_text>(faults, tiny_letters, tiny);
    // a fifth, so that a footnote does not count
    else if (small_letters * 5 >= evidence.looks.letters && small_letters >= few_letters)
        report<messages::small_text>(faults, small_letters, small);
}

std::size_t dot_at(double at, std::size_t most) {
    return static_cast<std::size_t>(std::clamp(at, 0.0, static_cast<double>(most)));
}

// One tone all over: nothing can be seen there.
bool is_blank(const PagePicture& picture, const ReadBox& box, const ReadPage& page) {
    constexpr int one_tone = 10; // of 255; rounding at edges gives a few
    const double across = static_cast<double>(picture.width) / page.width;
    const double down = static_cast<double>(picture.height) / page.height;
    const std::size_t left = dot_at(std::ceil(box.left * across), picture.width);
    const std::size_t right = dot_at(std::floor(box.right * across), picture.width);
    const std::size_t top = dot_at(std::ceil(box.top * down), picture.height);
    const std::size_t bottom = dot_at(std::floor(box.bottom * down), picture.height);
    // too small a part of the picture shows nothing either way
    if (right < left + 6 || bottom < top + 4) return false;
    int darkest = 255, lightest = 0;
    for (std::size_t y = top; y < bottom; ++y)
        for (const char dot :
             std::string_view(picture.greys).substr(y * picture.width + left, right - left)) {
            darkest = std::min(darkest, int{static_cast<unsigned char>(dot)});
            lightest = std::max(lightest, int{static_cast<unsigned char>(dot)});
        }
    return lightest - darkest < one_tone;
}

std::vector<std::string> invisible_words(const Evidence& evidence) {
    constexpr std::size_t most = 1000;
    constexpr std::size_t least_letters = 3;
    std::vector<std::string> words;
    for (const ReadLine& line : evidence.by_place.lines) {
        if (line.page >= evidence.pictures.size()) continue;
        const ReadPage& page = evidence.by_place.pages[line.page];
        if (page.width < 1 || page.height < 1) continue;
        for (const ReadWord& word : line.words)
            if (words.size() < most && count_letters(word.text).letters >= least_letters &&
                is_blank(evidence.pictures[line.page], word.box, page))
                words.push_back(word.text);
    }
    return words;
}

void check_visible(const Evidence& evidence, ScanFaults& faults) {
    const std::vector<std::string> words = invisible_words(evidence);
    if (words.size() >= 2) report<messages::hidden_text>(faults, words.size(), list_of(words));
}

// Text that is drawn invisibly over a picture: a scan that a machine has read.
void check_machine_read(const Evidence& evidence, ScanFaults& faults) {
    const std::size_t all = letters_of(evidence.by_place);
    if (evidence.images == 0 || all < few_letters || 2 * evidence.looks.letters > all) return;
    report<messages::machine_read_scan>(faults);
}

}

void check_looks(const Evidence& evidence, ScanFaults& faults) {
    check_sizes(evidence, faults);
    check_visible(evidence, faults);
    check_machine_read(evidence, faults);
}

}
