#include "compiler/postings/part_odds.hpp"

#include "compiler/postings/headings.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::postings {

namespace {

// Of each sign, in logarithms: that what has it is left out, required, preferred, a duty.
constexpr std::array<PartChances, PartSign::in_all> odds_of_signs{{
    {1.97, -0.88, -0.25, -0.83}, // always
    {0.51, -0.21, 0.02, -0.32},  // headed
    {0.87, -0.38, -0.20, -0.30}, // whole out
    {-0.55, 0.63, 0.34, -0.43},  // whole required
    {0.00, 0.00, 0.00, 0.00},    // whole preferred
    {0.03, -0.08, -0.01, 0.06},  // whole duties
    {-0.00, 0.06, -0.04, -0.02}, // says first asked
    {1.37, -0.43, -0.53, -0.41}, // says out
    {-0.01, -1.63, 2.17, -0.52}, // says preferred
    {-0.26, 1.47, -0.64, -0.58}, // says surely required
    {-0.22, -0.69, -0.71, 1.63}, // says duties
    {0.10, 1.38, -0.78, -0.70},  // says required
    {-0.13, 0.25, -0.51, 0.39},  // says you
    {0.66, 0.08, 0.37, -1.12},   // says we
    {-0.08, 0.11, 0.41, -0.44},  // asks
    {-1.03, 0.53, -1.11, 1.61},  // with base
    {-1.05, 0.59, -0.94, 1.40},  // with third
    {0.13, -1.27, 0.15, 0.99},   // with gerund
    {-0.42, -0.05, -0.23, 0.71}, // with applying
    {-0.05, 0.67, -0.52, -0.10}, // with you will
    {-0.76, 0.06, -0.17, 0.87},  // with you
    {-0.38, -0.50, 1.29, -0.40}, // with if
    {-0.06, 1.45, -0.43, -0.96}, // with we
    {-0.75, -0.15, 0.12, 0.78},  // with the
    {-1.06, 0.48, 0.56, 0.02},   // with a thing
    {-1.07, 0.50, 1.05, -0.49},  // lead in
    {-0.51, 1.10, -0.41, -0.19}, // qualification
    {-0.18, -0.56, 1.63, -0.89}, // preference
    {-0.18, 1.39, -0.59, -0.62}, // need
    {-0.44, 1.02, -0.24, -0.34}, // sure need
    {-0.58, -0.53, -1.03, 2.14}, // duty
    {0.54, -0.13, 0.17, -0.58},  // pay
    {0.71, 0.26, -0.66, -0.31},  // some pay
    {0.77, -0.16, -0.31, -0.30}, // equality
    {0.89, -0.47, -0.43, 0.01},  // some equality
    {0.70, -0.15, -0.27, -0.28}, // applying
    {0.26, 0.50, -0.99, 0.23},   // some applying
    {0.65, -0.08, -0.10, -0.48}, // employer
    {0.43, -0.61, 0.28, -0.10},  // some employer
    {1.83, -1.68, -0.08, -0.07}, // nothing asked
    {0.95, -0.22, -0.01, -0.72}, // given
    {-1.11, -0.30, 2.62, -1.21}, // spoken language
    {-0.83, 0.90, 1.28, -1.35},  // credential
    {-0.55, 0.32, -0.21, 0.44},  // of you
    {0.15, 0.09, -0.33, 0.09},   // of us
    {1.24, -0.59, -0.24, -0.41}, // sum or address
    {-0.56, -0.65, 1.66, -0.45}, // supposing
    {0.41, 0.55, -0.08, -0.88},  // denying
    {0.54, -0.09, -0.24, -0.21}, // past
    {-0.68, 0.54, -0.47, 0.61},  // person does
    {0.01, 0.24, -0.19, -0.06},  // exclaiming
    {-0.88, -0.58, 0.11, 1.35},  // long one
    {0.56, -0.47, 0.78, -0.87},  // short one
    {-0.69, 0.20, -0.13, 0.62},  // item
    {0.32, 1.02, -0.85, -0.49},  // years
    {0.21, 0.72, -0.80, -0.13},  // modal
    {1.29, -0.31, -1.59, 0.61},  // early
    {2.43, -1.22, -0.22, -0.99}, // late
}};

// The logarithms of how often a part follows one, the last row at a posting's beginning; within a
// paragraph; and of how often each stands at all.
constexpr std::array<PartChances, part_kinds + 1> after_part{{
    {-0.21, -3.35, -4.12, -1.96},
    {-1.83, -1.92, -0.41, -3.62},
    {-0.07, -4.09, -3.40, -4.09},
    {-2.09, -0.42, -4.29, -1.58},
    {-0.14, -2.30, -4.09, -4.09},
}};
constexpr std::array<PartChances, part_kinds> within_paragraph{{
    {-0.12, -3.51, -3.51, -3.00},
    {-1.79, -0.25, -4.36, -3.26},
    {-1.88, -3.83, -0.22, -3.83},
    {-2.17, -2.17, -3.78, -0.29},
}};
constexpr PartChances at_all{-0.40, -2.03, -2.39, -2.23};
constexpr double trust_in_signs = 0.7; // they are not independent of each other

double log_of_sum(const PartChances& logs) {
    const double most = *std::ranges::max_element(logs);
    double sum = 0;
    for (const double log : logs)
        sum += std::exp(log - most);
    return most + std::log(sum);
}

PartChances normal(PartChances logs) {
    const double whole = log_of_sum(logs);
    for (double& log : logs)
        log -= whole;
    return logs;
}

// By the signs alone, in logarithms, by how often each part stands at all.
PartChances told_by(const PartSigns& signs) {
    PartChances logs{};
    for (std::size_t i = 0; i < signs.size(); ++i)
        for (std::size_t k = 0; k < part_kinds; ++k)
            logs[k] += signs[i] * odds_of_signs[i][k];
    logs = normal(logs);
    for (std::size_t k = 0; k < part_kinds; ++k)
        logs[k] = logs[k] * trust_in_signs - at_all[k];
    return logs;
}

PartKind kind_of(Standing standing) { // but for elsewhere
    return static_cast<PartKind>(static_cast<int>(standing) + 1);
}

// What a heading says in so many words, the more so where these are sure.
void believe(const Part& named, PartChances& told) {
    constexpr double of_sure_words = 5, of_others = 4;
    if (!named.known) return;
    const auto kind = named.not_read ? PartKind::out : kind_of(named.standing);
    told[static_cast<std::size_t>(kind)] += named.sure ? of_sure_words : of_others;
}

struct Link { // of the chain
    PartChances told{}, before{}, after{};
    bool goes_on = false;

