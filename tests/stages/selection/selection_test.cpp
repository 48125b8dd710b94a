// Selection by tag, against a slow and obvious reading of the rules.
#include "compiler/stages/selection/select.hpp"
#include "tests/fixtures/read_resume.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>

namespace quoin::selection {
namespace {

using fixtures::read_below_name;

// One line a piece, indented by depth.
void show(const model::Entry& entry, const std::string& indent, std::string& out) {
    for (const model::Field& field : entry.fields)
        out += indent + fixtures::value_of(field) + "\n";
    for (const model::Bullet& bullet : entry.bullets)
        out += indent + std::string(static_cast<std::size_t>(bullet.level), '-') + " " +
               bullet.text.plain() + "\n";
    for (const model::Entry& further : entry.further)
        show(further, indent + "  ", out);
    if (indent.size() == 2) out += "  .\n";
}

std::string show(const model::Resume& resume) {
    std::string out;
    for (const model::Field& field : resume.heading)
        out += fixtures::value_of(field) + "\n";
    for (const model::Section& section : resume.sections) {
        out += section.title.plain() + "\n";
        for (const model::Entry& entry : section.entries)
            show(entry, "  ", out);
    }
    return out;
}

// The reference says of each piece alone whether it stays, then prints what stays.
struct Reference {
    std::vector<std::string> asked;

    bool asks(std::string tag) const {
        const auto lower = [](std::string text) {
            for (char& c : text)
                c = static_cast<char>(c >= 'A' && c <= 'Z' ? c + 32 : c);
            return text;
        };
        for (const std::string& one : asked)
            if (lower(one) == lower(tag)) return true;
        return false;
    }
    bool stays(const model::Tags& tags) const {
        if (asked.empty()) return true;
        for (const std::string& tag : tags.except)
            if (asks(tag)) return false;
        if (tags.only.empty()) return true;
        for (const std::string& tag : tags.only)
            if (asks(tag)) return true;
        return false;
    }
    std::string fields(const model::Entry& entry, const std::string& indent) const {
        std::string out;
        for (const model::Field& field : entry.fields)
            if (stays(field.tags)) out += indent + fixtures::value_of(field) + "\n";
        return out;
    }
    std::string bullets(const model::Entry& entry, const std::string& indent) const {
        std::string out;
        for (std::size_t i = 0; i < entry.bullets.size(); ++i) {
            std::size_t parent = i;
            while (entry.bullets[parent].level == 2)
                --parent;
            const model::Bullet& bullet = entry.bullets[i];
            if (stays(bullet.tags) && stays(entry.bullets[parent].tags))
                out += indent + (bullet.level == 1 ? "- " : "-- ") + bullet.text.plain() + "\n";
        }
        return out;
    }
    bool keeps_role(const model::Entry& entry) const {
        for (const model::Field& field : entry.fields)
            if (field.name == trade::FieldName::role && stays(field.tags)) return true;
        return false;
    }
    std::string entry(const model::Entry& entry) const {
        if (!stays(entry.tags)) return "";
        std::vector<std::string> positions;
        std::string own = fields(entry, "  ") + bullets(entry, "  ");
        if (!own.empty()) positions.push_back(own);
        for (const model::Entry& further : entry.further) {
            if (!stays(further.tags) || !keeps_role(further)) continue;
            const std::string indent = positions.empty() ? "  " : "    ";
            positions.push_back(fields(further, indent) + bullets(further, indent));
        }
        std::string out;
        for (const std::string& position : positions)
            out += position;
        return out.empty() ? out : out + "  .\n";
    }
    std::string operator()(const model::Resume& resume) const {
        std::string out;
        for (const model::Field& field : resume.heading)
            if (stays(field.tags)) out += fixtures::value_of(field) + "\n";
        for (const model::Section& section : resume.sections) {
            if (!stays(section.tags)) continue;
            std::string entries;
            for (const model::Entry& one : section.entries)
                entries += entry(one);
            if (entries.empty() && !section.entries.empty()) continue;
            out += section.title.plain() + "\n" + entries;
        }
        return out;
    }
};

constexpr const char* tagged = R"(headline: Field surveys {field}
headline: Laboratory methods {lab !field}
phone: (360) 555-0142 {!public}

section: Experience

role: Survey Intern {field}
role: Laboratory Intern {lab}
employer: Salish Tidal Trust
- Counted quadrats {field}
-- At nine sites
- Entered data
-- In R {lab}
role: Volunteer {field}
dates: 2025

for: !lab
role: Deckhand
employer: Port Ellery Ferry

section: Projects {field !lab}

project: Kelp Map

section: Awards

award: Tide Prize {lab}

section: Skills

section: Activities

activity: Choir {public}
role: Treasurer {public}
)";

struct Selected {
    std::vector<std::string> tags;
    const char* shown;
};

}

