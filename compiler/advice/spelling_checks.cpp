// Spelling of what the writer worded. Names, addresses, links and technical words are passed over:
// they are in no dictionary, and no fault.
#include "compiler/advice/spelling_checks.hpp"

#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/consistency.hpp"
#include "compiler/advice/installed_dictionary.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/other_languages.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/suggest.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/english/spelling.hpp"
#include "compiler/trade/labels.hpp"

#include <algorithm>
#include <array>
#include <set>

namespace quoin::advice {

KnownWords::KnownWords(const ProofContext& context) {
    const model::Resume& resume = context.resume;
    const office::Rules& rules = context.rules();
    for (const auto* names : {&rules.employers, &rules.schools, &rules.courses})
        for (const office::KnownName& known : *names)
            add(known.name);
    for (const std::string& phrase : resume.settings.words)
        add(phrase);
    for (const model::Gloss& gloss : resume.settings.glosses)
        add(gloss.words); // in another language, or an abbreviation
    for (const TextInResume& part : context.texts)
        if (part.field && has(part.field->name, trade::Trait::names)) add(part.plain);
}

bool KnownWords::holds(std::string_view word) const {
    std::string lower = lower_case(word);
    if (words_.contains(lower)) return true;
    return lower.ends_with("'s") && words_.contains(lower.substr(0, lower.size() - 2));
}

void KnownWords::add(std::string_view phrase) {
    for (const WordAt& word : words_in(phrase))
        words_.insert(lower_case(word.word));
    words_.insert(lower_case(phrase));
}

bool has_inner_capital(std::string_view word) {
    return std::ranges::any_of(word.substr(std::min<std::size_t>(1, word.size())),
                               is_capital_letter);
}

bool is_address(std::string_view text, const WordAt& word) {
    constexpr std::size_t longest = 254; // RFC 5321, section 4.5.3.1: an address with its path
    const std::size_t earliest = word.offset - std::min(word.offset, longest);
    const std::string_view around = text.substr(earliest, 2 * longest);
    const std::size_t begin = around.rfind(' ', word.offset - earliest);
    const std::size_t from = begin == std::string_view::npos ? 0 : begin + 1;
    const std::string_view token = around.substr(from, around.find(' ', from) - from);
    if (token.find_first_of("@\\_#=+<>") != std::string_view::npos) return true;
    if (token.find("://") != std::string_view::npos || token.starts_with("www.")) return true;
    const std::size_t point = token.find('.');
    return point != std::string_view::npos && point + 1 < token.size() &&
           is_ascii_letter(token[point + 1]); // ellerystate.example, Node.js
}

bool is_spelled(const TextInResume& part) {
    if (!part.field) return true;
    if (part.in_heading) return part.field->name == trade::FieldName::headline;
    return !has(part.field->name, trade::Trait::names);
}

namespace {

// Node, iPad, GIS, McCarthy; not a plain small word.
bool has_capital(std::string_view word) {
    return std::ranges::any_of(word, is_capital_letter);
}

struct SpelledWord {
    std::string word;
    std::size_t offset = 0;
    bool opens = false;  // a bullet, where any word has its capital
    bool titled = false; // stands where each word of weight has one
};

// Degrees, subjects, posts: a name is rarer there than a word with a capital.
bool has_title_capitals(const TextInResume& part) {
    using enum trade::FieldName;
    if (part.bullet) return false;
    if (!part.field) return true; // of a section
    constexpr std::array fields{degree, major, minor, courses, course, role, credential, headline};
    return std::ranges::find(fields, part.field->name) != fields.end();
}

bool has_far_letter(std::string_view word) { // beyond ASCII; a typographic apostrophe is none
    return std::ranges::any_of(straight_apostrophes(word),
                               [](char c) { return static_cast<unsigned char>(c) >= 0x80; });
}

// de queijo, after pão; but not guidelines, after résumé, which is English, and not after São, a
// name.
bool is_in_foreign_phrase(const std::vector<WordAt>& words, std::size_t i,
                          const english::Language& language) {
    constexpr std::size_t near = 2;
    for (std::size_t k = i - std::min(i, near); k < words.size() && k <= i + near; ++k) {
        const std::string_view word = words[k].word;
        if (has_far_letter(word) && !is_capital_letter(word.front()) &&
            !language.spelled_right(word))
            return true;
    }
    return false;
}

// Words of a text that is no link, without those in links, addresses, italics and, beside the
// English of `language`, phrases in another.
std::vector<SpelledWord> words_to_check(const TextInResume& part,
                                        const english::Language* language) {
    const model::Text& text = part.text;
    const bool bullet = part.bullet != nullptr, titled = has_title_capitals(part);
    std::vector<SpelledWord> words;
    std::size_t begin = 0;
    std::vector<bool> passed(part.plain.size() + 1);
    for (const model::Span& span : text.spans) {
        if (span.link || span.marks.emphasis)
            std::fill_n(passed.begin() + static_cast<std::ptrdiff_t>(begin), span.text.size(),
                        true);
        begin += span.text.size();
    }
    const auto& all = part.words;
    const bool addressed = part.plain.find_first_of("@\\_#=+<>.:") != std::string::npos;
    const bool far_letters = !all_ascii(part.plain);
    for (std::size_t i = 0; i < all.size(); ++i) {
        const WordAt& word = all[i];
        if (passed[word.offset] || has_digit(word.word)) continue;
        if (addressed && is_address(part.plain, word)) continue;
        if (language && far_letters && is_in_foreign_phrase(all, i, *language)) continue;
        words.push_back(
            {straight_apostrophes(word.word), word.offset, bullet && word.offset == 0, titled});
    }
    return words;
}

// unbilled, microplastics
bool is_right_after_prefix(const std::string& word, const english::Language& language) {
    constexpr std::size_t shortest = 5;
    return std::ranges::any_of(listed(List::spelling_prefixes), [&](std::string_view prefix) {
        // before a rare word it is none: co-lected
        return word.size() >= prefix.size() + shortest && word.starts_with(prefix) &&
               language.in_use(word.substr(prefix.size()));
    });
}

// comission: more likely a letter lost than a word with a prefix; but microalgae.
bool is_cheap_slip(const std::string& word, const english::Language& language) {
    constexpr std::size_t long_enough = 7;
    constexpr double sure = 2; // coedited and misrouted are far below
    if (word.size() < long_enough) return false;
    const auto near = language.spellings_near(word, sure);
    return !near.empty() && near.front().size() != word.size();
}

// mockups, tagout: a short word and a particle
bool ends_with_particle(std::string_view word, const english::Language& language) {
    constexpr std::array<std::string_view, 6> particles{"up", "out", "off", "down", "over", "back"};
    constexpr std::size_t shortest = 3;
    if (word.ends_with('s')) word.remove_suffix(1);
    return std::ranges::any_of(particles, [&](std::string_view particle) {
        return word.size() >= particle.size() + shortest && word.ends_with(particle) &&
               language.spelled_right(word.substr(0, word.size() - particle.size()));
    });
}

// A form of a verb that is known is right, if the dictionary lacks it: crowdsourced.
bool is_verb_form(std::string_view word, const english::Language& language) {
    const auto past = language.past_of(word);
    const auto base = language.base_of(word);
    return (past && *past == word) || (base && *base == word);
}

std::string possessed(std::string_view word) {
    return std::string(word.ends_with("'s") ? word.substr(0, word.size() - 2) : word);
}

bool is_right(const SpelledWord& spelled, const std::string& word, const KnownWords& known,
              const english::Language& language) {
    if (word.size() < 3 || known.holds(word) || language.spelled_right(word)) return true;
    const std::string small = lower_case(word);
    if (is_one_of(small, List::spelling_prefixes)) return true; // of a compound: co-led
    const bool may_be_verb = spelled.opens || !has_capital(word);
    return (is_right_after_prefix(small, language) && !is_cheap_slip(small, language)) ||
           ends_with_particle(small, language) || (may_be_verb && is_verb_form(small, language));
}

// Of a name no more can be told, and none is looked for.
bool may_be_slip(const SpelledWord& spelled, std::string_view word) {
    constexpr std::size_t long_enough = 6;
    return spelled.opens || !has_capital(word) || word.size() >= long_enough;
}

// A capital tells nothing where it opens a bullet. Elsewhere it makes a name, but for a long word
// with a letter dropped, doubled or swapped, Managment, and for a slip in a program's name, Pyhton.
bool is_slip(const SpelledWord& spelled, std::string_view word, const std::string& meant) {
    constexpr std::size_t long_enough = 7;
    const bool program = english::is_technical_name(meant);
    if (has_inner_capital(word)) return program && has_inner_capital(meant);
    if (!is_capital_letter(word.front()) || spelled.opens || spelled.titled || program) return true;
    if (word.size() < long_enough) return false;
    if (meant.size() == word.size() + 1 || meant.size() + 1 == word.size())
        return meant.front() == word.front() && meant.back() == word.back();
    std::string letters(word), of_meant(meant);
    std::ranges::sort(letters);
    std::ranges::sort(of_meant);
    return letters == of_meant;
}

std::string suggestions(const std::vector<std::string>& near) {
    std::vector<std::string_view> shown(
        near.begin(),
        near.begin() + static_cast<std::ptrdiff_t>(std::min<std::size_t>(3, near.size())));
    return fill<messages::near_words>(listed(shown));
}

// Whether a word is in no dictionary; of a slip for one that is, a finding.
bool check_word(const SpelledWord& spelled, const model::Text& text, const KnownWords& known,
                const english::Language& language, std::vector<Finding>& findings) {
    const std::string word = possessed(spelled.word);
    if (is_right(spelled, word, known, language)) return false;
    if (is_known_slip(word)) return true; // told by its own name
    if (const std::string two = parted_words(word, language); !two.empty()) {
        report<messages::run_together>(findings, text.place(spelled.offset, word.size()),
                                       in_quotes(word))
            .suggestion = fill<messages::write>(in_quotes(two));
        return true;
    }
    if (!may_be_slip(spelled, word)) return true;
    constexpr double of_titles = 1.5; // a name may stand there after all: Fourier
    constexpr double of_names = 4;    // venus: a name with a small letter is a slip of another kind
    const bool capital = has_capital(word);
    const bool name = !capital && language.spelled_right(capitalised(word));
    std::vector<std::string> near =
        language.spellings_near(word, name                        ? of_names
                                      : capital && spelled.titled ? of_titles
                                                                  : 0);
    const auto past = language.true_past_of(lower_case(word));
    if (past)
        near = {spelled.opens ? capitalised(*past) : *past};
    else if (near.empty() || !is_slip(spelled, word, near.front()))
        return true;
    // theatre, organised: right elsewhere, and for `spelling-region` to see to
    if (!american_spelling(lower_case(word), language).empty()) return false;
    report<messages::misspelt>(findings, text.place(spelled.offset, word.size()), in_quotes(word))
        .suggestion = suggestions(near);
    return true;
}

// A compound by its parts, if it is not right as a whole: e-filed, co-led.
bool check_parts(const SpelledWord& spelled, const model::Text& text, const KnownWords& known,
                 const english::Language& language, std::vector<Finding>& findings) {
    const std::string& word = spelled.word;
    if (word.find('-') == std::string::npos || known.holds(word) || language.spelled_right(word))
        return check_word(spelled, text, known, language, findings);
    constexpr std::size_t shortest = 5;
    bool unknown = false;
    for (std::size_t at = 0; at < word.size();) {
        const std::size_t end = std::min(word.find('-', at), word.size());
        if (end - at >= shortest)
            unknown |= check_word({word.substr(at, end - at), spelled.offset + at,
                                   spelled.opens && at == 0, spelled.titled},
                                  text, known, language, findings);
        at = end + 1;
    }
    return unknown;
}

// Each word that is spelled in the résumé, once, to the first that is looked at no more: of so many
// that are told, or that no dictionary has, the page is in another language.
template<typename Check>
void each_word(const ProofContext& context, const english::Language* language,
               std::vector<Finding>& findings, const Check& check) {
    constexpr std::size_t most_told = 100, most_unknown = 1000;
    std::unordered_set<std::string> seen;
    const std::size_t before = findings.size();
    std::size_t unknown = 0;
    for (const TextInResume& part : context.texts) {
        if (!is_spelled(part)) continue;
        for (const SpelledWord& word : words_to_check(part, language)) {
            if (!seen.insert(word.word).second) continue;
            const std::size_t told = findings.size() - before;
            if (told >= most_told || unknown >= most_unknown) {
                report<messages::spelled_to_here>(findings,
                                                  part.text.place(word.offset, word.word.size()),
                                                  in_quotes(word.word), std::max(told, unknown));
                return;
            }
            unknown += check(word, part.text) ? 1U : 0U;
        }
    }
}

// Of a word that some dictionary of another language lacks, only what is surely a slip is told: in
// small letters, and a letter or two from a word that it has.
bool check_elsewhere(const SpelledWord& spelled, const model::Text& text, const KnownWords& known,
                     const InstalledDictionary& dictionary, std::string_view language,
                     std::vector<Finding>& findings) {
    constexpr std::size_t shortest = 4;
    std::string word = spelled.word; // without what is elided before it: l'enquête
    if (const auto at = word.rfind('\''); at != std::string::npos && !known.holds(word))
        word = dictionary.right(word) ? word : word.substr(at + 1);
    if (word.size() < shortest || known.holds(word) || dictionary.right(word)) return false;
    if (has_capital(word) && !spelled.opens) return true;
    const auto near = dictionary.near(word);
    const std::vector<std::string_view> candidates(near.begin(), near.end());
    if (!nearest(word, candidates)) return true;
    report<messages::misspelt_elsewhere>(findings, text.place(spelled.offset, spelled.word.size()),
                                         in_quotes(word), in_quotes(language))
        .suggestion = suggestions(near);
    return true;
}

// --- names

// A letter lost, added or out of its place within the word: Hosptial, Collge.
bool is_plain_slip(std::string_view typed, std::string_view meant) { // both in small letters
    if (typed == meant || typed.front() != meant.front() || typed.back() != meant.back())
        return false;
    const bool longer = meant.size() > typed.size();
    if (std::max(meant.size(), typed.size()) - std::min(meant.size(), typed.size()) > 1)
        return false;
    std::string letters(typed), of_meant(meant);
    std::ranges::sort(letters);
    std::ranges::sort(of_meant);
    return longer ? std::ranges::includes(of_meant, letters)
                  : std::ranges::includes(letters, of_meant);
}

}

// Of a name only what every such name is made of can be told: Collage, Univeristy, Hosptial.
std::string institution_meant(std::string_view word) {
    constexpr std::size_t shortest = 6;
    if (word == "Collage") return "College";
    if (word.size() < shortest || !is_capital_letter(word.front()) || has_inner_capital(word))
        return {};
    const std::string small = lower_case(word);
    if (is_one_of(small, List::words_of_institutions)) return {};
    for (const std::string_view meant : listed(List::words_of_institutions))
        if (meant.size() >= shortest && is_plain_slip(small, meant))
            return capitalised(std::string(meant));
    return {};
}

namespace {

// Bellingam: near a town of the list, or of another line.
std::string town_meant(std::string_view word, const std::set<std::string>& towns,
                       const english::Language& language) {
    constexpr std::size_t long_enough = 7, on_page = 5;
    if (word.size() < on_page || has_inner_capital(word)) return {};
    const std::string small = lower_case(word);
    if (towns.contains(small) || is_one_of(small, List::known_towns)) return {};
    for (const std::string_view meant : listed(List::known_towns))
        if (word.size() >= long_enough && is_plain_slip(small, meant))
            return capitalised(std::string(meant));
    if (language.spelled_right(word)) return {}; // Cedar Cove and Calder Bluffs
    for (const std::string& meant : towns)
        if (meant.size() >= on_page && is_plain_slip(small, meant))
            return capitalised(std::string(meant));
    return {};
}

void misspelt_names(const ProofContext& context, std::vector<Finding>& findings) {
    using enum trade::FieldName;
    constexpr std::array institutions{employer, school, issuer, by, venue};
    constexpr std::size_t most_towns = 200; // each word is held against all of them
    std::set<std::string> towns;            // of the lines before, in small letters
    for (const TextInResume& part : context.texts) {
        if (!part.field || !part.field->tags.empty()) continue;
        const bool town = has(part.field->name, trade::Trait::locates);
        const bool named = std::ranges::find(institutions, part.field->name) != institutions.end();
        if (!town && !named) continue;
        for (const WordAt& word : part.words) {
            const std::string meant = town ? town_meant(word.word, towns, context.language)
                                           : institution_meant(word.word);
            if (town && meant.empty() && towns.size() < most_towns) towns.emplace(part.small(word));
            if (meant.empty() ||
                !american_spelling(lower_case(word.word), context.language).empty() ||
                is_one_of(part.small(word), context.resume.settings.words))
                continue;
            report<messages::misspelt>(findings, part.text.place(word.offset, word.word.size()),
                                       in_quotes(word.word))
                .suggestion = suggestions({meant});
        }
    }
}

void spelling(const ProofContext& context, std::vector<Finding>& findings) {
    const KnownWords known(context);
    if (is_american(context.resume)) misspelt_names(context, findings);
    if (is_american(context.resume)) known_slips(context, findings);
    if (is_american(context.resume)) {
        each_word(context, &context.language, findings,
                  [&](const SpelledWord& word, const model::Text& text) {
                      return check_parts(word, text, known, context.language, findings);
                  });
        return slips_in_names(context, findings);
    }
    const auto installed = installed_dictionary(context.resume);
    if (!installed) return;
    const InstalledDictionary dictionary(*installed);
    each_word(context, nullptr, findings, [&](const SpelledWord& word, const model::Text& text) {
        return check_elsewhere(word, text, known, dictionary, *context.resume.settings.language,
                               findings);
    });
}

constexpr std::array spelling_table{
    Check{
        "spelling", Weight::must, "spelling",
        "No word is a slip for another: in no dictionary, and a letter or two from a word in "
        "common use. Names, employers, schools, places, links and your 'words' are passed over.",
        "One misspelt word is reason enough to put a résumé aside, and a portal does not find it.",
        "Hunspell's dictionary en_US, and WordNet", "- Recieved 14 deliveries a week",
        "- Received 14 deliveries a week", spelling},
    Check{"word-slip", Weight::must, "spelling",
          "No word is a slip for another that a dictionary has as well, as the words beside it "
          "show: 'manger' for 'manager', 'there' for 'their', 'a hour'. Italics, quotations, names "
          "and your 'words' are passed over.",
          "No dictionary finds it, and a reader does: these are the slips that are told on.",
          "common practice, by the pairs of words that guides to usage list; parts of speech from "
          "WordNet",
          "- Trained there costumers", "- Trained their customers", word_slips},
};

}

std::span<const Check> spelling_checks() {
    return spelling_table;
}

}
