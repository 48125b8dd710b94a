// Checks of what belongs to others, or to an interview: reasons for leaving, an employer's plans,
// the names of those in one's care.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/privacy_phrases.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace quoin::advice {

namespace {

bool is_of_entry(const TextInResume& part) {
    return part.bullet || (part.field && has(part.field->name, trade::Trait::tells));
}

// What the list says of the phrase decides where it may be of something else.
bool is_told_of_self(std::string_view clause, std::string_view phrase, bool bullet) {
    const std::string_view said = said_of(phrase, lines_of(List::leaving)).value_or("");
    if (said == "no-bullet") return !bullet;
    if (said != "alone") return true;
    const auto words = words_in(clause.substr(phrase.size()));
    return words.empty() || (!bullet && !has_digit(words.front().word));
}

std::optional<english::Extent> leaving_in(std::string_view lower, bool bullet) {
    for (const Clause& clause : clauses_in(lower))
        for (const std::string_view phrase : listed(List::leaving))
            if (find_phrase(clause.text.substr(0, phrase.size() + 1), phrase) == 0 &&
                is_told_of_self(clause.text, phrase, bullet))
                return clause.extent;
    return std::nullopt;
}

void leaving_reason(const ProofContext& context, std::vector<Finding>& findings) {
    visit_texts(context.resume, [&](const TextInResume& part) {
        if (!is_of_entry(part)) return;
        const std::string text = part.text.plain();
        if (const auto told = leaving_in(lower_case(text), part.bullet != nullptr))
            report<messages::leaving_reason>(findings, part.text.place(told->offset, told->length),
                                             in_quotes(text.substr(told->offset, told->length)));
    });
}

// --- names of those in one's care

bool is_title(std::string_view word) {
    return is_one_of(lower_case(word), List::titles_of_persons);
}

// `Maria Delgado`, `Mr. Falk`: at `i` begin two words of a name, one of them in no dictionary.
bool is_name_at(const std::vector<WordAt>& words, std::size_t i,
                const english::Language& language) {
    if (i + 1 >= words.size()) return false;
    const auto capital = [&](std::size_t k) {
        const std::string_view word = words[k].word;
        return word.size() > 1 && is_capital_letter(word[0]) && is_small_letter(word[1]);
    };
    if (!capital(i) || !capital(i + 1)) return false;
    if (is_title(words[i].word)) return true;
    return words[i].offset + words[i].word.size() + 1 == words[i + 1].offset &&
           !language.spelled_right(lower_case(words[i].word)) &&
           !language.spelled_right(lower_case(words[i + 1].word));
}

bool is_in_care(std::string_view word) {
    return is_small_letter(word.front()) && is_one_of(word, List::in_care);
}

std::optional<english::Extent> name_in_care(const WordedBullet& bullet,
                                            const english::Language& language) {
    const auto words = words_in(bullet.text);
    const bool of_care =
        std::ranges::any_of(words, [](const WordAt& word) { return is_in_care(word.word); });
    const auto base = words.empty() ? std::nullopt : language.base_of(words.front().word);
    const bool cares = base && is_one_of(*base, List::care_verbs);
    for (std::size_t i = 1; i + 2 < words.size(); ++i) { // Mateo Quiroga's progress
        const bool owns =
            words[i + 1].word.ends_with("'s") || words[i + 1].word.ends_with("\u2019s");
        if (!owns || !is_one_of(lower_case(words[i + 2].word), List::told_of_those_in_care) ||
            !is_name_at(words, i, language))
            continue;
        const std::size_t begin = words[i].offset;
        return english::Extent{begin, words[i + 1].offset + words[i + 1].word.size() - begin};
    }
    for (std::size_t i = 0; i + 2 < words.size(); ++i) {
        const bool titled = of_care && is_title(words[i + 1].word); // Mr. Abelard, a patient
        const bool leads = titled || is_in_care(words[i].word) || (i == 0 && cares);
        if (!leads || !is_name_at(words, i + 1, language)) continue;
        const std::size_t begin = words[i + 1].offset;
        return english::Extent{begin, words[i + 2].offset + words[i + 2].word.size() - begin};
    }
    return std::nullopt;
}

void confidences(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : context.bullets) {
        if (const auto name = name_in_care(bullet, context.language))
            report<messages::person_in_care>(findings, bullet.place(*name),
                                             in_quotes(bullet.words(*name)));
        const std::string lower = lower_case(bullet.text);
        for (const std::string_view phrase : listed(List::not_public)) {
            const std::size_t at = find_phrase(lower, phrase);
            if (at == lower.npos) continue;
            const english::Extent extent{at, phrase.size()};
            report<messages::employers_secret>(findings, bullet.place(extent),
                                               in_quotes(bullet.words(extent)));
            break;
        }
    }
}

constexpr std::array discretion_table{
    Check{"leaving-reason", Weight::should, "privacy", "No line says why you left.",
          "It raises the question that it answers, and speaks ill of somebody.", "common practice",
          "note: Left because of a new manager", "no such line", leaving_reason},
    Check{"confidences", Weight::should, "privacy",
          "No bullet tells what an employer keeps to itself, nor names those in your care.",
          "Who tells the last employer's secrets will tell the next one's.",
          "common practice; 45 CFR 164 (HIPAA) and 34 CFR 99 (FERPA) for patients and pupils",
          "- Tutored pupil Ilse Varga in fractions", "- Tutored 4 pupils in fractions",
          confidences},
};

}

std::span<const Check> discretion_checks() {
    return discretion_table;
}

}
