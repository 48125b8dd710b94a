#include "compiler/advice/marks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>
#include <tuple>

namespace quoin::advice {

namespace {

struct TextBytes { // bytes [begin, end) of a paragraph's text
    std::uint32_t paragraph = 0;
    std::size_t begin = 0, end = 0;
};

struct LineBytes { // bytes of a source line
    std::size_t begin = 0, end = 0;
};

LineBytes columns_of(const Place& place) {
    if (place.column == 0) return {0, static_cast<std::size_t>(-1)}; // the whole line
    return {place.column, std::size_t{place.column} + std::max(place.length, 1U)};
}

// What of a piece of a paragraph was made from `place`.
std::optional<TextBytes> words_from(const Place& place, const composition::Origin& origin,
                                    std::uint32_t paragraph) {
    if (origin.place.file != place.file || origin.place.line != place.line ||
        origin.place.line == 0)
        return std::nullopt;
    const LineBytes wanted = columns_of(place), piece = columns_of(origin.place);
    if (wanted.end <= piece.begin || piece.end <= wanted.begin) return std::nullopt;
    TextBytes words{paragraph, origin.begin, origin.end};
    if (origin.place.length == origin.end - origin.begin) {
        words.end = origin.begin + std::min(wanted.end, piece.end) - piece.begin;
        words.begin = origin.begin + std::max(wanted.begin, piece.begin) - piece.begin;
    }
    return words;
}

// A place ends with its line. What holds all of a bullet's first line is about the whole bullet.
void go_on_with_bullet(TextBytes& words, const composition::Paragraph& paragraph) {
    if (paragraph.style != theme::StyleName::bullet || words.begin != 0) return;
    const std::uint32_t first_line = paragraph.origins.front().place.line;
    const bool holds_first_line =
        std::ranges::none_of(paragraph.origins, [&](const composition::Origin& origin) {
            const bool is_fold = origin.end - origin.begin == 1; // the space it is set as
            return origin.end > words.end && origin.place.line == first_line && !is_fold;
        });
    if (holds_first_line) words.end = paragraph.origins.back().end;
}

// In the order of the page.
std::vector<TextBytes> words_at(const Place& place, const composition::Composition& composition) {
    std::vector<TextBytes> found;
    for (std::uint32_t p = 0; p < composition.paragraphs.size(); ++p)
        for (const composition::Origin& origin : composition.paragraphs[p].origins) {
            if (origin.part == composition::TextPart::separator) continue;
            const auto words = words_from(place, origin, p);
            if (!words) continue;
            if (!found.empty() && found.back().paragraph == p && words->begin <= found.back().end)
                found.back().end = words->end;
            else
                found.push_back(*words);
        }
    for (TextBytes& words : found)
        go_on_with_bullet(words, composition.paragraphs[words.paragraph]);
    return found;
}

// The printed line nearest above a place in its file; none if there is none.
std::optional<TextBytes> nearest_above(const Place& place,
                                       const composition::Composition& composition) {
    std::optional<TextBytes> nearest;
    std::tuple<std::uint32_t, std::uint32_t> best{0, 0};
    for (std::uint32_t p = 0; p < composition.paragraphs.size(); ++p)
        for (const composition::Origin& origin : composition.paragraphs[p].origins) {
            const Place& from = origin.place;
            const std::tuple at{from.line, from.column};
            if (from.line == 0 || from.file != place.file || from.line > place.line || at < best)
                continue;
            best = at;
            nearest = TextBytes{p, origin.begin, origin.end};
        }
    return nearest;
}

struct Tone {
    theme::Colour flag, words;
};

// White figures stand on each flag at 4.5 to 1 and more (WCAG 2.1, 1.4.3), and black text on each
// tint at 12 to 1 and more; what a flag's colour says, its note says in words.
Tone tone_of(Weight weight) {
    switch (weight) {
    case Weight::must:
        return {{0xa4, 0x1f, 0x35}, {0xfa, 0xcf, 0xd0}};
    case Weight::should:
        return {{0x8a, 0x58, 0x00}, {0xfd, 0xe6, 0xa8}};
    case Weight::consider:
        break;
    }
    return {{0x35, 0x5c, 0x7d}, {0xd6, 0xe6, 0xf2}};
}

std::string full_text(const Finding& finding) {
    std::string text = finding.text;
    if (!finding.suggestion.empty()) text += "; " + finding.suggestion;
    const Check* check = find_check(finding.check);
    if (check == nullptr) return text;
    text += ". Why: ";
    text += check->why;
    if (!check->caution.empty()) (text += ' ') += check->caution;
    return text;
}

pages::Note blank_note(const Finding& finding, std::size_t number) {
    const Weight weight = weight_of(finding);
    const Tone tone = tone_of(weight);
    pages::Note note;
    note.number = std::to_string(number);
    note.subject = finding.check;
    note.brief = fmt::format("{}, {}: {}", note.number, name_of(weight), finding.text);
    note.full = fmt::format("{}, {}: {}", note.number, name_of(weight), full_text(finding));
    note.flag_colour = tone.flag;
    note.words_colour = tone.words;
    return note;
}

class NoteMaker {
public:
    NoteMaker(const composition::Composition& composition, const pages::Pages& pages)
        : composition_(composition), pages_(pages) {}

