// A résumé that is too long, from its source to the words that are said about it. Generated ones
// prove that what is proposed, taken out of the source word for word, makes them fit.
#include "compiler/stages/overflow_report.hpp"

#include "compiler/stages/pages/pages.hpp"
#include "tests/composed.hpp"
#include "tests/fixtures/tries.hpp"
#include "tests/synthetic.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <optional>
#include <random>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

using quoin::Diagnostics;
using quoin::Place;
using quoin::Sources;
using quoin::fit::Cut;
using quoin::fit::Cuts;
using quoin::fit::Overflow;
using quoin::stages::Typeset;

namespace {

const std::filesystem::path data = QUOIN_DATA_FOLDER;

struct Set { // one source, set
    Sources sources;
    Diagnostics diagnostics;
    std::uint32_t file = 0;
    std::optional<Typeset> typeset;

    explicit Set(const std::string& text) {
        file = *sources.add("draft.resume", text, diagnostics);
        typeset =
            quoin::stages::typeset(sources, file, {}, data, quoin::composed::fonts(), diagnostics);
        std::string faults;
        for (const quoin::Diagnostic& fault : diagnostics.all())
            faults += format(fault, sources) + '\n';
        CAPTURE(text);
        CAPTURE(faults);
        REQUIRE(typeset);
    }

    int lines_too_many() const {
        const auto* overflow = std::get_if<Overflow>(&typeset->fit);
        return overflow ? overflow->lines_too_many : 0;
    }
    Cuts cuts() const {
        return quoin::fit::cheapest_cuts(typeset->composition, typeset->theme,
                                         typeset->resume.settings);
    }
};

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines{""};
    for (const char letter : text) {
        if (letter == '\n')
            lines.emplace_back();
        else
            lines.back() += letter;
    }
    return lines;
}

bool is_mark(char letter) {
    return letter == '*' || letter == '/' || letter == '_';
}

// Takes out what stands at a place, with its marks and the space or separator before it.
void take_out(std::string& line, const Place& place) {
    std::size_t begin = place.column - 1, end = begin + place.length;
    while (begin > 0 && is_mark(line[begin - 1]))
        --begin;
    while (end < line.size() && is_mark(line[end]))
        ++end;
    while (begin > 0 && (line[begin - 1] == ' ' || line[begin - 1] == ';' ||
                         (line[begin - 1] == ',' && line.find(':') < begin)))
        --begin;
    const bool folded_first = line.find_first_not_of(' ') >= begin;
    line.erase(begin, end - begin);
    if (folded_first) line.insert(0, "  "); // what is left of a folded line stays folded
}

struct Edit {
    Place place;
    Cut::Kind kind{};

    auto operator<=>(const Edit&) const = default;
};

void edit(std::vector<std::string>& lines, std::vector<bool>& gone, const Edit& edit) {
    const std::size_t at = edit.place.line - 1;
    if (edit.kind == Cut::Kind::words) {
        take_out(lines[at], edit.place);
        if (lines[at].find_first_not_of(' ') == std::string::npos) gone[at] = true;
        return;
    }
    const bool entry = edit.kind == Cut::Kind::entry; // up to the blank lines around it
    std::size_t first = at, past = at + 1;
    while (entry && !lines[first - 1].empty())
        --first;
    while (past < lines.size() && (entry ? !lines[past].empty() : lines[past].starts_with(' ')))
        ++past;
    std::fill(gone.begin() + std::ptrdiff_t(first), gone.begin() + std::ptrdiff_t(past), true);
}

// The source with the cuts made, as a writer makes them.
std::string edited(const std::string& source, const std::vector<Cut>& cuts) {
    std::vector<std::string> lines = lines_of(source);
    std::vector<Edit> edits;
    for (const Cut& cut : cuts)
        for (const Place& place : cut.places)
            edits.push_back({place, cut.kind});
    std::sort(edits.rbegin(), edits.rend());
    std::vector<bool> gone(lines.size());
    for (const Edit& each : edits)
        edit(lines, gone, each);
    std::string text;
    for (std::size_t i = 0; i < lines.size(); ++i)
        if (!gone[i]) text += lines[i] + '\n';
    return text;
}

