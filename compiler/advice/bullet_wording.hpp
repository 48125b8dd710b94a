// Bullets of experience, projects and activities as the wording checks see them. Their table is in
// wording_checks.cpp.
#pragma once

#include "compiler/advice/check.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/english/tokens.hpp"

#include <functional>
#include <initializer_list>
#include <string_view>
#include <vector>

namespace quoin::advice {

// Bullets of sections that hold one of these kinds.
using BulletsRead = std::vector<std::reference_wrapper<const WordedBullet>>;
BulletsRead bullets_under(const ProofContext& context, std::initializer_list<trade::Holds> kinds);

// When the work of an entry was, where its dates tell.
enum class WhenDone { ended, current, unknown };
WhenDone when_done(const model::Entry& entry, const ProofContext& context);

// `from 2021 to 2024` says when, not how many.
inline bool are_years(std::string_view from, std::string_view to) {
    const auto is_year = [](std::string_view word) {
        return word.size() == 4 && (word.starts_with("19") || word.starts_with("20")) &&
               is_figure(word[2]) && is_figure(word[3]);
    };
    return is_year(from) && is_year(to);
}

// bullet_openings.cpp
void tense(const ProofContext& context, std::vector<Finding>& findings);
void action_verb(const ProofContext& context, std::vector<Finding>& findings);
void weak_opening(const ProofContext& context, std::vector<Finding>& findings);
void repeated_opening(const ProofContext& context, std::vector<Finding>& findings);

// little_words.cpp
void little_words(const ProofContext& context, std::vector<Finding>& findings);

// empty_phrases.cpp
void empty_phrases(const ProofContext& context, std::vector<Finding>& findings);

// What is longer is no bullet, and is not read word by word against all of itself.
constexpr std::size_t longest_bullet = 2000; // bytes
// Of more no page is made, and they are not held against each other.
constexpr std::size_t most_bullets = 150;

// From the first to the last of some tokens of a text.
english::Extent extent_of(const english::Tokens& tokens, std::size_t first, std::size_t last);

// impossible_figures.cpp
void impossible_figure(const ProofContext& context, std::vector<Finding>& findings);

// impossible_measures.cpp
void impossible_measure(const ProofContext& context, std::vector<Finding>& findings);

// bullet_results.cpp
void no_figure(const ProofContext& context, std::vector<Finding>& findings);
void task_without_result(const ProofContext& context, std::vector<Finding>& findings);

}