TEST_CASE("what a build takes") {
    const auto reading = read_below_name(tagged);
    CHECK(reading.messages() == "");
    REQUIRE(reading.resume);
    const Selected cases[] = {
        {{"field"},
         "Ottoline Brandt\nField surveys\n(360) 555-0142\nExperience\n"
         "  Survey Intern\n  Salish Tidal Trust\n  - Counted quadrats\n  -- At nine sites\n"
         "  - Entered data\n    Volunteer\n    2025\n  .\n"
         "  Deckhand\n  Port Ellery Ferry\n  .\nProjects\n  Kelp Map\n  .\nSkills\n"},
        {{"LAB"},
         "Ottoline Brandt\nLaboratory methods\n(360) 555-0142\nExperience\n"
         "  Laboratory Intern\n  Salish Tidal Trust\n  - Entered data\n  -- In R\n  .\n"
         "Awards\n  Tide Prize\n  .\nSkills\n"},
        {{"public"},
         "Ottoline Brandt\nExperience\n  Salish Tidal Trust\n  - Entered data\n  .\n"
         "  Deckhand\n  Port Ellery Ferry\n  .\nSkills\nActivities\n  Choir\n  Treasurer\n  .\n"},
        {{"lab", "field"},
         "Ottoline Brandt\nField surveys\n(360) 555-0142\nExperience\n"
         "  Survey Intern\n  Laboratory Intern\n  Salish Tidal Trust\n  - Counted quadrats\n"
         "  -- At nine sites\n  - Entered data\n  -- In R\n    Volunteer\n    2025\n  .\n"
         "Awards\n  Tide Prize\n  .\nSkills\n"},
    };
    for (const Selected& one : cases)
        CHECK(show(select(*reading.resume, one.tags)) == one.shown);
    CHECK(show(select(*reading.resume, {})) == show(*reading.resume));
}

TEST_CASE("the tags a résumé uses") {
    const auto reading = read_below_name(tagged);
    REQUIRE(reading.resume);
    CHECK(tags_of(*reading.resume) == std::vector<std::string>{"field", "lab", "public"});
    const auto mixed = read_below_name("headline: A {Lab}\n\nsection: Awards {FIELD}\n\nfor: !Zoo\n"
                                       "award: B {lab}");
    REQUIRE(mixed.resume);
    CHECK(tags_of(*mixed.resume) == std::vector<std::string>{"field", "lab", "zoo"});
}

TEST_CASE("what is tagged to be kept is for every build, but for its other tags") {
    const auto reading =
        read_below_name("section: Experience\n\nfor: keep !lab\nrole: A\n- B {Keep}\n"
                        "- C {keep lab}\n\nrole: D {keep}");
    REQUIRE(reading.resume);
    CHECK(reading.messages().empty());
    const model::Section& section = reading.resume->sections.front();
    CHECK(section.entries[0].tags.keep);
    CHECK(section.entries[0].bullets[0].tags ==
          model::Tags{.only = {}, .except = {}, .keep = true});
    CHECK(section.entries[1].fields[0].tags.keep);
    CHECK(tags_of(*reading.resume) == std::vector<std::string>{"lab"});
    const std::vector<std::string> lab{"lab"}, field{"field"};
    CHECK(show(select(*reading.resume, lab)) == "Ottoline Brandt\nExperience\n  D\n  .\n");
    CHECK(show(select(*reading.resume, field)) ==
          "Ottoline Brandt\nExperience\n  A\n  - B\n  .\n  D\n  .\n");
}

TEST_CASE("with nothing left of the first position, the next takes its place") {
    const auto reading = read_below_name("section: Experience\n\nrole: A {x}\nemployer: B {x}\n"
                                         "role: C\ndates: 2025\nrole: D\n- E");
    REQUIRE(reading.resume);
    const std::vector<std::string> tags{"y"};
    CHECK(show(select(*reading.resume, tags)) ==
          "Ottoline Brandt\nExperience\n  C\n  2025\n    D\n    - E\n  .\n");
}

TEST_CASE("selection agrees with the reference on random résumés") {
    std::mt19937 random{20261103};
    const auto pick = [&](std::size_t count) { return random() % count; };
    const char* const marks[] = {"", "", "", " {a}", " {b}", " {!a}", " {!b}", " {a b}", " {a !b}"};
    const auto tags = [&] { return std::string{marks[pick(std::size(marks))]}; };
    for (int round = 0; round < 400; ++round) {
        std::string text;
        for (std::size_t section = pick(4); section > 0; --section) {
            text += "section: Experience" + tags() + "\n\n";
            for (std::size_t entry = pick(4); entry > 0; --entry) {
                if (pick(4) == 0) text += pick(2) == 0 ? "for: a\n" : "for: !a b\n";
                for (std::size_t position = 1 + pick(3); position > 0; --position) {
                    text += "role: R" + tags() + "\nemployer: E" + tags() + "\n";
                    for (std::size_t bullet = pick(5); bullet > 0; --bullet)
                        text += "- one" + tags() + "\n-- two" + tags() + "\n";
                }
                text += "\n";
            }
        }
        const auto reading = read_below_name(text);
        CAPTURE(text);
        REQUIRE(reading.messages() == "");
        for (const std::vector<std::string>& asked :
             {std::vector<std::string>{}, {"a"}, {"B"}, {"a", "b"}, {"c"}})
            CHECK(show(select(*reading.resume, asked)) == Reference{asked}(*reading.resume));
    }
}

}
