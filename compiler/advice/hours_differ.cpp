// `360 clinical hours` in the summary, and below it two rotations of 180 hours and one of 90. Where
// the parts come to less, some may be left out.
#include "compiler/advice/hours_differ.hpp"

#include "compiler/advice/content_stems.hpp"
#include "compiler/advice/degree_claims.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

namespace quoin::advice {

namespace {

struct ToldHours {
    FigureAt figure;
    std::size_t first = 0, last = 0; // words of the text: the end of the figure, and `hours`
};

bool is_joined(std::string_view text, const WordAt& one, const WordAt& next) { // by a blank alone
    const std::size_t end = one.offset + one.word.size();
    return end + 1 == next.offset && text[end] == ' ';
}

// `300 hours`, `630 clinical hours`; not `12 hours a week`, nor `from 40 hours to 12`.
std::optional<ToldHours> hours_in(const TextInResume& part) {
    constexpr std::array<std::string_view, 12> changes{"from",   "to",    "by",      "saved",
                                                       "saving", "cut",   "cutting", "within",
                                                       "over",   "every", "than",    "a"};
    constexpr std::array<std::string_view, 7> rates{"a",     "an",     "per",  "each",
                                                    "every", "weekly", "daily"};
    constexpr std::size_t near = 3;
    const auto& words = part.words;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto figure = figure_ending_at(part, i);
        if (!figure) continue;
        if (figure->first > 0 && is_one_of(part.small(words[figure->first - 1]), changes)) continue;
        for (std::size_t k = i + 1; k < words.size() && k <= i + near; ++k) {
            if (!is_joined(part.plain, words[k - 1], words[k])) break;
            if (part.small(words[k]) != "hours") continue;
            if (k + 1 < words.size() && is_one_of(part.small(words[k + 1]), rates)) break;
            if (k + 2 < words.size() && words[k + 1].word == "to" && has_digit(words[k + 2].word))
                break;
            return ToldHours{*figure, i, k};
        }
    }
    return std::nullopt;
}

// What they are of: `clinical`, or `physical therapy observation`.
Stems kind_of(const TextInResume& part, const ToldHours& told, const english::Stemmer& stemmer) {
    constexpr std::size_t most = 4; // words behind
    Stems kind;
    const std::size_t end = std::min(part.words.size(), told.last + 2 + most);
    const bool of = told.last + 1 < end && part.small(part.words[told.last + 1]) == "of";
    for (std::size_t i = told.first + 1; i < (of ? end : told.last); ++i) {
        const std::string word(part.small(part.words[i]));
        if (word != "hours" && !is_little(word)) kind.insert(stemmer.stem(word));
    }
    return kind;
}

struct Parts {
    double sum = 0;
    std::size_t count = 0;
};

Parts parts_of(const Stems& kind, const ProofContext& context, const english::Stemmer& stemmer) {
    Parts parts;
    for (const TextInResume& part : context.texts) {
        if (is_claim(part) || !part.section || !has_digit(part.plain)) continue;
        const auto told = hours_in(part);
        if (!told) continue;
        const Stems about = stems_of(part.plain + ' ' + part.section->title.plain(), stemmer);
        if (shared(kind, about) == 0) continue;
        parts.sum += told->figure.value;
        ++parts.count;
    }
    return parts;
}

}

void hours_differ(const ProofContext& context, std::vector<Finding>& findings) {
    std::optional<english::Stemmer> stemmer;
    for (const TextInResume& part : context.texts) {
        const auto told = is_claim(part) && has_digit(part.plain) ? hours_in(part) : std::nullopt;
        if (!told) continue;
        if (!stemmer) stemmer.emplace();
        const Parts parts = parts_of(kind_of(part, *told, *stemmer), context, *stemmer);
        if (parts.count < 2 || parts.sum <= told->figure.value) continue;
        const WordAt& number = told->figure.figure;
        report<messages::hours_differ>(findings, part.text.place(number.offset, number.word.size()),
                                       in_quotes(number.word), std::to_string(parts.count),
                                       std::to_string(static_cast<long>(parts.sum)));
    }
}

}
