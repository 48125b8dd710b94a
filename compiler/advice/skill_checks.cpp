// Checks of skills and languages.
#include "compiler/advice/check.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/spoken_languages.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <set>
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

std::vector<Skill> all_skills(const model::Resume& resume) {
    std::vector<Skill> all;
    for (const model::Section& section : resume.sections) {
        if (section.holds != trade::Holds::skills && section.holds != trade::Holds::languages)
            continue;
        for (const model::Entry& entry : section.entries)
            for (const model::Field& field : entry.fields) {
                const auto* items = items_in(&field);
                if (!items) continue;
                const std::string label = lower_case(field.label.plain());
                const bool spoken = section.holds == trade::Holds::languages ||
                                    has_phrase(label, "languages") ||
                                    has_phrase(label, "language") || has_phrase(label, "spoken");
                for (const model::Text& item : *items)
                    all.push_back({field, item, spoken, has_language_level(label)});
            }
    }
    return all;
}

// "Spanish (professional)" is Spanish; "Spanish" too.
std::string before_parenthesis(std::string_view text) {
    const std::string_view head = text.substr(0, text.find('('));
    return std::string(head.substr(0, head.find_last_not_of(' ') + 1));
}

void skills_missing(const ProofContext& context, std::vector<Finding>& findings) {
    const auto lists = [](const model::Section& section) {
        return section.holds == trade::Holds::skills || section.holds == trade::Holds::languages;
    };
    if (context.resume.sections.empty() || std::ranges::any_of(context.resume.sections, lists))
        return;
    report<messages::no_skills>(findings, context.resume.sections.back().place);
}

void language_level(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Skill& skill : all_skills(context.resume)) {
        const std::string text = lower_case(skill.text());
        if (!skill.spoken || !are_spoken_languages(before_parenthesis(text))) continue;
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

// All words of the résumé but those of skills, to be asked often.
class Corpus {
public:
    Corpus(const model::Resume& resume, const english::Language& language) : language_(language) {
        visit_texts(resume, [&](const TextInResume& part) {
            if (!part.field || part.field->name != trade::FieldName::group) add(part.text.plain());
        });
    }

    // Short names are told from words by their capitals and signs, as in R and C++.
    bool shows(std::string_view skill) const {
        if (tokens_.contains(std::string(skill))) return true;
        const std::string lower = lower_case(skill);
        bool found = false;
        each_word(lower, [&](std::string_view word) {
            found = found || (word.size() >= shortest_word && shows_form(word));
        });
        return found || shows_name(skill);
    }

private:
    static void each_word(std::string_view text,
                          const std::function<void(std::string_view)>& visit) {
        for (const WordAt& word : words_in(text))
            for (const std::string_view part : pieces_of(word.word, "-"))
                visit(part);
    }

    // `pruning` by Pruned, `jigs` by jig; `bookkeeping` by books.
    bool shows_form(std::string_view word) const {
        if (stems_.contains(std::string(word.substr(0, stem_length)))) return true;
        if (stems_.contains(stem_of(word))) return true;
        constexpr std::size_t shortest_compound = 9, shortest_part = 4;
        for (std::size_t part = shortest_part;
             word.size() >= shortest_compound && part + shortest_part <= word.size(); ++part)
            if (stems_.contains(std::string(word.substr(0, part)))) return true;
        return false;
    }

    // `MIG brazing` by MIG
    bool shows_name(std::string_view skill) const {
        return std::ranges::any_of(words_in(skill), [&](const WordAt& word) {
            const bool capitals = std::ranges::all_of(word.word, is_capital_letter);
            return capitals && word.word.size() > 1 && tokens_.contains(std::string(word.word));
        });
    }

    // Of a verb its base, of a plural its singular: what its forms have in common.
    std::string stem_of(std::string_view word) const {
        if (const auto base = language_.base_of(word)) return *base;
        return std::string(word.substr(0, word.size() - (word.ends_with('s') ? 1 : 0)));
    }

    void add(const std::string& text) {
        constexpr std::string_view around = " ,;.:()\"'";
        for (const std::string_view token : pieces_of(text, " "))
            tokens_.emplace(trimmed(token, around));
        const std::string lower = lower_case(text);
        each_word(lower, [&](std::string_view word) {
            stems_.insert(std::string(word.substr(0, stem_length)));
            stems_.insert(stem_of(word));
        });
    }

    const english::Language& language_;
    std::set<std::string> tokens_, stems_;
};

void skill_unused(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t most_named = 4;
    const Corpus corpus(context.resume, context.language);
    std::vector<std::string> unused;
    std::optional<Place> first;
    for (const Skill& skill : all_skills(context.resume)) {
        const std::string name = before_parenthesis(skill.text());
        if (skill.spoken || name.empty() || corpus.shows(name)) continue;
        if (is_one_of(lower_case(name), List::broad_skills)) continue; // told already
        if (!first) first = skill.place();
        add_once(unused, name, all_of_them);
    }
    if (!first) return;
    report<messages::unused_skills>(findings, *first, some_of(unused, most_named));
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
          "A language that people speak has a level: of CEFR, of ILR, or one of the usual words.",
          "Without it a reader expects too much or asks too late.",
          "Common European Framework of Reference for Languages; Interagency Language Roundtable "
          "scale; common practice",
          "Languages: Portuguese", "Languages: Portuguese (professional)", language_level},
    Check{"skill-twice", Weight::should, "skills",
          "No skill is listed twice; one with other words in parentheses is another.",
          "The second one takes the room of another.", "common practice",
          "Data: R, Excel; Office: Excel", "Data: R, Excel", skill_twice},
    Check{"skill-unused", Weight::consider, "skills",
          "A skill, or a word of it, turns up in an entry too; languages aside.",
          "A list anybody could type is believed where the work bears it out.", "common practice",
          "Data: Tableau, and no bullet that mentions it", "- Charted intake in Tableau",
          skill_unused},
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
