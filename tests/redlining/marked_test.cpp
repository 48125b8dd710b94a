// Both drafts in one: each comes out of it again.
#include "compiler/redlining/marked_resume.hpp"
#include "compiler/redlining/marked_text.hpp"

#include "tests/redlining/random_edits.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <functional>
#include <random>
#include <string>
#include <vector>

namespace {

using namespace quoin::redlining;
using namespace quoin::redlining::test;
namespace model = quoin::model;
using model::Revised;

using Visit = std::function<void(const model::Text&)>;

void visit_fields(const std::vector<model::Field>& fields, const model::Resume& resume,
                  const Visit& visit) {
    for (const model::Field& field : fields) {
        visit(field.label);
        if (const auto* text = std::get_if<model::Text>(&field.value)) visit(*text);
        if (const auto* items = std::get_if<std::vector<model::Text>>(&field.value))
            for (const model::Text& item : *items)
                visit(item);
        if (std::holds_alternative<model::DateRange>(field.value)) {
            model::Span dates;
            dates.text = plain_value(field, resume);
            visit({{dates}, {}});
        }
    }
}

void visit_entries(const std::vector<model::Entry>& entries, const model::Resume& resume,
                   const Visit& visit) {
    for (const model::Entry& entry : entries) {
        visit_fields(entry.fields, resume, visit);
        for (const model::Bullet& bullet : entry.bullets)
            visit(bullet.text);
        visit_entries(entry.further, resume, visit);
    }
}

// Every word in order, but those that `without` has marked.
std::vector<std::string> words_without(const model::Resume& resume, Revised without) {
    std::vector<std::string> words;
    const Visit take = [&](const model::Text& text) {
        std::string left;
        for (const model::Span& span : text.spans)
            left += span.marks.revised == without ? std::string(" ") : span.text;
        for (const Word& word : words_of(left))
            words.emplace_back(word.text);
    };
    visit_fields(resume.heading, resume, take);
    for (const model::Section& section : resume.sections) {
        take(section.title);
        visit_entries(section.entries, resume, take);
    }
    return words;
}

model::Text text_of(std::string_view words) {
    model::Span span;
    span.text = words;
    return {{span}, {}};
}

// "Counted [-212] {+240} quadrats"
std::string shown(const model::Text& text) {
    std::string all;
    for (const model::Span& span : text.spans) {
        if (span.marks.revised == Revised::deleted) all += "[-" + span.text + "]";
        if (span.marks.revised == Revised::inserted) all += "{+" + span.text + "}";
        if (span.marks.revised == Revised::not_at_all) all += span.text;
    }
    return all;
}

}

TEST_CASE("marked: a wording merged, a case a line") {
    struct Case {
        const char* was;
        const char* is;
        const char* merged;
    };
    const Case cases[] = {
        {"Counted quadrats", "Counted quadrats", "Counted quadrats"},
        {"Counted 212 quadrats", "Counted 240 quadrats", "Counted [-212] {+240} quadrats"},
        {"Counted", "Counted quadrats", "Counted {+quadrats}"},
        {"Counted quadrats", "Counted", "Counted [-quadrats]"},
        {"Counted", "Drew", "[-Counted] {+Drew}"},
        {"at 9 sites.", "at 9 sites", "at 9 sites[-.]"},
        {"time 18%, (twice)", "time 21%, (twice)", "time [-18%] {+21%}, (twice)"},
    };
    const model::Resume none;
    const Marker marker(none, none, 1);
    for (const Case& each : cases)
        CHECK(shown(marker.merged(text_of(each.was), text_of(each.is))) == each.merged);
}

TEST_CASE("marked: what is gone stands after what it stood after") {
    const auto order = [](const std::vector<std::optional<std::size_t>>& new_of_old,
                          std::size_t count) {
        std::string all;
        for (const Slot& slot : merged_order(new_of_old, count))
            all += (slot.old_one ? "-" : "+") + std::to_string(slot.index);
        return all;
    };
    CHECK(order({}, 2) == "+0+1");
    CHECK(order({{}, {}}, 0) == "-0-1");
    CHECK(order({0, {}, 1}, 2) == "+0-1+1");
    CHECK(order({{}, 0, 1, {}}, 2) == "-0+0+1-3");
    CHECK(order({1, {}, 0}, 2) == "+0+1-1"); // moved
    CHECK(order({0, 9, {}}, 1) == "+0-2");   // the second is elsewhere
}

TEST_CASE("marked: without what is deleted the new draft, without what is inserted the old") {
    std::mt19937 random(29);
    const std::vector<fs::path> all = samples();
    for (std::size_t trial = 0; trial < 60; ++trial) {
        const fs::path& path = all[trial % all.size()];
        CAPTURE(path.string());
        CAPTURE(trial);
        const auto lines = quoin::test::lines_in(path);
        const auto before = read(path, text_of(lines));
        Editor editor(*before->resume, lines, random);
        for (int tries = 0; tries < 12; ++tries)
            editor.edit();
        const auto after = read(path, editor.text());
        REQUIRE(after->resume);
        const model::Resume both = marked_resume(align(*before->resume, *after->resume), 100);
        REQUIRE(words_without(both, Revised::deleted) ==
                words_without(*after->resume, Revised::deleted));
        auto old_words = words_without(both, Revised::inserted);
        auto was = words_without(*before->resume, Revised::inserted);
        std::sort(old_words.begin(), old_words.end()); // what was moved stands where it went
        std::sort(was.begin(), was.end());
        REQUIRE(old_words == was);
    }
}
