// Checks of roles: two that fill the same weeks, what a role has no licence for, titles that are
// too large, and blame for those one worked with.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/date_order.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

namespace quoin::advice {

namespace {

using trade::FieldName;

// --- two at once

bool is_full_time(const model::Entry& entry) {
    return std::ranges::any_of(entry.fields, [](const model::Field& field) {
        const std::string lower = lower_case(plain_in(&field));
        return has_phrase(lower, "full-time") || has_phrase(lower, "full time");
    });
}

// Whole months that both hold.
int months_shared(const model::DateRange& a, const model::DateRange& b, const model::Date& today) {
    if (!a.start || !b.start || !a.spells.empty() || !b.spells.empty()) return 0;
    const auto end = [&](const model::DateRange& one) {
        return months(one.end ? *one.end : today).first;
    };
    return std::min(end(a), end(b)) - std::max(months(*a.start).last, months(*b.start).last);
}

void two_full_time(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr int least = 3; // months; two are a change of jobs
    std::vector<const model::Entry*> full;
    for (const Position& position : positions(context.resume, {trade::Holds::experience}))
        if (is_full_time(*position.entry)) full.push_back(position.entry);
    for (std::size_t i = 1; i < full.size(); ++i) {
        const model::DateRange* above = dates_in(full[i - 1]->find(FieldName::dates));
        const model::DateRange* below = dates_in(full[i]->find(FieldName::dates));
        const int shared = above && below ? months_shared(*above, *below, context.today) : 0;
        if (shared >= least)
            report<messages::two_full_time>(
                findings, place_of(*full[i]), called(*full[i - 1]), called(*full[i]),
                counted(static_cast<std::size_t>(shared), "month", "months"));
    }
}

// --- without a licence

bool is_unlicensed(const std::string& role) {
    return std::ranges::any_of(words_in(role), [](const WordAt& word) {
        return is_one_of(word.word, List::unlicensed_roles);
    });
}

void beyond_licence(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : context.bullets) {
        const model::Field* role = bullet.position.find(FieldName::role);
        const std::string name = plain_in(role);
        if (!role || !is_unlicensed(lower_case(name))) continue;
        for (const std::string_view deed : listed(List::licensed_deeds)) {
            const std::size_t at = bullet.part.phrased.find(deed);
            if (at == bullet.text.npos) continue;
            const english::Extent extent{at, deed.size()};
            report<messages::beyond_licence>(findings, bullet.place(extent),
                                             in_quotes(bullet.words(extent)), in_quotes(name));
            break;
        }
    }
}

// --- whom one may not prefer

// `Recruit young, energetic staff`: by age, sex or family. Not `Recruited 40 young readers`.
std::optional<english::Extent> unlawful_wish(const TextInResume& part,
                                             const english::Language& language) {
    constexpr std::size_t reach = 6;
    const auto& words = part.words;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto base = language.base_of(part.small(words[i]));
        if (!base || !is_one_of(*base, List::verbs_of_hiring)) continue;
        const std::size_t end = std::min(i + reach, words.size());
        const WordAt* kind = nullptr;
        for (std::size_t k = i + 1; k < end; ++k) {
            const std::string_view word = part.small(words[k]);
            if (is_one_of(word, List::not_to_prefer)) kind = kind ? kind : &words[k];
            if (kind && is_one_of(word, List::those_hired))
                return english::Extent{kind->offset,
                                       words[k].offset + words[k].word.size() - kind->offset};
        }
    }
    return std::nullopt;
}

void unlawful_preference(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : context.bullets)
        if (const auto wish = unlawful_wish(bullet.part, context.language))
            report<messages::unlawful_preference>(findings, bullet.place(*wish),
                                                  in_quotes(bullet.words(*wish)));
}

// --- titles

std::optional<std::string_view> large_title(const std::string& role) {
    std::optional<std::string_view> found;
    for (const std::string_view title : listed(List::large_titles))
        if (has_phrase(role, title) && (!found || title.size() > found->size())) found = title;
    return found;
}

// A business of one's own name, or of no name.
bool is_own_business(const ProofContext& context, const std::string& employer) {
    for (const std::string_view alone : {"self-employed", "self employed", "freelance"})
        if (has_phrase(employer, alone)) return true;
    constexpr std::size_t shortest = 4;
    const std::string name = lower_case(plain_in(context.resume.find(FieldName::name)));
    return std::ranges::any_of(words_in(name), [&](const WordAt& part) {
        return part.word.size() >= shortest && employer.find(part.word) != employer.npos;
    });
}

void large_titles(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position :
         positions(context.resume, {trade::Holds::experience, trade::Holds::projects})) {
        const model::Field* role = position.find(FieldName::role);
        if (!role || position.entry->find(FieldName::role) != role) continue;
        const std::string name = plain_in(role), lower = lower_case(name);
        const std::string employer = plain_in(position.find(FieldName::employer));
        if (large_title(lower) && is_own_business(context, lower_case(employer)))
            report<messages::inflated_title>(findings, role->place, in_quotes(name),
                                             in_quotes(employer));
        for (const WordAt& word : words_in(lower))
            if (is_one_of(word.word, List::fanciful_titles)) {
                report<messages::fanciful_title>(findings, role->place, in_quotes(name));
                break;
            }
    }
}

