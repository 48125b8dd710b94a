#include "compiler/matching/texts.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/english/sentence.hpp"
#include "compiler/postings/posting.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::matching {

namespace {

class TextReader {
public:
    std::vector<TextOfResume> read(const model::Resume& resume) {
        for (std::size_t f = 0; f < resume.heading.size(); ++f)
            if (resume.heading[f].name == trade::FieldName::headline)
                add_field({.field = f}, resume.heading[f]);
        for (std::size_t s = 0; s < resume.sections.size(); ++s) {
            const model::Section& section = resume.sections[s];
            for (std::size_t e = 0; e < section.entries.size(); ++e)
                add_position(section, {s, e}, section.entries[e]);
        }
        return std::move(texts_);
    }

private:
    void add_position(const model::Section& section, const Spot& spot, const model::Entry& entry) {
        for (std::size_t f = 0; f < entry.fields.size(); ++f) {
            Spot at = spot;
            at.field = f;
            add_field(at, entry.fields[f]);
        }
        for (std::size_t b = 0; b < entry.bullets.size(); ++b) {
            Spot at = spot;
            at.bullet = b;
            add(at, Where::bullet, entry.bullets[b].text);
        }
        for (std::size_t p = 0; p < entry.further.size(); ++p)
            add_position(section, {spot.section, spot.entry, p}, entry.further[p]);
    }

    void add_field(Spot spot, const model::Field& field) {
        if (const auto* text = std::get_if<model::Text>(&field.value)) {
            const bool prose = field.name == trade::FieldName::text;
            const bool job =
                field.name == trade::FieldName::role || field.name == trade::FieldName::employer;
            add(spot, prose ? Where::prose : Where::head, *text, job);
        }
        if (!field.label.empty()) add(spot, Where::list, field.label);
        if (const auto* items = std::get_if<std::vector<model::Text>>(&field.value))
            for (spot.item = 0; spot.item < items->size(); ++spot.item)
                add(spot, Where::list, (*items)[spot.item]);
    }

    void add(const Spot& spot, Where where, const model::Text& text, bool job = false) {
        TextOfResume one{spot, where, job, &text, text.plain(), {}};
        one.words = words_of(one.plain);
        if (!one.words.empty()) texts_.push_back(std::move(one));
    }

    std::vector<TextOfResume> texts_;
};

// CPR/AED as two words; w/, A/B and 24/7 as one.
void add_words_of(const english::Token& token, std::vector<WordOfText>& words) {
    constexpr std::size_t shortest = 2;
    const std::vector<std::string_view> parts = pieces_of(token.lower, "/");
    const bool parted = parts.size() > 1 && std::ranges::all_of(parts, [](std::string_view part) {
                            return part.size() >= shortest && !is_figure(part.front());
                        });
    if (!parted) {
        words.push_back({token.lower, postings::stem_of(token.lower), token.extent.offset,
                         token.extent.length});
        return;
    }
    for (const std::string_view part : parts)
        words.push_back(
            {std::string(part), postings::stem_of(part),
             token.extent.offset + static_cast<std::size_t>(part.data() - token.lower.data()),
             part.size()});
}

}

std::string_view name_of(Where where) {
    constexpr std::array<std::string_view, 4> names{"bullet", "entry", "list", "summary"};
    return names[static_cast<std::size_t>(where)];
}

std::vector<WordOfText> words_of(std::string_view plain) {
    std::vector<WordOfText> words;
    for (const english::Token& token : english::read_tokens(plain, {})) {
        if (token.kind != english::TokenKind::word && token.kind != english::TokenKind::figure)
            continue;
        add_words_of(token, words);
    }
    return words;
}

std::vector<TextOfResume> texts_of(const model::Resume& resume) {
    return TextReader().read(resume);
}

}
