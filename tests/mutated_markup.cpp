// Changes of lines for fuzz targets that read labelled lines, beside libFuzzer's own of bytes:
// lines and blocks are swapped, copied, dropped and joined, and labels, bullets and tags are put
// in, so that most of what is tried passes the grammar and comes to what is behind it.
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <random>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);
extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size,
                                               std::size_t most, unsigned seed);
extern "C" std::size_t LLVMFuzzerCustomCrossOver(const std::uint8_t* first, std::size_t first_size,
                                                 const std::uint8_t* second,
                                                 std::size_t second_size, std::uint8_t* out,
                                                 std::size_t most, unsigned seed);

namespace quoin { namespace {

using Lines = std::vector<std::string>;

Lines lines_of(const std::uint8_t* data, std::size_t size) {
    Lines lines{""};
    for (const std::uint8_t* at = data; at != data + size; ++at)
        if (*at == '\n')
            lines.emplace_back();
        else
            lines.back() += static_cast<char>(*at);
    return lines;
}

std::size_t write(const Lines& lines, std::uint8_t* out, std::size_t most) {
    std::string text = lines.front();
    for (std::size_t i = 1; i < lines.size(); ++i)
        text += '\n' + lines[i];
    text.resize(std::min(text.size(), most));
    std::ranges::copy(text, out);
    return text.size();
}

class Mutation {
public:
    Mutation(Lines& lines, unsigned seed) : lines_(lines), random_(seed) {}

    void run() {
        constexpr std::array changes{
            &Mutation::swap_lines,  &Mutation::copy_line,  &Mutation::drop_line,
            &Mutation::join_lines,  &Mutation::relabel,    &Mutation::add_labelled,
            &Mutation::turn_bullet, &Mutation::add_tags,   &Mutation::add_mark,
            &Mutation::copy_block,  &Mutation::drop_block, &Mutation::swap_blocks,
            &Mutation::mistype,     &Mutation::push_in};
        for (std::size_t left = 1 + below(3); left > 0; --left)
            (this->*changes[below(changes.size())])();
    }

    // A block of the other's stands behind one of these.
    void take_block_of(const Lines& other) {
        const auto [begin, end] = block_of(other, below(other.size()));
        lines_.insert(lines_.begin() + at(block_of(lines_, below(lines_.size())).second),
                      other.begin() + at(begin), other.begin() + at(end));
    }

private:
    using Block = std::pair<std::size_t, std::size_t>; // [first, second)

    std::size_t below(std::size_t count) { return random_() % count; }
    std::string& any_line() { return lines_[below(lines_.size())]; }
    static std::ptrdiff_t at(std::size_t index) { return static_cast<std::ptrdiff_t>(index); }

    // The lines around one up to an empty one, that one with them.
    static Block block_of(const Lines& lines, std::size_t inside) {
        std::size_t begin = inside, end = inside;
        while (begin > 0 && !lines[begin - 1].empty())
            --begin;
        while (end < lines.size() && !lines[end].empty())
            ++end;
        return {begin, std::min(end + 1, lines.size())};
    }

    void swap_lines() { std::swap(any_line(), any_line()); }
    void copy_line() {
        const std::string line = any_line();
        lines_.insert(lines_.begin() + at(below(lines_.size() + 1)), line);
    }
    void drop_line() { drop({below(lines_.size()), 0}); }
    // As the markup goes on with a line, and as it does not.
    void join_lines() {
        const std::size_t first = below(lines_.size());
        if (first + 1 == lines_.size()) return;
        if (below(2) == 0) {
            lines_[first + 1].insert(0, "  ");
        } else {
            lines_[first] += ' ' + lines_[first + 1];
            drop({first + 1, 0});
        }
    }

