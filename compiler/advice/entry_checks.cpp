// Checks of entries as a whole: how much they say, what they leave out, which stands where.
#include "compiler/advice/check.hpp"
#include "compiler/advice/date_order.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/english/stems.hpp"
#include "compiler/trade/limits.hpp"

#include <algorithm>
#include <array>
#include <set>

namespace quoin::advice {

namespace {

using enum trade::Holds;

std::size_t main_bullets(const model::Entry& entry) {
    return static_cast<std::size_t>(std::ranges::count(entry.bullets, 1, &model::Bullet::level));
}

std::size_t least_wanted(const office::Limits& limits) {
    return std::max<std::size_t>(
        static_cast<std::size_t>(limits.least_bullets),
        std::min<std::size_t>(trade::least_bullets, static_cast<std::size_t>(limits.most_bullets)));
}

std::string bullets_wanted(const office::Limits& limits) { // "two to five"
    const std::size_t least = least_wanted(limits);
    const auto most = static_cast<std::size_t>(limits.most_bullets);
    return least == most ? in_words(most) : in_words(least) + " to " + in_words(most);
}

void report_count(const ProofContext& context, const model::Entry& entry, std::size_t count,
                  std::vector<Finding>& findings) {
    const std::string wanted = bullets_wanted(context.limits());
    Finding& finding = report<messages::bullet_count>(findings, place_of(entry), called(entry),
                                                      counted(count, "bullet", "bullets"));
    finding.suggestion = count < least_wanted(context.limits())
                             ? fill<messages::too_few_bullets>(wanted)
                             : fill<messages::too_many_bullets>(wanted);
    judged_by(context, &office::Limits::most_bullets, finding);
}

// One who has yet to begin has nothing to tell.
bool is_yet_to_begin(const model::Entry& entry, const model::Date& today) {
    const model::DateRange* range = dates_in(entry.find(trade::FieldName::dates));
    return range && is_incoming(*range, today);
}

// The position that an experienced worker tells first; an office's number is to be kept.
const model::Entry* latest_of(const ProofContext& context) {
    if (*context.resume.settings.stage != trade::Stage::experienced) return nullptr;
    if (context.rules().set_by(&office::Limits::most_bullets)) return nullptr;
    const auto all = positions(context.resume, {experience});
    return all.empty() ? nullptr : all.front().entry;
}

void bullet_count(const ProofContext& context, std::vector<Finding>& findings) {
    const bool academic = *context.resume.settings.stage == trade::Stage::academic;
    const office::Limits& limits = context.limits();
    for (const Position& position : positions(context.resume, {experience, projects})) {
        if (is_yet_to_begin(*position.entry, context.today)) continue;
        const std::size_t own = main_bullets(*position.entry);
        const bool latest = position.entry == latest_of(context); // which may tell one more
        const double most = limits.most_bullets + (latest ? 1 : 0);
        if (static_cast<double>(own) > most) report_count(context, *position.entry, own, findings);
        if (position.entry != position.head) continue;
        std::size_t all = own;
        for (const model::Entry& further : position.entry->further)
            all += main_bullets(further);
        if (all == 0 && academic) continue; // a post says it all
        if (static_cast<double>(all) < limits.least_bullets)
            report_count(context, *position.entry, all, findings);
    }
}

// A job on the side may do with one; the one that is read first may not.
void one_bullet(const ProofContext& context, std::vector<Finding>& findings) {
    const auto all = positions(context.resume, {experience});
    if (all.empty() || all.front().entry != all.front().head) return;
    if (context.limits().least_bullets > 1 || context.limits().most_bullets < 2)
        return; // for `bullet-count`
    const model::Entry& latest = *all.front().entry;
    const bool alone = latest.further.empty() && main_bullets(latest) == 1;
    if (alone && !is_yet_to_begin(latest, context.today))
        report<messages::one_bullet>(findings, place_of(latest), called(latest)).suggestion =
            fill<messages::too_few_bullets>(bullets_wanted(context.limits()));
}

// Full-Time Family Caregiver: nobody employs one, and the home is its place.
bool is_at_home(const model::Entry& entry) {
    const std::string role = lower_case(plain_in(naming_field(entry)));
    return std::ranges::any_of(std::array{"family caregiver", "family care", "caregiver for family",
                                          "homemaker", "stay-at-home", "full-time parent",
                                          "full-time caregiver"},
                               [&](std::string_view phrase) { return has_phrase(role, phrase); });
}

void employer_missing(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position : positions(context.resume, {experience})) {
        if (position.find(trade::FieldName::employer) || !naming_field(*position.entry)) continue;
        if (is_at_home(*position.entry)) continue;
        report<messages::no_employer>(findings, place_of(*position.entry), called(*position.entry));
    }
}

// `employer:` and dates, and nothing that one was there.
void role_missing(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position : positions(context.resume, {experience})) {
        const model::Field* employer = position.entry->find(trade::FieldName::employer);
        if (!employer || position.entry != position.head || !position.entry->further.empty())
            continue;
        if (!position.find(trade::FieldName::role))
            report<messages::no_role>(findings, employer->place, in_quotes(plain_in(employer)));
    }
}