    void add(const Finding& finding, std::size_t number) {
        const std::size_t before = notes_.size();
        const bool of_whole = is_name(finding.place);
        for (const TextBytes& words : words_at(finding.place, composition_))
            for (const pages::TextArea& area : areas(words))
                note_on(area.page, before, words, finding, number).words.push_back(area);
        for (std::size_t i = before; i < notes_.size(); ++i) {
            notes_[i].beside = notes_[i].words.front();
            if (of_whole) notes_[i].words.clear();
        }
        if (notes_.size() == before) add_beside(finding, number);
    }

    std::vector<pages::Note> take() { return std::move(notes_); }

private:
    // What is said at the name is about the page, and the name is not at fault.
    bool is_name(const Place& place) const {
        return std::ranges::any_of(
            composition_.paragraphs, [&](const composition::Paragraph& paragraph) {
                return paragraph.style == theme::StyleName::name && paragraph.place == place;
            });
    }

    std::vector<pages::TextArea> areas(const TextBytes& words) const {
        return text_areas(composition_, pages_, words.paragraph, words.begin, words.end);
    }

    // The finding's note on a page, of those from `first` on.
    pages::Note& note_on(std::size_t page, std::size_t first, const TextBytes& words,
                         const Finding& finding, std::size_t number) {
        for (std::size_t i = first; i < notes_.size(); ++i)
            if (notes_[i].page == page) return notes_[i];
        return append(page, words, finding, number);
    }

    pages::Note& append(std::size_t page, const TextBytes& words, const Finding& finding,
                        std::size_t number) {
        pages::Note& note = notes_.emplace_back(blank_note(finding, number));
        note.page = page;
        note.element = composition_.paragraphs[words.paragraph].element;
        return note;
    }

    void add_beside(const Finding& finding, std::size_t number) {
        const TextBytes words = nearest_above(finding.place, composition_)
                                    .value_or(TextBytes{0, 0, static_cast<std::size_t>(-1)});
        const std::vector<pages::TextArea> found = areas(words);
        if (found.empty()) return; // nothing is on any page
        append(found.front().page, words, finding, number).beside = found.front();
    }

    const composition::Composition& composition_;
    const pages::Pages& pages_;
    std::vector<pages::Note> notes_;
};

}

std::vector<pages::Note> notes_of(const Proof& proof, const composition::Composition& composition,
                                  const pages::Pages& pages) {
    NoteMaker maker(composition, pages);
    for (std::size_t number = 1; const Finding& finding : proof.findings)
        maker.add(finding, number++);
    return maker.take();
}

}
