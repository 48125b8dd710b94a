// Words lost on the way to the PDF and back.
#include "compiler/portal/verify.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <initializer_list>
#include <random>
#include <sstream>

namespace quoin::portal {

namespace {

std::vector<std::string> split(const std::string& text) {
    std::istringstream in(text);
    std::vector<std::string> words;
    for (std::string word; in >> word;)
        words.push_back(word);
    return words;
}

std::vector<ExpectedWord> expected(const std::string& text) {
    std::vector<ExpectedWord> words;
    for (const std::string& word : split(text))
        words.push_back({word, {}});
    return words;
}

Reading reading_of(const std::string& text) { // lines parted by `|`
    Reading reading{{{612, 792}}, {}};
    std::istringstream in(text);
    for (std::string line; std::getline(in, line, '|');) {
        ReadLine read{0, 0, {}, {}};
        for (const std::string& word : split(line))
            read.words.push_back({word, {}});
        if (!read.words.empty()) reading.lines.push_back(read);
    }
    return reading;
}

std::string lost(const std::string& wanted, const std::string& read) {
    std::string words;
    for (const ExpectedWord& word : lost_words(expected(wanted), reading_of(read)))
        words += (words.empty() ? "" : " ") + word.text;
    return words;
}

// The slow, obvious reference: every way to leave words out.
std::size_t longest_common(const std::vector<std::string>& a, const std::vector<std::string>& b) {
    std::size_t best = 0;
    for (std::size_t kept = 0; kept < (std::size_t{1} << a.size()); ++kept) {
        std::size_t count = 0, at = 0;
        bool fits = true;
        for (std::size_t i = 0; i < a.size() && fits; ++i) {
            if (!(kept >> i & 1)) continue;
            while (at < b.size() && b[at] != a[i])
                ++at;
            fits = at++ < b.size();
            ++count;
        }
        if (fits) best = std::max(best, count);
    }
    return best;
}

}

TEST_CASE("verify: what is lost") {
    struct Case {
        std::string wanted, read, lost;
    };
    for (const Case& c : std::initializer_list<Case>{
             {"a b c", "a b c", ""},
             {"a b c", "a | b | c", ""},
             {"a b c", "a c", "b"},
             {"a b c", "", "a b c"},
             {"", "a b", ""},
             {"a b c", "a head 2 b c", ""}, // a running head
             {"office", "o ce", "office"},  // glyphs lost
             {"team work", "teamwork", "team work"},
             {"teamwork", "team work", "teamwork"}, // split within a line
             {"state-of-the-art", "state-of- | the-art", ""},
             {"https://ellery.example/a/b", "https:// | ellery.example/ | a/b", ""},
             {"and and/or", "and and/ | or", ""},
             {"well known", "well | known", ""}, // each expected by itself: not put together
             {"well known wellknown", "well | known | wellknown", ""},
             {"manage\u00ADment", "manage\u00AD | ment", "manage\u00ADment"},
         })
        CHECK_MESSAGE(lost(c.wanted, c.read) == c.lost, c.wanted, " / ", c.read);
}

TEST_CASE("verify: as few words as explain a change of order") {
    CHECK(split(lost("a b c d e", "b c d e a")).size() == 1);
    CHECK(split(lost("l1 l2 l3 r1 r2 r3", "l1 r1 l2 r2 l3 r3")).size() == 2);
}

TEST_CASE("verify: agrees with trying every subset") {
    std::mt19937 random(20261125);
    for (int round = 0; round < 400; ++round) {
        const auto some = [&] {
            std::string text;
            for (auto left = random() % 9; left > 0; --left)
                text.append(1, static_cast<char>('a' + random() % 4)).append(" ");
            return text;
        };
        const std::string a = some(), b = some();
        CHECK_MESSAGE(split(lost(a, b)).size() ==
                          split(a).size() - longest_common(split(a), split(b)),
                      a, "/ ", b);
    }
}

TEST_CASE("verify: what a theme sends to the right edge may be read apart from its line") {
    const auto words = [] { // `+`: at the edge
        auto all = expected("Intern Trust +2026 +– +2027 Clerk Town +2025");
        for (ExpectedWord& word : all) {
            word.at_edge = word.text.starts_with("+");
            if (word.at_edge) word.text.erase(0, 1);
        }
        return all;
    }();
    const struct {
        std::string read;
        std::vector<std::string> loose;
    } cases[] = {
        {"Intern Trust 2026 – 2027 | Clerk Town 2025", {}},
        {"Intern Trust | 2026 – 2027 | Clerk Town · 2025", {}},
        {"Intern Trust | Clerk Town | 2026 – 2027 | 2025", {"2026 – 2027", "2025"}},
        {"Intern Trust 2026 – 2027 | 2025 | Clerk Town", {"2025"}},
    };
    for (const auto& one : cases)
        CHECK_MESSAGE(loose_pieces(words, reading_of(one.read)) == one.loose, one.read);
}

TEST_CASE("verify: the words of a composition") {
    composition::Composition composition;
    composition::Paragraph paragraph;
    paragraph.place = {0, 7, 3, 5};
    paragraph.label_runs = 1;
    for (const char* text : {"• ", "Jun\u00A02026 – ", "Aug", "ust re\u00ADport · ", "• x"}) {
        composition::Run run;
        run.text = text;
        paragraph.runs.push_back(run);
    }
    composition.paragraphs = {paragraph, composition::Paragraph{}};
    const std::vector<ExpectedWord> words = expected_words(composition);
    std::string all;
    for (const ExpectedWord& word : words)
        all += word.text + '|';
    CHECK(all == "•|Jun|2026|–|August|report|x|");
    CHECK(words.front().place == paragraph.place);
}

TEST_CASE("verify: what stands side by side is told") {
    composition::Paragraph plain, side, margin, block;
    side.region = composition::Region::side;
    margin.in_margin = true;
    block.block_columns = 2;
    const struct {
        std::vector<composition::Paragraph> paragraphs;
        std::string_view told;
    } cases[] = {
        {{plain, plain}, ""},
        {{plain, side}, "two columns stand"},
        {{margin, plain, block}, "headings in the margin and their text stand"},
        {{plain, block}, "columns of skills stand"},
    };
    for (const auto& one : cases) {
        composition::Composition composition;
        composition.paragraphs = one.paragraphs;
        CHECK(side_by_side(composition) == one.told);
    }
}

TEST_CASE("verify: a PDF is read back, and what it lost is reported at its place") {
    const std::string pdf = // without a cross-reference table, which readers mend
        "%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n"
        "2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1>>endobj\n"
        "3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 612 792]/Contents 4 0 R"
        "/Resources<</Font<</F1 5 0 R>>>>>>endobj\n"
        "4 0 obj<</Length 71>>stream\n"
        "BT /F1 12 Tf 72 700 Td (Counted the eelgrass) Tj 0 -20 Td (at sites) Tj ET\nendstream "
        "endobj\n5 0 obj<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>endobj\n"
        "trailer<</Root 1 0 R>>\n";
    struct Case {
        std::string first, second;
        std::string message;
    };
    for (const Case& c : std::initializer_list<Case>{
             {"Counted the eelgrass", "at sites", ""},
             {"Counted the eelgrass", "at nine sites",
              "'nine' cannot be read whole from the PDF, in the order of the file; nothing was "
              "written"},
             {"Counted the eelgrass sites", "at",
              "'at' would be read out of place, in the order of the file; nothing was written"},
         }) {
        composition::Composition composition;
        for (const std::string& text : {c.first, c.second}) {
            composition::Run run;
            run.text = text;
            composition::Paragraph paragraph;
            paragraph.runs = {run};
            paragraph.place = {0, static_cast<std::uint32_t>(composition.paragraphs.size() + 1), 1,
                               4};
            composition.paragraphs.push_back(paragraph);
        }
        Diagnostics diagnostics;
        CHECK(verify_pdf(composition, {}, pdf, {0, 0, 0, 0}, diagnostics) == c.message.empty());
        const auto& all = diagnostics.all();
        CHECK_MESSAGE((all.empty() ? "" : all.front().text) == c.message, c.second);
    }
    Diagnostics diagnostics;
    CHECK_FALSE(verify_pdf({}, {}, "%PDF-1.4 junk", {0, 0, 0, 0}, diagnostics));
    CHECK(diagnostics.all().front().text == "the PDF cannot be verified: it is damaged: "
                                            "'pdftotext' could not read it; export it again");
}

}
