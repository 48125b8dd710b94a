// The order that serves a posting best: bullets within an entry, and which entries come under
// "relevant". By BM25: Robertson and Zaragoza, "The Probabilistic Relevance Framework: BM25 and
// Beyond" (Foundations and Trends in Information Retrieval 3, 2009).
#pragma once

#include "compiler/matching/coverage.hpp"

#include <cstddef>
#include <vector>

namespace quoin::matching {

struct Bm25 {
    double k1 = 1.5, b = 0.75;

    // Of one term in one document: how often it is there, how long the document and the average
    // are, in words.
    double score(double idf, double times, double length, double average) const;
};

// Of `all` documents, `with` of which have the term: ln(1 + (all - with + 0.5) / (with + 0.5)).
double inverse_frequency(std::size_t with, std::size_t all);

// Of a best score what still serves a posting as well, for a reader: what scores so stands first,
// in the writer's own order, since a score tells no more than that.
constexpr double relevant_share = 1.0 / 3;
constexpr bool serves(double score, double best) {
    return score > 0 && score >= best * relevant_share;
}

struct RankedBullet {
    std::size_t bullet = 0; // index in its entry
    double score = 0;
    std::vector<const postings::Term*> shows;
};

struct RankedEntry {
    Spot spot;                         // of the entry or the further position
    double score = 0;                  // the sum of its bullets' and of its head's
    std::vector<RankedBullet> bullets; // those that serve it first, else as they stand
    bool reordered = false;            // than in the source
};

// Every entry with bullets, in the order of the source. Terms weigh as the posting has them; what
// says a thing in other words counts for half, a slip or a near form for nothing.
std::vector<RankedEntry> rank(const model::Resume& resume, const Coverage& coverage);

}
