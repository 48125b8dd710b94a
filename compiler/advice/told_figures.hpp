// The figures of one bullet, as the checks look at them that find those that cannot be.
#pragma once

#include "compiler/advice/bullet_wording.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/numbers.hpp"
#include "compiler/english/tokens.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string_view>
#include <vector>

namespace quoin::advice {

class ToldFigures {
public:
    ToldFigures(const WordedBullet& bullet, const english::Tokens& tokens)
        : bullet_(bullet), tokens_(tokens) {}

protected:
    std::string_view word(std::size_t i) const {
        return i < tokens_.size() ? std::string_view(tokens_[i].lower) : std::string_view{};
    }
    bool is(std::size_t i, english::TokenKind kind) const {
        return i < tokens_.size() && tokens_[i].kind == kind;
    }

    // Of what is counted: no money, no share, no range.
    std::optional<double> count_at(std::size_t i) const { return grouped_number(word(i)); }

    // Of what is counted, or of dollars.
    std::optional<double> value_at(std::size_t i) const {
        const std::string_view figure = word(i);
        return grouped_number(figure.starts_with('$') ? figure.substr(1) : figure);
    }

    // 34, of `34%`
    std::optional<double> share_at(std::size_t i) const {
        const std::string_view figure = word(i);
        if (!figure.ends_with('%')) return std::nullopt;
        return grouped_number(figure.substr(0, figure.size() - 1));
    }

    // A share is rounded as it is told: `nearly 40%`, and to the next five without a word.
    bool is_other(double told, double change, std::size_t at) const {
        constexpr double close = 0.01;
        const bool whole = std::abs(change - std::round(change)) < close; // and not rounded
        return is_other(told, change, at, std::max(whole ? 2.5 : 5.0, change / 12));
    }
    bool is_other(double told, double change, std::size_t at, double plain) const {
        constexpr std::array<std::string_view, 9> rounding{
            "nearly", "about", "almost", "roughly", "over", "than", "some", "least", "around"};
        const bool rounded = (at > 0 && is_one_of(word(at - 1), rounding)) ||
                             (at > 1 && is_one_of(word(at - 2), rounding));
        const double tolerance = rounded ? 12 : plain;
        return std::abs(told - change) > tolerance;
    }

    template<const messages::FindingRow& fault>
    void tell(std::size_t first, std::size_t last, std::vector<Finding>& findings) const {
        const english::Extent all = extent_of(tokens_, first, std::min(last, tokens_.size() - 1));
        report<fault>(findings, bullet_.place(all), in_quotes(bullet_.words(all)));
    }

    const WordedBullet& bullet_;
    const english::Tokens& tokens_;
};

// impossible_sums.cpp and impossible_changes.cpp, of a bullet that has a figure
void impossible_sums(const WordedBullet& bullet, const english::Tokens& tokens,
                     const ProofContext& context, std::vector<Finding>& findings);
void impossible_changes(const WordedBullet& bullet, const english::Tokens& tokens,
                        std::vector<Finding>& findings);

}
