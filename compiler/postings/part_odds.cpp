#include "compiler/postings/part_odds.hpp"

#include "compiler/postings/headings.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::postings {

namespace {

// Of each sign, in logarithms: that what has it is left out, required, preferred, a duty.
constexpr std::array<PartChances, PartSign::in_all> odds_of_signs{{
    {2.12, -0.82, -0.22, -1.07}, // always
    {0.25, -0.07, 0.06, -0.24},  // headed
    {1.10, -0.51, -0.27, -0.32}, // whole out
    {-0.51, 0.53, 0.34, -0.36},  // whole required
    {0.00, 0.00, 0.00, 0.00},    // whole preferred
    {0.33, -0.44, -0.06, 0.17},  // whole duties
    {-0.48, 0.51, -0.00, -0.02}, // says first asked
    {1.16, -0.02, -0.76, -0.38}, // says out
    {-0.32, -1.72, 2.76, -0.72}, // says preferred
    {0.28, 1.31, -0.92, -0.67},  // says surely required
    {-0.05, -0.84, -0.80, 1.69}, // says duties
    {-0.18, 1.79, -0.79, -0.83}, // says required
    {-0.42, 0.63, -0.36, 0.15},  // says you
    {0.08, 0.16, 1.08, -1.32},   // says we
    {0.00, 0.00, 0.00, 0.00},    // asks
    {-1.36, 0.81, -1.01, 1.56},  // with base
    {-1.34, 0.84, -1.29, 1.80},  // with third
    {-0.42, -1.18, 0.28, 1.32},  // with gerund
    {-0.72, 0.28, -0.18, 0.62},  // with applying
    {-0.18, 0.53, -0.40, 0.04},  // with you will
    {-0.95, 0.20, 0.33, 0.43},   // with you
    {-0.47, -0.11, 1.06, -0.48}, // with if
    {-0.29, 1.34, -0.30, -0.74}, // with we
    {-0.94, 0.08, -0.12, 0.99},  // with the
    {-1.28, 0.73, 0.34, 0.21},   // with a thing
    {-0.84, 0.50, 0.67, -0.33},  // lead in
    {-0.33, 1.05, -0.14, -0.58}, // qualification
    {-0.10, -0.57, 1.69, -1.01}, // preference
    {0.05, 1.37, -0.85, -0.57},  // need
    {-0.38, 0.97, -0.16, -0.42}, // sure need
    {-0.47, -0.76, -0.90, 2.13}, // duty
    {0.74, -0.32, -0.04, -0.38}, // pay
    {0.72, -0.18, -0.23, -0.31}, // some pay
    {0.77, -0.29, -0.24, -0.24}, // equality
    {1.13, -0.64, -0.59, 0.10},  // some equality
    {0.76, -0.05, -0.58, -0.13}, // applying
    {0.30, 0.44, -0.97, 0.24},   // some applying
    {0.70, -0.11, -0.11, -0.49}, // employer
    {0.68, -0.74, 0.14, -0.08},  // some employer
    {1.85, -1.65, -0.14, -0.07}, // nothing asked
    {0.99, -0.05, 0.11, -1.05},  // given
    {-1.00, -0.37, 2.69, -1.33}, // spoken language
    {-1.16, 1.00, 0.96, -0.80},  // credential
    {-0.49, 0.14, -0.34, 0.70},  // of you
    {0.14, -0.07, -0.17, 0.10},  // of us
    {1.20, -1.00, 0.10, -0.30},  // sum or address
    {-0.45, -0.52, 1.52, -0.54}, // supposing
    {0.63, 0.56, -0.23, -0.97},  // denying
    {0.57, -0.30, 0.08, -0.36},  // past
    {-0.34, 0.36, -0.50, 0.49},  // person does
    {0.13, 0.13, -0.22, -0.05},  // exclaiming
    {-1.14, -0.51, 0.19, 1.46},  // long one
    {0.58, -0.43, 0.74, -0.88},  // short one
    {-0.37, -0.18, -0.02, 0.56}, // item
    {0.48, 1.17, -1.34, -0.31},  // years
    {0.06, 0.95, -0.77, -0.25},  // modal
    {1.43, -0.74, -1.37, 0.68},  // early
    {2.12, -0.91, -0.21, -1.00}, // late
}};

// The logarithms of how often a part follows one, the last row at a posting's beginning; within a
// paragraph; and of how often each stands at all.
constexpr std::array<PartChances, part_kinds + 1> after_part{{
    {-0.23, -3.04, -4.70, -1.93},
    {-1.69, -1.81, -0.47, -3.49},
    {-0.18, -2.92, -2.92, -2.92},
    {-1.77, -0.54, -3.85, -1.50},
    {-0.15, -2.51, -3.21, -4.30},
}};
constexpr std::array<PartChances, part_kinds> within_paragraph{{
    {-0.10, -3.71, -3.50, -3.19},
    {-1.72, -0.29, -4.43, -2.82},
    {-1.69, -2.54, -0.34, -3.64},
    {-2.22, -1.88, -3.83, -0.33},
}};
constexpr PartChances at_all{-0.40, -2.01, -2.45, -2.20};
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