void place_missing(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position : positions(context.resume, {experience})) {
        if (position.find(trade::FieldName::place) || position.entry != position.head) continue;
        if (is_at_home(*position.entry)) continue;
        const model::Field* employer = position.entry->find(trade::FieldName::employer);
        report<messages::no_place>(findings, employer ? employer->place : place_of(*position.entry),
                                   called(*position.entry));
    }
}

// --- relevance

// Of the words that say something.
std::set<std::string> stems(std::string_view text) {
    constexpr std::size_t shortest = 5;
    const english::Stemmer stemmer;
    std::set<std::string> found;
    const std::string lower = lower_case(text);
    for (const WordAt& word : words_in(lower))
        if (word.word.size() >= shortest && !has_digit(word.word) &&
            !is_one_of(word.word, List::common_words))
            found.insert(stemmer.stem(word.word));
    return found;
}

std::string goal_of(const model::Resume& resume) {
    std::string goal = plain_in(resume.find(trade::FieldName::headline));
    for (const model::Section& section : resume.sections) {
        if (section.holds == experience) goal += ' ' + section.title.plain();
        if (section.holds != skills) continue;
        for (const model::Entry& entry : section.entries)
            for (const model::Field& field : entry.fields)
                if (const auto* items = items_in(&field))
                    for (const model::Text& item : *items)
                        goal += ' ' + item.plain();
    }
    for (const Position& position : positions(resume, {education})) {
        for (const trade::FieldName name :
             {trade::FieldName::degree, trade::FieldName::major, trade::FieldName::minor})
            goal += ' ' + plain_in(position.entry->find(name));
        if (const auto* courses = items_in(position.entry->find(trade::FieldName::courses)))
            for (const model::Text& course : *courses)
                goal += ' ' + course.plain();
    }
    return goal;
}

std::size_t shared_with(const std::set<std::string>& goal, const model::Entry& entry) {
    std::string text;
    for (const model::Field& field : entry.fields)
        text += ' ' + plain_in(&field);
    for (const model::Bullet& bullet : entry.bullets)
        text += ' ' + bullet.text.plain();
    const std::set<std::string> own = stems(text);
    return static_cast<std::size_t>(
        std::ranges::count_if(own, [&](const std::string& stem) { return goal.contains(stem); }));
}

// Front Desk Supervisor, Front Desk Clerk: one line of work.
bool are_akin(const model::Entry& a, const model::Entry& b) {
    const std::string other = lower_case(plain_in(naming_field(b)));
    const std::string name = lower_case(plain_in(naming_field(a)));
    constexpr std::size_t shortest = 4;
    return std::ranges::any_of(words_in(name), [&](const WordAt& word) {
        return word.word.size() >= shortest && has_phrase(other, word.word);
    });
}

// Only where a section of experience is the only one, and says nothing of relevance itself.
void relevance_order(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t least_entries = 3, telling = 3;
    const model::Section* section = nullptr;
    for (const model::Section& one : context.resume.sections) {
        if (one.holds != experience) continue;
        if (section) return;
        section = &one;
    }
    if (!section || section->entries.size() < least_entries) return;
    const std::set<std::string> goal = stems(goal_of(context.resume));
    const model::Entry* far_from_it = nullptr;
    for (const model::Entry& entry : section->entries) {
        const std::size_t shared = shared_with(goal, entry);
        if (shared == 0 && !far_from_it) far_from_it = &entry;
        if (shared < telling || !far_from_it || are_akin(*far_from_it, entry)) continue;
        report<messages::closer_to_goal>(findings, place_of(entry), called(entry),
                                         called(*far_from_it));
        return;
    }
}

