// Entries with numbers before them, in the kinds of section that a theme names.
#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/plain/plain.hpp"
#include "tests/composed.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

namespace {

using quoin::composed::compose;
using quoin::composed::text_of;
using quoin::composition::Composition;
using quoin::composition::Paragraph;
using quoin::composition::StructureType;

std::string publications(int count) {
    std::string text = "name: Ana Reyes\n\nsection: Papers\nholds: publications\n";
    for (int i = 0; i < count; ++i)
        text += "\npublication: Eelgrass Beds after Winter Storms\nvenue: /Tidal Record/ 7\n"
                "dates: 2023\n";
    return text;
}

const std::string numbered = "numbered: publications\n";

std::string label_of(const Paragraph& paragraph) {
    std::string label;
    for (std::uint32_t run = 0; run < paragraph.label_runs; ++run)
        label += paragraph.runs[run].text;
    return label;
}

std::vector<const Paragraph*> entries_of(Composition&&) = delete; // it hands out what that owns
std::vector<const Paragraph*> entries_of(const Composition& composition) {
    std::vector<const Paragraph*> entries;
    for (const Paragraph& paragraph : composition.paragraphs)
        if (paragraph.entry > 0) entries.push_back(&paragraph);
    return entries;
}

}

TEST_CASE("entries are numbered from 1 on, and numbers and texts line up") {
    const Composition composition = compose(publications(11), numbered);
    const auto entries = entries_of(composition);
    REQUIRE(entries.size() == 11);
    for (std::size_t i = 0; i < entries.size(); ++i) {
        CHECK(label_of(*entries[i]) == std::to_string(i + 1) + ". ");
        CHECK(text_of(*entries[i]).starts_with("Eelgrass Beds"));
        CHECK(entries[i]->indent == doctest::Approx(entries.back()->indent));
        CHECK(entries[i]->turn_over == 0);
    }
    // the first figure of `10.` stands where a bullet would, the others' points below its point
    CHECK(entries.back()->indent - entries.back()->hang == doctest::Approx(0.2));
    CHECK(entries.front()->hang < entries.back()->hang);
}

TEST_CASE("a number is the label of an item of a list") {
    const Composition composition = compose(publications(2), numbered);
    const auto& elements = composition.elements;
    for (const Paragraph* entry : entries_of(composition)) {
        CHECK(elements[entry->runs.front().element].type == StructureType::lbl);
        CHECK(elements[entry->element].type == StructureType::p);
        const std::uint32_t body = elements[entry->element].parent;
        CHECK(elements[body].type == StructureType::lbody);
        CHECK(elements[elements[body].parent].type == StructureType::li);
    }
}

TEST_CASE("what more an entry has stands below its text") {
    const Composition composition =
        compose("name: Ana Reyes\n\nsection: Projects\n\nproject: Beds\ncourse: GIS\n"
                "- Cited by the county\n\nproject: Tides\n- Logged\n",
                "numbered: projects\n\nform: projects\ntitle: {project}\n"
                "line: [{course}][{with}][{place}][{dates}][{link}]\n");
    const auto entries = entries_of(composition);
    REQUIRE(entries.size() == 5);
    CHECK(label_of(*entries[0]) == "1. ");
    CHECK(label_of(*entries[1]).empty());
    CHECK(entries[1]->indent == doctest::Approx(entries[0]->indent));
    CHECK(label_of(*entries[2]) == "• ");
    CHECK(label_of(*entries[3]) == "2. ");
    CHECK(quoin::plain::plain_text(composition).find("\n1. Beds\nGIS\n  - Cited") !=
          std::string::npos);
    for (const quoin::composition::Element& element : composition.elements)
        CHECK(element.type != StructureType::h3); // an item of a list is no heading
}

TEST_CASE("kinds that a theme does not name have no numbers") {
    for (const char* theme : {"", "numbered: none\n", "numbered: projects, honors\n"}) {
        const Composition composition = compose(publications(2), theme);
        for (const Paragraph* entry : entries_of(composition))
            CHECK(entry->label_runs == 0);
    }
}
