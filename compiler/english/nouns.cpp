// WordNet's lists, with the words of the trade that it lacks.
#include "compiler/english/nouns.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/english/verb_table.hpp"

#include <algorithm>
#include <span>
#include <string>

namespace quoin::english {
namespace {

bool ends_in(std::string_view word, std::span<const std::string_view> endings) {
    return std::ranges::any_of(endings, [&](std::string_view e) {
        return word.size() > e.size() + 1 && word.ends_with(e);
    });
}

// By bisection; `lines` are in order, each ended by a line feed.
bool has_line(std::string_view lines, std::string_view wanted) {
    while (!lines.empty()) {
        const std::size_t before = lines.substr(0, lines.size() / 2).rfind('\n');
        const std::size_t begin = before == lines.npos ? 0 : before + 1;
        const std::size_t end = lines.find('\n', begin);
        const std::string_view middle = lines.substr(begin, end - begin);
        if (middle == wanted) return true;
        lines = wanted < middle ? lines.substr(0, begin) : lines.substr(end + 1);
    }
    return false;
}

// Those that others serve, treat or teach: they are objects of verbs as often as not.
bool is_served(std::string_view word) {
    constexpr std::string_view served[] = {
        "adult", "applicant", "candidate", "child", "client",  "customer", "donor",
        "guest", "infant",    "minor",     "other", "patient", "pupil",    "resident",
        "self",  "student",   "teen",      "user",  "visitor", "witness",  "buyer"};
    return is_one_of(word, served);
}

}

bool is_person_noun(std::string_view word) {
    // WordNet lacks them, or has them as things first
    constexpr std::string_view lacking[] = {
        "agent",        "person",      "rep",       "tech",    "barista",     "builder",
        "cast",         "chair",       "cleaner",   "co-op",   "coordinator", "counsel",
        "dishwasher",   "facilitator", "fireman",   "founder", "head",        "holder",
        "hostess",      "lead",        "liaison",   "mentee",  "moderator",   "operator",
        "phlebotomist", "preparer",    "publisher", "stocker", "tenor",       "usher"};
    // of words that WordNet has not; these endings are seldom a thing's
    constexpr std::string_view endings[] = {"ist", "eer", "grapher", "keeper", "maker", "person"};
    if (is_one_of(word, lacking) || has_line(person_nouns(), word)) return true;
    const std::size_t hyphen = word.rfind('-');
    if (hyphen != word.npos) return is_person_noun(word.substr(hyphen + 1)); // co-author
    return word.size() > 5 && ends_in(word, endings) && !word.ends_with("list");
}

bool is_agent_noun(std::string_view word) {
    return is_person_noun(word) && !is_served(word);
}

bool is_plural_noun(std::string_view word) {
    constexpr std::string_view irregular[] = {"people", "children", "men",   "women",
                                              "data",   "larvae",   "media", "criteria",
                                              "feet",   "mice",     "fish",  "sheep"};
    constexpr std::string_view singular[] = {"ss", "us", "is", "'s", "ics"};
    if (is_one_of(word, irregular)) return true;
    return word.size() > 3 && word.ends_with('s') && !ends_in(word, singular);
}

bool is_deed_noun(std::string_view word) {
    constexpr std::string_view endings[] = {"ing",  "tion", "sion", "ment",
                                            "ance", "ysis", "work", "ship"};
    constexpr std::string_view deeds[] = {"care",    "cleanup",  "control", "design",  "drive",
                                          "entry",   "outreach", "prep",    "removal", "repair",
                                          "review",  "rotation", "sale",    "search",  "setup",
                                          "support", "upkeep",   "use",     "work"};
    constexpr std::string_view things[] = {
        "apartment", "building",    "department", "document",  "evening", "instrument",  "morning",
        "network",   "publication", "shipment",   "statement", "string",  "transaction", "wedding"};
    if (is_stuff_noun(word) || is_one_of(word, things)) return false;
    return is_one_of(word, deeds) || ends_in(word, endings);
}

bool is_named_by_purpose(std::string_view word) {
    constexpr std::string_view heads[] = {
        "agreement", "app",     "application", "area",   "board",     "book",      "booth",
        "box",       "brief",   "calendar",    "camp",   "campaign",  "card",      "center",
        "chart",     "check",   "class",       "clinic", "club",      "committee", "contract",
        "crew",      "deck",    "department",  "desk",   "drill",     "duty",      "event",
        "exercise",  "fair",    "fee",         "form",   "graph",     "group",     "guide",
        "hall",      "house",   "inspection",  "kit",    "label",     "lab",       "lesson",
        "letter",    "line",    "list",        "log",    "manual",    "map",       "meeting",
        "memo",      "model",   "note",        "notice", "office",    "officer",   "order",
        "packet",    "panel",   "party",       "permit", "plan",      "plot",      "poster",
        "program",   "project", "proposal",    "rate",   "receipt",   "record",    "report",
        "request",   "review",  "room",        "run",    "sale",      "schedule",  "score",
        "season",    "service", "session",     "sheet",  "shift",     "shop",      "show",
        "site",      "slip",    "stall",       "stand",  "statement", "station",   "study",
        "survey",    "system",  "tag",         "team",   "tent",      "test",      "time",
        "tool",      "tour",    "trip",        "unit",   "visit",     "walk",      "window",
        "workshop"};
    if (is_one_of(word, heads)) return true;
    if (word.ends_with("ies"))
        return is_one_of(std::string(word.substr(0, word.size() - 3)) + 'y', heads);
    if (!word.ends_with('s')) return false;
    const std::string_view one = word.substr(0, word.size() - 1);
    return is_one_of(one, heads) ||
           (one.ends_with('e') && is_one_of(one.substr(0, one.size() - 1), heads));
}

bool is_often_first_part(std::string_view word) {
    constexpr std::string_view words[] = {
        "alert",   "call", "drill",  "exhibit", "express", "help",    "invite",
        "launch",  "pay",  "permit", "press",   "quote",   "show",    "start",
        "support", "swim", "talk",   "walk",    "watch",   "welcome", "work"};
    return is_one_of(word, words);
}

bool is_stuff_noun(std::string_view word) {
    constexpr std::string_view stuff[] = {
        "artwork",       "bread",       "clothing",    "correspondence", "coursework",
        "documentation", "equipment",   "feed",        "food",           "freight",
        "furniture",     "homework",    "information", "insurance",      "inventory",
        "law",           "lighting",    "linen",       "lumber",         "mail",
        "medication",    "merchandise", "music",       "nutrition",      "paperwork",
        "payroll",       "produce",     "seating",     "software",       "transportation"};
    return is_one_of(word, stuff);
}

bool is_plural_modifier(std::string_view word) {
    constexpr std::string_view plurals[] = {"awards", "benefits", "claims",  "needs",
                                            "parts",  "records",  "results", "services",
                                            "sports", "supplies"};
    return is_one_of(word, plurals);
}

bool is_time_noun(std::string_view word) {
    static constexpr std::string_view list[] = {
        "time",   "times",   "second",  "seconds",  "minute", "minutes", "hour",     "hours",
        "day",    "days",    "night",   "nights",   "week",   "weeks",   "month",    "months",
        "year",   "years",   "shift",   "shifts",   "term",   "terms",   "semester", "semesters",
        "season", "seasons", "quarter", "quarters", "summer", "summers"};
    return is_one_of(word, list);
}

bool is_never_gerund(std::string_view word) {
    constexpr std::string_view words[] = {
        "ceiling",     "clothing",  "earring", "evening", "morning",  "ongoing", "outgoing",
        "outstanding", "promising", "sibling", "spring",  "upcoming", "wedding", "willing"};
    return is_one_of(word, words);
}

bool is_noun_compound(std::string_view first, std::string_view second) {
    constexpr std::string_view lacking[] = {"accounts payable",  "accounts receivable",
                                            "answer key",        "bake sale",
                                            "care package",      "care plan",
                                            "care team",         "book club",
                                            "book sale",         "call centre",
                                            "clean energy",      "clean water",
                                            "code review",       "contract review",
                                            "dance company",     "dance recital",
                                            "dance team",        "debate team",
                                            "design team",       "direct care",
                                            "direct sale",       "drill team",
                                            "field note",        "film crew",
                                            "focus group",       "front desk",
                                            "front office",      "harvest crew",
                                            "host family",       "land survey",
                                            "land use",          "lead guitar",
                                            "lead paint",        "lead role",
                                            "lead trumpet",      "lead vocals",
                                            "log book",          "open mic",
                                            "open source",       "peer review",
                                            "pilot study",       "record keeping",
                                            "service desk",      "set design",
                                            "ski patrol",        "staff meeting",
                                            "study abroad",      "study group",
                                            "support group",     "support staff",
                                            "swim team",         "test prep",
                                            "ticket sale",       "track team",
                                            "trade show",        "water quality",
                                            "wound care",        "work experience",
                                            "working knowledge", "work order"};
    const std::string pair = std::string(first) + ' ' + std::string(second);
    const auto listed = [&](const std::string& compound) {
        return is_one_of(compound, lacking) || has_line(noun_compounds(), compound);
    };
    if (listed(pair)) return true;
    if (pair.ends_with("ies") && listed(pair.substr(0, pair.size() - 3) + 'y')) return true;
    return pair.ends_with('s') && listed(pair.substr(0, pair.size() - 1));
}

}
