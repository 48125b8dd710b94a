#include "compiler/postings/part_odds.hpp"

#include "compiler/postings/headings.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::postings {

namespace {

// Of each sign, in logarithms: that what has it is left out, required, preferred, a duty.
constexpr std::array<PartChances, PartSign::in_all> odds_of_signs{{
    {2.12, -0.83, -0.24, -1.05}, // always
    {0.25, -0.05, 0.05, -0.26},  // headed
    {1.10, -0.51, -0.26, -0.32}, // whole out
    {-0.51, 0.51, 0.35, -0.35},  // whole required
    {-0.00, -0.00, 0.00, -0.00}, // whole preferred
    {0.32, -0.67, -0.15, 0.49},  // whole duties
    {-0.48, 0.51, -0.01, -0.02}, // says first asked
    {1.16, -0.03, -0.76, -0.38}, // says out
    {-0.32, -1.72, 2.77, -0.72}, // says preferred
    {0.28, 1.30, -0.91, -0.67},  // says surely required
    {-0.05, -0.84, -0.79, 1.68}, // says duties
    {-0.18, 1.78, -0.79, -0.82}, // says required
    {-0.43, 0.61, -0.34, 0.16},  // says you
    {0.07, 0.16, 1.10, -1.33},   // says we
    {0.00, 0.00, 0.00, 0.00},    // asks
    {-1.34, 0.82, -1.02, 1.55},  // with base
    {-1.34, 0.84, -1.27, 1.78},  // with third
    {-0.42, -1.17, 0.30, 1.30},  // with gerund
    {-0.72, 0.27, -0.18, 0.63},  // with applying
    {-0.16, 0.52, -0.40, 0.04},  // with you will
    {-0.98, 0.25, 0.34, 0.40},   // with you
    {-0.47, -0.10, 1.05, -0.47}, // with if
    {-0.26, 1.32, -0.31, -0.75}, // with we
    {-0.93, 0.08, -0.12, 0.97},  // with the
    {-1.27, 0.74, 0.35, 0.19},   // with a thing
    {-0.83, 0.50, 0.67, -0.34},  // lead in
    {-0.33, 1.04, -0.13, -0.57}, // qualification
    {-0.11, -0.57, 1.68, -1.00}, // preference
    {0.05, 1.37, -0.84, -0.57},  // need
    {-0.39, 0.96, -0.16, -0.41}, // sure need
    {-0.46, -0.75, -0.90, 2.11}, // duty
    {0.76, -0.31, -0.06, -0.39}, // pay
    {0.62, -0.15, -0.28, -0.18}, // some pay
    {0.78, -0.30, -0.23, -0.25}, // equality
    {1.13, -0.65, -0.58, 0.10},  // some equality
    {0.76, -0.06, -0.58, -0.13}, // applying
    {0.30, 0.44, -0.96, 0.22},   // some applying
    {0.71, -0.11, -0.11, -0.49}, // employer
    {0.68, -0.74, 0.14, -0.08},  // some employer
    {1.88, -1.67, -0.14, -0.07}, // nothing asked
    {0.97, -0.04, 0.17, -1.10},  // given
    {-1.00, -0.39, 2.71, -1.33}, // spoken language
    {-1.16, 0.99, 0.98, -0.81},  // credential
    {-0.49, 0.14, -0.33, 0.69},  // of you
    {0.12, -0.06, -0.15, 0.09},  // of us
    {1.19, -0.99, 0.10, -0.31},  // sum or address
    {-0.44, -0.53, 1.51, -0.53}, // supposing
    {0.62, 0.55, -0.24, -0.94},  // denying
    {0.57, -0.31, 0.08, -0.34},  // past
    {-0.34, 0.35, -0.50, 0.49},  // person does
    {-0.80, -0.50, -0.40, 1.70}, // you do
    {0.13, 0.14, -0.21, -0.06},  // exclaiming
    {-1.17, -0.47, 0.19, 1.45},  // long one
    {0.57, -0.43, 0.73, -0.87},  // short one
    {-0.36, -0.19, -0.03, 0.58}, // item
    {0.49, 1.15, -1.34, -0.31},  // years
    {0.03, 0.95, -0.77, -0.21},  // modal
    {1.43, -0.75, -1.35, 0.67},  // early
    {2.12, -0.92, -0.20, -1.00}, // late
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
