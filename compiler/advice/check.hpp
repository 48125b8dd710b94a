// Checks of the trade: what a career adviser would say of a résumé, each at its place.
#pragma once

#include "compiler/advice/bullets.hpp"
#include "compiler/advice/texts.hpp"
#include "compiler/base/edit.hpp"
#include "compiler/base/place.hpp"
#include "compiler/base/source.hpp"
#include "compiler/english/language.hpp"
#include "compiler/office/office.hpp"
#include "compiler/stages/model/dates.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/typeset.hpp"
#include "compiler/trade/weights.hpp"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::advice {

using trade::Weight;

struct Finding {
    std::string_view check; // the check's name
    Place place;
    std::string text;                  // what is wrong here, with the words and figures concerned
    std::string suggestion;            // how to mend it; empty if that is the writer's to know
    std::vector<Edit> safe_mend;       // changes of form alone, which `quoin mend` may make
    std::optional<Weight> weight = {}; // that an office gives it; none: its check's
    std::string office = {}; // by whose rule it stands, or weighs so: a sentence; mostly empty
};

// What checks may look at. A check is silent where it cannot be sure.
struct ProofContext {
    const Sources& sources;
    const model::Resume& resume;
    const stages::Typeset* typeset =
        nullptr;       // the page as `set` makes it; null if it could not be made
    model::Date today; // `updated`, else SOURCE_DATE_EPOCH, else the day it is
    const english::Language& language;
    const TextsRead& texts;                   // read_texts(resume, language)
    const std::vector<WordedBullet>& bullets; // read_bullets(resume, texts, language)
    // The day of the reading: SOURCE_DATE_EPOCH, else the clock's; none: nothing is out of date.
    std::optional<model::Date> read_on = {};
    bool everything = true; // no tag was asked for, so that all of the résumé is here
    const office::Office* office = nullptr; // whose rules hold beside those of the trade

    const office::Rules& rules() const; // of the office, at the résumé's stage; else none
    const office::Limits& limits() const { return rules().limits; }
};

struct Check {
    std::string_view name;      // plain words of the trade, joined by `-`
    Weight weight{};            // the heaviest of its findings
    std::string_view group;     // contact, page, dates, education, experience, skills, …
    std::string_view looks_at;  // one sentence
    std::string_view why;       // one sentence: why it matters to a reader or a portal
    std::string_view source;    // the published source, or "common practice"
    std::string_view bad, good; // an example of each, as typed
    void (*run)(const ProofContext&, std::vector<Finding>&);
    std::string_view caution = {}; // where the work can hurt someone
    bool reminder = false;         // of what no page shows: it is no finding about this one
};

// Every check there is, in the order of the reference page. Each group's table stands in the file
// of its checks.
std::span<const Check> contact_checks();
std::span<const Check> person_checks(); // whose name and details these are
std::span<const Check> page_checks();
std::span<const Check> date_checks();
std::span<const Check> education_checks();
std::span<const Check> entry_checks();      // experience and projects: counts, order, fields
std::span<const Check> wording_checks();    // tense, verbs, openings, person, passive, figures
std::span<const Check> claim_checks();      // what is claimed against what the page bears out
std::span<const Check> role_checks();       // what a role may claim, and what it says of others
std::span<const Check> study_checks();      // degrees to come, courses, childhood
std::span<const Check> page_claim_checks(); // what is said in two places, or left blank
std::span<const Check> letter_checks();     // small openings, Latin names, agreement
std::span<const Check> interest_checks();   // pastimes, abbreviations
std::span<const Check> sentence_checks();   // run-on sentences, stray signs, slang
std::span<const Check> skill_checks();
std::span<const Check> consistency_checks();
std::span<const Check> spelling_checks();
std::span<const Check> privacy_checks();
std::span<const Check> discretion_checks(); // what belongs to others, or to an interview
std::span<const Check> section_checks();
std::span<const Check> acceptance_checks();
std::span<const Check> office_checks(); // what an office asks for beside the others
const std::vector<const Check*>& all_checks();

}
