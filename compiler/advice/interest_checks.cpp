// Checks of what stands beside the work: pastimes, abbreviations that few can read.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/privacy_phrases.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace quoin::advice {

namespace {

bool is_of_pastimes(const model::Text& title) {
    const std::string lower = lower_case(title.plain());
    return has_phrase(lower, "interests") || has_phrase(lower, "hobbies") ||
           has_phrase(lower, "hobby") || has_phrase(lower, "pastimes") ||
           has_phrase(lower, "free time");
}

// Sayings and favorites: of others, or of nobody.
bool is_of_sayings(const model::Text& title) {
    const std::string lower = lower_case(title.plain());
    return std::ranges::any_of(std::array<std::string_view, 6>{"favorites", "motto", "quote",
                                                               "quotes", "fun facts",
                                                               "favorite quote"},
                               [&](std::string_view word) { return has_phrase(lower, word); });
}

// A line that is a quotation and nothing else.
bool is_quotation(const model::Text& text) {
    const std::string plain = text.plain();
    return plain.starts_with("\u201C") && plain.find("\u201D") + 3 >= plain.size() &&
           words_in(plain).size() > 2;
}

void sayings(const model::Section& section, std::vector<Finding>& findings) {
    const bool all = is_of_sayings(section.title);
    for (const model::Entry& entry : section.entries)
        for (const model::Field& field : entry.fields) {
            const model::Text* text = text_in(&field);
            if (!text || field.name != trade::FieldName::text) continue;
            if (all || is_quotation(*text)) {
                const std::string plain = text->plain();
                report<messages::saying>(findings, text->place(0, plain.size()), in_quotes(plain))
                    .weight = Weight::consider;
                return;
            }
        }
}

std::string_view longest_of(List pastimes, std::string_view lower) {
    std::string_view longest;
    for (const std::string_view pastime : listed(pastimes))
        if (has_phrase(lower, pastime) && pastime.size() > longest.size()) longest = pastime;
    return longest;
}

template<const messages::FindingRow& fault>
bool report_pastime(List pastimes, const model::Text& text, std::vector<Finding>& findings) {
    const std::string plain = text.plain(), lower = lower_case(plain);
    const std::string_view longest = longest_of(pastimes, lower);
    if (longest.empty()) return false;
    const std::size_t at = find_phrase(lower, longest);
    report<fault>(findings, text.place(at, longest.size()),
                  in_quotes(plain.substr(at, longest.size())));
    return true;
}

bool report_idle(const model::Text& text, std::vector<Finding>& findings) {
    return report_pastime<messages::harmful_pastime>(List::harmful_pastimes, text, findings) ||
           report_pastime<messages::idle_pastime>(List::idle_pastimes, text, findings);
}

// One finding a line: it goes or stays as a whole.
void look_at_pastimes(const model::Field& field, std::vector<Finding>& findings) {
    if (const model::Text* text = text_in(&field)) report_idle(*text, findings);
    if (const auto* items = items_in(&field))
        for (const model::Text& item : *items)
            if (report_idle(item, findings)) return;
}

void idle_pastimes(const ProofContext& context, std::vector<Finding>& findings) {
    for (const model::Section& section : context.resume.sections) {
        sayings(section, findings);
        const bool all = is_of_pastimes(section.title);
        for (const model::Entry& entry : section.entries) {
            const model::Text* title = text_in(entry.find(trade::FieldName::title));
            const bool titled = title && is_of_pastimes(*title);
            for (const model::Field& field : entry.fields)
                if (all || titled || is_of_pastimes(field.label)) look_at_pastimes(field, findings);
            for (const model::Bullet& bullet : entry.bullets)
                if (all) report_idle(bullet.text, findings);
        }
    }
}

// --- abbreviations

bool is_abbreviation(std::string_view word) {
    constexpr std::size_t shortest = 3, longest = 6;
    return word.size() >= shortest && word.size() <= longest &&
           std::ranges::all_of(word, is_capital_letter);
}

// In how many texts each stands; what stands in several is of the trade, or explained once.
std::map<std::string, int, std::less<>> abbreviations_of(const TextsRead& texts) {
    std::map<std::string, int, std::less<>> counts;
    for (const TextInResume& part : texts) {
        std::set<std::string_view> here;
        for (const WordAt& word : part.words)
            if (is_abbreviation(word.word)) here.insert(word.word);
        for (const std::string_view one : here)
            ++counts[std::string(one)];
    }
    return counts;
}

// Beside two unknown ones the third may have two letters: LD, but not WA.
void add_short_one(std::string_view text, std::vector<std::string>& unknown) {
    for (const WordAt& word : words_in(text)) {
        const bool capitals = word.word.size() == 2 && is_capital_letter(word.word[0]) &&
                              is_capital_letter(word.word[1]);
        if (capitals && !is_one_of(lower_case(word.word), List::short_abbreviations))
            return add_once(unknown, word.word, all_of_them);
    }
}

// Several in one bullet that the page says nowhere else; one alone may be common in the trade.
void abbreviations(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t several = 3;
    const auto counts = abbreviations_of(context.texts);
    for (const WordedBullet& bullet : context.bullets) {
        if (std::ranges::none_of(bullet.text, is_small_letter)) continue; // it shouts
        std::vector<std::string> unknown;
        std::size_t first = 0;
        for (const WordAt& word : bullet.part.words) {
            const std::size_t end = word.offset + word.word.size();
            if (end < bullet.text.size() && bullet.text[end] == '&') continue; // ATT&CK
            if (!is_abbreviation(word.word) || counts.find(word.word)->second > 1) continue;
            if (is_one_of(lower_case(word.word), List::known_abbreviations)) continue;
            const bool glossed =
                std::ranges::any_of(context.resume.settings.glosses, [&](const model::Gloss& one) {
                    return one.words == word.word;
                });
            if (glossed) continue;
            if (unknown.empty()) first = word.offset;
            add_once(unknown, word.word, all_of_them);
        }
        if (unknown.size() + 1 == several) add_short_one(bullet.text, unknown);
        if (unknown.size() >= several)
            report<messages::unknown_abbreviations>(
                findings, bullet.place({first, unknown.front().size()}), some_of(unknown, several));
    }
}

constexpr std::array interest_table{
    Check{
        "idle-pastimes", Weight::should, "skills",
        "Interests are something one does or makes, and nothing that frightens: no television, no "
        "sleeping in, no guns.",
        "An interest is there to start a talk, and everybody rests.", "common practice",
        "text: Watching movies, video games", "text: Tide-pool photography, bread baking",
        idle_pastimes},
    Check{"abbreviations", Weight::should, "wording",
          "No bullet has three abbreviations or more that stand nowhere else on the page; common "
          "ones and those of 'abbreviations' aside.",
          "The first reader is seldom of the trade.", "common practice",
          "- Performed PMCS on TMDE IAW local SOP", "- Checked 40 radios against the manual",
          abbreviations},
};

}

std::span<const Check> interest_checks() {
    return interest_table;
}

}
