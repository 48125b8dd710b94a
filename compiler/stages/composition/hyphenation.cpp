// The dictionary is read once and only read from then on, so that threads may share it.
#include "compiler/stages/composition/hyphenation.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/utf8.hpp"

#include <hyphen.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <stdexcept>
#include <string>
#include <utility>

namespace quoin::composition {

struct Hyphenation::Dictionary {
    std::unique_ptr<HyphenDict, decltype(&hnj_hyphen_free)> patterns;
};

namespace {

// Longer ones are no words, and libhyphen holds their whole length on the stack.
constexpr std::size_t longest_divided = 60;

std::size_t word_end(std::string_view text, std::size_t begin) {
    while (begin < text.size() && text[begin] != ' ' &&
           !text.substr(begin).starts_with(no_break_space))
        ++begin;
    return begin;
}

// Its bytes without the punctuation at either end.
std::string_view bare(std::string_view word) {
    constexpr std::string_view signs = "()[]\"'.,;:!?";
    const std::size_t begin = std::min(word.find_first_not_of(signs), word.size());
    const std::size_t last = word.find_last_not_of(signs);
    return last == std::string_view::npos ? std::string_view()
                                          : word.substr(begin, last + 1 - begin);
}

bool may_be_divided(std::string_view word) {
    return word.size() >= least_before_hyphen + least_after_hyphen &&
           word.size() <= longest_divided && std::all_of(word.begin(), word.end(), is_small_letter);
}

void add_points(HyphenDict* patterns, std::string_view word, std::size_t offset,
                std::vector<std::size_t>& points) {
    std::string marks(word.size() + 5, '\0'); // as much as hyphen.h asks for
    char** replacements = nullptr;
    int* positions = nullptr;
    int* removed = nullptr;
    if (hnj_hyphen_hyphenate2(patterns, word.data(), static_cast<int>(word.size()), marks.data(),
                              nullptr, &replacements, &positions, &removed) != 0)
        return;
    for (std::size_t i = 0; i + 1 < word.size(); ++i) {
        const bool divides = (marks[i] & 1) != 0 && (!replacements || !replacements[i]);
        if (divides && i + 1 >= least_before_hyphen && word.size() - i - 1 >= least_after_hyphen)
            points.push_back(offset + i + 1);
    }
    for (std::size_t i = 0; replacements && i < word.size(); ++i)
        std::free(replacements[i]); // allocated by libhyphen
    std::free(replacements);
    std::free(positions);
    std::free(removed);
}

}

Hyphenation::Hyphenation(std::filesystem::path file) : file_(std::move(file)) {}

Hyphenation::~Hyphenation() = default;

const Hyphenation::Dictionary& Hyphenation::dictionary() const {
    std::call_once(once_, [&] {
        auto read = std::make_unique<Dictionary>(
            Dictionary{{hnj_hyphen_load(file_.c_str()), hnj_hyphen_free}});
        if (!read->patterns)
            throw std::runtime_error("cannot read the hyphenation patterns " + file_.string());
        dictionary_ = std::move(read);
    });
    return *dictionary_;
}

std::vector<std::size_t> Hyphenation::points(std::string_view text) const {
    std::vector<std::size_t> points;
    for (std::size_t begin = 0; begin < text.size();) {
        const std::size_t end = word_end(text, begin);
        const std::string_view word = bare(text.substr(begin, end - begin));
        if (may_be_divided(word))
            add_points(dictionary().patterns.get(), word,
                       static_cast<std::size_t>(word.data() - text.data()), points);
        begin = end + (end < text.size() && text[end] != ' ' ? 2 : 1);
    }
    return points;
}

const Hyphenation& english_hyphenation(const std::filesystem::path& folder) {
    static std::mutex mutex;
    static std::map<std::filesystem::path, Hyphenation> all;
    const std::scoped_lock lock(mutex);
    const auto path = folder / "hyphenation" / "hyph_en_US.dic";
    return all.try_emplace(path, path).first->second;
}

}
