#include "compiler/portal/verify.hpp"

#include "compiler/base/encoding.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/portal/faults.hpp"
#include "compiler/stages/composition/characters.hpp"
#include "compiler/stages/composition/line_ends.hpp"
#include "compiler/stages/pages/reading_order.hpp"

#include <fmt/ranges.h>

#include <algorithm>
#include <cstdint>
#include <span>
#include <unordered_set>

namespace quoin::portal {

namespace {

constexpr char32_t soft_hyphen_code = 0xAD;

bool is_any_space(char32_t code) {
    return code == ' ' || code == '\t' || code == '\n' || code == 0xA0 ||
           (code >= 0x2000 && code <= 0x200B) || code == 0x202F || code == 0x205F || code == 0x3000;
}

// A hyphen of any kind is shown as the one that a keyboard has, a lowered figure as a plain one
// (pdf/shown_glyphs.cpp).
std::string_view as_read(const Character& character) {
    if (!character.well_formed) return replacement_character;
    if (character.code == 0x2010 || character.code == 0x2011) return "-";
    return lowered_figure(character.bytes).value_or(character.bytes);
}

// Where a word has letters that are read from right to left: from the first of its bytes to behind
// the last.
struct RightToLeft {
    std::size_t begin = 0, end = 0;
};

RightToLeft right_to_left_in(std::string_view word) {
    RightToLeft found;
    for (std::size_t at = 0; at < word.size();) {
        const Character character = first_character(word.substr(at));
        if (composition::is_right_to_left(character.code)) {
            if (found.end == 0) found.begin = at;
            found.end = at + character.length;
        }
        at += character.length;
    }
    return found;
}

// pdftotext tells where words are with their letters as they stand.
std::string in_order_of_reading(std::string word) {
    const auto [begin, end] = right_to_left_in(word);
    std::string turned;
    for (std::string_view rest = std::string_view(word).substr(begin, end - begin); !rest.empty();)
        turned.insert(0, take_character(rest).bytes);
    return word.replace(begin, end - begin, turned);
}

// A sign behind several such words stands beside the first.
std::string without_signs_beside(std::string word) {
    const auto [begin, end] = right_to_left_in(word);
    return end == 0 ? word : word.substr(begin, end - begin);
}

// Words as spaces of any kind part them, without soft hyphens, in NFC.
std::vector<std::string> words_read(std::string_view text) {
    std::vector<std::string> words;
    bool inside = false;
    while (!text.empty()) {
        const Character character = take_character(text);
        const bool parts = is_any_space(character.code);
        if (!parts && character.code != soft_hyphen_code) {
            if (!inside) words.emplace_back();
            words.back() += as_read(character);
            inside = true;
        }
        inside = inside && !parts;
    }
    for (std::string& word : words)
        word = to_nfc(without_signs_beside(std::move(word)));
    return words;
}

using WordSet = std::unordered_set<std::string>;

struct ReadPiece {
    std::string text;
    bool ends_line = false;
};

std::vector<ReadPiece> pieces_of(const Reading& reading) {
    std::vector<ReadPiece> pieces;
    for (const ReadLine& line : reading.lines) {
        for (const ReadWord& word : line.words)
            for (std::string& piece : words_read(in_order_of_reading(word.text)))
                pieces.push_back({std::move(piece), false});
        if (!pieces.empty()) pieces.back().ends_line = true;
    }
    return pieces;
}

// What a line's end parted is put together where only so it is a word that is expected.
std::vector<std::string> whole_words(const std::vector<ReadPiece>& pieces,
                                     const WordSet& expected) {
    constexpr std::size_t most_lines = 4; // a long link
    std::vector<std::string> words;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        std::string word = pieces[i].text;
        std::size_t taken = 1;
        for (std::size_t more = 1;
             more < most_lines && i + more < pieces.size() && pieces[i + more - 1].ends_line;
             ++more) {
            word += pieces[i + more].text;
            const bool both =
                expected.contains(pieces[i].text) && expected.contains(pieces[i + more].text);
            if (!both && expected.contains(word)) taken = more + 1;
        }
        if (taken == 1) word = pieces[i].text;
        words.push_back(std::move(word));
        i += taken - 1;
    }
    return words;
}

// The longest common subsequence, by the textbook's table.
class WordsInCommon {
public:
    WordsInCommon(std::span<const std::string> rows, std::span<const std::string> columns)
        : rows_(rows), columns_(columns), length_((rows.size() + 1) * (columns.size() + 1), 0) {
        for (std::size_t i = rows.size(); i-- > 0;)
            for (std::size_t j = columns.size(); j-- > 0;)
                at(i, j) = rows[i] == columns[j] ? length(i + 1, j + 1) + 1
                                                 : std::max(length(i + 1, j), length(i, j + 1));
    }

