#include "compiler/advice/marks.hpp"

#include "compiler/stages/composition/printed_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>
#include <tuple>

namespace quoin::advice {

namespace {

// The printed line nearest above a place in its file; none if there is none.
std::optional<composition::TextBytes> nearest_above(const Place& place,
                                                    const composition::Composition& composition) {
    std::optional<composition::TextBytes> nearest;
    std::tuple<std::uint32_t, std::uint32_t> best{0, 0};
    for (std::uint32_t p = 0; p < composition.paragraphs.size(); ++p)
        for (const composition::Origin& origin : composition.paragraphs[p].origins) {
            const Place& from = origin.place;
            const std::tuple at{from.line, from.column};
            if (from.line == 0 || from.file != place.file || from.line > place.line || at < best)
                continue;
            best = at;
            nearest = composition::TextBytes{p, origin.begin, origin.end};
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
    if (!finding.office.empty()) text += " (" + finding.office + ')';
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
        : composition_(composition), areas_(composition, pages) {}

    void add(const Finding& finding, std::size_t number) {
        const std::size_t before = notes_.size();
        const bool of_whole = is_name(finding.place);
        for (const composition::TextBytes& words :
             composition::printed_words(finding.place, composition_))
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

    std::vector<pages::TextArea> areas(const composition::TextBytes& words) const {
        return areas_.of(words.paragraph, words.begin, words.end);
    }

    // The finding's note on a page, of those from `first` on.
    pages::Note& note_on(std::size_t page, std::size_t first, const composition::TextBytes& words,
                         const Finding& finding, std::size_t number) {
        for (std::size_t i = first; i < notes_.size(); ++i)
            if (notes_[i].page == page) return notes_[i];
        return append(page, words, finding, number);
    }

    pages::Note& append(std::size_t page, const composition::TextBytes& words,
                        const Finding& finding, std::size_t number) {
        pages::Note& note = notes_.emplace_back(blank_note(finding, number));
        note.page = page;
        note.element = composition_.paragraphs[words.paragraph].element;
        return note;
    }

    void add_beside(const Finding& finding, std::size_t number) {
        const composition::TextBytes words =
            nearest_above(finding.place, composition_)
                .value_or(composition::TextBytes{0, 0, static_cast<std::size_t>(-1)});
        const std::vector<pages::TextArea> found = areas(words);
        if (found.empty()) return; // nothing is on any page
        append(found.front().page, words, finding, number).beside = found.front();
    }

    const composition::Composition& composition_;
    pages::TextAreas areas_;
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