std::string words(std::mt19937& random, std::size_t count) {
    static const std::vector<std::string> all = {
        "surveyed", "eelgrass", "with",     "a",        "careful",    "log",       "of",
        "the",      "tidal",    "plots",    "and",      "volunteers", "weekly",    "counts",
        "in",       "R",        "to",       "measured", "salinity",   "shore",     "for",
        "reports",  "county",   "planners", "oysters",  "settlement", "quickly",   "at",
        "AV",       "Tacoma",   "Yelm",     "family",   "figures",    "laboratory"};
    std::string text = "Kept";
    for (std::size_t i = 1; i < count; ++i) {
        std::string word = all[random() % all.size()];
        if (random() % 11 == 0) word += ',';
        if (random() % 17 == 0) word = "*" + word + " " + all[random() % all.size()] + "*";
        if (random() % 23 == 0) word = "(" + word + " " + all[random() % all.size()] + ")";
        if (random() % 19 == 0) word = std::to_string(2 + random() % 90);
        text += ' ' + word;
    }
    return text;
}

std::string folded(std::mt19937& random, std::string text) {
    std::size_t at = 0;
    while ((at = text.find(' ', at + 60 + random() % 30)) != std::string::npos)
        text.replace(at, 1, "\n  ");
    return text;
}

std::string bullet(std::mt19937& random, std::size_t least, std::size_t most) {
    return "- " + folded(random, words(random, least + random() % (most - least + 1))) + '\n';
}

const std::string role = "\nrole: Survey Assistant\nemployer: Salish Tidal Trust\n"
                         "place: Anacortes, WA\ndates: Jun 2026 - Aug 2026\n";

const std::string head = "name: Ottoline Brandt\naddress: Port Ellery, WA\n"
                         "email: ottoline.brandt@ellerystate.example\n";
const std::string college = "\nsection: Education\n\nschool: Ellery State College\n"
                            "degree: Bachelor of Science in Marine Biology\n"
                            "graduation: May 2027 (expected)\n";
const std::string high_school = "\nschool: Port Ellery High School\nplace: Port Ellery, WA\n"
                                "graduation: Jun 2023\n";

std::string courses(std::mt19937& random) {
    std::string text = "courses: Benthic Ecology";
    for (const char* course : {"GIS for Field Science", "Applied Regression", "Oceanography",
                               "Marine Policy", "Statistics", "Invertebrate Zoology"})
        if (random() % 3 != 0) text += std::string("; ") + course;
    return text + '\n';
}

// The most pieces with which it fits: between `fit`, which do, and all, which do not.
std::size_t most_that_fit(const std::string& above, const std::vector<std::string>& pieces,
                          std::size_t fit) {
    const auto fits = [&](std::size_t count) {
        std::string text = above;
        for (std::size_t i = 0; i < count; ++i)
            text += pieces[i];
        return Set(text).lines_too_many() == 0;
    };
    std::size_t past = pieces.size();
    while (past - fit > 1) {
        const std::size_t middle = (fit + past) / 2;
        (fits(middle) ? fit : past) = middle;
    }
    return fit;
}

std::vector<std::string> entries_of_bullets(std::mt19937& random, std::size_t count) {
    std::vector<std::string> pieces;
    std::size_t bullets = 0, most = 0;
    while (pieces.size() < count) {
        std::string piece;
        if (bullets == most) {
            piece = role;
            bullets = 0;
            most = 2 + random() % 6;
        }
        pieces.push_back(piece + bullet(random, 8, 32));
        ++bullets;
    }
    return pieces;
}

std::string too_long(std::mt19937& random, int by, int pages) {
    std::string text = head + "pages: " + std::to_string(pages) + '\n' + college + courses(random);
    if (random() % 4 == 0) text += high_school;
    text += "\nsection: Experience\n";
    const std::size_t a_page = pages == 1 ? 14 : 38; // bullets that fit for certain
    const auto pieces = entries_of_bullets(random, 4 * a_page);
    const std::size_t fit = most_that_fit(text, pieces, a_page);
    for (std::size_t i = 0; i < fit; ++i)
        text += pieces[i];
    if (Set(text + pieces[fit]).lines_too_many() <= by) text += pieces[fit];
    for (int more = by - Set(text).lines_too_many(); more > 0;
         more = by - Set(text).lines_too_many())
        while (more-- > 0)
            text += bullet(random, 5, 9);
    return text;
}

}