    std::vector<std::size_t> rows_without() const {
        std::vector<std::size_t> missing;
        for (std::size_t i = 0, j = 0; i < rows_.size();)
            if (j < columns_.size() && rows_[i] == columns_[j])
                ++i, ++j;
            else if (j < columns_.size() && length(i, j + 1) >= length(i + 1, j))
                ++j;
            else
                missing.push_back(i++);
        return missing;
    }

private:
    // Of what follows row i and column j.
    std::uint32_t length(std::size_t i, std::size_t j) const {
        return length_[i * (columns_.size() + 1) + j];
    }
    std::uint32_t& at(std::size_t i, std::size_t j) {
        return length_[i * (columns_.size() + 1) + j];
    }

    std::span<const std::string> rows_, columns_;
    std::vector<std::uint32_t> length_;
};

// Longest common subsequence by dynamic programming over what the common beginning and end leave;
// gives the indices of `a` that are not in it.
std::vector<std::size_t> not_in_common(const std::vector<std::string>& a,
                                       const std::vector<std::string>& b) {
    std::size_t begin = 0, a_end = a.size(), b_end = b.size();
    while (begin < a_end && begin < b_end && a[begin] == b[begin])
        ++begin;
    while (a_end > begin && b_end > begin && a[a_end - 1] == b[b_end - 1])
        --a_end, --b_end;
    const std::size_t rows = a_end - begin, columns = b_end - begin;
    std::vector<std::size_t> missing;
    constexpr std::size_t most_cells = std::size_t{1} << 24; // texts that share so little
    if (columns > 0 && rows > most_cells / columns) {
        for (std::size_t i = begin; i < a_end; ++i)
            missing.push_back(i);
        return missing;
    }
    const std::span<const std::string> all_rows(a), all_columns(b);
    const WordsInCommon common(all_rows.subspan(begin, rows), all_columns.subspan(begin, columns));
    for (const std::size_t row : common.rows_without())
        missing.push_back(begin + row);
    return missing;
}

void report_lost(const std::vector<ExpectedWord>& lost, const WordSet& read, std::string_view order,
                 Diagnostics& diagnostics) {
    for (std::size_t i = 0; i < lost.size();) { // the words of one place in one message
        std::vector<std::string> gone, moved;
        const Place place = lost[i].place;
        for (; i < lost.size() && lost[i].place == place; ++i)
            (read.contains(lost[i].text) ? moved : gone).push_back(lost[i].text);
        if (!gone.empty())
            diagnostics.error(place, fill<messages::word_lost>(list_of(gone), order));
        if (!moved.empty())
            diagnostics.error(place, fill<messages::word_moved>(list_of(moved), order));
    }
}

}

std::vector<ExpectedWord> expected_words(const composition::Composition& composition) {
    std::vector<ExpectedWord> words;
    for (const composition::Paragraph& paragraph : composition.paragraphs) {
        std::string label, text, at_edge;
        const std::size_t fill = paragraph.fill_run.value_or(paragraph.runs.size());
        for (std::size_t r = 0; r < paragraph.runs.size(); ++r)
            (r < paragraph.label_runs ? label
             : r > fill               ? at_edge
                                      : text) += paragraph.runs[r].text;
        for (std::string& word : words_read(label))
            words.push_back({std::move(word), paragraph.place});
        for (const bool edge : {false, true})
            for (std::string& word : words_read(edge ? at_edge : text))
                if (!composition::is_separator(word)) // left out at a line's end
                    words.push_back({std::move(word), paragraph.place, edge});
    }
    return words;
}

std::vector<ExpectedWord> lost_words(const std::vector<ExpectedWord>& expected,
                                     const Reading& reading) {
    WordSet known;
    std::vector<std::string> wanted;
    for (const ExpectedWord& word : expected) {
        known.insert(word.text);
        wanted.push_back(word.text);
    }
    std::vector<ExpectedWord> lost;
    for (const std::size_t i : not_in_common(wanted, whole_words(pieces_of(reading), known)))
        lost.push_back(expected[i]);
    return lost;
}

