// `all 16 children`, where another line of the entry has a class of 18; `all 1,510 objects`, where
// the page has 1,150: who says all has counted them.
#include "compiler/advice/wholes_differ.hpp"

#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/content_stems.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/numbers.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace quoin::advice {

namespace {

struct ToldCount {
    WordAt number;
    Stems of;         // up to three words behind it
    std::string last; // of them, as it stands: children
    bool all = false;
};

// What is counted stands behind the number, or behind `of`: all 43 patients, all $14,200 of money.
ToldCount count_at(const TextInResume& part, const FigureAt& figure, std::size_t i,
                   const english::Stemmer& stemmer) {
    constexpr std::size_t most = 3;
    const auto& words = part.words;
    const bool all = figure.first > 0 && part.small(words[figure.first - 1]) == "all";
    ToldCount told{figure.figure, {}, {}, all};
    std::size_t k = i + 1;
    if (k < words.size() && part.small(words[k]) == "of") ++k;
    for (std::size_t end = k + most; k < words.size() && k < end; ++k) {
        const std::string word(part.small(words[k]));
        const std::size_t before = words[k - 1].offset + words[k - 1].word.size();
        if (is_little(word) || part.plain[before] != ' ') break;
        told.of.insert(stemmer.stem(word));
        told.last = word;
    }
    return told;
}

std::vector<ToldCount> counts_in(const TextInResume& part, const english::Stemmer& stemmer) {
    std::vector<ToldCount> counts;
    for (std::size_t i = 0; i < part.words.size(); ++i) {
        const auto figure = figure_ending_at(part, i);
        if (!figure) continue;
        ToldCount told = count_at(part, *figure, i, stemmer);
        if (!told.of.empty()) counts.push_back(std::move(told));
    }
    return counts;
}

// 34 and 43, 1,150 and 1,510: the same figures in another order.
bool are_transposed(std::string_view a, std::string_view b) {
    const auto sorted = [](std::string_view text) {
        std::string figures(text);
        std::erase_if(figures, [](char c) { return !is_figure(c); });
        std::ranges::sort(figures);
        return figures;
    };
    return a != b && a.size() == b.size() && sorted(a).size() > 1 && sorted(a) == sorted(b);
}

// `all 5 CNC mills in the shop`, and `all 4 mills`; of people all may be those of another day.
bool are_two_wholes(const ToldCount& a, const ToldCount& b) {
    return a.all && b.all && a.last == b.last && !is_one_of(a.last, List::those_served) &&
           grouped_number(a.number.word) != grouped_number(b.number.word);
}

class Wholes {
public:
    Wholes(const ProofContext& context, std::vector<Finding>& findings)
        : context_(context), findings_(findings) {
        for (const WordedBullet& bullet : context.bullets)
            counts_.push_back(has_digit(bullet.text) ? counts_in(bullet.part, stemmer_)
                                                     : std::vector<ToldCount>{});
    }

    void run() {
        for (std::size_t b = 0; b < counts_.size(); ++b)
            for (const ToldCount& told : counts_[b])
                if (told.all) look_at(b, told);
    }

private:
    // One other line is enough, of the entry before those of the page.
    void look_at(std::size_t b, const ToldCount& whole) {
        const model::Entry* entry = context_.bullets[b].position.entry;
        for (const bool here : {true, false})
            for (std::size_t k = 0; k < counts_.size(); ++k) {
                if (k == b || (context_.bullets[k].position.entry == entry) != here) continue;
                for (const ToldCount& other : counts_[k]) {
                    if (shared(whole.of, other.of) == 0) continue;
                    const bool long_one = whole.number.word.size() > 2;
                    const bool swapped =
                        (here || long_one) && are_transposed(whole.number.word, other.number.word);
                    if (swapped || (here && k < b && are_two_wholes(whole, other)))
                        return tell(b, whole, k, other);
                }
            }
    }

    void tell(std::size_t b, const ToldCount& whole, std::size_t k, const ToldCount& other) {
        const WordedBullet& there = context_.bullets[k];
        report<messages::figures_differ>(
            findings_, context_.bullets[b].place({whole.number.offset, whole.number.word.size()}),
            in_quotes(whole.number.word), in_quotes(other.number.word),
            there.place({other.number.offset, other.number.word.size()}).line);
    }

