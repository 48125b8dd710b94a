// The table of the wording checks, and those of person, voice and sentence.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace quoin::advice {

namespace {

using enum trade::Holds;
using Opening = english::BulletReading::Opening;

std::vector<std::string> different(const WordedBullet& bullet,
                                   const std::vector<english::Extent>& extents) {
    std::vector<std::string> words;
    for (const english::Extent& extent : extents)
        add_once(words, bullet.words(extent), all_of_them);
    return words;
}

std::string without_pronoun(const WordedBullet& bullet) {
    const english::BulletReading& reading = bullet.reading;
    const std::string_view pronoun = bullet.words(reading.first_person.front());
    const bool subject = reading.first_person.front().offset == 0 &&
                         (reading.opening == Opening::person || reading.opening == Opening::weak) &&
                         (pronoun == "I" || pronoun == "We");
    if (subject) return fill<messages::drop_subject>(in_quotes(pronoun));
    const std::string lower = lower_case(pronoun);
    if (lower == "my" || lower == "our") return fill<messages::drop_possessive>();
    return fill<messages::drop_pronoun>();
}

// An objective has no more need of `I` than a bullet.
void first_person_in_prose(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (!part.field || part.field->name != trade::FieldName::text) continue;
        const std::string& text = part.plain;
        std::vector<std::string> words;
        const auto pronouns = context.language.read_bullet(part.sentence).first_person;
        for (const english::Extent& pronoun : pronouns)
            add_once(words, std::string_view(text).substr(pronoun.offset, pronoun.length), 3);
        if (words.empty()) continue;
        const english::Extent& first = pronouns.front();
        report<messages::first_person>(findings, part.text.place(first.offset, first.length),
                                       some_of(words, 3), words.size() == 1 ? "speaks" : "speak")
            .suggestion = fill<messages::drop_pronoun>();
    }
}

void first_person(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : bullets_under(context, {experience, projects, activities})) {
        const auto& pronouns = bullet.reading.first_person;
        if (pronouns.empty()) continue;
        const auto words = different(bullet, pronouns);
        report<messages::first_person>(findings, bullet.place(pronouns.front()), some_of(words, 3),
                                       words.size() == 1 ? "speaks" : "speak")
            .suggestion = without_pronoun(bullet);
    }
    first_person_in_prose(context, findings);
}

// A pronoun for subject is the first person's fault, and a passive the passive's.
void full_sentence(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : bullets_under(context, {experience, projects, activities})) {
        const english::BulletReading& reading = bullet.reading;
        if (!reading.sentence || reading.opening != Opening::no_verb) continue;
        if (!reading.passive.empty() || !reading.first_person.empty()) continue;
        report<messages::full_sentence>(findings, bullet.place(reading.verb),
                                        in_quotes(bullet.words(reading.verb)));
    }
}

std::string active_for(std::string_view passive) {
    constexpr std::array<std::string_view, 10> recognitions{
        "selected", "chosen",    "awarded", "promoted", "elected",
        "named",    "nominated", "invited", "voted",    "recognized"};
    const std::size_t space = passive.rfind(' ');
    std::string last(passive.substr(space == std::string_view::npos ? 0 : space + 1));
    if (space == std::string_view::npos || !is_one_of(last, recognitions))
        return fill<messages::active_for_opening>();
    return fill<messages::participle_alone>(in_quotes(capitalised(std::move(last))));
}

// `Trained in first aid; settled 3 fights`, `Requested by name for 19 of 31 days`: what others did
// to the writer is credit, if the bullet goes on to tell of it.
bool is_credit(const WordedBullet& bullet) {
    const english::BulletReading& reading = bullet.reading;
    if (reading.opening != Opening::participle) return false;
    const auto first = bullet.part.words.front().word;
    return reading.has_figure || bullet.text.find(';') != std::string::npos ||
           is_one_of(lower_case(first), List::entrusted);
}

void passive(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : bullets_under(context, {experience, projects, activities}))
        for (const english::Extent& extent : bullet.reading.passive) {
            const bool opens = extent == bullet.reading.verb;
            if (opens && is_credit(bullet)) continue;
            report<messages::passive>(findings, bullet.place(extent),
                                      in_quotes(bullet.words(extent)))
                .suggestion =
                opens ? active_for(bullet.words(extent)) : fill<messages::active_for_clause>();
        }
}

