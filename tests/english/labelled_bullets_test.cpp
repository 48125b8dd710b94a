// The reading of bullets against labelled ones (tests/advice/README.md), whose labels are English
// grammar and common practice.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/english/language.hpp"
#include "compiler/stages/model/text.hpp"

#include <doctest/doctest.h>

#include <array>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>
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

BulletReading read(const std::string& markup) {
    const auto length = static_cast<std::uint32_t>(markup.size());
    Diagnostics diagnostics;
    const model::Text text = model::read_text(
        syntax::Value{{syntax::Slice{markup, Place{0, 1, 1, length}}}}, diagnostics);
    return advice::read_wording(text, language());
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

void check_bars(const std::string& name) {
    constexpr Bars bars;
    const auto bullets = labelled(name);
    REQUIRE(bullets.size() >= 240);
    for (const auto& [label, one] : score(bullets)) {
        MESSAGE(name << ": " << label << ": precision " << one.precision() << ", recall "
                     << one.recall() << " (" << one.right << " right, " << one.wrong << " false, "
                     << one.missed << " missed)");
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

}