    const PartChances& steps_from(std::size_t kind) const {
        return goes_on ? within_paragraph[kind] : after_part[kind];
    }
};

void pass_forward(std::vector<Link>& chain) {
    for (std::size_t i = 0; i < chain.size(); ++i)
        for (std::size_t k = 0; k < part_kinds; ++k) {
            PartChances ways{};
            for (std::size_t from = 0; from < part_kinds; ++from)
                ways[from] = i == 0 ? after_part[part_kinds][k]
                                    : chain[i - 1].before[from] + chain[i].steps_from(from)[k];
            chain[i].before[k] = chain[i].told[k] + (i == 0 ? ways[0] : log_of_sum(ways));
        }
}

void pass_backward(std::vector<Link>& chain) {
    for (std::size_t i = chain.size(); i-- > 1;)
        for (std::size_t k = 0; k < part_kinds; ++k) {
            PartChances ways{};
            for (std::size_t to = 0; to < part_kinds; ++to)
                ways[to] = chain[i].steps_from(k)[to] + chain[i].told[to] + chain[i].after[to];
            chain[i - 1].after[k] = log_of_sum(ways);
        }
}

PartChances chances(const Link& link) {
    PartChances logs{};
    for (std::size_t k = 0; k < part_kinds; ++k)
        logs[k] = link.before[k] + link.after[k];
    logs = normal(logs);
    for (double& log : logs)
        log = std::exp(log);
    return logs;
}

}

std::vector<PartChances> chances_of(std::span<const Stretch> stretches,
                                    std::span<const Line> lines) {
    std::vector<Link> chain;
    for (const Stretch& stretch : stretches) {
        if (stretch.title) continue;
        chain.push_back(
            {told_by(part_signs(stretch, lines)), {}, {}, stretch.goes_on && !chain.empty()});
        if (stretch.headed) believe(part_headed(stretch.heading()), chain.back().told);
    }
    pass_forward(chain);
    pass_backward(chain);
    std::vector<PartChances> all;
    std::size_t at = 0;
    for (const Stretch& stretch : stretches)
        all.push_back(stretch.title ? PartChances{1, 0, 0, 0} : chances(chain[at++]));
    return all;
}

PartKind likeliest_read(const PartChances& chances) {
    return static_cast<PartKind>(std::max_element(chances.begin() + 1, chances.end()) -
                                 chances.begin());
}

}
