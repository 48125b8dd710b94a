// Proper names in small letters: places, employers, schools, and what English gives a capital to.
#include "compiler/advice/consistency.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/spelling_checks.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/english/slips.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace quoin::advice {

namespace {

using trade::FieldName;

bool names_institution(const TextInResume& part) {
    constexpr std::array named{FieldName::employer, FieldName::school, FieldName::issuer,
                               FieldName::by, FieldName::activity};
    return part.field && std::ranges::find(named, part.field->name) != named.end();
}

bool is_small_word(const WordAt& word) {
    return is_small_letter(word.word.front()) && all_small_letters(word.word);
}

// `kestrel bay, WA`, `Port Ellery, wa`; not `remote`.
std::optional<WordAt> small_in_place(std::string_view text) {
    const auto words = words_in(text.substr(0, text.find('('))); // and no remark
    for (const WordAt& word : words) {
        if (!is_small_word(word) || is_one_of(word.word, List::small_in_names) ||
            is_one_of(word.word, List::minor_words) ||
            is_one_of(word.word, List::no_names_of_places))
            continue;
        const bool parted = text.find(", ") != text.npos;
        const bool all = std::ranges::all_of(words, is_small_word);
        if (parted || all) return word;
    }
    return std::nullopt;
}

// `gull charters`; `private families` is no name.
std::optional<WordAt> small_in_name(const std::vector<WordAt>& words) {
    if (words.size() < 2 || !std::ranges::all_of(words, is_small_word)) return std::nullopt;
    const bool general = std::ranges::any_of(words, [](const WordAt& word) {
        return is_one_of(word.word, List::no_names_of_employers);
    });
    return general ? std::nullopt : std::optional(words.front());
}

// Towns of two words that the page names: Port Ellery.
std::vector<std::string> towns_on(const TextsRead& texts) {
    std::vector<std::string> towns;
    for (const TextInResume& part : texts) {
        if (!part.field || !has(part.field->name, trade::Trait::locates)) continue;
        const std::string& place = part.plain;
        const std::string town = place.substr(0, place.find(','));
        const auto words = words_in(town);
        if (words.size() > 1 && std::ranges::all_of(words, [](const WordAt& word) {
                return is_capital_letter(word.word.front());
            }))
            add_once(towns, lower_case(town), all_of_them);
    }
    return towns;
}

// `the city of port ellery`
void small_towns(const ProofContext& context, std::vector<Finding>& findings) {
    const std::vector<std::string> towns = towns_on(context.texts);
    for (const WordedBullet& bullet : context.bullets)
        for (const std::string& town : towns) {
            const std::size_t at = find_phrase(bullet.text, town);
            if (at == bullet.text.npos) continue;
            const english::Extent extent{at, town.size()};
            report<messages::small_name>(findings, bullet.place(extent),
                                         in_quotes(bullet.words(extent)));
        }
}

// `english`, `cpr`: always with capitals; not in links and addresses.
std::optional<WordAt> small_in_text(const TextInResume& part) {
    const std::string& text = part.plain;
    for (const WordAt& word : part.words) {
        if (!is_small_word(word) ||
            (!is_one_of(word.word, List::capital_words) && !is_one_of(word.word, List::initials)))
            continue;
        const std::size_t end = word.offset + word.word.size();
        const bool joined =
            (end < text.size() && (text[end] == '.' || text[end] == '@') && end + 1 < text.size() &&
             is_ascii_letter(text[end + 1])) ||
            (word.offset > 0 &&
             std::string_view("@./").find(text[word.offset - 1]) != std::string_view::npos);
        if (!joined) return word;
    }
    return std::nullopt;
}

std::string in_capitals(std::string_view word) {
    std::string capitals(word);
    std::ranges::transform(capitals, capitals.begin(), capital_letter);
    return capitals;
}

std::optional<WordAt> small_name_in(const TextInResume& part) {
    if (part.field && has(part.field->name, trade::Trait::locates))
        return small_in_place(part.plain);
    if (names_institution(part)) return small_in_name(part.words);
    constexpr std::array passed{FieldName::link, FieldName::email};
    if (part.field && std::ranges::find(passed, part.field->name) != passed.end())
        return std::nullopt;
    return small_in_text(part);
}

// `Ellery State University`, where the school is `Ellery State College`; more may stand behind.
bool swaps_kind(std::string_view one, std::string_view other) {
    constexpr std::size_t telling = 2; // words before it
    const std::size_t kind = std::min(one.find(" college"), one.find(" university"));
    const std::size_t its = std::min(other.find(" college"), other.find(" university"));
    return kind != one.npos && kind == its && one.substr(0, kind) == other.substr(0, its) &&
           words_in(one.substr(0, kind)).size() >= telling &&
           one.substr(kind + 1, 4) != other.substr(its + 1, 4);
}

std::string without_gaps(std::string_view lower) {
    std::string letters(lower);
    std::erase_if(letters, [](char c) { return c == ' ' || c == '-'; });
    return letters;
}

// `Harborlight Shelter Coat Drive` and `Harbor Light Shelter`: parted otherwise, or as far as the
// shorter goes.
bool is_parted_otherwise(const std::string& one, const std::string& other) {
    const std::string &longer = one.size() < other.size() ? other : one,
                      &shorter = one.size() < other.size() ? one : other;
    const std::string letters = without_gaps(longer);
    return words_in(shorter).size() > 1 && letters.starts_with(without_gaps(shorter)) &&
           !longer.starts_with(shorter);
}

// Two spellings of one name: other capitals, a letter or two, or University for College.
bool are_one_name(std::string_view a, std::string_view b) {
    constexpr std::size_t long_enough = 12;
    constexpr int most = 6; // of what english/slips.hpp counts
    if (a == b || std::min(a.size(), b.size()) < long_enough) return false;
    const std::string one = lower_case(a), other = lower_case(b);
    if (one == other) return true;
    if (has_digit(a) || has_digit(b)) return false;
    if (swaps_kind(one, other) || is_parted_otherwise(one, other)) return true;
    return words_in(a).size() == words_in(b).size() && english::slip_cost(one, other, most) <= most;
}

// For `spelling` to tell, once: Ellery State Collage.
bool has_slip(std::string_view name) {
    return std::ranges::any_of(
        words_in(name), [](const WordAt& word) { return !institution_meant(word.word).empty(); });
}

void names_elsewhere(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t most = 60;
    std::vector<std::pair<std::string, Place>> names;
    for (const TextInResume& part : context.texts) {
        if (!names_institution(part)) continue;
        if (names.size() == most) continue;
        const std::string& name = part.plain;
        const Place place = part.text.place(0, name.size());
        for (const auto& [before, there] : names) {
            if (name == before) break;
            if (!are_one_name(before, name) || has_slip(before) || has_slip(name)) continue;
            report<messages::name_elsewhere>(findings, place, in_quotes(name), in_quotes(before),
                                             there.line);
            break;
        }
        names.emplace_back(name, place);
    }
}

// --- names that a bullet has otherwise than a field: Rosaria, of Rosario Cold Storage

struct NameWord {
    std::string_view word, before,
        after;              // the words with capitals beside it; empty where there is none
    std::string_view lower; // `word` in small letters
    std::size_t offset = 0;
};

std::vector<NameWord> name_words(const TextInResume& part) {
    constexpr std::size_t shortest = 4;
    const auto& words = part.words;
    std::vector<NameWord> found;
    const auto name_at = [&](std::size_t i) -> std::string_view {
        if (i >= words.size() || !is_capitalised(words[i].word)) return {};
        const std::string_view word = words[i].word;
        return word.substr(0, std::min(word.find("'s"), word.find("\u2019s")));
    };
    for (std::size_t i = 0; i < words.size(); ++i)
        if (const std::string_view word = name_at(i); word.size() >= shortest)
            found.push_back({word, name_at(i - 1), name_at(i + 1),
                             part.small(words[i]).substr(0, word.size()), words[i].offset});
    return found;
}

// One letter apart, and beside the same word (Tern Point, Turn Point) or in no dictionary.
bool is_slip_of(const NameWord& typed, const NameWord& name, const english::Language& language) {
    constexpr std::size_t long_enough = 6;
    constexpr int most = 5; // of what english/slips.hpp counts
    const std::string_view one = typed.lower, other = name.lower;
    const auto is_plural_of = [](std::string_view several, std::string_view single) {
        return several.ends_with('s') && several.substr(0, several.size() - 1) == single;
    };
    const bool numbers = is_plural_of(one, other) || is_plural_of(other, one); // Marchbanks
    if (one == other || (!numbers && english::slip_cost(one, other, most) > most)) return false;
    const auto is_same = [](std::string_view a, std::string_view b) {
        return !a.empty() && a == b;
    };
    if (typed.offset > 0 && !numbers &&
        (is_same(typed.before, name.before) || is_same(typed.after, name.after)))
        return true;
    return one.size() >= long_enough && !language.spelled_right(one) &&
           !language.spelled_right(typed.word);
}

void names_within(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t most = 60;
    std::vector<std::pair<NameWord, std::uint32_t>> names;
    for (const TextInResume& part : context.texts) {
        const bool work = part.field && part.field->name == FieldName::project;
        if (!work && !names_institution(part)) continue;
        for (const NameWord& name : name_words(part))
            if (names.size() < most) names.emplace_back(name, part.field->place.line);
    }
    for (const WordedBullet& bullet : context.bullets)
        for (const NameWord& typed : name_words(bullet.part)) {
            const auto is_typed = [&](const auto& name) { return name.first.word == typed.word; };
            if (std::ranges::any_of(names, is_typed)) continue;
            const auto slip = std::ranges::find_if(names, [&](const auto& name) {
                return is_slip_of(typed, name.first, context.language);
            });
            if (slip == names.end()) continue;
            report<messages::name_elsewhere>(
                findings, bullet.place({typed.offset, typed.word.size()}), in_quotes(typed.word),
                in_quotes(slip->first.word), slip->second);
        }
}

// `Hollis Bay Seafood`, of Hollis Bay Seafoods; what kind of house it is may well be one of many.
std::string other_number(const std::string& name) {
    const auto words = words_in(name);
    constexpr std::size_t telling = 3; // words
    if (words.size() < telling ||
        !std::ranges::all_of(words, [](const WordAt& word) { return is_capitalised(word.word); }))
        return {};
    std::string last = lower_case(words.back().word);
    const bool several = last.ends_with('s') && !last.ends_with("ss");
    if (several) last.pop_back();
    if (is_one_of(last, List::words_of_institutions) ||
        is_one_of(last + 's', List::words_of_institutions))
        return {};
    return several ? name.substr(0, name.size() - 1) : name + 's';
}

void numbers_of_names(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (!names_institution(part)) continue;
        const std::string other = other_number(part.plain);
        for (const WordedBullet& bullet : context.bullets) {
            const std::size_t at = other.empty() ? other.npos : find_phrase(bullet.text, other);
            if (at == other.npos) continue;
            const english::Extent extent{at, other.size()};
            report<messages::name_elsewhere>(findings, bullet.place(extent), in_quotes(other),
                                             in_quotes(part.plain), part.field->place.line);
        }
    }
}

}

void proper_names(const ProofContext& context, std::vector<Finding>& findings) {
    names_elsewhere(context, findings);
    names_within(context, findings);
    numbers_of_names(context, findings);
    small_towns(context, findings);
    for (const TextInResume& part : context.texts) {
        const auto small = small_name_in(part);
        if (!small) continue;
        const Place place = part.text.place(small->offset, small->word.size());
        if (is_one_of(small->word, List::initials))
            report<messages::small_initials>(findings, place, in_quotes(small->word)).suggestion =
                fill<messages::write_instead>(in_capitals(small->word));
        else
            report<messages::small_name>(findings, place, in_quotes(small->word));
    }
}

}
