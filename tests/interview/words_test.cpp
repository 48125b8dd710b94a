// The questions as data: what they name is there, their examples pass their own checks, and what
// comes of them is set on one page, at every stage and in every field.
#include "tests/interview/talk.hpp"

#include "compiler/advice/proof.hpp"
#include "compiler/commands/verbs.hpp"
#include "compiler/interview/choices.hpp"
#include "compiler/interview/questions.hpp"
#include "compiler/trade/section_titles.hpp"
#include "compiler/trade/vocabulary.hpp"
#include "tests/fixtures/tries.hpp"

#include <algorithm>
#include <functional>

namespace quoin::interview {

namespace {

using fixtures::proof_of;
using fixtures::Talk;

void each_stage_and_field(const std::function<void(std::string_view, std::string_view)>& visit) {
    for (const std::string_view stage : trade::names_of<trade::Stage>())
        for (const std::string_view field : field_names()) {
            CAPTURE(stage);
            CAPTURE(field);
            visit(stage, field);
        }
}

Draft chosen(std::string_view stage, std::string_view field) {
    Draft draft;
    draft.set(choice_section, "stage", std::string(stage));
    draft.set(choice_section, "field", std::string(field));
    return draft;
}

bool fits_one_page(const fixtures::ProofOf& read) {
    const auto* fit = std::get_if<fit::Fit>(&read.typeset->fit);
    return fit && make_pages(*read.typeset, *fit).pages.size() == 1;
}

// What must be mended, apart from what is missing.
std::string musts_of(const fixtures::ProofOf& read) {
    std::string musts;
    for (const advice::Finding& finding : read.proof.findings)
        if (weight_of(finding) == advice::Weight::must && finding.check != "missing-contact")
            musts += std::string(finding.check) + ": " + finding.text + '\n';
    return musts;
}

}

TEST_CASE("interview: every question has its words, and names checks that there are") {
    each_stage_and_field([](std::string_view stage, std::string_view field) {
        const Plan plan = plan_for(chosen(stage, field));
        for (const PlannedSection& section : plan)
            for (const std::string_view label : section.labels) {
                CAPTURE(section.name);
                CAPTURE(label);
                const Question question = question_at(section, label, field);
                CHECK_FALSE(question.goes_in.empty());
                CHECK_FALSE(question.example.empty());
                CHECK_FALSE(question.why().empty());
                for (const std::string_view check : question.looked_at)
                    CHECK(advice::find_check(check) != nullptr);
            }
    });
}

TEST_CASE("interview: every label is the markup's, in a section that has it") {
    each_stage_and_field([](std::string_view stage, std::string_view field) {
        for (const PlannedSection& section : plan_for(chosen(stage, field))) {
            CAPTURE(section.name);
            if (section.holds) CHECK(trade::usual_holds(section.title) == section.holds);
            if (!section.holds || *section.holds == trade::Holds::skills) continue;
            for (const std::string_view label : section.labels) {
                CAPTURE(label);
                const trade::Word* word = trade::find_word(label);
                CHECK((label == bullet_label ? trade::has_bullets(*section.holds)
                                             : word && word->kinds.has(*section.holds)));
            }
        }
    });
}

TEST_CASE("interview: a draft without answers is set on one page, and nothing in it is wrong") {
    each_stage_and_field([](std::string_view stage, std::string_view field) {
        const Draft draft = chosen(stage, field);
        const std::string source = draft_source(plan_for(draft), draft).text;
        const auto read = proof_of(source, {.with_page = true});
        CHECK(read->diagnostics.all().empty());
        CHECK(fits_one_page(*read));
        CHECK(musts_of(*read) == "");
        CHECK(read->of("missing-contact").size() == 3); // name, email, phone
        CHECK(read->resume->sections.empty());
    });
}

TEST_CASE("interview: every example passes the checks of its own question") {
    int pairs = 0;
    each_stage_and_field([&](std::string_view stage, std::string_view field) {
        if (++pairs % quoin::part_tried != 0) return;
        Talk talk;
        talk.type_all({std::string(stage), std::string(field)});
        while (!talk.interview.is_done()) {
            const Spot spot = talk.interview.spot();
            const PlannedSection section = talk.interview.plan()[spot.section];
            const std::string_view label = label_at(talk.interview.plan(), spot);
            const bool once = spot.entry == 0 && spot.line == 0;
            const Reply reply = talk.interview.take(
                once ? question_at(section, label, field).example : std::string{});
            CAPTURE(label);
            CHECK(reply.says == "");
            if (!reply.moved) break;
        }
        const auto read = proof_of(talk.source(), {.with_page = true});
        CHECK(read->diagnostics.all().empty());
        CHECK(musts_of(*read) == "");
        CHECK(fits_one_page(*read));
        for (const model::Section& section : read->resume->sections)
            CHECK(trade::usual_holds(section.title.plain()) == section.holds);
    });
}

TEST_CASE("interview: the stages to choose from are those there are") {
    std::vector<std::string_view> names;
    for (const Choice& choice : choices_for("stage").all)
        names.push_back(choice.name);
    CHECK(names == trade::names_of<trade::Stage>());
}

TEST_CASE("interview: what begin's help names is what can be chosen") {
    const std::string help(commands::find_verb("begin")->notes);
    for (const std::string_view label : {"stage", "field"})
        for (const Choice& choice : choices_for(label).all) {
            std::string name(choice.name);
            std::ranges::replace(name, ' ', '-');
            CAPTURE(name);
            CHECK(help.find(name) != std::string::npos);
            CHECK(choices_for(label).chosen(name) == choice.name);
        }
}

}
