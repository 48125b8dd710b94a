// Checks of skills and languages.
#include "compiler/advice/check.hpp"
#include "compiler/advice/language_levels.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/stuffing.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/trade/spoken_languages.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <unordered_set>
#include <utility>

namespace quoin::advice {

namespace {

struct Skill {
    const model::Field& group;
    const model::Text& item;
    bool spoken = false;   // in a group of languages that people speak
    bool levelled = false; // the group's label is a level

    std::string text() const { return item.plain(); }
    Place place() const { return item.place(0, text().size()); }
};

// "Spanish (professional)" is Spanish; "Spanish" too.
std::string before_parenthesis(std::string_view text) {
    const std::string_view head = text.substr(0, text.find('('));
    return std::string(head.substr(0, head.find_last_not_of(' ') + 1));
}

// Languages may be of computers: Python, Rust.
bool names_spoken_language(const model::Text& item) {
    return trade::are_spoken_languages(before_parenthesis(lower_case(item.plain())));
}

bool is_of_leisure(std::string_view title) { // lower case
    return has_phrase(title, "interests") || has_phrase(title, "hobbies");
}

std::vector<Skill> all_skills(const model::Resume& resume) {
    std::vector<Skill> all;
    for (const model::Section& section : resume.sections) {
        if (section.holds != trade::Holds::skills && section.holds != trade::Holds::languages)
            continue;
        if (is_of_leisure(lower_case(section.title.plain()))) continue;
        for (const model::Entry& entry : section.entries)
            for (const model::Field& field : entry.fields) {
                const auto* items = items_in(&field);
                const std::string label = lower_case(field.label.plain());
                if (!items || is_of_leisure(label)) continue;
                const bool spoken = section.holds == trade::Holds::languages ||
                                    has_phrase(label, "languages") ||
                                    has_phrase(label, "language") || has_phrase(label, "spoken");
                const bool of_people = section.holds == trade::Holds::languages ||
                                       std::ranges::any_of(*items, names_spoken_language);
                const bool levelled = has_language_level(label);
                for (const model::Text& item : *items)
                    all.push_back({field, item, spoken && of_people, levelled});
            }
    }
    return all;
}

void skills_missing(const ProofContext& context, std::vector<Finding>& findings) {
    const auto lists = [](const model::Section& section) {
        return section.holds == trade::Holds::skills || section.holds == trade::Holds::languages;
    };
    if (context.resume.sections.empty() || std::ranges::any_of(context.resume.sections, lists))
        return;
    std::size_t licences = 0; // which name what their holder can do
    for (const Position& position : positions(context.resume, {trade::Holds::credentials}))
        licences += position.entry->find(trade::FieldName::credential) ? 1U : 0U;
    if (licences > 2) return;
    report<messages::no_skills>(findings, context.resume.sections.back().place);
}

// `fluent; basic level`: of the words for how well the highest and the lowest lie far apart.
bool contradicts_itself(std::string_view lower) {
    constexpr int far = 3;
    const bool parted = std::ranges::any_of(words_in(lower), [](const WordAt& word) {
        return is_one_of(word.word, List::skills_in_languages);
    });
    if (parted) return false;
    int least = far + far, most = 0;
    each_listed(lines_of(List::level_ranks), [&](std::string_view level, std::string_view rank) {
        if (!has_phrase(lower, level)) return;
        least = std::min(least, rank.front() - '0');
        most = std::max(most, rank.front() - '0');
    });
    return most - least >= far;
}

// `knife skills ★★★★☆`, `French ●●●○○`
bool is_drawn_grade(std::string_view text) {
    constexpr std::array<std::string_view, 6> drawn{"\u2605\u2605", "\u2605\u2606", "\u25CF\u25CF",
                                                    "\u25CF\u25CB", "\u2B50",       "\u25A0\u25A0"};
    return std::ranges::any_of(
        drawn, [text](std::string_view signs) { return text.find(signs) != text.npos; });
}

// `Python (85%)`, `R (4/5)`, `Excel (3 stars)`
bool is_graded(std::string_view lower) {
    if (is_drawn_grade(lower)) return true;
    for (const std::string_view scale : {"/5", "/10", "out of 5", "out of 10"}) // Python 9/10
        if (lower.ends_with(scale) && lower.size() > scale.size() &&
            (is_figure(lower[lower.size() - scale.size() - 1]) || scale.front() == 'o'))
            return true;
    const bool share = lower.ends_with('%') && lower.size() > 3 && // Typography 85%
                       is_ascii_letter(lower.front()) && is_figure(lower[lower.size() - 2]);
    if (share) return true;
    const std::size_t open = lower.find('(');
    const std::string_view inner = lower.substr(std::min(open, lower.size()));
    if (!has_digit(inner) || inner.find(')') == inner.npos) return false;
    if (inner.find("%)") != inner.npos || has_phrase(inner, "stars")) return true;
    return inner.find("/5)") != inner.npos || inner.find("/10)") != inner.npos ||
           inner.find("out of 5)") != inner.npos || inner.find("out of 10)") != inner.npos;
}

void skill_graded(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Skill& skill : all_skills(context.resume))
        if (is_graded(lower_case(skill.text()))) {
            report<messages::graded_skill>(findings, skill.place(), in_quotes(skill.text()));
            return;
        }
}

// Not `Taught 2 years of Spanish`.
bool is_of_study(std::string_view lower) {
    return std::ranges::any_of(std::array<std::string_view, 6>{"completed", "took", "studied",
                                                               "finished", "passed", "earned"},
                               [&](std::string_view verb) { return lower.starts_with(verb); });
}

// `Completed 2 years of Spanish`, where Spanish is called fluent.
void level_beyond_course(const ProofContext& context, const Skill& skill,
                         std::vector<Finding>& findings) {
    constexpr std::array<std::string_view, 6> few{"1", "2", "3", "one", "two", "three"};
    constexpr std::array<std::string_view, 4> high{"fluent", "native", "bilingual", "professional"};
    constexpr std::array<std::string_view, 5> terms{"year", "years", "semesters", "terms",
                                                    "quarters"};
    const std::string text = lower_case(skill.text());
    const std::string language(trimmed(before_parenthesis(text)));
    if (std::ranges::none_of(high, [&](auto level) { return has_phrase(text, level); })) return;
    for (const WordedBullet& bullet : context.bullets) {
        const auto& words = bullet.part.words;
        for (std::size_t i = 1; i + 2 < words.size(); ++i) {
            const auto word = [&](std::size_t k) { return bullet.part.small(words[k]); };
            const bool course = is_one_of(word(i - 1), few) && is_one_of(word(i), terms) &&
                                word(i + 1) == "of" && word(i + 2) == language;
            const std::size_t begin = words[i - 1].offset;
            if (!course || !is_of_study(bullet.part.lower)) continue;
            const std::size_t end = words[i + 2].offset + words[i + 2].word.size();
            report<messages::beyond_course>(findings, skill.place(), in_quotes(skill.text()),
                                            in_quotes(bullet.text.substr(begin, end - begin)),
                                            bullet.bullet->text.place(0, 1).line);
            return;
        }
    }
}

void language_level(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Skill& skill : all_skills(context.resume)) {
        const std::string text = lower_case(skill.text());
        if (!skill.spoken || !trade::are_spoken_languages(before_parenthesis(text))) continue;
        if (contradicts_itself(text))
            report<messages::two_levels>(findings, skill.place(), in_quotes(skill.text()));
        level_beyond_course(context, skill, findings);
        if (skill.levelled || has_language_level(text)) continue;
        const std::size_t open = text.find('(');
        if (open == std::string::npos)
            report<messages::no_level>(findings, skill.place(), in_quotes(skill.text()));
        else
            report<messages::unknown_level>(findings, skill.place(),
                                            in_quotes(skill.text().substr(open)));
    }
}