// --- activities

bool is_one_day(const Position& position) {
    const model::Field* dates = position.entry->find(trade::FieldName::dates);
    const model::DateRange* range = dates_in(dates);
    if (range && range->end && range->end->day && (!range->start || *range->start == *range->end))
        return true;
    const std::string name = lower_case(plain_in(position.entry->find(trade::FieldName::activity)));
    return has_phrase(name, "one-day") || has_phrase(name, "1-day") ||
           has_phrase(name, "day of service");
}

void single_day(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position : positions(context.resume, {activities}))
        if (is_one_day(position))
            report<messages::single_day>(findings, place_of(*position.entry),
                                         called(*position.entry));
}

// `Attended weekly meetings`: no more than that one was there.
bool tells_attendance(const model::Bullet& bullet) {
    const std::string text = lower_case(bullet.text.plain());
    const auto words = words_in(text);
    return words.empty() || (is_one_of(words.front().word, List::attending) && !has_digit(text));
}

void member_only(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::array<std::string_view, 5> plain_roles{
        "member", "general member", "active member", "club member", "participant"};
    for (const Position& position : positions(context.resume, {activities})) {
        const model::Field* role = position.entry->find(trade::FieldName::role);
        const std::string name = lower_case(plain_in(role));
        if (!role || !is_one_of(name, plain_roles)) continue;
        if (!std::ranges::all_of(position.entry->bullets, tells_attendance)) {
            report<messages::more_than_member>(findings, role->place, in_quotes(plain_in(role)));
            continue;
        }
        const model::Field* activity = position.entry->find(trade::FieldName::activity);
        report<messages::member_only>(findings, role->place, in_quotes(plain_in(role)),
                                      activity ? in_quotes(plain_in(activity))
                                               : fill<messages::this_activity>());
    }
}

constexpr std::array entry_table{
    Check{"bullet-count", Weight::should, "entries",
          "A position or project has one to five bullets; inner bullets are not counted, nor what "
          "has yet to begin.",
          "An entry without a bullet tells nothing, and the sixth is not read.", "common practice",
          "seven bullets under 'role: Barista'", "three bullets under 'role: Barista'",
          bullet_count},
    Check{"one-bullet", Weight::consider, "entries",
          "The position that stands first has more than one bullet.",
          "It is the one that is read, and one bullet looks like nothing happened.",
          "common practice", "one bullet under the first role", "two to five of them", one_bullet},
    Check{"employer-missing", Weight::should, "entries", "A position names its employer.",
          "A portal files a position under its employer and has nowhere to put one without.",
          "common practice", "role: Barista, and no 'employer:'", "employer: Lantern Street Coffee",
          employer_missing},
    Check{"role-missing", Weight::must, "entries", "A position says what you were there.",
          "A portal files work under its title, and readers look for it first.", "common practice",
          "employer: Lantern Street Coffee, and no 'role:'", "role: Barista", role_missing},
    Check{"place-missing", Weight::should, "entries", "A position names its place.",
          "City and state tell one employer from another of its name.", "common practice",
          "employer: Lantern Street Coffee, and no 'place:'", "place: Port Ellery, WA",
          place_missing},
    Check{"relevance-order", Weight::consider, "entries",
          "In the only section of experience an entry with several words of your goal (headline, "
          "degree, courses) does not stand below one that has none.",
          "The first entry is the one that is read, and dates alone put it there.",
          "common practice", "Barista above Hatchery Technician, for a student of marine biology",
          "section: Relevant Experience, then section: Additional Experience", relevance_order},
    Check{"single-day", Weight::consider, "entries", "An activity lasts longer than a day.",
          "A day's event beside a year's work makes both look slight.", "common practice",
          "dates: Apr 18, 2026", "dates: Jan 2026 - Apr 2026", single_day},
    Check{"member-only", Weight::consider, "entries",
          "An activity's role says more than 'Member': the part that you played there.",
          "Employers look at activities for what you took on, not for what you joined.",
          "common practice", "role: Member", "role: Safety Officer", member_only},
};

}

std::span<const Check> entry_checks() {
    return entry_table;
}

}
