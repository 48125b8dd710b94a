#include "compiler/transcription/heading_block.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/portal/found.hpp"
#include "compiler/portal/letters.hpp"
#include "compiler/transcription/entry_rows.hpp"
#include "compiler/transcription/evidence.hpp"
#include "compiler/transcription/list_marks.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace quoin::transcription {

namespace {

constexpr std::size_t most_words_of_name = 6, most_words_of_headline = 16;

constexpr std::array<std::string_view, 6> page_titles = {
    "resume", "r\u00E9sum\u00E9", "resum\u00E9", "curriculum vitae", "cv", "vita"};

bool may_be_name(const std::string& text) {
    const portal::LetterCount count = portal::count_letters(text);
    const std::size_t words = word_count(text);
    return count.digits == 0 && words >= 2 && words <= most_words_of_name &&
           count.letters * 10 >= count.characters * 7 &&
           text.find_first_of("@/:") == std::string::npos &&
           !is_one_of(lower_case(text), page_titles) && !portal::is_usual_title(text);
}

// However wide the white between its words.
bool is_name_alone(std::size_t words, const std::string& text) {
    constexpr std::size_t surely_one = 4;
    return words <= surely_one && may_be_name(text);
}

// Up to what parts it from the rest of its line.
std::string leading_name(const OldLine& line) {
    if (is_name_alone(line.words.size(), line.text())) return line.text();
    std::size_t end = 0;
    while (end < line.words.size()) {
        const OldWord& word = line.words[end];
        if (end > 0 && (word.apart || portal::is_bullet_sign(word.text) || word.text == "|" ||
                        word.text.starts_with('(')))
            break;
        ++end;
        if (word.text.ends_with(',') || word.text.ends_with('|')) break;
    }
    return std::string(trimmed(joined_words(line.words, 0, end), " ,|"));
}

// --- pieces of lines

// `/` between pieces; between figures it is of a telephone number.
bool parts_at_slash(const OldRow& row, const OldWord& word) {
    if (word.text != "/") return false;
    const auto at = static_cast<std::size_t>(&word - row.words.data());
    if (at == 0 || at + 1 == row.words.size()) return true;
    return !all_figures(row.words[at - 1].text) || !is_figure(row.words[at + 1].text.front());
}

std::vector<std::string> contact_pieces(const OldRow& row) {
    constexpr std::array<std::string_view, 11> signs = {
        "|", "\u2022", "\u00B7", "\u2013", "\u2014", "-", "\u2219", "\u25AA", "//", "~", "*"};
    std::vector<std::string> pieces(1);
    for (const OldWord& word : row.words) {
        if (is_one_of(word.text, signs) || parts_at_slash(row, word) ||
            (is_list_mark(word.text) && list_mark_at(word.text))) {
            pieces.emplace_back();
            continue;
        }
        if (word.apart) pieces.emplace_back();
        pieces.back().append(pieces.back().empty() ? "" : " ").append(word.text);
    }
    std::erase_if(pieces, [](const std::string& piece) { return piece.empty(); });
    return pieces;
}

bool is_short_number(std::string_view text) { // `555-0163`, without its area
    const auto figures = std::ranges::count_if(text, is_figure);
    return figures >= 7 && figures <= 15 &&
           text.find_first_not_of("0123456789 -.()+/ext") == text.npos;
}

// Words that introduce what follows, such as `Cell` and `Email:`.
bool introduces(std::string_view text) {
    constexpr std::array<std::string_view, 26> words = {
        "phone", "tel",     "telephone", "cell",    "mobile", "email",   "e-mail", "mail", "home",
        "web",   "website", "portfolio", "address", "at",     "contact", "p",      "e",    "m",
        "t",     "h",       "c",         "fax",     "or",     "link",    "and",    "work"};
    return is_one_of(lower_case(trimmed(text, " :.,()")), words);
}

class HeadingReader {
public:
    void take(const OldRow& row, bool has_name) {
        read_.entry.old.push_back(row.text());
        if (!has_name && is_running_text(row) && portal::find_emails(row.text()).empty()) {
            read_.prose.push_back(row.text());
            return;
        }
        if (has_name && is_name_alone(row.words.size(), row.text()))
            return read_.entry.add("name", without_page_title(row.text()));
        if (!has_name && is_letter_head(row.text())) {
            take_found(row.text(), "email", portal::find_emails(row.text()));
            return;
        }
        const std::string lower = row.text();
        reaches_ = lower.find('@') != std::string::npos || !portal::find_phones(lower).empty();
        bool named = !has_name;
        for (std::string& piece : contact_pieces(row)) {
            if (!named) {
                named = true;
                take_name(std::move(piece));
            } else {
                take_piece(piece);
            }
        }
    }