// "Adobe (Photoshop)" and "Adobe (Illustrator)" are two; "Excel" and "Excel (macros)" are one.
void skill_twice(const ProofContext& context, std::vector<Finding>& findings) {
    struct Seen {
        Place place;
        std::string whole;
        bool bare = false; // without parentheses
    };
    std::map<std::string, Seen> all;
    for (const Skill& skill : all_skills(context.resume)) {
        if (!skill.group.tags.empty()) continue; // another wording for another build
        const std::string whole = lower_case(skill.text());
        const std::string name = before_parenthesis(whole);
        const bool bare = name == whole;
        const auto [before, is_new] = all.emplace(name, Seen{skill.place(), whole, bare});
        const Seen& seen = before->second;
        if (is_new || name.empty() || (whole != seen.whole && !bare && !seen.bare)) continue;
        report<messages::skill_twice>(findings, skill.place(),
                                      in_quotes(before_parenthesis(skill.text())), seen.place.line);
    }
}

// --- use

constexpr std::size_t shortest_word = 3, stem_length = 5;

bool is_skill(const TextInResume& part) {
    return part.field && part.field->name == trade::FieldName::group;
}

// What stands between blanks, but for skills: short names are told from words by their capitals and
// signs, as in R and C++.
class PageTokens {
public:
    explicit PageTokens(const TextsRead& texts) {
        constexpr std::string_view around = " ,;.:()\"'";
        for (const TextInResume& part : texts)
            if (!is_skill(part))
                for (const std::string_view token : pieces_of(part.plain, " "))
                    tokens_.insert(trimmed(token, around));
    }

