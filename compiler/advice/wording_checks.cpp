// The table of the wording checks, and those of person, voice and sentence.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/english/tokens.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <iterator>
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

void first_person(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : bullets_under(context, {experience, projects, activities})) {
        const auto& pronouns = bullet.reading.first_person;
        if (pronouns.empty()) continue;
        const auto words = different(bullet, pronouns);
        report<messages::first_person>(findings, bullet.place(pronouns.front()), some_of(words, 3),
                                       words.size() == 1 ? "speaks" : "speak")
            .suggestion = without_pronoun(bullet);
    }
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

void passive(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : bullets_under(context, {experience, projects, activities}))
        for (const english::Extent& extent : bullet.reading.passive)
            report<messages::passive>(findings, bullet.place(extent),
                                      in_quotes(bullet.words(extent)))
                .suggestion = extent == bullet.reading.verb ? active_for(bullet.words(extent))
                                                            : fill<messages::active_for_clause>();
}

// --- figures that cannot be

constexpr std::array<std::string_view, 6> less_words{"reduction", "decrease", "decline",
                                                     "less",      "fewer",    "lower"};
constexpr std::array<std::string_view, 11> fall_words{
    "cut",       "cutting",    "reduced", "reducing", "lowered", "lowering",
    "decreased", "decreasing", "shrank",  "trimmed",  "slashed"};
// Where what falls no longer reaches, and what a percentage may be of.
constexpr std::array<std::string_view, 9> fall_bounds{"and",  "while", "but",    "to",  "at",
                                                      "from", "than",  "target", "goal"};
constexpr std::array<std::string_view, 7> fall_joins{"by",   "in", "with", "through",
                                                     "over", "at", "for"};

// Of `$1,200` and `118%`; none for a figure of another make.
std::optional<double> value_of(std::string_view figure) {
    std::string plain;
    std::ranges::copy_if(figure, std::back_inserter(plain),
                         [](char c) { return c != ',' && c != '$' && c != '%'; });
    double value = 0;
    const auto end = std::from_chars(plain.data(), plain.data() + plain.size(), value);
    const bool whole = end.ec == std::errc{} && end.ptr == plain.data() + plain.size();
    return whole ? std::optional(value) : std::nullopt;
}

// `12-8%`
bool is_upside_down(std::string_view figure, bool percent) {
    const std::size_t hyphen = std::min(figure.find('-'), figure.size() - 1);
    const std::string_view start = figure.substr(0, hyphen), end = figure.substr(hyphen + 1);
    return percent && value_of(end) && value_of(start) > value_of(end);
}

class Figures { // of a bullet, those that cannot be
public:
    explicit Figures(const WordedBullet& bullet)
        : bullet_(bullet), tokens_(english::read_tokens(bullet.text, {})) {}

    void report_to(std::vector<Finding>& findings) const {
        for (std::size_t i = 0; i < tokens_.size(); ++i) {
            if (tokens_[i].kind != english::TokenKind::figure) continue;
            const bool percent = word(i).ends_with('%') || word(i + 1) == "percent";
            const auto value = value_of(word(i));
            if (percent && value > 100 && is_fall(i, word(i + 1) == "percent" ? i + 2 : i + 1))
                tell<messages::falls_by_more>(i, i, findings);
            if (is_upside_down(word(i), percent)) tell<messages::upside_down>(i, i, findings);
            if (word(i + 1) == "out" && word(i + 2) == "of" && value_of(word(i + 3)) &&
                value > value_of(word(i + 3)))
                tell<messages::more_than_whole>(i, i + 3, findings);
        }
    }

private:
    std::string_view word(std::size_t i) const {
        return i < tokens_.size() ? std::string_view(tokens_[i].lower) : std::string_view{};
    }

    // `Cut entry time 118%`, `118% fewer slips`: a fall by so much, and of nothing else.
    bool is_fall(std::size_t i, std::size_t next) const {
        if (is_one_of(word(next), less_words)) return true;
        const bool by = i > 0 && word(i - 1) == "by";
        if (!by && !word(next).empty() && !is_one_of(word(next), fall_joins)) return false;
        while (i-- > 0 && !word(i).empty() && !is_one_of(word(i), fall_bounds))
            if (is_one_of(word(i), fall_words)) return true;
        return false;
    }

    template<const messages::FindingRow& fault>
    void tell(std::size_t first, std::size_t last, std::vector<Finding>& findings) const {
        const std::size_t begin = tokens_[first].extent.offset;
        const english::Extent all{begin, tokens_[last].extent.offset + tokens_[last].extent.length -
                                             begin};
        report<fault>(findings, bullet_.place(all), in_quotes(bullet_.words(all)));
    }

    const WordedBullet& bullet_;
    english::Tokens tokens_;
};

void impossible_figure(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : bullets_under(context, {experience, projects, activities}))
        Figures(bullet).report_to(findings);
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
    Check{"first-person", Weight::should, "wording",
          "No bullet says I, me, my, we, us, our or their like; words in a quotation or a title "
          "are passed over.",
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
