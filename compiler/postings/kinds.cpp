#include "compiler/postings/kinds.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/trade/spoken_languages.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::postings {

namespace {

std::string joined_words(const Phrase& phrase) {
    std::string text;
    for (const std::string& word : phrase.lower)
        text += (text.empty() ? "" : " ") + word;
    return text;
}

bool is_one_of_words(const Phrase& phrase, List list) {
    return std::ranges::any_of(phrase.lower,
                               [&](const std::string& w) { return is_one_of(w, list); });
}

// The words that follow a phrase, up to a sign.
std::vector<std::string> words_after(const Phrase& phrase, std::string_view sentence) {
    constexpr std::size_t looked_at = 3, longest = 80;
    const std::size_t end = phrase.extent.offset + phrase.extent.length;
    std::string after = lower_case(sentence.substr(end, longest));
    if (after.starts_with(") ")) after.erase(0, 1); // Approved Assistant (AVA) certificate
    std::vector<std::string> words = parted(after.substr(0, after.find_first_of(",;.:()")), " ");
    if (words.size() > looked_at) words.resize(looked_at);
    return words;
}

// EMT, Exam P, Avalanche Level 1: a name of its own.
bool is_name_of_its_own(const Phrase& phrase) {
    return is_capital_letter(phrase.words.front()) || std::ranges::any_of(phrase.words, is_figure);
}

// CST certification, AIC designation; A or B license.
bool is_certified(const Phrase& phrase, std::string_view sentence) {
    const std::vector<std::string> after = words_after(phrase, sentence);
    if (after.empty()) return false;
    const auto certifies = [](const std::string& word) {
        return is_one_of(word, List::credential_words) || is_one_of(word, List::names_of_tests);
    };
    return certifies(after.front()) ||
           ((after.front() == "or" || after.front() == "and") &&
            std::any_of(after.begin() + 1, after.end(), certifies) && is_name_of_its_own(phrase));
}

bool is_level(const Phrase& phrase) {
    constexpr std::string_view levels[] = {"level", "class", "type", "category", "tier"};
    return phrase.lower.size() > 2 && is_one_of(phrase.lower[phrase.lower.size() - 2], levels);
}

// MD-102, AZ-900: as exams are numbered.
bool is_numbered_exam(std::string_view words) {
    constexpr std::size_t letters = 2, figures = 3;
    const std::size_t hyphen = words.find('-');
    return hyphen == letters && words.size() == hyphen + 1 + figures &&
           all_figures(words.substr(hyphen + 1)) && is_capital_letter(words[0]) &&
           is_capital_letter(words[1]);
}

bool is_credential(const Phrase& phrase, const std::string& words, const Statement& statement) {
    if (statement.headed && statement.standing == Standing::duties) return false;
    if (is_one_of(words, List::credentials) || is_one_of(phrase.lower.front(), List::credentials))
        return true;
    const bool card = phrase.lower.size() > 1 && phrase.lower.back() == "card";
    if (is_one_of_words(phrase, List::credential_words) || is_level(phrase) ||
        is_numbered_exam(phrase.words) || (card && statement.standing <= Standing::preferred))
        return true;
    const bool test = is_name_of_its_own(phrase) && is_one_of_words(phrase, List::names_of_tests);
    return test || is_certified(phrase, statement.text);
}

// Resourcefulness, kindness: what ends so, of a person.
bool is_quality(const Phrase& phrase, const Statement& statement) {
    return phrase.lower.size() == 1 && phrase.lower[0].ends_with("ness") &&
           statement.standing <= Standing::preferred &&
           !is_one_of(phrase.lower[0], List::things_in_ness);
}

// Diesel technology program, animal science degree.
bool is_studied(const Phrase& phrase, const Statement& statement) {
    if (phrase.after_field || phrase.lower.back() == "studies") return true;
    if (statement.standing > Standing::preferred) return false;
    const bool program = phrase.lower.back() == "program" || phrase.lower.back() == "major";
    const std::vector<std::string> after = words_after(phrase, statement.text);
    constexpr std::string_view taught[] = {"program", "degree",     "major",  "diploma",
                                           "credits", "coursework", "courses"};
    const auto teaches = [&](const std::string& word) { return is_one_of(word, taught); };
    const bool joined = after.size() > 2 && (after[0] == "or" || after[0] == "and");
    const bool before = !after.empty() && (teaches(after.front()) || (joined && teaches(after[2])));
    if (!program && !before) return false;
    const std::size_t last = phrase.lower.size() - (program ? 2 : 1);
    return last < phrase.lower.size() && is_one_of(phrase.lower[last], List::ends_of_disciplines);
}

}

Kind kind_of(const Phrase& phrase, const Statement& statement) {
    const std::string words = joined_words(phrase);
    if (!phrase.after_field &&
        (trade::is_spoken_language(words) || trade::is_spoken_language(phrase.lower.back())))
        return Kind::language;
    if (is_credential(phrase, words, statement)) return Kind::credential;
    if (is_studied(phrase, statement)) return Kind::field;
    if (is_one_of(words, List::soft_skills) || is_one_of(words, List::soft_predicates) ||
        is_quality(phrase, statement))
        return Kind::soft_skill;
    return Kind::hard_skill;
}

}
