// An interview held in a test: lines go in one after the other, as if typed.
#pragma once

#include "compiler/interview/interview.hpp"
#include "compiler/interview/kept.hpp"
#include "tests/advice/proofread.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::fixtures {

inline const interview::Judge& judge() {
    static const std::filesystem::path data{QUOIN_DATA_FOLDER};
    static const interview::Judge one(data, language(), read_on);
    return one;
}

struct Talk {
    interview::Interview interview{interview::Draft{}, interview::Spot{}, judge()};
    std::string heard; // all that was said
    bool left = false;

    void type(std::string_view line) {
        REQUIRE_FALSE(interview.is_done());
        heard += interview.asks() + interview.prompt();
        heard += std::string(line) + '\n';
        const interview::Reply reply = interview.take(line);
        heard += reply.says;
        left = reply.then == interview::Then::leave;
    }

    void type_all(const std::vector<std::string>& lines) {
        for (const std::string& line : lines)
            type(line);
    }

    // As if the run had been killed here and begun again.
    void go_on_from_disk() {
        const std::string text = interview::kept_text({interview.draft(), interview.spot()});
        Sources sources;
        Diagnostics diagnostics;
        const auto file = sources.add("draft.begin", text, diagnostics);
        REQUIRE(file);
        const auto kept = interview::read_kept(sources, *file, diagnostics);
        CAPTURE(text);
        REQUIRE(kept);
        CHECK(diagnostics.all().empty());
        CHECK(interview::kept_text(*kept) == text);
        interview = {kept->draft, kept->next, judge()};
    }

    std::string source() const {
        return draft_source(interview.plan(), interview.draft(),
                            judge().unreadable(interview.plan(), interview.draft()))
            .text;
    }

    // Without notes and blank lines.
    std::string answers() const {
        return answers_alone(draft_source(interview.plan(), interview.draft(),
                                          judge().unreadable(interview.plan(), interview.draft())));
    }
};

// What leads to the question named: all before it is skipped, but for the name.
inline std::vector<std::string> skipped_to(std::string_view label) {
    Talk talk;
    std::vector<std::string> lines;
    const auto asked = [&] { return label_at(talk.interview.plan(), talk.interview.spot()); };
    while (asked() != label) {
        lines.emplace_back(asked() == "name" ? "Ottoline Brandt" : "");
        talk.type(lines.back());
        REQUIRE(lines.size() < 60);
    }
    return lines;
}

}