    // A head of further pages, which begins with the name: for a comment.
    void take_aside(const OldRow& row) { read_.entry.old.push_back(row.text()); }

    HeadingRead result() {
        if (!address_.empty()) read_.entry.add("address", address_);
        return std::move(read_);
    }

private:
    // Of a message that the page was pasted into: `Date: Tue, 8 Nov 2022 21:14`.
    static bool is_letter_head(const std::string& text) {
        constexpr std::array<std::string_view, 6> heads = {
            "from:", "to:", "date:", "sent:", "subject:", "cc:"};
        const std::string lower = lower_case(text);
        return std::ranges::any_of(heads,
                                   [&](std::string_view head) { return lower.starts_with(head); });
    }

    // `Marisol Tennant, RN`, `Ottoline Brandt (she/her)`
    void take_name(std::string piece) {
        if (const std::size_t open = piece.find(" ("); open != std::string::npos) {
            const std::string_view inside = trimmed(std::string_view(piece).substr(open), " ()");
            if (inside.find('/') != inside.npos)
                read_.entry.add("pronouns", std::string(inside));
            else
                return read_.entry.add("name", piece);
            piece.resize(open);
        }
        if (const std::size_t comma = piece.rfind(", "); comma != std::string::npos)
            if (const std::string last = piece.substr(comma + 2); is_pronouns(last)) {
                read_.entry.add("pronouns", last);
                piece.resize(comma);
            }
        read_.entry.add("name", without_page_title(piece));
    }

    static std::string without_page_title(const std::string& name) {
        const std::string lower = lower_case(name);
        for (const std::string_view title : {"resume of ", "r\u00E9sum\u00E9 of ",
                                             "resume: ", "resume - ", "curriculum vitae of "})
            if (lower.starts_with(title)) return name.substr(title.size());
        return name;
    }

    // Once for each label; another stays behind for a comment.
    void add(std::string_view label, std::string value) {
        if (label == "link" || !read_.entry.find(label)) read_.entry.add(label, std::move(value));
    }

    void take_piece(std::string piece) {
        piece = take_found(piece, "email", portal::find_emails(piece));
        piece = take_found(piece, "phone", portal::find_phones(piece));
        piece = take_links(piece);
        const std::string_view rest = trimmed(piece, " ,;:|()");
        if (rest.empty()) return;
        std::string kept = without_introductions(rest);
        if (kept.empty()) return;
        if (is_short_number(kept) && !read_.entry.find("phone")) return add("phone", kept);
        if (is_pronouns(kept)) return add("pronouns", kept);
        const bool reached = reaches_ || read_.entry.find("email") || read_.entry.find("phone");
        const bool lone = kept.find(' ') == std::string::npos; // longer, it may be a headline
        const bool town = (reaches_ || (reached && lone)) && address_.empty() && may_be_town(kept);
        if (is_address(kept) || town) {
            address_.append(address_.empty() ? "" : ", ").append(kept);
            return;
        }
        take_headline(kept);
    }

    std::string take_found(std::string piece, std::string_view label,
                           const std::vector<std::string>& found) {
        for (const std::string& one : found) {
            const std::size_t at = piece.find(one);
            if (at == std::string::npos) continue;
            if (!read_.entry.find(label)) {
                read_.entry.add(label, one);
                piece.replace(at, one.size(), " ");
            }
        }
        return piece;
    }

    std::string take_links(std::string piece) {
        for (const std::string& one : portal::find_links(piece)) {
            const std::size_t at = piece.find(one);
            if (at == std::string::npos) continue;
            read_.entry.add("link", one);
            piece.replace(at, one.size(), " ");
        }
        return piece;
    }

    static std::string without_introductions(std::string_view text) {
        std::string kept;
        for (const std::string_view word : pieces_of(text, " "))
            if (!word.empty() && !introduces(word))
                kept.append(kept.empty() ? "" : " ").append(word);
        return kept.empty()                                                    ? kept
               : kept.size() + 12 < text.size() && text.find(':') == text.npos ? std::string(text)
                                                                               : kept;
    }

