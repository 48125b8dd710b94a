#include "compiler/postings/part_odds.hpp"

#include "compiler/postings/headings.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::postings {

namespace {

// Of each sign, in logarithms: that what has it is left out, required, preferred, a duty.
constexpr std::array<PartChances, PartSign::in_all> odds_of_signs{{
    {1.83, -0.97, -0.18, -0.68}, // always
    {0.50, -0.80, 0.16, 0.14},   // headed
    {0.69, -0.23, -0.23, -0.22}, // whole out
    {-0.14, 0.74, -0.27, -0.33}, // whole required
    {0.00, 0.00, 0.00, 0.00},    // whole preferred
    {-0.05, -0.04, -0.00, 0.09}, // whole duties
    {-0.00, 0.06, -0.05, -0.01}, // says first asked
    {0.79, 0.04, -0.49, -0.35},  // says out
    {-0.16, -1.38, 2.10, -0.57}, // says preferred
    {0.16, 1.04, -0.78, -0.42},  // says surely required
    {-0.28, -0.63, -0.65, 1.56}, // says duties
    {0.19, 1.22, -0.69, -0.72},  // says required
    {-0.23, 0.22, -0.49, 0.51},  // says you
    {0.69, 0.10, 0.21, -0.99},   // says we
    {-0.03, -0.31, 0.63, -0.29}, // asks
    {-0.32, 0.24, -1.37, 1.45},  // with base
    {-0.99, 0.58, -0.77, 1.19},  // with third
    {0.20, -1.10, -0.10, 1.00},  // with gerund
    {0.24, -0.51, -0.45, 0.73},  // with applying
    {0.16, 0.38, -0.55, 0.01},   // with you will
    {-0.75, 0.34, -0.22, 0.63},  // with you
    {-0.21, -0.53, 1.06, -0.33}, // with if
    {0.03, 1.08, -0.26, -0.86},  // with we
    {-0.49, -0.14, 0.06, 0.58},  // with the
    {-0.88, 0.42, 0.73, -0.27},  // with a thing
    {-0.76, 0.58, 0.39, -0.21},  // lead in
    {-0.44, 1.09, -0.15, -0.51}, // qualification
    {-0.15, -0.47, 1.27, -0.65}, // preference
    {-0.43, 1.47, -0.46, -0.57}, // need
    {-0.38, 0.72, -0.12, -0.23}, // sure need
    {-0.60, -0.29, -1.07, 1.96}, // duty
    {0.33, 0.14, 0.18, -0.65},   // pay
    {0.71, -0.06, -0.31, -0.34}, // some pay
    {0.66, -0.10, -0.27, -0.29}, // equality
    {0.77, -0.41, -0.41, 0.06},  // some equality
    {0.50, -0.17, -0.08, -0.25}, // applying
    {0.28, 0.40, -0.93, 0.25},   // some applying
    {0.59, -0.07, -0.09, -0.44}, // employer
    {0.41, -0.56, 0.14, 0.02},   // some employer
    {1.55, -1.60, -0.13, 0.18},  // nothing asked
    {0.96, -0.10, -0.11, -0.75}, // given
    {-0.99, -0.25, 2.45, -1.21}, // spoken language
    {-0.84, 1.05, 0.95, -1.16},  // credential
    {-0.43, 0.26, -0.32, 0.49},  // of you
    {0.05, 0.22, -0.38, 0.10},   // of us
    {0.99, -0.31, -0.22, -0.46}, // sum or address
    {-0.44, -0.99, 1.83, -0.40}, // supposing
    {0.32, 0.60, 0.01, -0.93},   // denying
    {0.70, -0.03, -0.58, -0.09}, // past
    {-0.56, 0.67, -0.63, 0.52},  // person does
    {0.22, 0.28, -0.29, -0.21},  // exclaiming
    {-0.77, -0.56, 0.08, 1.26},  // long one
    {0.73, -0.78, 0.71, -0.67},  // short one
    {-0.83, 0.53, -0.26, 0.56},  // item
    {-0.14, 1.10, -0.66, -0.30}, // years
    {0.46, 0.48, -0.78, -0.16},  // modal
    {1.04, 0.13, -1.63, 0.46},   // early
    {2.30, -1.07, -0.37, -0.86}, // late
}};

// The logarithms of how often a part follows one, the last row at a posting's beginning; within a
// paragraph; and of how often each stands at all.
constexpr std::array<PartChances, part_kinds + 1> after_part{{
    {-0.23, -3.17, -4.12, -1.92},
    {-1.81, -2.50, -0.33, -3.42},
    {-0.06, -3.93, -3.93, -3.93},
    {-2.08, -0.47, -4.16, -1.45},
    {-0.15, -2.30, -3.91, -3.91},
}};
constexpr std::array<PartChances, part_kinds> within_paragraph{{
    {-0.09, -3.60, -3.94, -3.15},
    {-1.79, -0.26, -4.19, -3.09},
    {-2.13, -3.74, -0.18, -3.74},
    {-2.08, -2.08, -3.69, -0.32},
}};
constexpr PartChances at_all{-0.40, -2.07, -2.36, -2.19};
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
