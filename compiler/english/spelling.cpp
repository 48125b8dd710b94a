// A word is right if it is listed, or a regular form of one that is, or if Hunspell has it right.
// How likely what is not is a slip is left to slip_odds: a word of somebody's trade may be in no
// dictionary.
#include "compiler/english/spelling.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/english/lexicon.hpp"
#include "compiler/english/verb_forms.hpp"

#include <hunspell/hunspell.hxx>

#include <algorithm>
#include <system_error>
#include <utility>

namespace quoin::english {
namespace {

// Of answers: as many unknown words as are looked at in a file, of two files.
constexpr std::size_t most_kept = 10'000;

bool all_small(std::string_view word) {
    return std::ranges::all_of(word, is_small_letter);
}

bool ends_with_any(std::string_view word, std::initializer_list<std::string_view> endings) {
    return std::ranges::any_of(endings, [&](std::string_view one) { return word.ends_with(one); });
}

bool takes_plain_s(std::string_view noun) { // boxes, heroes, knives and companies do not
    if (ends_with_any(noun, {"s", "x", "z", "ch", "sh", "o", "a", "f", "fe"})) return false;
    return !noun.ends_with('y') || is_vowel(noun[noun.size() - 2]);
}

// One vowel and one consonant: there it hangs on the stress whether the consonant is doubled.
bool may_double(std::string_view verb) {
    const std::size_t end = verb.size();
    return end > 2 && !is_vowel(verb[end - 1]) && !ends_with_any(verb, {"w", "x", "y"}) &&
           is_vowel(verb[end - 2]) && !is_vowel(verb[end - 3]);
}

bool all_figures(std::string_view word) {
    return std::ranges::all_of(word, is_figure);
}

// The list has every form that the dictionary makes of letters; Hunspell, which takes longer to
// open than all else of a proof, knows more of parts with other signs in them, or capitals within.
bool list_has_all_of(std::string_view part) {
    const std::string small = lower_case(part);
    const bool usual_capitals =
        part == small || part == capitalised(small) || std::ranges::none_of(part, is_small_letter);
    return all_figures(part) || (usual_capitals && all_small(small));
}

bool list_has_all_parts_of(std::string_view word) {
    for (std::size_t at = word.find('-'); at != word.npos; at = word.find('-')) {
        if (!list_has_all_of(word.substr(0, at))) return false;
        word.remove_prefix(at + 1);
    }
    return list_has_all_of(word);
}

bool is_missing(const std::filesystem::path& file) {
    std::error_code fault;
    return std::filesystem::status(file, fault).type() == std::filesystem::file_type::not_found;
}

// Of a file that cannot be read the library says nothing to its caller, and goes on without.
std::unique_ptr<Hunspell> open_hunspell(const std::filesystem::path& affixes,
                                        const std::filesystem::path& dictionary) {
    auto opened = std::make_unique<Hunspell>(affixes.c_str(), dictionary.c_str());
    if (opened->spell(std::string("the")) && opened->spell(std::string("working"))) return opened;
    throw std::system_error(std::make_error_code(std::errc::io_error),
                            "cannot read the dictionary '" + dictionary.string() + "'");
}

}

Spelling::Spelling(const std::filesystem::path& folder, const std::string& name)
    : words_(folder / (name + ".words")), near_(words_, folder / (name + ".letters")),
      affixes_(folder / (name + ".aff")), dictionary_(folder / (name + ".dic")) {}

Spelling::~Spelling() = default;

// Where there is no dictionary, nothing is known to be wrong.
bool Spelling::known_to_hunspell(const std::string& word) const {
    const std::lock_guard lock(mutex_);
    if (!hunspell_ && is_missing(affixes_)) return true;
    if (!hunspell_) hunspell_ = open_hunspell(affixes_, dictionary_);
    if (const auto found = asked_.find(word); found != asked_.end()) return found->second;
    if (asked_.size() >= most_kept) asked_.clear();
    return asked_[word] = hunspell_->spell(word);
}

// As Hunspell takes capitals: a name needs its own, a word may have any that a sentence gives it.
bool Spelling::listed(const std::string& word) const {
    const auto has = [&](const std::string& form) {
        return words_.class_of(form) != WordList::is_none;
    };
    if (has(word) || all_figures(word)) return true;
    if (word.empty() || !is_capital_letter(word.front())) return false;
    const std::string small = lower_case(word);
    const bool all_capitals = std::ranges::none_of(word, is_small_letter);
    const bool plural = word.ends_with('S') && has(word.substr(0, word.size() - 1) + 's'); // PCs
    if (all_capitals) return has(small) || has(capitalised(small)) || plural;
    return word == capitalised(small) && has(small);
}

// Whole, or at each hyphen: co-op-wide
bool Spelling::parts_listed(std::string_view word) const {
    for (std::size_t at = word.find('-'); at != std::string_view::npos; at = word.find('-', at + 1))
        if (listed(std::string(word.substr(0, at)))) {
            const std::string rest(word.substr(at + 1));
            if (listed(rest) || parts_listed(rest)) return true;
        }
    return false;
}

// Of a word that is listed: manipulatives, genotyped. What doubles its consonant, or not, by its
// stress is in the list or wrong: occured.
bool Spelling::is_regular_form(const std::string& word) const {
    constexpr std::size_t shortest = 4;
    const auto stem = [&](std::size_t ending, std::string_view instead = {}) {
        std::string made = word.substr(0, word.size() - std::min(ending, word.size()));
        made += instead;
        const bool known = listed(made) || is_one_of(made, List::trade_words);
        return made.size() >= shortest && known ? made : std::string();
    };
    if (word.ends_with('s')) {
        const std::string noun = stem(1);
        return !noun.empty() && takes_plain_s(noun);
    }
    const bool past = word.ends_with("ed");
    if (!past && !word.ends_with("ing")) return false;
    const std::size_t ending = past ? 2 : 3;
    std::string doubled = word; // cutting, for cuting
    if (word.size() > ending)
        doubled.insert(word.size() - ending, 1, word[word.size() - ending - 1]);
    if (in_use(doubled)) return false;
    for (const std::string& verb :
         {stem(ending, "e"), stem(ending), past ? stem(3, "y") : std::string()}) {
        // no form of what is no verb, and a rare word: colected, runing
        if (verb.empty() || may_double(verb)) continue;
        if (!in_use(verb) && !verb_forms(verb).base) continue;
        if (word == (past ? past_form(verb) : gerund_form(verb))) return true;
    }
    return false;
}

// Who does it: funder; but operater is a slip for one in -or, and braker is no word.
bool Spelling::is_agent_of_verb(const std::string& word) const {
    constexpr std::size_t shortest = 4, ending = 2;
    const std::string noun = word.ends_with('s') ? word.substr(0, word.size() - 1) : word;
    if (!noun.ends_with("er") || noun.size() < shortest + ending) return false;
    const std::string verb = noun.substr(0, noun.size() - ending);
    if (may_double(verb) || ends_with_any(verb, {"e", "er", "or"})) return false;
    const VerbForms forms = verb_forms(verb);
    return forms.base && forms.verb->base == verb && in_use(verb) && !listed(verb + "or");
}

bool Spelling::in_use(std::string_view word) const {
    return words_.empty() || is_in_use(words_.class_of(word));
}

bool Spelling::right(std::string_view word) const {
    if (word.size() > longest_english || words_.empty()) return true;
    const std::string lower = lower_case(word);
    if (is_one_of(lower, List::trade_words) || is_technical_name(word)) return true;
    const std::string one(word);
    const auto is_known_slip = [&] {
        return said_of(lower, lines_of(List::short_slips)).has_value();
    };
    if (listed(one) || parts_listed(word)) // publically
        return !is_known_slip() || words_.class_of(lower) != WordList::is_beside;
    if (is_known_slip()) return false;
    const bool usual_capitals = one == lower || one == capitalised(lower);
    if (usual_capitals && (is_regular_form(lower) || is_agent_of_verb(lower))) return true;
    return !list_has_all_parts_of(word) && known_to_hunspell(one);
}

NearWords Spelling::near(std::string_view word) const {
    constexpr std::size_t shortest = 4;
    constexpr double sure = 9;
    if (const auto meant = said_of(lower_case(word), lines_of(List::short_slips)))
        return {{is_capitalised(word) ? capitalised(std::string(*meant)) : std::string(*meant)},
                sure};
    if (word.size() > longest_english || word.size() < shortest || right(word)) return {};
    const std::lock_guard lock(mutex_);
    std::string key(word);
    if (const auto found = searched_.find(key); found != searched_.end()) return found->second;
    if (searched_.size() >= most_kept) searched_.clear();
    NearWords result = near_.search(key);
    return searched_.emplace(std::move(key), std::move(result)).first->second;
}

bool is_technical_name(std::string_view word) {
    return is_one_of(lower_case(word), List::technical_names);
}

std::optional<std::string_view> technical_name(std::string_view lower) {
    return said_of(lower, lines_of(List::technical_names));
}

}