    static bool is_pronouns(std::string_view text) {
        const std::string lower = lower_case(text);
        return text.size() < 24 && (lower.starts_with("she/") || lower.starts_with("he/") ||
                                    lower.starts_with("they/") || lower.starts_with("she,") ||
                                    lower.starts_with("they,"));
    }

    static bool is_address(std::string_view text) {
        KnownTowns towns;
        return text.size() < 90 &&
               (towns.place_at_end(text) > 0 || is_figure(text.front()) ||
                lower_case(text).starts_with("p.o.") || lower_case(text).starts_with("po box") ||
                (has_digit(text) && text.find(',') != text.npos && all_capitals(text)));
    }

    static bool all_capitals(std::string_view text) {
        return std::ranges::none_of(pieces_of(text, " "), [](std::string_view word) {
            return !word.empty() && is_small_letter(word.front());
        });
    }

    void take_headline(const std::string& text) {
        const std::size_t words = word_count(text);
        if (words > most_words_of_headline || read_.entry.find("headline") || words < 2) return;
        add("headline", text);
    }

    HeadingRead read_;
    bool reaches_ = false; // the row has an email or a telephone number
    std::string address_;
};

}

namespace {

// One word in large letters, and the rest of the name below it in the same.
bool begins_name(const std::vector<OldLine>& lines, std::size_t at) {
    if (at + 1 == lines.size() || lines[at].words.size() > 1) return false;
    const OldLine &line = lines[at], &next = lines[at + 1];
    const OldWord &first = line.words.front(), &second = next.words.front();
    return next.words.size() < 3 && first.font == second.font && next.gap < 0.6 &&
           std::abs(first.size - second.size) < 0.5 && may_be_name(line.text() + " " + next.text());
}

// The parts of an address before its `@`, in small letters: `ottoline.brandt` has two.
std::vector<std::string> parts_of_addresses(const std::vector<OldLine>& lines) {
    std::vector<std::string> parts;
    for (const OldLine& line : lines)
        for (const std::string& email : portal::find_emails(line.text())) {
            const std::string local =
                replaced(lower_case(email.substr(0, email.find('@'))), "_", ".");
            for (const std::string_view part : pieces_of(local, "."))
                if (part.size() > 2) parts.emplace_back(part);
        }
    return parts;
}

// By first name and surname.
bool is_named_by(const std::vector<std::string>& address, std::string_view name) {
    constexpr std::size_t least = 2;
    std::size_t named = 0;
    for (const std::string_view word : pieces_of(name, " "))
        named += is_one_of(lower_case(word), address);
    return named >= least;
}

bool is_place(const std::string& text) {
    return KnownTowns().place_at_end(text) == text.size();
}

}

std::optional<std::size_t> find_name_line(const std::vector<OldLine>& lines) {
    constexpr std::size_t first_lines = 80, top_lines = 8;
    std::vector<double> sizes;
    for (const OldLine& line : lines)
        sizes.push_back(line.size());
    std::ranges::sort(sizes);
    const auto address = parts_of_addresses(lines);
    std::optional<std::size_t> best;
    bool best_named = false;
    for (std::size_t i = 0; i < std::min(lines.size(), first_lines); ++i) {
        if (lines[i].page > 0 || lines[i].running) continue;
        const std::string name = leading_name(lines[i]);
        if (!may_be_name(name) && !begins_name(lines, i)) continue;
        if (is_place(lines[i].text())) continue;
        // below the top, as beside a column, it is larger than the rest, or an address has it
        const bool larger = lines[i].size() >= 1.15 * sizes[sizes.size() / 2];
        const bool named = is_named_by(address, name);
        if (i >= top_lines && !larger && !named) continue;
        if (best && lines[i].size() < 1.05 * lines[*best].size() &&
            !(named && !best_named && lines[i].size() > 0.95 * lines[*best].size()))
            continue;
        best = i;
        best_named = named;
    }
    return best;
}

HeadingRead read_heading(const std::vector<OldRow>& rows, std::optional<std::size_t> name_row) {
    HeadingReader reader;
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (i != name_row && name_row && rows[i].text().find(rows[*name_row].text()) == 0)
            reader.take_aside(rows[i]);
        else
            reader.take(rows[i], name_row == i);
    return reader.result();
}

}