TEST_CASE("200 résumés too long by 1 to 10 lines: the cuts proposed make each of them fit") {
    std::mt19937 random(2027);
    std::map<int, int> by_lines;
    int both = 0, pieces = 0;
    for (int round = 0; round < quoin::tries(200); ++round) {
        CAPTURE(round);
        const std::string source = too_long(random, 1 + round % 10, round % 8 == 7 ? 2 : 1);
        const Set set(source);
        ++by_lines[set.lines_too_many()];
        const Cuts cuts = set.cuts();
        CHECK(cuts.enough);
        std::vector<std::vector<Cut>> plans{cuts.pieces, cuts.words};
        if (!cuts.either) {
            plans.front().insert(plans.front().end(), cuts.words.begin(), cuts.words.end());
            plans.pop_back();
        }
        for (const std::vector<Cut>& plan : plans) {
            if (plan.empty()) continue;
            const std::string shorter = edited(source, plan);
            CAPTURE(source);
            CAPTURE(shorter);
            CHECK(Set(shorter).lines_too_many() == 0);
        }
        pieces += !cuts.pieces.empty();
        both += cuts.either;
    }
    for (int lines = 1; lines <= 10; ++lines)
        CHECK_MESSAGE(by_lines[lines] >= quoin::tries(8), lines << " lines: " << by_lines[lines]);
    CHECK(pieces >= quoin::tries(20));
    CHECK(both >= quoin::tries(5));
}

TEST_CASE("a high school beside a college, then bullets beyond five, are offered first") {
    const std::string experience = "\nsection: Experience\n" + role;
    const auto cuts_of = [&](const std::string& education, int bullets, int lines) {
        std::string text = head + "size: 12\nmargins: 1\n" + education + experience;
        for (int i = 0; i < bullets; ++i)
            text += "- Counted eelgrass quadrats\n";
        text += "\nsection: Skills\n\n";
        while (Set(text).lines_too_many() < lines)
            text += "Field: quadrat survey, mapping\n";
        return Set(text).cuts();
    };
    Cuts cuts = cuts_of(college + high_school, 7, 1);
    REQUIRE(cuts.pieces.size() == 1);
    CHECK(cuts.pieces.front().kind == Cut::Kind::entry);
    CHECK(cuts.pieces.front().lines == 2);
    CHECK(cuts.pieces.front().places.front().line == 13);
    CHECK(cuts.either);

    cuts = cuts_of(college + high_school, 7, 5);
    REQUIRE(cuts.pieces.size() == 3);
    CHECK(cuts.pieces[1].kind == Cut::Kind::bullet);
    CHECK(cuts.pieces[2].kind == Cut::Kind::bullet);
    CHECK(cuts.enough);

    // A school that is all the education there is stays.
    cuts = cuts_of("\nsection: Education\n" + high_school, 5, 1);
    CHECK(cuts.pieces.empty());
}

namespace {

Cut words_cut(std::size_t characters, int lines, std::string gone, std::string last,
              std::uint32_t line) {
    Cut cut;
    cut.lines = lines;
    cut.characters = characters;
    cut.words = std::move(gone);
    cut.last_lines = std::move(last);
    cut.places = {{0, line, 3, 4}};
    return cut;
}

Cut whole_cut(Cut::Kind kind, std::size_t characters, int lines, std::uint32_t line) {
    Cut cut = words_cut(characters, lines, "", "", line);
    cut.kind = kind;
    return cut;
}

std::string said(const Cuts& cuts, int lines, int pages, bool draft = false) {
    std::string forty_lines;
    for (int i = 0; i < 40; ++i)
        forty_lines += "- Counted quadrats\n";
    Sources sources;
    Diagnostics diagnostics;
    REQUIRE(sources.add("draft.resume", forty_lines, diagnostics));
    Typeset typeset{{}, quoin::synthetic::theme(), {}, Overflow{lines}};
    typeset.resume.settings.pages.value = pages;
    typeset.composition.paragraphs.resize(1);
    typeset.composition.paragraphs.front().bullet = 6;
    std::string text;
    const Diagnostics report = quoin::stages::overflow_report(lines, cuts, typeset, 0, draft);
    for (const quoin::Diagnostic& each : report.all())
        text += format(each, sources) + '\n';
    return text;
}

}

