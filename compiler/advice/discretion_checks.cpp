// Checks of what belongs to others, or to an interview: reasons for leaving, an employer's plans,
// the names of those in one's care.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/care_names.hpp"
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
bool is_told_of_self(std::string_view clause, std::string_view phrase, bool bullet, bool closes) {
    const std::string_view said = said_of(phrase, lines_of(List::leaving)).value_or("");
    if (said == "no-bullet") return !bullet;
    if (said != "alone") return true;
    const auto words = words_in(clause.substr(phrase.size()));
    if (words.empty() && bullet) return closes; // Hung, terminated, and labeled cable
    return words.empty() || (!bullet && !has_digit(words.front().word));
}

std::optional<english::Extent> leaving_in(std::string_view lower, bool bullet) {
    for (const Clause& clause : clauses_in(lower))
        for (const std::string_view phrase : listed(List::leaving))
            if (clause.text.starts_with(phrase) &&
                find_phrase(clause.text.substr(0, phrase.size() + 1), phrase) == 0 &&
                is_told_of_self(clause.text, phrase, bullet,
                                clause.rest.size() <= clause.text.size() + 1))
                return clause.extent;
    return std::nullopt;
}

void leaving_reason(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (!is_of_entry(part)) continue;
        const std::string& text = part.plain;
        if (const auto told = leaving_in(part.lower, part.bullet != nullptr))
            report<messages::leaving_reason>(findings, part.text.place(told->offset, told->length),
                                             in_quotes(text.substr(told->offset, told->length)));
    }
}

// --- what is told in confidence

// `the confidential Dorsett settlement`
std::optional<english::Extent> confidential_name(std::string_view text) {
    const auto words = words_in(text);
    for (std::size_t i = 0; i + 1 < words.size(); ++i)
        if (lower_case(words[i].word) == "confidential" && is_capitalised(words[i + 1].word) &&
            words[i + 1].word.size() > 2)
            return english::Extent{words[i].offset, words[i + 1].offset + words[i + 1].word.size() -
                                                        words[i].offset};
    return std::nullopt;
}

void confidences(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : context.bullets) {
        if (const auto name = name_in_care(bullet, context.language))
            report<messages::person_in_care>(findings, bullet.place(*name),
                                             in_quotes(bullet.words(*name)));
        if (const auto secret = confidential_name(bullet.text); secret && secret->offset > 0)
            report<messages::employers_secret>(findings, bullet.place(*secret),
                                               in_quotes(bullet.words(*secret)));
        for (const std::string_view phrase : listed(List::not_public)) {
            const std::size_t at = bullet.part.phrased.find(phrase);
            if (at == bullet.text.npos) continue;
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