    bool show(std::string_view skill) const {
        return tokens_.contains(skill) ||
               std::ranges::any_of(words_in(skill), [&](const WordAt& word) { // MIG brazing, by MIG
                   return word.word.size() > 1 &&
                          std::ranges::all_of(word.word, is_capital_letter) &&
                          tokens_.contains(word.word);
               });
    }

private:
    std::unordered_set<std::string_view> tokens_;
};

// Words that may be forms of one, by what they begin with and by their bases; but for those of
// skills.
class PageForms {
public:
    explicit PageForms(const ProofContext& context) : language_(context.language) {
        for (const TextInResume& part : context.texts)
            if (!is_skill(part))
                each_word(part.lower, [&](std::string_view word) {
                    stems_.emplace(word.substr(0, stem_length));
                    stems_.insert(stem_of(word));
                });
    }

    bool show(std::string_view skill) const {
        const std::string lower = lower_case(skill);
        bool found = false;
        each_word(lower, [&](std::string_view word) {
            found = found || (word.size() >= shortest_word && show_form(word));
        });
        return found;
    }

private:
    static void each_word(std::string_view text, const auto& visit) {
        for (const WordAt& word : words_in(text))
            for (const std::string_view part : pieces_of(word.word, "-"))
                visit(part);
    }

    // `pruning` by Pruned, `jigs` by jig; `bookkeeping` by books.
    bool show_form(std::string_view word) const {
        if (stems_.contains(std::string(word.substr(0, stem_length)))) return true;
        if (stems_.contains(stem_of(word))) return true;
        constexpr std::size_t shortest_compound = 9, shortest_part = 4;
        for (std::size_t part = shortest_part;
             word.size() >= shortest_compound && part + shortest_part <= word.size(); ++part)
            if (stems_.contains(std::string(word.substr(0, part)))) return true;
        return false;
    }

    // Of a verb its base, of a plural its singular: what its forms have in common.
    std::string stem_of(std::string_view word) const {
        if (const auto base = language_.base_of(word)) return *base;
        return std::string(word.substr(0, word.size() - (word.ends_with('s') ? 1 : 0)));
    }

    const english::Language& language_;
    std::unordered_set<std::string> stems_;
};