std::vector<std::string> loose_pieces(const std::vector<ExpectedWord>& expected,
                                      const Reading& reading) {
    std::vector<std::string> read;
    for (ReadPiece& piece : pieces_of(reading))
        if (!composition::is_separator(piece.text)) read.push_back(std::move(piece.text));
    std::vector<std::string> loose;
    for (std::size_t i = 0; i < expected.size();) {
        if (!expected[i].at_edge) {
            ++i;
            continue;
        }
        std::vector<std::string> piece, words;
        if (i > 0) words.push_back(expected[i - 1].text);
        for (; i < expected.size() && expected[i].at_edge; ++i)
            piece.push_back(expected[i].text);
        words.insert(words.end(), piece.begin(), piece.end());
        if (std::search(read.begin(), read.end(), words.begin(), words.end()) == read.end())
            loose.push_back(fmt::format("{}", fmt::join(piece, " ")));
    }
    return loose;
}

namespace {

bool has_two_columns(const composition::Composition& composition) {
    return std::ranges::find(composition.paragraphs, composition::Region::side,
                             &composition::Paragraph::region) != composition.paragraphs.end();
}

}

std::string_view side_by_side(const composition::Composition& composition) {
    const auto any = [&](auto is_so) { return std::ranges::any_of(composition.paragraphs, is_so); };
    using composition::Paragraph;
    if (has_two_columns(composition)) return "two columns stand";
    if (any([](const Paragraph& at) { return at.in_margin; }))
        return "headings in the margin and their text stand";
    if (any([](const Paragraph& at) { return at.block_columns > 1; }))
        return "columns of skills stand";
    return "";
}

namespace {

// What a theme sends to the right edge is whole, if it is read at all; a reader that parts the page
// by its white space has it elsewhere, and the rest in order.
std::vector<ExpectedWord> lost_but_at_edge(const std::vector<ExpectedWord>& expected,
                                           const Reading& reading, const WordSet& read) {
    std::vector<ExpectedWord> in_order, lost;
    for (const ExpectedWord& word : expected)
        if (!word.at_edge)
            in_order.push_back(word);
        else if (!read.contains(word.text))
            lost.push_back(word);
    for (ExpectedWord& word : lost_words(in_order, reading))
        lost.push_back(std::move(word));
    return lost;
}

// False, and errors, where words are lost to a reader in one order.
bool holds_all(const std::vector<ExpectedWord>& expected, const Readings& readings, bool by_place,
               const Place& file, Diagnostics& diagnostics) {
    const Reading& reading = by_place ? readings.by_place : readings.by_file;
    WordSet words;
    for (const ReadPiece& piece : pieces_of(reading))
        words.insert(piece.text);
    const std::vector<ExpectedWord> lost =
        by_place ? lost_but_at_edge(expected, reading, words) : lost_words(expected, reading);
    if (lost.empty()) return true;
    if (reading.pages.size() >= std::size_t{most_pages_read}) // what is beyond was not looked at
        diagnostics.error(file, fill<messages::not_verified>(fill<messages::pages_unread>()));
    else
        report_lost(lost, words, by_place ? "the page" : "the file", diagnostics);
    return false;
}

}

bool verify_pdf(const composition::Composition& composition, const pages::Pages& pages,
                std::string_view pdf, Place file, Diagnostics& diagnostics) {
    const auto read = read_pdf(pdf);
    if (const auto* fault = std::get_if<std::string>(&read)) {
        diagnostics.error(file, fill<messages::not_verified>(*fault));
        return false;
    }
    const std::vector<ExpectedWord> expected = expected_words(composition);
    const auto& readings = std::get<Readings>(read);
    for (const bool by_place : {false, true}) // one order's faults are enough to act on
        if (!holds_all(expected, readings, by_place, file, diagnostics)) return false;
    if (const auto loose = loose_pieces(expected, readings.by_place); !loose.empty())
        diagnostics.warning(file, fill<messages::read_loose>(loose.size(), list_of(loose)));
    const std::string_view what = side_by_side(composition);
    if (has_two_columns(composition) && pages::columns_read_whole(composition, pages))
        diagnostics.warning(file, fill<messages::read_across>(what));
    else if (!what.empty())
        diagnostics.warning(file, fill<messages::side_by_side>(what));
    return true;
}

}