// --- blame

// `lazy crew`, `rude head chef`
std::optional<english::Extent> blamed_person(const TextInResume& part) {
    const auto& words = part.words;
    for (std::size_t i = 0; i + 1 < words.size(); ++i) {
        if (!is_one_of(part.small(words[i]), List::blame)) continue;
        for (std::size_t k = i + 1; k < i + 3 && k < words.size(); ++k) {
            const std::string_view word = part.small(words[k]);
            const bool person = is_one_of(word, List::heads) || is_one_of(word, List::peers);
            if (!person) continue;
            const std::size_t begin = words[i].offset;
            return english::Extent{begin, words[k].offset + words[k].word.size() - begin};
        }
    }
    return std::nullopt;
}

// `management never hired`, `a boss who ran the farm badly`
std::optional<english::Extent> blamed_fault(const TextInResume& part) {
    constexpr std::size_t near = 40; // bytes
    const std::string_view lower = part.lower;
    for (const WordAt& word : part.words) {
        const bool head = is_one_of(part.small(word), List::heads);
        if (!head && !is_one_of(part.small(word), List::peers)) continue;
        const std::size_t end = word.offset + word.word.size();
        std::string_view rest = trimmed(lower.substr(end, near));
        for (const std::string_view joint : {"who ", "that ", "which "})
            if (rest.starts_with(joint)) rest.remove_prefix(joint.size());
        const bool badly = head && has_phrase(rest, "badly") && rest.find(',') == rest.npos;
        const bool shirks = rest.starts_with("never showed") || rest.starts_with("did not show");
        const bool fault = head && std::ranges::any_of(listed(List::faults), [&](auto phrase) {
                               return find_phrase(rest, phrase) == 0;
                           });
        if (badly || fault || shirks)
            return english::Extent{word.offset,
                                   std::min(near + word.word.size(), lower.size() - word.offset)};
    }
    return std::nullopt;
}

std::optional<english::Extent> blame_in(const TextInResume& part) {
    const std::string_view lower = part.lower;
    for (const std::string_view phrase : listed(List::speaking_ill)) {
        const std::size_t at = part.phrased.find(phrase);
        const bool of = at != lower.npos && lower.substr(at + phrase.size()).starts_with(" of ");
        if (at != lower.npos && !of) return english::Extent{at, phrase.size()};
    }
    if (const auto person = blamed_person(part)) return person;
    return blamed_fault(part);
}

void ill_words(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        const bool told = part.bullet || (part.field && has(part.field->name, trade::Trait::tells));
        if (!told || part.in_heading) continue;
        if (const auto blame = blame_in(part))
            report<messages::blames>(findings, part.text.place(blame->offset, blame->length),
                                     in_quotes(part.plain.substr(blame->offset, blame->length)));
    }
}

constexpr std::array role_table{
    Check{"two-full-time", Weight::must, "claims",
          "No two positions that are called full-time hold the same months.",
          "Nobody has the hours for both, and a reader doubts the dates of all.", "common practice",
          "role: Cook (full-time) and role: Clerk (full-time), both Jan 2024 - Aug 2025",
          "role: Clerk (part-time)", two_full_time},
    Check{"beyond-licence", Weight::must, "claims",
          "No aide, student or intern tells of what takes a licence: to diagnose, to prescribe, "
          "to practice law.",
          "It is untrue or unlawful, and a reader of the trade knows which.",
          "state laws on the practice of medicine and of law; common practice",
          "role: Training Room Aide, - Diagnosed concussions",
          "- Recorded symptoms of 9 concussions for the trainer", beyond_licence},
    Check{"unlawful-preference", Weight::must, "claims",
          "No bullet tells of hiring by age, sex or family.",
          "It tells of a deed that the law forbids, to those who know the law.",
          "29 CFR 1604 and 1625 (US equal employment opportunity)",
          "- Recruited young, energetic staff", "- Recruited 14 staff for the season",
          unlawful_preference},
    Check{"title-size", Weight::should, "entries",
          "No title of a large firm for a business of one's own, and none that is a joke.",
          "A large word for a small thing makes the thing look smaller.", "common practice",
          "role: Chief Executive Officer, employer: Brandt's Cookies", "role: Owner", large_titles},
    Check{"ill-words", Weight::should, "privacy",
          "No line speaks ill of an employer, a head or a fellow worker.",
          "The next employer sees what will be said of them.", "common practice",
          "- Kept the line going despite a lazy crew", "- Kept the line going with a crew of 4",
          ill_words},
};

}

std::span<const Check> role_checks() {
    return role_table;
}

}
