#include "compiler/transcription/pieces.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::transcription {

namespace {

constexpr std::array<std::string_view, 13> parting_words = {
    "|", "\u2022", "\u00B7", "\u2013", "\u2014", "-",     "--",
    "~", "\u2219", "\u2027", "@",      "\u25AA", "\uF0B7"};

// Signs around a piece that are no part of it.
std::string_view without_signs_around(std::string_view text) {
    for (bool more = true; more;) {
        more = false;
        const std::string_view inside = trimmed(text, " ,;|:");
        more = inside.size() < text.size();
        text = inside;
        for (const std::string_view sign : parting_words) {
            if (text.starts_with(sign) &&
                (text.size() == sign.size() || text[sign.size()] == ' ')) {
                text.remove_prefix(sign.size());
                more = true;
            }
            const std::size_t before = text.size() - std::min(text.size(), sign.size() + 1);
            if (text.ends_with(sign) && (text.size() == sign.size() || text[before] == ' ')) {
                text.remove_suffix(sign.size());
                more = true;
            }
        }
    }
    return text;
}

class PieceCutter {
public:
    PieceCutter(const KnownTowns& towns, HeadPieces& to) : towns_(towns), to_(to) {}

    void cut(const OldRow& row, std::size_t number, const std::vector<DatesOnLine>& dates) {
        row_ = number;
        open_apart_ = false;
        joint_.clear();
        std::size_t next = 0;
        for (std::size_t i = 0; i < row.words.size();) {
            if (next < dates.size() && dates[next].begin == i) {
                close();
                to_.dates.push_back(dates[next]);
                i = dates[next++].end;
                continue;
            }
            take(row.words[i++]);
        }
        const std::size_t names = to_.names.size(), places = to_.places.size();
        close();
        if (open_apart_ && to_.names.size() > names) to_.names.back().at_edge = true;
        if (open_apart_ && to_.names.size() == names && to_.places.size() > places)
            to_.place_rows.push_back(row_);
        if (!to_.text.empty()) to_.text += "; ";
        to_.text += row.text();
    }

private:
    void take(const OldWord& word) {
        if (is_one_of(word.text, parting_words)) {
            close();
            joint_ = " " + word.text + " ";
            return;
        }
        const bool other = !open_.text.empty() && changes(word) && !word.text.starts_with('(');
        if (word.apart || other) {
            const bool comma = open_.text.ends_with(',');
            close();
            joint_ = word.apart ? "" : comma ? ", " : " ";
        }
        if (open_.text.empty()) {
            open_apart_ = word.apart;
            open_.font = word.font;
            open_.strong = word.strong;
            open_.slanted = word.slanted;
        }
        open_.text.append(open_.text.empty() ? "" : " ").append(word.text);
        last_ = &word;
    }

    // To letters of another kind.
    bool changes(const OldWord& word) const {
        if (word.strong != last_->strong || word.slanted != last_->slanted) return true;
        return word.font != last_->font && open_.text.ends_with(',');
    }

    void close() {
        const std::string_view text = without_signs_around(open_.text);
        if (!text.empty()) add(text);
        open_ = {};
    }

    void add(std::string_view text) {
        const std::size_t place = towns_.place_at_end(text);
        if (place > 0) {
            to_.places.emplace_back(text.substr(text.size() - place));
            text = without_signs_around(text.substr(0, text.size() - place));
        }
        if (text.empty()) return;
        HeadPiece piece = open_;
        piece.joint = std::exchange(joint_, {});
        piece.text = text;
        piece.row = row_;
        to_.names.push_back(std::move(piece));
    }

    const KnownTowns& towns_;
    HeadPieces& to_;
    HeadPiece open_;
    bool open_apart_ = false;
    const OldWord* last_ = nullptr; // of it
    std::string joint_;
    std::size_t row_ = 0;
};

}

namespace {

using DatesOfRows = std::vector<std::vector<DatesOnLine>>;

// Beside a date that stands by itself, one in parentheses or in a phrase is a part of the name.
DatesOfRows dates_of_heads(std::span<const OldRow> heads, const portal::PageLanguages& languages) {
    DatesOfRows all;
    bool stands = false, in_parentheses = false;
    for (const OldRow& row : heads) {
        all.push_back(dates_on(row.words, languages));
        for (const DatesOnLine& one : all.back()) {
            stands = stands || !(one.glued || one.in_parentheses);
            in_parentheses = in_parentheses || one.in_parentheses;
        }
    }
    for (auto& dates : all) {
        std::erase_if(dates, [&](const DatesOnLine& one) {
            return one.aside || (one.glued && (stands || in_parentheses)) ||
                   (one.in_parentheses && stands);
        });
        // of two on a row the first is of the name: `Letters, 1902-1921 · Fall 2026`
        if (dates.size() > 1 && !dates[1].expires && dates[0].begin > 0) dates.erase(dates.begin());
    }
    return all;
}

}

HeadPieces pieces_of_heads(std::span<const OldRow> heads, const KnownTowns& towns,
                           const portal::PageLanguages& languages) {
    HeadPieces pieces;
    PieceCutter cutter(towns, pieces);
    const DatesOfRows dates = dates_of_heads(heads, languages);
    for (std::size_t i = 0; i < heads.size(); ++i)
        cutter.cut(heads[i], i, dates[i]);
    return pieces;
}

}
