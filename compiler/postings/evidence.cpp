#include "compiler/postings/evidence.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/verb_table.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/phrase_words.hpp"
#include "compiler/postings/said_phrases.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace quoin::postings {

namespace {

constexpr std::array<SignRow, signs_in_all> table_of_signs{{
    {"of all phrases", 0.83},
    {"required", -0.27},
    {"preferred", 0.21},
    {"elsewhere", -0.30},
    {"a soft skill", 1.68},
    {"a language", 1.36},
    {"a credential", 1.10},
    {"a degree", -0.06},
    {"a field of study", 1.03},
    {"in an item", 0.45},
    {"opens its sentence", 0.44},
    {"before more of its like", 0.78},
    {"after a lead-in of skill", 1.09},
    {"after with, in, for, of", 0.14},
    {"after the or our", -1.04},
    {"after a or any", -0.44},
    {"one word", -0.69},
    {"four words or more", -1.04},
    {"an acronym, or with signs", 0.94},
    {"a name within a sentence", 0.73},
    {"ends as deeds do", 0.83},
    {"a deed, knowledge or message", 0.86},
    {"a person", 0.32},
    {"a frequent word", -0.60},
    {"one frequent word", -1.41},
    {"one ordinary word", -1.34},
    {"one word in no dictionary", 0.74},
    {"of somebody", -0.53},
    {"said again", 0.28},
    {"a compound of English", 0.64},
    {"begins with a verb", -0.81},
    {"a verb alone", -0.20},
    {"its sentence says we", -0.11},
    {"its sentence tells", -0.23},
    {"its sentence is long", 0.27},
    {"its sentence is doubtful", -0.31},
    {"in a posting without parts", 0.00},
    {"outside the parts", -0.37},
    {"by a word of what is left out", -0.16},
    {"by an address or a sum", -0.59},
    {"a name in what is left out", -0.83},
    {"a name in the employer's address", -0.79},
    {"a strange name in what is left out", -0.45},
    {"a strange name within a sentence", -0.28},
    {"its part may be left out", -1.93},
    {"its words hang together", 0.38},
}};

using english::WordList;

std::string_view last_word(std::string_view text) {
    const std::size_t blank = text.find_last_of(" /(\"");
    return blank == text.npos ? text : text.substr(blank + 1);
}

// As a dictionary has it: in the singular.
std::string entry_of(std::string_view word, std::string_view list) {
    std::string entry(word);
    if (entry.ends_with("'s")) entry.resize(entry.size() - 2);
    if (said_of(entry, list)) return entry;
    if (entry.ends_with("ies")) return entry.substr(0, entry.size() - 3) + 'y';
    if (entry.ends_with("es") && said_of(entry.substr(0, entry.size() - 2), list))
        return entry.substr(0, entry.size() - 2);
    return entry.ends_with('s') ? entry.substr(0, entry.size() - 1) : entry;
}

bool is_among(std::string_view word, std::string_view list) {
    return said_of(entry_of(word, list), list).has_value();
}

// GIS, D1.1, PostgreSQL, C++: no word that is merely capitalised.
bool has_signs(std::string_view word) {
    const std::string_view rest = word.substr(1);
    return std::ranges::any_of(rest, is_capital_letter) || std::ranges::any_of(word, is_figure) ||
           word.find_first_of("+#") != word.npos;
}

bool any_word(std::string_view words, bool (*holds)(std::string_view)) {
    const auto pieces = pieces_of(words, " ");
    return std::ranges::any_of(pieces, holds);
}

bool ends_as_deed(std::string_view word) {
    constexpr std::string_view endings[] = {"ing",  "tion", "sion",   "ment", "ance",
                                            "ysis", "ship", "graphy", "ics",  "logy"};
    return std::ranges::any_of(endings, [&](std::string_view e) { return word.ends_with(e); });
}

Signs signs_of_words(const Phrase& phrase, const WordList& words) {
    Signs signs;
    const auto set = [&](std::size_t sign, bool holds) { signs[sign] = holds; };
    const std::vector<std::string>& lower = phrase.lower;
    const std::string head = lower.back().ends_with("'s")
                                 ? lower.back().substr(0, lower.back().size() - 2)
                                 : lower.back();
    const char rank = words.class_of(head);
    const bool one = lower.size() == 1;
    set(Sign::one_word, one);
    set(Sign::many_words, lower.size() > 3);
    set(Sign::with_signs, any_word(phrase.words, has_signs));
    set(Sign::deed_ending, ends_as_deed(head));
    set(Sign::deed_noun, is_among(head, english::deed_nouns()));
    set(Sign::person, is_among(head, english::person_nouns()));
    set(Sign::frequent, rank == WordList::is_frequent);
    set(Sign::one_frequent, one && rank == WordList::is_frequent);
    set(Sign::one_ordinary, one && rank == WordList::is_ordinary);
    set(Sign::one_unlisted, one && rank == WordList::is_none);
    set(Sign::of_somebody, phrase.words.find("'s") != std::string::npos);
    const std::string pair = lower.size() == 2 ? lower[0] + ' ' + lower[1] : "";
    set(Sign::compound,
        is_among(pair, english::named_compounds()) || is_among(pair, english::noun_compounds()));
    set(Sign::begins_with_verb, phrase.deed);
    set(Sign::verb_alone, phrase.deed && one);
    return signs;
}

Signs signs_of_kind(Kind kind, const Phrase& phrase) {
    Signs signs;
    const bool degree = phrase.lower.back() == "degree" || phrase.lower.back() == "diploma";
    signs[Sign::soft_skill] = kind == Kind::soft_skill;
    signs[Sign::language] = kind == Kind::language;
    signs[Sign::credential] = kind == Kind::credential && !degree;
    signs[Sign::degree] = degree;
    signs[Sign::field] = kind == Kind::field;
    return signs;
}

}

