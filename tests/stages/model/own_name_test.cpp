// The writer's name among authors, in the forms that styles of citation give
// names (common practice).
#include "compiler/stages/model/own_name.hpp"
#include "tests/fixtures/read_resume.hpp"

#include <doctest/doctest.h>

#include <string>

namespace {

// With what is the writer's in stars.
std::string marked(const std::string& authors, const std::string& name) {
    std::string text = authors;
    const auto ranges = quoin::model::own_names_in(authors, name);
    for (auto range = ranges.rbegin(); range != ranges.rend(); ++range) {
        text.insert(range->second, "*");
        text.insert(range->first, "*");
    }
    return text;
}

}

TEST_CASE("the writer's own name among authors") {
    const struct {
        const char* name;
        const char* authors; // with the own name in stars
    } cases[] = {
        {"Ottoline Brandt", "*Brandt, O.* and Reyes, M."},
        {"Ottoline Brandt", "Reyes, M., *Brandt, O. K.*, and Lowe, P."},
        {"Ottoline Brandt", "M. Reyes, *O. Brandt*, and P. Lowe"},
        {"Ottoline Brandt", "Reyes M, *Brandt O*, Lowe P"},
        {"Ottoline Brandt", "Reyes MA, *Brandt OK*, Lowe P"},
        {"Ottoline Brandt", "*Ottoline Brandt* and Mara Reyes"},
        {"Ottoline Brandt", "*Ottoline K. Brandt* & Mara Reyes"},
        {"Ottoline Brandt", "*Brandt, Ottoline*; Reyes, Mara"},
        {"Ottoline Brandt", "Brandt, K. and Reyes, M."},
        {"Ottoline Brandt", "Brandtner, O. and Reyes, M."},
        {"Ottoline Brandt", "Reyes, M."},
        {"Ottoline K. Brandt", "*O. K. Brandt* and M. Reyes"},
        {"Maëlle Le Guirriec", "*Le Guirriec, M.* et Reyes, M."},
        {"Élise Morvan", "*Morvan, É.* et Reyes, M."},
        {"Ottoline", "Brandt, O."},
    };
    for (const auto& each : cases) {
        CAPTURE(each.authors);
        std::string plain = each.authors;
        std::erase(plain, '*');
        CHECK(marked(plain, each.name) == each.authors);
    }
}

TEST_CASE("it is strong, at its place, but for an author line with strong words") {
    const auto strong_in = [](const std::string& authors) {
        const auto reading = quoin::fixtures::read_below_name(
            "section: Publications\n\nauthor: " + authors + "\npublication: On Eelgrass\n");
        REQUIRE(reading.resume);
        const auto* field =
            reading.resume->sections.at(0).entries.at(0).find(quoin::trade::FieldName::author);
        std::string strong;
        for (const auto& span : std::get<quoin::model::Text>(field->value).spans)
            if (span.marks.strong)
                strong += span.text + '@' + std::to_string(span.place.column) + ' ';
        return strong;
    };
    CHECK(strong_in("Reyes, M. and Brandt, O.") == "Brandt, O.@23 ");
    CHECK(strong_in("*Reyes, M.* and Brandt, O.") == "Reyes, M.@10 ");
}
