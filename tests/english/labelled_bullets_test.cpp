// The reading of bullets against labelled ones (tests/advice/README.md), whose labels are English
// grammar and common practice.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/english/language.hpp"
#include "compiler/stages/model/text.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <tuple>
#include <vector>

namespace quoin::english {

namespace {

using Opening = BulletReading::Opening;

const Language& language() {
    static const Language one{std::filesystem::path(QUOIN_DATA_FOLDER)};
    return one;
}

// Precision, recall and their harmonic mean, from the counts of right, false and missed answers.
struct Score {
    int right = 0, wrong = 0, missed = 0;

    double precision() const { return right / double(right + wrong); }
    double recall() const { return right / double(right + missed); }
    double f1() const { return 2 * precision() * recall() / (precision() + recall()); }
};

struct Labelled {
    std::string context, text;
    std::set<std::string> labels;
};

std::vector<Labelled> labelled(const std::string& name) {
    std::ifstream file(std::string(QUOIN_SOURCE_FOLDER) + "/tests/advice/" + name);
    std::vector<Labelled> all;
    std::string line;
    std::getline(file, line); // the header
    while (std::getline(file, line)) {
        std::istringstream columns(line);
        Labelled one;
        std::string labels, label;
        std::getline(columns, one.context, '\t');
        std::getline(columns, one.text, '\t');
        std::getline(columns, labels, '\t');
        std::istringstream list(labels);
        while (std::getline(list, label, ','))
            if (label != "-") one.labels.insert(label);
        all.push_back(std::move(one));
    }
    return all;
}

BulletReading read(const std::string& markup, const Language& reader = language()) {
    const auto length = static_cast<std::uint32_t>(markup.size());
    Diagnostics diagnostics;
    const model::Text text = model::read_text(
        syntax::Value{{syntax::Slice{markup, Place{0, 1, 1, length}}}}, diagnostics);
    const advice::TextInResume part(text, nullptr, nullptr, nullptr, reader);
    return reader.read_bullet(part.sentence);
}

std::set<std::string> labels_of(const BulletReading& reading, const std::string& context) {
    std::set<std::string> labels;
    const auto& wrong = context == "ended" ? reading.wrong_for_ended : reading.wrong_for_current;
    if (!wrong.empty()) labels.insert("tense");
    if (reading.opening == Opening::no_verb) labels.insert("action-verb");
    if (reading.opening == Opening::weak) labels.insert("weak-opening");
    if (!reading.first_person.empty()) labels.insert("first-person");
    if (!reading.passive.empty()) labels.insert("passive");
    if (!reading.has_figure) labels.insert("figure");
    return labels;
}

constexpr std::array all_labels{"tense",        "action-verb", "weak-opening",
                                "first-person", "passive",     "figure"};

std::map<std::string, Score> score(const std::vector<Labelled>& bullets) {
    std::map<std::string, Score> scores;
    for (const Labelled& bullet : bullets) {
        const auto found = labels_of(read(bullet.text), bullet.context);
        for (const std::string label : all_labels) {
            const bool here = found.contains(label), wanted = bullet.labels.contains(label);
            scores[label].right += here && wanted;
            scores[label].wrong += here && !wanted;
            scores[label].missed += !here && wanted;
        }
    }
    return scores;
}

struct Bars {
    double precision = 0.95, recall = 0.85;
};

// Whether any of the labelled bullets is told otherwise without a list.
bool changes_verdict(const std::vector<Labelled>& bullets, const Language& without) {
    return std::ranges::any_of(bullets, [&](const Labelled& bullet) {
        return labels_of(read(bullet.text), bullet.context) !=
               labels_of(read(bullet.text, without), bullet.context);
    });
}

auto facts_of(const BulletReading& reading) {
    const auto offsets = [](const std::vector<Extent>& extents) {
        std::vector<std::size_t> all;
        for (const Extent& extent : extents)
            all.push_back(extent.offset);
        return all;
    };
    return std::tuple(reading.opening, reading.has_figure, offsets(reading.wrong_for_ended),
                      offsets(reading.wrong_for_current), offsets(reading.passive),
                      reading.stronger_verbs);
}

void check_bars(const std::string& name, const std::map<std::string, Bars>& floors = {}) {
    const auto bullets = labelled(name);
    REQUIRE(bullets.size() >= 240);
    for (const auto& [label, one] : score(bullets)) {
        MESSAGE(name << ": " << label << ": precision " << one.precision() << ", recall "
                     << one.recall() << " (" << one.right << " right, " << one.wrong << " false, "
                     << one.missed << " missed)");
        const auto floor = floors.find(label);
        const Bars bars = floor == floors.end() ? Bars{} : floor->second;
        CHECK(one.precision() >= bars.precision);
        CHECK(one.recall() >= bars.recall);
    }
}

}

// 8 relevant and 10 not returned, 20 exist: the textbook example of precision and recall.
TEST_CASE("precision, recall and F1 are those of the worked example") {
    const Score example{8, 10, 12};
    CHECK(example.precision() == doctest::Approx(0.444).epsilon(0.001));
    CHECK(example.recall() == doctest::Approx(0.400));
    CHECK(example.f1() == doctest::Approx(0.421).epsilon(0.001));
}

TEST_CASE("labelled bullets: the half that rules were written with") {
    check_bars("bullets_tuning.tsv");
}

TEST_CASE("labelled bullets: the half held back") {
    check_bars("bullets_held_back.tsv");
}

TEST_CASE("labelled bullets: the hard half held back") {
    // Not at the bar yet, and no worse than what it was when it was first judged.
    check_bars("bullets_hard_half.tsv", {{"tense", {0.92, 0.88}}, {"action-verb", {0.90, 0.84}}});
}

// A list that changes no verdict is no use: it shows on the labelled bullets or on one of its own.
TEST_CASE("words: each list by itself changes what is read") {
    const std::map<List, std::string> own_bullets{
        {List::activities, "Swimming classes for 12 beginners"},
        {List::adjective_ends, "Detail-oriented clerk at a desk"},
        {List::adverbs_of_extent, "Mainly weekend shifts"},
        {List::always_recognitions, "Awarded $90 for a poster"},
        {List::called_so, "Registered nurse on 3 wards"},
        {List::closed_prefixes, "Regrouted 3 tubs"},
        {List::compounds_without_count, "Repaired two-way radios"},
        {List::done_to, "Responsible for clients"},
        {List::either_before_time, "Tutor 6 hours a week"},
        {List::gerunds_of_things, "Building repairs of 6 cabins"},
        {List::irregular_adjectives, "Greet guests and lost travelers"},
        {List::irregular_plurals, "Sample larvae from 3 ponds"},
        {List::mostly_done, "Present results to 2 boards"},
        {List::named_by_use, "Planning workshops for 9 clubs"},
        {List::never_gerunds, "Clothing for 40 guests"},
        {List::periods, "Daily restock 40 shelves"},
        {List::plural_modifiers, "Filed invoices and claims forms"},
        {List::seldom_names, "Shelve 90 books a day and sort returns by hand"},
        {List::served, "Coach client through 3 interviews"},
        {List::stuff, "Order equipment for 3 labs"},
        {List::times, "Sail for the club and drill 5 hours a week"},
        {List::trades, "Tutoring at a library"},
        {List::turns, "Grow seedlings, sold each May"},
        {List::with_goal, "Watched for fire under decks and report sparks to foreman"},
        {List::with_clause, "Let guests look and buy prints"},
        {List::without_object, "Worked by hand on 3 hulls"},
    };
    // of spelling and of making forms: spelling_checks_test.cpp, language_test.cpp
    const std::set<List> elsewhere{List::with_two_objects, List::of_plurals,
                                   List::doubled_plurals,  List::plural_or_singular,
                                   List::owners,           List::owned,
                                   List::counted,          List::groups,
                                   List::trade_words,      List::technical_names,
                                   List::stressed_on_l,    List::first_parts,
                                   List::word_slips,       List::short_slips};
    const auto bullets = labelled("bullets_tuning.tsv");
    for (std::size_t i = 0; i < list_count; ++i) {
        const auto list = static_cast<List>(i);
        if (elsewhere.contains(list)) continue;
        CAPTURE(name_of(list));
        const Language without(QUOIN_DATA_FOLDER, Lexicon(list));
        const auto own = own_bullets.find(list);
        if (own == own_bullets.end())
            CHECK(changes_verdict(bullets, without));
        else
            CHECK(facts_of(read(own->second)) != facts_of(read(own->second, without)));
    }
}

}