    std::string some_label() {
        if (below(2) == 0) { // another line's
            const std::string& line = any_line();
            const std::size_t colon = line.find(':');
            if (colon != std::string::npos) return line.substr(0, colon);
        }
        const auto all = trade::vocabulary();
        return std::string(all[below(all.size())].label);
    }
    void relabel() {
        std::string& line = any_line();
        const std::size_t colon = line.find(':');
        if (colon != std::string::npos) line.replace(0, colon, some_label());
    }
    void add_labelled() {
        const std::string& line = any_line();
        std::string made =
            some_label() + ": " + line.substr(std::min(line.find(':') + 1, line.size()));
        lines_.insert(lines_.begin() + at(below(lines_.size() + 1)), std::move(made));
    }
    void turn_bullet() {
        std::string& line = any_line();
        if (line.starts_with("- "))
            below(2) == 0 ? line.erase(0, 2) : line.insert(0, "  ");
        else
            line.insert(0, "- ");
    }
    // Slips: no colon or another sign for it, and the openings of other markups.
    void mistype() {
        constexpr std::array<std::string_view, 5> colons{"", " ", " =", "::", "："};
        constexpr std::array<std::string_view, 10> openings{"-",  "*",  "• ",    "1. ", "// ",
                                                            "; ", "# ", "<!-- ", "| ",  "**"};
        std::string& line = any_line();
        const std::size_t colon = line.find(':');
        if (colon != std::string::npos && below(2) == 0)
            line.replace(colon, 1, colons[below(colons.size())]);
        else
            line.insert(0, openings[below(openings.size())]);
    }
    void push_in() { any_line().insert(0, below(2) == 0 ? "  " : "\t"); }
    void add_tags() {
        constexpr std::array<std::string_view, 7> tags{" {a}",    " {b}",      " {!a}", " {a b}",
                                                       " {keep}", " {a keep}", " {"};
        any_line() += tags[below(tags.size())];
    }
    void add_mark() {
        constexpr std::array<std::string_view, 14> marks{"*",
                                                         "_",
                                                         "**",
                                                         "\\",
                                                         "<https://a.example>",
                                                         "\"b\" <c@d.example>",
                                                         ";",
                                                         ", ",
                                                         "--",
                                                         "~",
                                                         "\u00e9",
                                                         "2025 - present",
                                                         "Jun 2026",
                                                         "(3.7/4.0)"};
        std::string& line = any_line();
        line.insert(below(line.size() + 1), marks[below(marks.size())]);
    }

    void copy_block() {
        const Lines other = lines_;
        take_block_of(other);
    }
    void drop_block() { drop(block_of(lines_, below(lines_.size()))); }
    void swap_blocks() {
        const Block block = block_of(lines_, below(lines_.size()));
        const Lines moved(lines_.begin() + at(block.first), lines_.begin() + at(block.second));
        drop(block);
        const std::size_t to = block_of(lines_, below(lines_.size())).second;
        lines_.insert(lines_.begin() + at(to), moved.begin(), moved.end());
    }
    void drop(Block block) {
        const std::size_t end = std::max(block.first + 1, block.second);
        lines_.erase(lines_.begin() + at(block.first), lines_.begin() + at(end));
        if (lines_.empty()) lines_.emplace_back();
    }

    Lines& lines_;
    std::minstd_rand random_;
};

}}

std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most,
                                    unsigned seed) {
    if (seed % 3 == 0) return LLVMFuzzerMutate(data, size, most);
    quoin::Lines lines = quoin::lines_of(data, size);
    quoin::Mutation(lines, seed).run();
    return quoin::write(lines, data, most);
}

std::size_t LLVMFuzzerCustomCrossOver(const std::uint8_t* first, std::size_t first_size,
                                      const std::uint8_t* second, std::size_t second_size,
                                      std::uint8_t* out, std::size_t most, unsigned seed) {
    quoin::Lines lines = quoin::lines_of(first, first_size);
    quoin::Mutation(lines, seed).take_block_of(quoin::lines_of(second, second_size));
    return quoin::write(lines, out, most);
}