TEST_CASE("what is said, to the letter") {
    const std::string smallest = " at 10 pt and margins of 0.5 in, the smallest allowed; ";
    const Cut one = words_cut(9, 1, "of paired", "within the hour", 24);
    const Cut two = words_cut(1, 2, "a", "two short lines", 26);
    const Cut bullet = whole_cut(Cut::Kind::bullet, 74, 1, 28);
    const Cut sixth = whole_cut(Cut::Kind::bullet, 140, 2, 30);
    const Cut school = whole_cut(Cut::Kind::entry, 80, 3, 32);
    const std::string long_text = "one of many words that go on for longer than anyone would quote";
    struct Case {
        Cuts cuts;
        int lines, pages;
        std::string report;
    };
    const Case cases[] = {
        {{{}, {one}, false, true},
         1,
         1,
         "draft.resume: error: 1 line too long for 1 page" + smallest +
             "nothing was written\n"
             "draft.resume:24:3: note: 9 characters fewer save a line, say 'of paired' (the last "
             "line holds only 'within the hour')\n"},
        {{{}, {two, one, bullet}, false, true},
         4,
         2,
         "draft.resume: error: 4 lines too long for 2 pages" + smallest +
             "nothing was written\n"
             "draft.resume: note: the fewest words that bring it onto its pages: 84 characters in "
             "3 places\n"
             "draft.resume:26:3: note: 1 character fewer saves 2 lines, say 'a' (the last 2 lines "
             "hold only 'two short lines')\n"
             "draft.resume:24:3: note: 9 characters fewer save a line, say 'of paired' (the last "
             "line holds only 'within the hour')\n"
             "draft.resume:28:3: note: 74 characters fewer save a line: this bullet, whole\n"},
        {{{school}, {one}, true, true},
         1,
         1,
         "draft.resume: error: 1 line too long for 1 page" + smallest +
             "nothing was written\n"
             "draft.resume:32:3: note: a high school beside a college is the first to go; without "
             "this entry 3 lines fewer\n"
             "draft.resume: note: or, instead of that, the fewest words that bring it onto the "
             "page: 9 characters in 1 place\n"
             "draft.resume:24:3: note: 9 characters fewer save a line, say 'of paired' (the last "
             "line holds only 'within the hour')\n"},
        {{{sixth}, {words_cut(64, 1, long_text, long_text, 7)}, false, true},
         3,
         1,
         "draft.resume: error: 3 lines too long for 1 page" + smallest +
             "nothing was written\n"
             "draft.resume:30:3: note: bullet 6 of its entry, where five are the usual most; "
             "without it 2 lines fewer\n"
             "draft.resume: note: then the fewest words that bring it onto the page: 64 characters "
             "in 1 place\n"
             "draft.resume:7:3: note: 64 characters fewer save a line, say 'one of many words that "
             "… than anyone would quote'\n"},
        {{{}, {}, false, false},
         41,
         1,
         "draft.resume: error: 41 lines too long for 1 page" + smallest +
             "nothing was written\n"
             "draft.resume: note: shorter words will not do; take out whole entries or "
             "sections\n"},
    };
    for (const Case& c : cases)
        CHECK(said(c.cuts, c.lines, c.pages) == c.report);
    CHECK(said({{}, {one}, false, true}, 1, 1, true)
              .starts_with("draft.resume: warning: 1 line too long for 1 page" + smallest +
                           "set as a draft, with a rule across where its pages end\n"));
    const std::string many = said({{}, std::vector<Cut>(11, one), false, true}, 11, 1);
    CHECK(many.find("99 characters in 11 places; the cheapest 8 of them follow\n") !=
          std::string::npos);
    CHECK(std::count(many.begin(), many.end(), '\n') == 10);
}

TEST_CASE("a draft: every word on as many pages as it takes, a rule where the allowed ones end") {
    std::mt19937 random(5);
    const Set set(too_long(random, 7, 1));
    const auto draft = quoin::fit::draft_fit(set.typeset->composition, set.typeset->theme,
                                             set.typeset->resume.settings);
    quoin::pages::Pages pages = quoin::pages::make_pages(set.typeset->composition, draft);
    REQUIRE(pages.pages.size() == 2);
    std::size_t glyphs = 0, placed = 0, in_head = 0;
    for (const quoin::composition::Paragraph& paragraph : set.typeset->composition.paragraphs)
        for (const quoin::composition::Run& run : paragraph.runs)
            glyphs += run.glyphs.size();
    double lowest = pages.height;
    for (const quoin::pages::Page& page : pages.pages)
        for (const quoin::pages::PlacedRun& run : page.runs)
            (run.paragraph == quoin::pages::running_head_index ? in_head : placed) +=
                run.end - run.begin;
    for (const quoin::pages::PlacedRun& run : pages.pages.front().runs)
        lowest = std::min(lowest, run.y);
    CHECK(placed == glyphs);
    CHECK(in_head > 0); // the name and the page's number, on the page beyond
    const std::size_t rules = pages.pages.front().rules.size();
    quoin::pages::mark_end(pages, draft.setting, 1);
    REQUIRE(pages.pages.front().rules.size() == rules + 1);
    const quoin::pages::PlacedRule& mark = pages.pages.front().rules.back();
    CHECK(mark.x == 0);
    CHECK(mark.width == pages.width);
    CHECK(mark.y < lowest);
    CHECK(lowest < draft.setting.bottom_margin + 4 * draft.setting.size); // the page is full
}
