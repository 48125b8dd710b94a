// Problems to choose from, made at random: sections with entries, entries with bullets and lists.
#pragma once

#include "compiler/tailoring/problem.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <random>

namespace quoin::tailoring_tests {

struct Size {
    std::size_t sections = 2, entries = 2, bullets = 4, terms = 5; // at most so many of each
    double part = 0.5; // of all heights, that the capacity is
};

class Maker {
public:
    explicit Maker(unsigned seed) : random_(seed) {}

    tailoring::Problem problem(const Size& size) {
        tailoring::Problem made;
        for (std::size_t t = 0; t < size.terms; ++t) {
            const std::int64_t first = between(100, 1000);
            made.terms.push_back({first, between(0, first / 2)});
        }
        for (std::size_t s = 0; s < size.sections; ++s)
            add_section(made, size);
        std::int64_t all = 0;
        for (const tailoring::Piece& piece : made.pieces)
            all += piece.height;
        made.capacity = static_cast<std::int64_t>(size.part * static_cast<double>(all));
        return made;
    }

    std::int64_t between(std::int64_t least, std::int64_t most) {
        return least +
               static_cast<std::int64_t>(random_() % static_cast<std::uint64_t>(most - least + 1));
    }

private:
    bool one_in(std::int64_t times) { return between(1, times) == 1; }

    std::size_t add(tailoring::Problem& made, std::size_t within, std::int64_t height,
                    std::int64_t worth, std::int64_t terms = 0) {
        tailoring::Piece piece;
        piece.within = within;
        piece.height = height;
        piece.worth = worth;
        for (std::int64_t i = 0; i < terms && !made.terms.empty(); ++i)
            piece.shows.push_back(static_cast<std::size_t>(
                between(0, static_cast<std::int64_t>(made.terms.size()) - 1)));
        std::ranges::sort(piece.shows);
        const auto doubled = std::unique(piece.shows.begin(), piece.shows.end());
        piece.shows.erase(doubled, piece.shows.end());
        made.pieces.push_back(piece);
        return made.pieces.size() - 1;
    }

    void add_section(tailoring::Problem& made, const Size& size) {
        const std::size_t section = add(made, tailoring::none, between(10, 20), 0);
        made.pieces[section].least = 1;
        made.pieces[section].must = one_in(5);
        for (std::int64_t e = between(1, static_cast<std::int64_t>(size.entries)); e > 0; --e)
            add_entry(made, section, size);
    }

    void add_entry(tailoring::Problem& made, std::size_t section, const Size& size) {
        const std::size_t entry =
            add(made, section, between(20, 30), between(0, 60), between(0, 1));
        made.pieces[entry].must = one_in(8);
        const std::size_t bullets = add(made, entry, 0, 0);
        made.pieces[bullets].must = true;
        const auto count =
            static_cast<std::size_t>(between(0, static_cast<std::int64_t>(size.bullets)));
        for (std::size_t b = 0; b < count; ++b) {
            const std::size_t bullet =
                add(made, bullets, 10 * between(1, 3), between(1, 40), between(0, 3));
            made.pieces[bullet].must = one_in(15);
        }
        made.pieces[bullets].least = std::min<std::size_t>(2, count);
        made.pieces[bullets].most = 5;
        if (one_in(4)) add_list(made, entry);
    }

    // One of its lengths is taken.
    void add_list(tailoring::Problem& made, std::size_t entry) {
        const std::size_t list = add(made, entry, 0, 0);
        made.pieces[list].must = true;
        made.pieces[list].least = made.pieces[list].most = 1;
        for (std::int64_t lines = 0; lines <= between(1, 2); ++lines)
            add(made, list, 10 * lines, 10 * lines, 2 * lines);
    }

    std::mt19937 random_;
};

}
