// Where English words may be divided, by Liang's patterns as libhyphen reads them.
#pragma once

#include <cstddef>
#include <filesystem>
#include <memory>
#include <mutex>
#include <string_view>
#include <vector>

namespace quoin::composition {

// Two letters at least stay on the line and three go to the next: common practice.
constexpr std::size_t least_before_hyphen = 2;
constexpr std::size_t least_after_hyphen = 3;

class Hyphenation {
public:
    // `file` is a dictionary of libhyphen's form. It is read when a word first asks for it.
    explicit Hyphenation(std::filesystem::path file);
    ~Hyphenation();
    Hyphenation(const Hyphenation&) = delete;
    Hyphenation& operator=(const Hyphenation&) = delete;

    // Byte offsets into `text` where its words may be divided, in order. Words are what stands
    // between spaces, the punctuation around it apart; one with any character but a small letter
    // from a to z is left alone: a name, an acronym, an address, a compound.
    std::vector<std::size_t> points(std::string_view text) const;

private:
    struct Dictionary;

    const Dictionary& dictionary() const;

    std::filesystem::path file_;
    mutable std::once_flag once_;
    mutable std::unique_ptr<const Dictionary> dictionary_;
};

// The English dictionary of a data folder, one for all threads.
const Hyphenation& english_hyphenation(const std::filesystem::path& folder);

}
