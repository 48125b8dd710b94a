// Findings at their words: which words are marked, where the flags stand, and the sheet behind.
#include "compiler/advice/marks.hpp"
#include "compiler/base/write_file.hpp"
#include "compiler/commands/proof/proof_report.hpp"
#include "compiler/stages/composition/sheet.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"
#include "compiler/stages/pages/text_areas.hpp"
#include "tests/advice/proofread.hpp"
#include "tests/composed.hpp"

#include <doctest/doctest.h>

#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <random>

namespace quoin::advice::marked_test {

namespace {

using fixtures::proof_of;
using fixtures::ProofOf;

struct Marked {
    std::unique_ptr<ProofOf> one;
    pages::Pages pages;
    std::vector<pages::Note> notes;
    double margin = 0;
};

Marked marked(const std::string& text) {
    Marked result{proof_of(text, {.with_page = true}), {}, {}, 0};
    const stages::Typeset& typeset = *result.one->typeset;
    const fit::Fit fit = fit_or_draft(typeset);
    result.margin = fit.setting.side_margin;
    result.pages = make_pages(typeset, fit);
    result.notes = notes_of(result.one->proof, typeset.composition, result.pages);
    place_flags(result.notes, result.pages, result.margin);
    return result;
}

// What is set inside an area, glyph by glyph from the page: the slow way round.
std::string text_within(const pages::TextArea& area, const composition::Composition& composition,
                        const pages::Pages& pages) {
    std::string text;
    for (const pages::PlacedRun& placed : pages.pages.at(area.page).runs) {
        if (placed.paragraph == pages::running_head_index) continue;
        const composition::Run& run =
            composition.paragraphs.at(placed.paragraph).runs.at(placed.run);
        double x = placed.x;
        for (std::uint32_t g = placed.begin; g < placed.end; ++g) {
            const double width = lines::advance(run, run.glyphs[g]) * placed.size / run.size;
            const double middle = x + width / 2;
            x += width + (lines::is_space(run, run.glyphs[g]) ? placed.word_space : 0);
            if (placed.y > area.bottom && placed.y < area.top && middle > area.left &&
                middle < area.right)
                text += run.text.substr(run.glyphs[g].text_begin, run.glyphs[g].text_length);
        }
    }
    return text;
}

std::string marked_words(const pages::Note& note, const Marked& page) {
    std::string text;
    for (const pages::TextArea& area : note.words) {
        if (!text.empty()) text += " | ";
        text += text_within(area, page.one->typeset->composition, page.pages);
    }
    for (std::size_t at = 0; (at = text.find("\u00A0", at)) != std::string::npos;)
        text.replace(at, 2, " ");
    return text;
}

struct Case {
    std::string check;
    std::string find, replace; // in the clean résumé
    std::string words;         // marked, an area each
    std::string beside;        // a piece of the line that the flag stands at
};

// clang-format off
const Case cases[] = {
    // at the very words
    {"spelling", "- Run rescue", "- Run resccue", "resccue", "Run"},
    {"doubled-word", "- Run rescue", "- Run the the rescue", "the the", "Run"},
    {"weak-opening", "- Run rescue", "- Helped run rescue", "Helped", "Helped"},
    {"degree-name", "Bachelor of Science", "Bachelor's of Science", "Bachelor’s of Science in Marine Biology", "Bachelor"},
    {"email-tone", "ottoline.brandt@", "beachbum42@", "beachbum42@ellerystate.example", "beachbum"},
    // printed in another form than typed: all that was made of it
    {"end-before-start", "dates: Jun 2026 - Aug 2026", "dates: Aug 2026 - 06/2026", "Aug 2026 – Jun 2026", "Aug"},
    // through marks and folds
    {"spelling", "- Run rescue", "- Run *resccue*", "resccue", "Run"},
    {"spelling", "- Run rescue", "- Run\n  resccue", "resccue", "Run"},
    // about the page, or about what is not there: no words
    {"missing-contact", "phone: (360) 555-0142\n", "", "", "Ottoline Brandt"},
    {"not-updated", "updated: 2026-11-03", "updated: 2025-01-03", "", "ottolinebrandt.example"},
    {"accept-unknown", "stage: undergraduate", "stage: undergraduate\naccept: nosuch (a reason)", "", ""},
};
// clang-format on

const pages::Note* note_of(const Marked& page, std::string_view check) {
    const auto found = std::ranges::find(page.notes, check, &pages::Note::subject);
    return found == page.notes.end() ? nullptr : &*found;
}

}

TEST_CASE("marks: each finding at its very words") {
    for (const Case& one : cases) {
        CAPTURE(one.check);
        CAPTURE(one.replace);
        const Marked page = marked(fixtures::clean_with(one.find, one.replace));
        const pages::Note* note = note_of(page, one.check);
        REQUIRE(note != nullptr);
        CHECK(marked_words(*note, page) == one.words);
        pages::TextArea line = note->beside;
        line.left = 0;
        line.right = page.pages.width;
        CHECK(text_within(line, page.one->typeset->composition, page.pages).find(one.beside) !=
              std::string::npos);
    }
}

TEST_CASE("marks: a finding about a bullet marks all its lines") {
    const std::string bullet =
        "- Run rescue drills for the crew of the skiff and for the volunteers "
        "of the shore\n  watch, with a whistle, a board, two flares and a "
        "line, in all the weathers that the\n  winter has, so that nobody "
        "is at a loss when the day comes and the wind is up";
    const Marked page = marked(fixtures::clean_with("- Run rescue", bullet));
    const pages::Note* note = note_of(page, "two-lines");
    REQUIRE(note != nullptr);
    CHECK(note->words.size() >= 3);
    CHECK(marked_words(*note, page).starts_with("Run rescue drills"));
}

TEST_CASE("marks: notes carry the numbers of the findings, their weight and their reason") {
    const Marked page = marked(fixtures::clean_with("- Run rescue", "- I run the the resccue"));
    REQUIRE(page.one->proof.findings.size() > 2);
    for (std::size_t i = 0; i < page.one->proof.findings.size(); ++i) {
        const Finding& finding = page.one->proof.findings[i];
        const std::string number = std::to_string(i + 1);
        const auto note = std::ranges::find(page.notes, number, &pages::Note::number);
        REQUIRE(note != page.notes.end());
        CHECK(note->subject == finding.check);
        CHECK(note->full.starts_with(number + ", " + std::string(name_of(weight_of(finding)))));
        CHECK(note->full.find(finding.text) != std::string::npos);
        CHECK(note->full.find(find_check(finding.check)->why) != std::string::npos);
    }
}

TEST_CASE("text areas: words stand side by side on their lines, and make up the whole") {
    const Marked page = marked(fixtures::clean_resume());
    const composition::Composition& composition = page.one->typeset->composition;
    for (std::uint32_t p = 0; p < composition.paragraphs.size(); ++p) {
        const std::string text = composed::text_of(composition.paragraphs[p]);
        const pages::TextAreas areas(composition, page.pages);
        std::vector<pages::TextArea> words;
        for (std::size_t begin = 0; begin < text.size();) {
            const std::size_t end = std::min(text.find(' ', begin), text.size());
            for (const pages::TextArea& area : areas.of(p, begin, end))
                words.push_back(area);
            begin = end + 1;
        }
        const auto whole = areas.of(p, 0, text.size());
        REQUIRE_FALSE(whole.empty());
        CHECK(words.front().left == doctest::Approx(whole.front().left));
        CHECK(words.back().right == doctest::Approx(whole.back().right));
        for (std::size_t i = 1; i < words.size(); ++i) {
            const bool same_line = words[i].bottom < words[i - 1].top;
            if (same_line && words[i].top > words[i - 1].bottom)
                CHECK(words[i].left >= words[i - 1].right - 0.01);
        }
    }
}

TEST_CASE("text areas: nothing of nothing") {
    const Marked page = marked(fixtures::clean_resume());
    const composition::Composition& composition = page.one->typeset->composition;
    const pages::TextAreas areas(composition, page.pages);
    CHECK(areas.of(0, 0, 0).empty());
    CHECK(areas.of(0, 4000, 5000).empty());
}

TEST_CASE("flags: on the paper, beside their lines, none over another, rising in a row") {
    std::mt19937 random(7);
    pages::Pages pages{612, 792, {{}, {}}};
    for (int round = 0; round < 200; ++round) {
        const double margin = 36 + static_cast<double>(random() % 37);
        std::vector<pages::Note> notes(1 + random() % 40);
        for (std::size_t i = 0; i < notes.size(); ++i) {
            notes[i].number = std::to_string(i + 1);
            notes[i].page = random() % 2;
            const double left = margin + static_cast<double>(random() % 400);
            const double bottom = 40 + 14 * static_cast<double>(random() % 50);
            notes[i].beside = {notes[i].page, left, bottom, left + 50, bottom + 12};
        }
        place_flags(notes, pages, margin);
        for (const pages::Note& note : notes) {
            const pages::Flag& flag = note.flag;
            CHECK(flag.left > 0);
            CHECK(flag.left + flag.width < pages.width);
            CHECK(flag.bottom > 0);
            CHECK(flag.height >= pages::flag_figures + 2); // air around the figures
            const bool in_left = flag.left + flag.width <= margin;
            CHECK((in_left || flag.left >= pages.width - margin));
            CHECK(in_left == flag.points_right);
            for (const pages::Note& other : notes) {
                const pages::Flag& next = other.flag;
                if (&other == &note || other.page != note.page) continue;
                CHECK((flag.left + flag.width <= next.left || next.left + next.width <= flag.left ||
                       flag.bottom + flag.height <= next.bottom ||
                       next.bottom + next.height <= flag.bottom));
                if (flag.bottom == next.bottom && in_left == next.points_right &&
                    flag.left < next.left)
                    CHECK(std::stoi(note.number) < std::stoi(other.number));
            }
        }
    }
}

TEST_CASE(
    "sheet: a section of headings and lists, in typographic quotes, with nothing unprintable") {
    const auto typeset = marked(fixtures::clean_resume()).one;
    const composition::Sheet sheet{
        "Proof",
        {"Ready."},
        {{"Must mend",
          {{"1", "Line 3, spelling:", "'resccue' isn't a word, שלום, \u0378.", "Why."},
           {"12", "Line 4:", "x.", ""}}},
         {"To consider", {}}}};
    const auto composition = compose_sheet(sheet, {}, typeset->typeset->theme, fixtures::fonts());
    REQUIRE(composition);
    std::vector<std::string> texts;
    std::vector<composition::StructureType> types;
    for (const composition::Paragraph& paragraph : composition->paragraphs) {
        texts.push_back(composed::text_of(paragraph, true));
        types.push_back(composition->elements[paragraph.element].type);
    }
    CHECK(texts ==
          std::vector<std::string>{"Proof", "Ready.", "Must mend",
                                   "1 Line 3, spelling: ‘resccue’ isn’t a word, ????, ?. Why.",
                                   "12 Line 4: x."});
    CHECK(types == std::vector{composition::StructureType::h2, composition::StructureType::p,
                               composition::StructureType::h3, composition::StructureType::p,
                               composition::StructureType::p});
    // the labels' right edges stand in one line
    CHECK(composition->paragraphs[3].indent == doctest::Approx(composition->paragraphs[4].indent));
}

TEST_CASE("sheet: appended, it keeps its own parts") {
    composition::Composition both = composed::compose(composed::example);
    const composition::Composition first = both, second = composed::compose(composed::example);
    append(both, second);
    REQUIRE(both.paragraphs.size() == 2 * first.paragraphs.size());
    REQUIRE(both.elements.size() == 2 * first.elements.size() - 1); // one document
    for (std::size_t i = 0; i < first.paragraphs.size(); ++i) {
        const composition::Paragraph &before = first.paragraphs[i],
                                     &after = both.paragraphs[first.paragraphs.size() + i];
        CHECK(composed::text_of(before) == composed::text_of(after));
        CHECK(first.elements[before.element].type == both.elements[after.element].type);
        for (std::size_t r = 0; r < before.runs.size(); ++r)
            CHECK(first.elements[before.runs[r].element].uri ==
                  both.elements[after.runs[r].element].uri);
    }
    for (std::size_t e = 1; e < both.elements.size(); ++e)
        CHECK(both.elements[e].parent < e);
}

TEST_CASE("marked proof: written for every résumé that can be set, the same each time") {
    const std::string clean = fixtures::clean_resume();
    std::string long_one = clean + "\nsection: Walks\nholds: other\n", faulty = clean;
    for (int i = 0; i < 40; ++i)
        long_one += "\ntitle: Shore walk\ndetail: the the walk\n- I was asked to walk, resccue\n";
    faulty += "\n\nsection: Notes\n\ntext: \"Resccue\" <https://shore.example> the the  end\n";
    for (const std::string& text : {clean, long_one, faulty, std::string("name: Al Bay\n")}) {
        const std::filesystem::path path =
            std::filesystem::temp_directory_path() /
            ("quoin-marked-" + std::to_string(::getpid()) + ".resume");
        REQUIRE_FALSE(write_file(path.string(), text));
        const commands::ProofTools tools{QUOIN_DATA_FOLDER, fixtures::fonts(), fixtures::language(),
                                         fixtures::read_on};
        const auto one = commands::proofread(path.string(), {}, tools);
        std::filesystem::remove(path);
        REQUIRE(one->typeset);
        const std::string pdf = commands::marked_proof(*one, tools, std::nullopt);
        CHECK(pdf.starts_with("%PDF-1.7"));
        CHECK(pdf == commands::marked_proof(*one, tools, std::nullopt));
        CHECK(pdf.find("quoin-marked") == std::string::npos);
    }
}

}
