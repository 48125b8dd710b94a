// Forms of verbs against WordNet's list of exceptions, and the rules that bullets are read by.
#include "compiler/english/language.hpp"
#include "compiler/english/tokens.hpp"
#include "compiler/english/verb_forms.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <string>
#include <vector>

namespace quoin::english::language_test {

namespace {

using Opening = BulletReading::Opening;

const Language& language() {
    static const Language one{std::filesystem::path(QUOIN_DATA_FOLDER)};
    return one;
}

std::string word_of(const std::string& text, Extent extent) {
    return text.substr(extent.offset, extent.length);
}

}

// WordNet 3.0, verb.exc: every irregular form leads to its base, but where the form is a base too.
TEST_CASE("every exception of WordNet has its base") {
    int seen = 0;
    for (const VerbException& row : verb_exceptions()) {
        const VerbForms forms = verb_forms(row.form);
        CAPTURE(row.form);
        if (!verb_forms(row.base).base || !verb_forms(row.base).prefix.empty())
            continue; // bases that index.verb has as phrases only
        REQUIRE(!forms.none());
        if (forms.base || forms.verb->base == row.base) ++seen;
    }
    CHECK(seen >= 1800);
}

// Merriam-Webster's principal parts, and WordNet's verb.exc where it has them.
TEST_CASE("principal parts") {
    struct Case {
        std::string_view base, past;
    };
    for (const Case& one : std::initializer_list<Case>{{"lead", "led"},
                                                       {"oversee", "oversaw"},
                                                       {"build", "built"},
                                                       {"plan", "planned"},
                                                       {"admit", "admitted"},
                                                       {"budget", "budgeted"},
                                                       {"edit", "edited"},
                                                       {"develop", "developed"},
                                                       {"carry", "carried"},
                                                       {"play", "played"},
                                                       {"free", "freed"},
                                                       {"dye", "dyed"},
                                                       {"tie", "tied"},
                                                       {"picnic", "picnicked"},
                                                       {"stop", "stopped"},
                                                       {"audit", "audited"},
                                                       {"refactor", "refactored"},
                                                       {"onboard", "onboarded"},
                                                       {"upskill", "upskilled"},
                                                       {"crowdsource", "crowdsourced"},
                                                       {"triage", "triaged"},
                                                       {"prototype", "prototyped"},
                                                       {"benchmark", "benchmarked"},
                                                       {"architect", "architected"},
                                                       {"run", "ran"},
                                                       {"write", "wrote"},
                                                       {"cut", "cut"},
                                                       {"fix", "fixed"},
                                                       {"sew", "sewed"},
                                                       {"misunderstand", "misunderstood"},
                                                       {"sight-read", "sight-read"},
                                                       {"co-teach", "co-taught"},
                                                       {"relay", "relayed"},
                                                       {"resubmit", "resubmitted"},
                                                       {"reformat", "reformatted"},
                                                       {"wiretap", "wiretapped"},
                                                       {"label", "labeled"},
                                                       {"travel", "traveled"},
                                                       {"patrol", "patrolled"},
                                                       {"syphon", "syphoned"},
                                                       {"route", "routed"},
                                                       {"enroll", "enrolled"},
                                                       {"install", "installed"}}) {
        CAPTURE(one.base);
        CHECK(language().past_of(one.base) == std::string(one.past));
        CHECK(language().base_of(one.past) == std::string(one.base));
    }
    CHECK(gerund_form("run") == "running");
    CHECK(gerund_form("tie") == "tying");
    CHECK(gerund_form("untie") == "untying");
    CHECK(gerund_form("free") == "freeing");
    CHECK(third_person("teach") == "teaches");
    CHECK(third_person("carry") == "carries");
    CHECK(language().past_of("co-leads") == "co-led");
    CHECK(language().base_of("cross-trained") == "cross-train");
    CHECK(!language().base_of("estuary"));
}

// Those that WordNet's verb.exc lacks, for no form of theirs is irregular in spelling.
TEST_CASE("verbs whose past is their base fit both tenses") {
    for (const std::string base :
         {"bid",  "broadcast", "cast", "cost",   "cut",    "fit",    "forecast",
          "hit",  "input",     "let",  "offset", "output", "put",    "quit",
          "read", "reset",     "set",  "shut",   "split",  "spread", "upset"}) {
        CAPTURE(base);
        CHECK(verb_forms(base).either_tense());
        const BulletReading reading = language().read_bullet(base + " 40 of them");
        CHECK(reading.opening == Opening::either_tense);
        CHECK(reading.wrong_for_ended.empty());
        CHECK(reading.wrong_for_current.empty());
    }
}

// Some few share their past with another verb: fed, of feed and of fee.
TEST_CASE("every form that is made is a form of its verb") {
    std::size_t alike = 0;
    for (const VerbEntry& verb : verb_entries()) {
        if (verb.base.size() < 3) continue;
        CAPTURE(verb.base);
        const VerbForms past = verb_forms(past_form(verb.base));
        REQUIRE(!past.none());
        CHECK(!verb_forms(gerund_form(verb.base)).none());
        CHECK(!verb_forms(third_person(verb.base)).none());
        alike += past.verb->base == verb.base;
    }
    CHECK(alike + 60 >= verb_entries().size());
}

TEST_CASE("tokens") {
    struct Case {
        std::string_view text;
        std::vector<std::string_view> tokens;
    };
    for (const Case& one : std::initializer_list<Case>{
             {"Co-led 12-hour I/O labs", {"Co-led", "12-hour", "I/O", "labs"}},
             {"Saved $1.2M, 18%", {"Saved", "$1.2M", ",", "18%"}},
             {"open 24/7 at 6 a.m.", {"open", "24/7", "at", "6", "a.m", "."}},
             {"Designed/built C++ (R&D)", {"Designed", "/", "built", "C++", "(", "R&D", ")"}},
             {"team\u2019s 401(k)", {"team\u2019s", "401(k)"}},
             {"2\u20133 \u201Cyes\u201D", {"2\u20133", "\u201C", "yes", "\u201D"}}}) {
        const Tokens tokens = read_tokens(one.text, {});
        std::vector<std::string_view> texts;
        for (const Token& token : tokens)
            texts.push_back(one.text.substr(token.extent.offset, token.extent.length));
        CHECK(texts == one.tokens);
    }
}

TEST_CASE("openings") {
    struct Case {
        std::string text;
        Opening opening;
        std::string verb;
    };
    for (const Case& one : std::initializer_list<Case>{
             {"Counted 14 seals", Opening::past_verb, "Counted"},
             {"Carefully counted 14 seals", Opening::past_verb, "counted"},
             {"Co-led 3 dives", Opening::past_verb, "Co-led"},
             {"Cross-trained 4 clerks", Opening::past_verb, "Cross-trained"},
             {"Fact-check 4 stories", Opening::present_verb, "Fact-check"},
             {"Lead guitarist for a pit band", Opening::no_verb, "Lead"},
             {"Lead a pit band", Opening::present_verb, "Lead"},
             {"Research assistant to a professor", Opening::no_verb, "Research"},
             {"Design of 3 tanks", Opening::no_verb, "Design"},
             {"Design 3 tanks", Opening::present_verb, "Design"},
             {"14 tanks cleaned", Opening::no_verb, "14"},
             {"\"Tides\", a radio play", Opening::no_verb, "\""},
             {"Counting seals", Opening::gerund, "Counting"},
             {"Counting of seals", Opening::no_verb, "Counting"},
             {"To count seals", Opening::infinitive, "To count"},
             {"Responsible for 3 tanks", Opening::weak, "Responsible for"},
             {"Took an active part in dives", Opening::weak, "Took an active part in"},
             {"Gained hands-on experience", Opening::weak, "Gained hands-on experience"},
             {"Was selected for a cohort", Opening::auxiliary, "Was selected"},
             {"Selected from 90 applicants", Opening::participle, "Selected"},
             {"I count seals", Opening::person, "I count"},
             {"Zorbled 3 tanks", Opening::unsure, "Zorbled"}}) {
        CAPTURE(one.text);
        const BulletReading reading = language().read_bullet(one.text);
        CHECK(reading.opening == one.opening);
        CHECK(word_of(one.text, reading.verb) == one.verb);
    }
}

// Each rule speaks in one bullet and is silent, or says the other thing, in the next.
TEST_CASE("nouns that are verbs too") {
    constexpr Opening noun = Opening::no_verb, verb = Opening::present_verb;
    struct Case {
        std::string text;
        Opening opening;
    };
    for (const Case& one : std::initializer_list<Case>{
             {"Peer review of 14 papers", noun}, // compounds, by WordNet and by the trade
             {"Peer review 14 papers", verb},
             {"Condition-check, photograph, and rehouse 12 objects a week", Opening::unsure},
             {"Hot-fill and cap 900 jars a shift", verb},
             {"Gouge and reweld rejected seams", verb},
             {"Document learning in portfolios", Opening::unsure},
             {"Trained classifier on 18,000 recordings", Opening::past_verb},
             {"Bake sale for 3 crews", noun},
             {"Bake bread for 3 crews", verb},
             {"Lead soprano in 2 operas", noun}, // persons
             {"Lead sopranos through warm-ups", verb},
             {"Engineer sound for 6 sets", Opening::unsure},
             {"Subject librarian's assistant", noun},
             {"Subject 9 bolts to 40 loads", verb},
             {"Weekend shifts at a soup kitchen", noun}, // verbs without object
             {"Weed beds at a soup kitchen", verb},
             {"Team won 5 races", noun}, // subjects and participles
             {"Test scores rose 9 points", noun},
             {"Posts viewed 40,000 times", noun},
             {"Volunteers trained and scheduled for 3 drives", noun},
             {"Repair used and donated bikes", verb},
             {"Staff and volunteers fed 200 guests", noun},
             {"Staff and train 3 desks", verb},
             {"Test automation for 8 modules", noun}, // deeds
             {"Plan instruction for 8 modules", Opening::unsure},
             {"Label printing for 8 shops", noun},
             {"Model oyster settlement in 8 bays", Opening::unsure},
             {"Practice interviews with 22 seniors", Opening::unsure},
             {"Process returns for 22 clerks", verb},
             {"Benchmark tests of 3 pumps", Opening::unsure},
             {"Bag checks at 12 concerts", Opening::unsure},
             {"Coach hosts at 12 concerts", verb},
             {"Order food for 60 campers", verb},
             {"Perfect score on the exam", noun}, // adjectives
             {"Perfect a score", verb},
             {"Present findings to 3 boards", verb},
             {"Open meetings with 3 boards", Opening::unsure},
             {"Complete rewrite of a manual", noun},
             {"Complete a rewrite of a manual", verb},
             {"Design and assembly of 4 rigs", noun}, // like is joined with like
             {"Design and assemble 4 rigs", verb},
             {"Research and writing for 5 briefs", noun},
             {"Recruit, trained, and schedule 19 readers", verb},
             {"Sample soil and run 30 assays", verb},
             {"Sort packages and drove a van", verb},
             {"Film practice for the coaches", Opening::unsure},
             {"Call sheets for 26 actors", Opening::unsure}, // named by what they are for
             {"Call parents of 26 actors", verb},
             {"Paint crew on a dorm", Opening::unsure},
             {"Answer rate of 98%", noun},
             {"Debate policy on a team", Opening::unsure},
             {"Drive safety campaign", Opening::unsure},
             {"Exhibit binders for 3 trials", Opening::unsure}, // and verbs that are first parts
             {"Weigh station clerk", Opening::unsure}, // no noun, but its object may be none
             {"Excel model of a fleet", noun},
             {"Frame walls and hang doors", verb},
             {"Table tents and call sheets", Opening::unsure},
             {"Nets get mended weekly", noun},
             {"Lifeguard 20 hours a week", Opening::unsure},
             {"Cashier 20 hours a week", noun},
             {"Grade 2 teacher", noun}, // numbers that name
             {"Grade 4 lesson plans", Opening::unsure},
             {"Grade 45 problem sets a week", verb},
             {"Plans menus for 40 campers", verb}, // plural or third person
             {"Records clerk at a court", noun},
             {"Scouts' treasurer", noun}}) {
        CAPTURE(one.text);
        CHECK(language().read_bullet(one.text).opening == one.opening);
    }
}

TEST_CASE("participles and gerunds that are no verbs") {
    constexpr Opening noun = Opening::no_verb;
    struct Case {
        std::string text;
        Opening opening;
    };
    for (const Case& one :
         std::initializer_list<Case>{{"Valued member of a crew", noun},
                                     {"Valued 3 boats", Opening::past_verb},
                                     {"Qualified electrician's helper", noun},
                                     {"Qualified for the finals", Opening::past_verb},
                                     {"Self-taught in 4 trades", noun},
                                     {"Organized and punctual", noun},
                                     {"Organized and labeled 40 bins", Opening::past_verb},
                                     {"Fell and buck hazard trees", Opening::either_tense},
                                     {"Fell 3 places in a race", Opening::past_verb},
                                     {"Fell 60 alders", Opening::either_tense},
                                     {"Wound dressing changes", Opening::unsure},
                                     {"Copy edited 90 stories", Opening::past_verb},
                                     {"Copy edited stories", Opening::present_verb},
                                     {"Ticketing system support", Opening::unsure},
                                     {"Broken crab pots hauled and repaired", noun},
                                     {"Mic 18 singers", Opening::present_verb},
                                     {"Zorb 18 singers", Opening::unsure},
                                     {"Zorb 365 rollout", noun},
                                     {"Load-test 3 winches", Opening::present_verb},
                                     {"Building inspections of 12 dorms", Opening::unsure},
                                     {"Building boats for 12 crews", Opening::gerund},
                                     {"Wound care for 9 residents", noun},
                                     {"Wound 9 motor coils", Opening::past_verb},
                                     {"Ground crew lead", noun},
                                     {"Sight-read 30 scores", Opening::either_tense},
                                     {"Ship-tracking dashboard for staff", noun},
                                     {"Fact-checking 3 stories", Opening::gerund},
                                     {"Evening shifts at a front desk", noun},
                                     {"Landscaping and snow removal", noun},
                                     {"Landscaping 3 yards", Opening::gerund},
                                     {"Swimming lessons for 9 children", noun},
                                     {"Planning lessons for 9 children", Opening::unsure},
                                     {"Proofreading for a press", noun},
                                     {"Bookkeeping for 2 cafes", noun},
                                     {"Chiefly weekend shifts", noun},
                                     {"Chiefly stock shelves", Opening::present_verb}}) {
        CAPTURE(one.text);
        CHECK(language().read_bullet(one.text).opening == one.opening);
    }
}

TEST_CASE("joined verbs, and those that are not") {
    struct Case {
        std::string text;
        std::string wrong_for_ended, wrong_for_current; // the last of each
    };
    for (const Case& one : std::initializer_list<Case>{
             {"Sold ads and manage 3 reps", "manage", "Sold"},
             {"Sell ads, write copy, and trained 3 reps", "write", "trained"},
             {"Wrote tools that read logs and report faults", "", "Wrote"},
             {"Ran drills to plan routes and time 4 boats", "", "Ran"},
             {"Ran drills (and manage a boat)", "", "Ran"},
             {"Cut and scored a film", "", "scored"},
             {"Kept stock by counting and logging 40 parts", "", "Kept"},
             {"Helped count and sort 40 parts", "", "Helped"},
             {"Tended goats and sheep", "", "Tended"},
             {"Serve coffee and baked goods", "Serve", ""},
             {"Sold kits and assemble racks", "assemble", "Sold"}, // surely verbs
             {"Sold kits and repair parts", "", "Sold"},
             {"Recorded deeds and files liens", "files", "Recorded"},
             {"Recorded deeds and sports scores", "", "Recorded"},
             {"Set up tents and take down signs", "take", ""},
             {"Coached and scout for a club", "scout", "Coached"},
             {"Greeted guests, answered phones, and sort mail", "sort", "answered"},
             {"Greeted guests, answered phones and mail", "", "answered"},
             {"Feed owls and cleaned soiled cages", "Feed", "cleaned"},
             {"Feed owls and frozen fish", "Feed", ""},
             {"Lead hikes and taught map skills", "Lead", "taught"},
             {"Lead hikes and lost pets", "Lead", ""},
             {"Let guests look and buy", "", ""},
             {"Ensured guests check in and enjoy tea", "", "Ensured"},
             {"Assisted the vet and cleans 3 cages", "cleans", "Assisted"},
             {"Used Excel, R, and GIS layers", "", "Used"},
             {"Irrigated, weed, and thinned beds", "weed", "thinned"},
             {"Drew logos and lay out menus", "lay", "Drew"},
             {"Taught dance and swim classes", "", "Taught"},
             {"Drew beams and check welds", "check", "Drew"},
             {"Drew maps and answer keys", "", "Drew"},
             {"Managing 3 tanks", "Managing", "Managing"}}) {
        CAPTURE(one.text);
        const BulletReading reading = language().read_bullet(one.text);
        const auto last = [&](const std::vector<Extent>& extents) {
            return extents.empty() ? std::string{} : word_of(one.text, extents.back());
        };
        CHECK(last(reading.wrong_for_ended) == one.wrong_for_ended);
        CHECK(last(reading.wrong_for_current) == one.wrong_for_current);
    }
}

// English grammar: a verb agrees in number with its subject.
TEST_CASE("verbs that do not agree with a subject beside them") {
    struct Case {
        std::string text;
        std::string verb, meant; // empty: all agree
    };
    for (const Case& one :
         std::initializer_list<Case>{{"Flagged 3 claims that was paid twice", "was", "were"},
                                     {"Taught students who needs a second try", "needs", "need"},
                                     {"Wrote a guide that were used by 4 clubs", "were", "was"},
                                     {"Fixed gate; calls was answered within a day", "was", "were"},
                                     {"The reports was filed on time", "was", "were"},
                                     {"Saw that there was 9 errors", "was", "were"},
                                     {"Sort mail and answers phones", "answers", "answer"},
                                     {"Hire, train and schedules staff", "schedules", "schedule"},
                                     {"Said there was no injuries", "was", "were"},
                                     {"Trained 5 clerks, each have passed", "have", "has"},
                                     {"Hulls were cut and was welded", "was", "were"},
                                     {"Audited the clubs annual budget", "clubs", "club's"},
                                     {"Leads a crew and sell 40 boats", "sell", "sells"},
                                     {"Led 40 fittings a week that were full", "", ""},
                                     {"Plan, price and menus for 9 days", "", ""},
                                     {"Gave the clubs annual grants", "", ""},
                                     {"Kept list of claims that was read weekly", "", ""},
                                     {"Led a crew that were new to boats", "", ""},
                                     {"Read news that was new to 9 editors", "", ""},
                                     {"Spent 20 minutes was enough", "", ""},
                                     {"Sort mail and letters", "", ""}}) {
        CAPTURE(one.text);
        const auto found = language().read_bullet(one.text).disagreements;
        CHECK(found.empty() == one.verb.empty());
        if (found.empty()) continue;
        CHECK(word_of(one.text, found.front().verb) == one.verb);
        CHECK(found.front().meant == one.meant);
    }
}

TEST_CASE("stronger verbs for a weak opening's object") {
    struct Case {
        std::string text;
        std::string first; // empty: none
    };
    for (const Case& one :
         std::initializer_list<Case>{{"Responsible for training volunteers", "Trained"},
                                     {"Responsible for stocking crash carts", "Stocked"},
                                     {"Helped count 5,000 smolt", "Counted"},
                                     {"Responsible for annual fire inspection", "Inspected"},
                                     {"Responsible for the budget", "Managed"},
                                     {"Worked on the budget", ""},
                                     {"Helped with menu for 90 guests", ""},
                                     {"Participated in team of 9", ""},
                                     {"Was able to keep the lounge open", "Kept"},
                                     {"Counted seals", ""}}) {
        CAPTURE(one.text);
        const auto verbs = language().read_bullet(one.text).stronger_verbs;
        CHECK((verbs.empty() ? "" : verbs.front()) == one.first);
    }
}

TEST_CASE("empty, broken and long bullets") {
    CHECK(language().read_bullet("").opening == Opening::unsure);
    CHECK(language().read_bullet("   ").opening == Opening::unsure);
    CHECK(language().read_bullet("...").opening == Opening::unsure);
    CHECK(language().read_bullet("\xFF\xFE Counted").first_person.empty());
    std::string deep;
    for (int i = 0; i < 20000; ++i)
        deep += "(\"and, the team managed to lead ";
    CHECK(language().read_bullet(deep).has_figure == false);
}

}