    const ProofContext& context_;
    std::vector<Finding>& findings_;
    english::Stemmer stemmer_;
    std::vector<std::vector<ToldCount>> counts_; // by each bullet
};

// --- of one entry: a class, an event of some days, a team

struct NumberTold {
    WordAt number;
    Place place;
};

// 18, of `class of 18`
std::optional<WordAt> class_in(const TextInResume& part) {
    constexpr std::array<std::string_view, 4> wholes{"class", "classroom", "cohort", "room"};
    const auto& words = part.words;
    for (std::size_t i = 2; i < words.size(); ++i)
        if (part.small(words[i - 1]) == "of" && is_one_of(part.small(words[i - 2]), wholes) &&
            grouped_number(words[i].word))
            return words[i];
    return std::nullopt;
}

// What is counted at a word of a text.
using Counts = bool (*)(const TextInResume& part, std::size_t word);

// 16, of `all 16 children`: the number behind `all`, before what is counted.
std::optional<WordAt> all_in(const TextInResume& part, Counts counts) {
    const auto& words = part.words;
    for (std::size_t i = 1; i + 1 < words.size(); ++i)
        if (part.small(words[i - 1]) == "all" && grouped_number(words[i].word) &&
            counts(part, i + 1))
            return words[i];
    return std::nullopt;
}

std::optional<WordAt> all_served_in(const TextInResume& part) {
    return all_in(part, [](const TextInResume& of, std::size_t i) {
        return is_one_of(of.small(of.words[i]), List::those_served);
    });
}

std::optional<WordAt> all_days_in(const TextInResume& part) {
    return all_in(part, [](const TextInResume& of, std::size_t i) {
        return of.small(of.words[i]) == "days";
    });
}

// 6, of `all 6 members`, `all 6 team members`
std::optional<WordAt> all_members_in(const TextInResume& part) {
    return all_in(part, [](const TextInResume& of, std::size_t i) {
        const bool team = of.small(of.words[i]) == "team" && i + 1 < of.words.size();
        return of.small(of.words[team ? i + 1 : i]) == "members";
    });
}

// 2, of `2-day event`
std::optional<WordAt> days_of_event(const TextInResume& part) {
    for (const WordAt& word : part.words)
        if (part.small(word).ends_with("-day") &&
            grouped_number(word.word.substr(0, word.word.size() - 4)))
            return WordAt{word.word.substr(0, word.word.size() - 4), word.offset};
    return std::nullopt;
}

using Find = std::optional<WordAt> (*)(const TextInResume&);

// The texts of the entry that a bullet stands in: its fields, and its other bullets.
std::optional<NumberTold> told_in_entry(const WordedBullet& bullet, const ProofContext& context,
                                        Find find) {
    const auto is_of_entry = [&](const TextInResume& part) {
        const auto& fields = bullet.position.entry->fields;
        return part.field && !fields.empty() && part.field >= &fields.front() &&
               part.field <= &fields.back();
    };
    for (const TextInResume& part : context.texts)
        if (const auto number = is_of_entry(part) ? find(part) : std::nullopt)
            return NumberTold{*number, part.text.place(number->offset, number->word.size())};
    for (const WordedBullet& other : context.bullets) {
        if (other.position.entry != bullet.position.entry || &other == &bullet) continue;
        if (const auto number = find(other.part))
            return NumberTold{*number, other.place({number->offset, number->word.size()})};
    }
    return std::nullopt;
}

void entry_wholes(const ProofContext& context, std::vector<Finding>& findings) {
    struct Pair {
        Find all, whole;
    };
    for (const WordedBullet& bullet : context.bullets)
        for (const auto& [all, whole] :
             {Pair{all_served_in, class_in}, Pair{all_days_in, days_of_event}}) {
            const auto told = has_digit(bullet.text) ? all(bullet.part) : std::nullopt;
            const auto shown = told ? told_in_entry(bullet, context, whole) : std::nullopt;
            if (!shown || shown->number.word == told->word) continue;
            report<messages::figures_differ>(
                findings, bullet.place({told->offset, told->word.size()}), in_quotes(told->word),
                in_quotes(shown->number.word), shown->place.line);
        }
}

// 6, of `team of 6`
std::optional<WordAt> team_in(std::string_view lower) {
    const std::size_t at = find_phrase(lower, "team of");
    if (at == lower.npos) return std::nullopt;
    const std::size_t begin = std::min(at + 8, lower.size());
    const std::size_t end = std::min(lower.find_first_not_of("0123456789", begin), lower.size());
    if (end == begin) return std::nullopt;
    return WordAt{lower.substr(begin, end - begin), begin};
}

// 2, of `2 classmates`
std::optional<WordAt> others_in(std::string_view lower) {
    constexpr std::array<std::string_view, 5> others{"classmates", "partners", "teammates", "peers",
                                                     "classmate"};
    const auto words = words_in(lower);
    const bool told =
        words.size() == 2 && grouped_number(words[0].word) && is_one_of(words[1].word, others);
    return told ? std::optional(words[0]) : std::nullopt;
}

// `with: team of 4`, and a bullet of the same entry: Led team of 6, taught all 6 members. Beside 2
// classmates the writer is a third.
void teams_differ(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : context.bullets) {
        const model::Field* with = bullet.position.entry->find(trade::FieldName::with);
        const std::string lower = lower_case(plain_in(with));
        const auto team = team_in(lower), others = others_in(lower);
        if (!team && !others) continue;
        auto told = team_in(bullet.part.lower);
        if (team && !told) told = all_members_in(bullet.part);
        const WordAt& shown = team ? *team : *others;
        const auto count = grouped_number(shown.word);
        const auto named = told ? grouped_number(told->word) : std::nullopt;
        if (!named || named == count || (others && *named == *count + 1)) continue;
        report<messages::figures_differ>(
            findings, bullet.place({told->offset, told->word.size()}), in_quotes(told->word),
            in_quotes(team ? shown.word : std::string_view(lower)), with->place.line);
    }
}

}

void wholes_differ(const ProofContext& context, std::vector<Finding>& findings) {
    teams_differ(context, findings);
    entry_wholes(context, findings);
    if (context.bullets.size() <= most_bullets) Wholes(context, findings).run();
}

}