std::span<const SignRow> sign_rows() {
    return table_of_signs;
}

StatementSigns::StatementSigns(const Statement& statement)
    : statement_(&statement), lead_in_(statement.text.size() + 1) {
    const std::string lower = lower_case(statement.text);
    const auto says = [&](List list) { return says_any(lower, list); };
    for (const std::string_view phrase : listed(lines_of(List::lead_ins)))
        if (const std::size_t at = find_phrase(lower, phrase); at != lower.npos)
            lead_in_ = std::min(lead_in_, at + phrase.size());
    const std::size_t words = word_count(lower);
    common_[Sign::always] = true;
    common_[Sign::required] = statement.standing == Standing::required;
    common_[Sign::preferred] = statement.standing == Standing::preferred;
    common_[Sign::elsewhere] = statement.standing == Standing::elsewhere;
    common_[Sign::item] = statement.item;
    common_[Sign::says_we] = says(List::we);
    common_[Sign::tells] = !statement.item && says(List::telling_verbs);
    common_[Sign::long_sentence] = words > 25;
    common_[Sign::doubtful] = statement.doubtful;
    common_[Sign::unheaded] = !statement.headed && !statement.outside;
    common_[Sign::outside] = statement.outside;
    common_[Sign::unsure] = statement.unsure;
    common_[Sign::touched] = statement.touched;
    common_[Sign::addressed] = lower.find_first_of("@$") != lower.npos ||
                               lower.find("www.") != lower.npos ||
                               lower.find("://") != lower.npos || has_telephone(lower);
}

Signs StatementSigns::of_place(const Phrase& phrase) const {
    Signs signs;
    const std::string_view text = statement_->text;
    const std::string_view before = trimmed(text.substr(0, phrase.extent.offset));
    const std::string_view after = text.substr(phrase.extent.offset + phrase.extent.length);
    constexpr std::string_view definite[] = {"the",   "our",   "your", "this", "that",
                                             "these", "those", "its",  "their"};
    constexpr std::string_view indefinite[] = {"a", "an", "any", "one", "each", "every"};
    constexpr std::string_view prepositions[] = {"with", "in", "for", "of"};
    constexpr std::string_view joints[] = {",", "/", ";", " and ", " or ", " & "};
    const std::string word = lower_case(last_word(before));
    const auto among = [&](const auto& list) {
        return std::ranges::find(list, word) != std::end(list);
    };
    signs[Sign::opens] = before.empty() ||
                         std::string_view(".:;!?(\"").find(before.back()) != std::string_view::npos;
    signs[Sign::before_more] = std::ranges::any_of(
        joints, [&](std::string_view joint) { return after.starts_with(joint); });
    signs[Sign::after_lead_in] = phrase.extent.offset >= lead_in_;
    signs[Sign::after_preposition] = among(prepositions);
    signs[Sign::after_the] = among(definite);
    signs[Sign::after_a] = among(indefinite);
    signs[Sign::name] = is_capital_letter(phrase.words.front()) && !signs[Sign::opens] &&
                        !statement_->item && !any_word(phrase.words, has_signs);
    return signs;
}

Signs StatementSigns::of(const Phrase& phrase, Kind kind, const WordList& words) const {
    Signs signs =
        common_ | of_place(phrase) | signs_of_words(phrase, words) | signs_of_kind(kind, phrase);
    signs[Sign::strange_name] = signs[Sign::one_unlisted] && signs[Sign::name];
    return signs;
}

double odds_of(const Signs& signs) {
    double sum = 0;
    for (std::size_t i = 0; i < table_of_signs.size(); ++i)
        if (signs[i]) sum += table_of_signs[i].log_odds;
    return std::exp(sum);
}

}
