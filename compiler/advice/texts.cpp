#include "compiler/advice/texts.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/numbers.hpp"

#include <algorithm>
#include <utility>
#include <variant>

namespace quoin::advice {

namespace {

// U+2019 within a word is its apostrophe.
std::size_t apostrophe_at(std::string_view text, std::size_t at) {
    if (text[at] == '\'' || text[at] == '-') return 1;
    return text[at] == '\xE2' && text.substr(at).starts_with("\u2019") ? 3 : 0;
}

// General punctuation, U+2000 to U+206F, and the no-break space part words.
std::size_t sign_at(std::string_view text, std::size_t at) {
    if (text[at] != '\xC2' && text[at] != '\xE2') return 0;
    const std::string_view rest = text.substr(at);
    if (rest.starts_with("\u00A0")) return 2;
    if (rest.size() >= 3 && rest[0] == '\xE2' && (rest[1] == '\x80' || rest[1] == '\x81')) return 3;
    return 0;
}

// Bytes at `at`, no letter nor figure of ASCII, that go on with the word before them; 0 if it is
// over.
std::size_t bytes_going_on(std::string_view text, std::size_t at) {
    if (at == text.size()) return 0;
    const std::size_t next = at + apostrophe_at(text, at);
    if (next > at && next < text.size() && is_word_byte(text[next]) && sign_at(text, next) == 0)
        return next - at;
    return is_word_byte(text[at]) && sign_at(text, at) == 0 ? 1 : 0;
}

std::size_t end_of_word(std::string_view text, std::size_t at) {
    while (true) {
        while (at < text.size() && is_letter_or_figure(text[at]))
            ++at;
        const std::size_t more = bytes_going_on(text, at);
        if (more == 0) return at;
        at += more;
    }
}

// An address that a link shows is no wording of the writer's either.
std::vector<english::Extent> titles_in(const model::Text& text) {
    std::vector<english::Extent> titles;
    std::size_t offset = 0;
    bool all = true;
    for (const model::Span& span : text.spans) {
        if (span.marks.emphasis) titles.push_back({offset, span.text.size()});
        all &= span.marks.emphasis;
        offset += span.text.size();
    }
    if (all) titles.clear();
    return titles;
}

class TextReader {
public:
    explicit TextReader(const english::Language& language) : language_(language) {}

    TextsRead read(const model::Resume& resume) {
        for (const model::Field& field : resume.heading)
            read(field);
        for (const model::Section& section : resume.sections) {
            section_ = &section;
            add(section.title, nullptr, nullptr);
            for (const model::Entry& entry : section.entries)
                read(entry);
        }
        return std::move(texts_);
    }

private:
    void read(const model::Entry& entry) {
        for (const model::Field& field : entry.fields)
            read(field);
        for (const model::Bullet& bullet : entry.bullets)
            add(bullet.text, nullptr, &bullet);
        for (const model::Entry& further : entry.further)
            read(further);
    }

    void read(const model::Field& field) {
        if (!field.label.empty()) add(field.label, &field, nullptr);
        if (const auto* text = std::get_if<model::Text>(&field.value)) add(*text, &field, nullptr);
        if (const auto* items = std::get_if<std::vector<model::Text>>(&field.value))
            for (const model::Text& item : *items)
                add(item, &field, nullptr);
    }

    void add(const model::Text& text, const model::Field* field, const model::Bullet* bullet) {
        texts_.emplace_back(text, section_, field, bullet, language_);
    }

    const english::Language& language_;
    const model::Section* section_ = nullptr;
    TextsRead texts_;
};

}

std::vector<WordAt> words_in(std::string_view text) {
    constexpr std::size_t usual_length = 6; // of a word with the blank behind it
    std::vector<WordAt> words;
    words.reserve(text.size() / usual_length + 1);
    for (WordAt word = word_from(text, 0); !word.word.empty();
         word = word_from(text, word.offset + word.word.size()))
        words.push_back(word);
    return words;
}

WordAt word_from(std::string_view text, std::size_t at) {
    while (at < text.size()) {
        const std::size_t sign = sign_at(text, at);
        if (sign == 0 && is_word_byte(text[at])) break;
        at += std::max<std::size_t>(sign, 1);
    }
    return {text.substr(at, end_of_word(text, at) - at), at};
}

TextInResume::TextInResume(const model::Text& which, const model::Section* of_section,
                           const model::Field* of_field, const model::Bullet* of_bullet,
                           const english::Language& language)
    : text(which), section(of_section), field(of_field), bullet(of_bullet),
      in_heading(section == nullptr), plain(which.plain()), lower(lower_case(plain)),
      phrased(lower), words(words_in(plain)), sentence(language.sentence(plain, titles_in(which))) {
}

std::optional<FigureAt> figure_ending_at(const TextInResume& part, std::size_t word) {
    const auto& words = part.words;
    const std::string_view plain = part.plain;
    const auto end_of = [&](std::size_t i) { return words[i].offset + words[i].word.size(); };
    const auto goes_on = [&](std::size_t i) { // `1`, of 1,510
        return i + 1 < words.size() && plain[end_of(i)] == ',' &&
               words[i + 1].offset == end_of(i) + 1 && all_figures(words[i + 1].word);
    };
    if (!all_figures(words[word].word) || goes_on(word)) return std::nullopt;
    std::size_t first = word;
    while (first > 0 && all_figures(words[first - 1].word) && goes_on(first - 1))
        --first;
    const std::size_t begin = words[first].offset;
    const std::string_view figure = plain.substr(begin, end_of(word) - begin);
    const auto value = grouped_number(figure);
    if (!value) return std::nullopt;
    return FigureAt{{figure, begin}, first, *value};
}

TextsRead read_texts(const model::Resume& resume, const english::Language& language) {
    return TextReader(language).read(resume);
}

}
