#include "compiler/tailoring/problem.hpp"

namespace quoin::tailoring {

std::vector<std::vector<std::size_t>> parts_of(const Problem& problem) {
    const std::size_t count = problem.pieces.size();
    std::vector<std::vector<std::size_t>> parts(count + 1);
    for (std::size_t piece = 0; piece < count; ++piece) {
        const std::size_t within = problem.pieces[piece].within;
        parts[within == none ? count : within].push_back(piece);
    }
    return parts;
}

bool is_lawful(const Problem& problem, const Taken& taken) {
    std::vector<std::size_t> counts(problem.pieces.size());
    for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
        const Piece& piece = problem.pieces[p];
        const bool may = piece.within == none || taken[piece.within];
        if (taken[p] ? !may : may && piece.must) return false;
        if (taken[p] && piece.within != none) ++counts[piece.within];
    }
    for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
        const Piece& piece = problem.pieces[p];
        if (taken[p] && (counts[p] < piece.least || counts[p] > piece.most)) return false;
    }
    return true;
}

std::int64_t height_of(const Problem& problem, const Taken& taken) {
    std::int64_t height = 0;
    for (std::size_t p = 0; p < problem.pieces.size(); ++p)
        if (taken[p]) height += problem.pieces[p].height;
    return height;
}

std::int64_t worth_of(const Problem& problem, const Taken& taken) {
    std::int64_t worth = 0;
    std::vector<std::size_t> shown(problem.terms.size());
    for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
        if (!taken[p]) continue;
        worth += problem.pieces[p].worth;
        for (const std::size_t term : problem.pieces[p].shows)
            ++shown[term];
    }
    for (std::size_t t = 0; t < problem.terms.size(); ++t) {
        if (shown[t] > 0) worth += problem.terms[t].first;
        if (shown[t] > 1) worth += problem.terms[t].second;
    }
    return worth;
}

}