constexpr std::array wording_table{
    Check{"tense", Weight::should, "wording",
          "Verbs are in the past where the entry has ended, and in the present where it goes on: "
          "the one that opens a bullet and those joined to it.",
          "A reader takes the tense for the answer to whether you still do it.", "common practice",
          "- Count 212 quadrats, under dates: Jun 2025 - Aug 2025", "- Counted 212 quadrats",
          tense},
    Check{"action-verb", Weight::should, "wording",
          "A bullet opens with a verb, or with an adverb and its verb.",
          "Read down the left edge, the verbs alone tell what you can do.", "common practice",
          "- Research assistant to a professor of botany", "- Pressed 140 specimens", action_verb},
    Check{"weak-opening", Weight::should, "wording",
          "A bullet does not open with 'Responsible for', 'Helped', 'Worked on' and their like.",
          "It says that you were near the work, and the verb that would say more comes too late.",
          "common practice", "- Responsible for training volunteers", "- Trained 4 volunteers",
          weak_opening},
    Check{"repeated-opening", Weight::consider, "wording",
          "No verb opens more than two bullets, in whatever form.",
          "The third time it is no longer read.", "common practice",
          "three bullets that open with 'Managed'", "'Managed', 'Scheduled', 'Trained'",
          repeated_opening},
    Check{
        "first-person", Weight::should, "wording",
        "No bullet or summary says I, me, my, we, us, our or their like; words in a quotation or a "
        "title are passed over.",
        "The page has your name on top; the pronouns only take room.", "common practice",
        "- I trained our volunteers", "- Trained 4 volunteers", first_person},
    Check{"little-words", Weight::consider, "wording",
          "A bullet does not spend three words or more, or a line, on articles and fillers.",
          "A line is room for another fact.", "common practice",
          "- Cleaned the tanks, the pumps and the filters", "- Cleaned tanks, pumps and filters",
          little_words},
    Check{"full-sentence", Weight::should, "wording", "A bullet has no subject of its own.",
          "You are the subject of every bullet, and a reader looks for the verb.",
          "common practice", "- The crew surveyed 9 sites", "- Surveyed 9 sites with crew of 4",
          full_sentence},
    Check{"passive", Weight::should, "wording",
          "The main verbs of a bullet are active; 'Selected from 90 applicants' and other "
          "participles of recognition are good openings.",
          "A passive leaves open whether it was you.", "common practice",
          "- Samples were collected at 11 beaches", "- Collected samples at 11 beaches", passive},
    Check{"no-figure", Weight::should, "wording",
          "At least one bullet of a position or project counts, measures or values something; "
          "years, clock times and numbers in names do not.",
          "A number is what a reader remembers, and what tells a big job from a small one.",
          "common practice", "- Trained volunteers in survey methods",
          "- Trained 4 volunteers in survey methods", no_figure},
    Check{"impossible-figure", Weight::must, "wording",
          "Nothing falls by more than 100 percent, a range of percentages begins with the "
          "smaller, and of a number no more than that number is counted.",
          "A figure that cannot be true makes a reader doubt the others.", "common practice",
          "- Cut entry time 118%", "- Cut entry time from 22 minutes to 10", impossible_figure},
    Check{"task-without-result", Weight::consider, "wording",
          "A bullet tells an outcome, a scale or a reason beside the task.",
          "Tasks come with the title of a job; what came of them is yours.", "common practice",
          "- Entered data", "- Entered data of 9 sites, cutting entry time 18%",
          task_without_result},
    Check{"empty-phrases", Weight::should, "wording",
          "No 'hard worker', 'team player', 'detail-oriented', 'various', 'etc.' and their like.",
          "Everybody writes them, so they tell nothing about you.", "common practice",
          "- Performed various duties, etc.", "- Balanced 2 tills and closed 3 nights a week",
          empty_phrases},
};

}

std::span<const Check> wording_checks() {
    return wording_table;
}

}