// A name, as of a program or a method, which is either used or not; `scheduling` may be called
// otherwise in the entries. What everybody has used is passed over.
bool is_named_skill(const std::string& skill) {
    const auto words = words_in(skill);
    const bool common = std::ranges::any_of(words, [](const WordAt& word) {
        return is_one_of(lower_case(word.word), List::tools_of_all);
    });
    return !common && std::ranges::any_of(words, [&](const WordAt& word) {
        return is_capital_letter(word.word.back()) ||
               (is_capital_letter(word.word.front()) && (word.offset > 0 || words.size() == 1));
    });
}

// Where one is borne out the others are believed, and one or two by themselves may be new.
void skill_unused(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t most_named = 4, several = 3;
    std::vector<std::string> named;
    std::unordered_set<std::string> known;
    std::optional<Place> first;
    for (const Skill& skill : all_skills(context.resume)) {
        const std::string name = before_parenthesis(skill.text());
        if (skill.spoken || name.empty() || !is_named_skill(name)) continue;
        if (is_one_of(lower_case(name), List::broad_skills)) continue; // told already
        if (!first) first = skill.place();
        if (known.insert(name).second) named.push_back(name);
    }
    const auto show = [&](const auto& words) {
        return std::ranges::any_of(named, [&](const auto& name) { return words.show(name); });
    };
    if (named.size() >= several && !show(PageTokens(context.texts)) && !show(PageForms(context)))
        report<messages::unused_skills>(findings, *first, some_of(named, most_named));
}

void broad_skill(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Skill& skill : all_skills(context.resume))
        if (is_one_of(lower_case(skill.text()), List::broad_skills))
            report<messages::broad_skill>(findings, skill.place(), in_quotes(skill.text()));
}

constexpr std::array skill_table{
    Check{"skills-missing", Weight::should, "skills", "There is a section of skills or languages.",
          "Portals search it first, and readers use it to see what they need not teach.",
          "common practice", "a résumé without 'section: Skills'", "section: Skills",
          skills_missing},
    Check{"language-level", Weight::should, "skills",
          "A language that people speak has one level: of CEFR, of ILR, or one of the usual words.",
          "Without it a reader expects too much or asks too late.",
          "Common European Framework of Reference for Languages; Interagency Language Roundtable "
          "scale; common practice",
          "Languages: Portuguese", "Languages: Portuguese (professional)", language_level},
    Check{"skill-graded", Weight::consider, "skills",
          "No skill has a percentage, a score or stars.",
          "A figure without a scale says nothing, and invites a test.", "common practice",
          "Data: Python (85%)", "Data: Python (3 years)", skill_graded},
    Check{"skill-twice", Weight::should, "skills",
          "No skill is listed twice; one with other words in parentheses is another.",
          "The second one takes the room of another.", "common practice",
          "Data: R, Excel; Office: Excel", "Data: R, Excel", skill_twice},
    Check{"skill-unused", Weight::consider, "skills",
          "Of several programs and methods that have names, one at least turns up in an entry too; "
          "languages that people speak and what everybody has used aside.",
          "A list anybody could type is believed where the work bears it out.", "common practice",
          "Data: Tableau, SQL, Stata, and no bullet that mentions one",
          "- Charted intake in Tableau", skill_unused},
    Check{"stuffing", Weight::should, "skills",
          "No term of several words is said in more than four bullets and items, or three times in "
          "one.",
          "Portals count a term once or weigh how often it is said; a reader sees the trick.",
          "common practice",
          "Field: eelgrass survey (2024), eelgrass survey (2025), and three more",
          "Field: eelgrass survey (2024 to 2028)", stuffing},
    Check{"broad-skill", Weight::consider, "skills",
          "A skill is narrow enough to be tested: no 'computers', no 'communication'.",
          "What everybody has sets nobody apart.", "common practice", "Computer: internet, email",
          "Computer: QGIS, Excel pivot tables", broad_skill},
};

}

std::span<const Check> skill_checks() {
    return skill_table;
}

}
