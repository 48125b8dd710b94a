#include "compiler/matching/rank.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace quoin::matching {

namespace {

Spot entry_of(Spot spot) {
    spot.bullet = spot.field = spot.item = nowhere;
    return spot;
}

struct Shown { // of terms in one text
    std::vector<const postings::Term*> terms;
    std::vector<double> credits; // of each
    std::size_t words = 0;
};

double credit_of(Nearness how) {
    return credit(is_found(how) ? Verdict::shown : Verdict::not_found);
}

class Ranker {
public:
    Ranker(const model::Resume& resume, const Coverage& coverage) {
        for (const TextOfResume& text : texts_of(resume)) {
            if (text.where == Where::list || text.spot.section == nowhere) continue;
            shown_[text.spot].words = text.words.size();
            words_ += static_cast<double>(text.words.size());
        }
        for (const TermCoverage& covered : coverage.terms)
            for (const Showing& showing : covered.showings)
                if (const auto at = shown_.find(showing.spot);
                    at != shown_.end() && is_shown_so(showing.how)) {
                    at->second.terms.push_back(covered.term);
                    at->second.credits.push_back(credit_of(showing.how));
                    ++with_[covered.term];
                }
    }

    std::vector<RankedEntry> rank() const {
        std::map<Spot, RankedEntry> entries;
        for (const auto& [spot, shown] : shown_) {
            RankedEntry& entry = entries[entry_of(spot)];
            entry.spot = entry_of(spot);
            const double score = score_of(shown);
            entry.score += score;
            if (spot.bullet != nowhere) entry.bullets.push_back({spot.bullet, score, shown.terms});
        }
        std::vector<RankedEntry> ranked;
        for (auto& [spot, entry] : entries) {
            if (entry.bullets.empty()) continue;
            std::ranges::sort(entry.bullets, {}, &RankedBullet::bullet);
            const double best = std::ranges::max(entry.bullets, {}, &RankedBullet::score).score;
            std::stable_partition(
                entry.bullets.begin(), entry.bullets.end(),
                [&](const RankedBullet& bullet) { return serves(bullet.score, best); });
            entry.reordered = !std::ranges::is_sorted(entry.bullets, {}, &RankedBullet::bullet);
            ranked.push_back(std::move(entry));
        }
        return ranked;
    }

private:
    double score_of(const Shown& shown) const {
        const double average = words_ / static_cast<double>(shown_.size());
        double score = 0;
        for (std::size_t i = 0; i < shown.terms.size(); ++i) {
            const double idf = inverse_frequency(with_.at(shown.terms[i]), shown_.size());
            score += shown.credits[i] * shown.terms[i]->weight *
                     Bm25{}.score(idf, 1, static_cast<double>(shown.words), average);
        }
        return score;
    }

    std::map<Spot, Shown> shown_;
    std::map<const postings::Term*, std::size_t> with_;
    double words_ = 0;
};

}

double Bm25::score(double idf, double times, double length, double average) const {
    return idf * times * (k1 + 1) / (times + k1 * (1 - b + b * length / average));
}

double inverse_frequency(std::size_t with, std::size_t all) {
    const double n = static_cast<double>(with), total = static_cast<double>(all);
    return std::log(1 + (total - n + 0.5) / (n + 0.5));
}

std::vector<RankedEntry> rank(const model::Resume& resume, const Coverage& coverage) {
    return Ranker(resume, coverage).rank();
}

}
