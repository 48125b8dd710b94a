// Articles and other words that a bullet says no less without, and what room they take.
#include "compiler/advice/little_words.hpp"

#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/stages/fit/shorten.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"

#include <algorithm>
#include <array>
#include <variant>

namespace quoin::advice {

namespace {

using enum trade::Holds;

constexpr std::array<std::string_view, 3> articles{"a", "an", "the"};

// 5 pages an issue, 90 guests a table: so many to each.
bool is_rate(const std::vector<WordAt>& words, std::size_t i) {
    constexpr std::size_t near = 3;
    if (i == 0 || words[i].word == "the") return false;
    for (std::size_t k = i - std::min(i, near); k < i; ++k)
        if (has_digit(words[k].word)) return words[i - 1].word.ends_with('s') || k + 1 == i;
    return false;
}

bool is_in_title(const WordedBullet& bullet, std::size_t offset) {
    std::size_t begin = 0;
    for (const model::Span& span : bullet.bullet->text.spans) {
        if (offset < begin + span.text.size()) return span.marks.emphasis || span.link.has_value();
        begin += span.text.size();
    }
    return false;
}

// Between quotation marks, straight or typographic, the words are not the writer's.
bool is_quoted(std::string_view text, std::size_t offset) {
    bool open = false;
    for (std::size_t at = 0; at < offset; ++at) {
        if (text[at] == '"') open = !open;
        if (text.substr(at).starts_with("\u201C")) open = true;
        if (text.substr(at).starts_with("\u201D")) open = false;
    }
    return open;
}

// A capital A or The within a bullet belongs to a name: The Gull, vitamin A.
bool may_go(const WordedBullet& bullet, const std::vector<WordAt>& words, std::size_t i) {
    const std::string_view word = words[i].word;
    if (i == 0 || i + 1 == words.size() || is_in_title(bullet, words[i].offset)) return false;
    if (is_quoted(bullet.text, words[i].offset)) return false;
    if (is_one_of(word, List::fillers)) return true;
    return is_one_of(word, articles) && !is_needed_article(words, i);
}

std::vector<WordAt> words_that_may_go(const WordedBullet& bullet) {
    constexpr std::size_t longest = 2000; // bytes; what is longer is no bullet
    std::vector<WordAt> found;
    if (bullet.text.size() > longest) return found;
    const auto& words = bullet.part.words;
    for (std::size_t i = 0; i < words.size(); ++i)
        if (may_go(bullet, words, i)) found.push_back(words[i]);
    return found;
}

// The paragraph that a bullet became; null where there is none, or its text is not the bullet's.
const composition::Paragraph* set_from(const WordedBullet& bullet, const stages::Typeset& typeset) {
    for (const composition::Paragraph& paragraph : typeset.composition.paragraphs)
        if (paragraph.place == bullet.bullet->place)
            return fit::text_of(paragraph) == bullet.text ? &paragraph : nullptr;
    return nullptr;
}

int lines_saved(const WordedBullet& bullet, const std::vector<WordAt>& words,
                const stages::Typeset* typeset) {
    const fit::Fit* fit = typeset ? std::get_if<fit::Fit>(&typeset->fit) : nullptr;
    const composition::Paragraph* paragraph = fit ? set_from(bullet, *typeset) : nullptr;
    if (!paragraph) return 0;
    const fit::PageSetting& setting = fit->setting;
    // of the whole page; a paragraph takes its column's share of it
    const double measure = (setting.paper_width - 2 * setting.side_margin) / setting.size;
    composition::Paragraph shorter = *paragraph;
    for (auto word = words.rbegin(); word != words.rend();
         ++word) // from the end: offsets stay good
        shorter = fit::without(shorter, {word->offset, word->offset + word->word.size() + 1});
    return lines::MeasuredParagraph(*paragraph, measure).line_count(measure) -
           lines::MeasuredParagraph(shorter, measure).line_count(measure);
}

std::string cost(std::size_t words, int lines) {
    const std::string room = counted(words, "word", "words");
    if (lines <= 0) return room;
    return fill<messages::words_and_lines>(
        room, counted(static_cast<std::size_t>(lines), "line", "lines"));
}

}

bool is_needed_article(const std::vector<WordAt>& words, std::size_t i) {
    return (i + 1 < words.size() &&
            is_one_of(lower_case(words[i + 1].word), List::kept_after_article)) ||
           is_rate(words, i);
}

void little_words(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t many = 3;
    for (const WordedBullet& bullet : bullets_under(context, {experience, projects, activities})) {
        const auto words = words_that_may_go(bullet);
        if (words.empty()) continue;
        const int lines = lines_saved(bullet, words, context.typeset);
        const bool alike =
            std::ranges::all_of(words, [](const auto& one) { return one.word == "the"; });
        const bool too_many = words.size() > many || (words.size() == many && alike);
        if (!too_many && lines == 0) continue;
        std::vector<std::string> shown;
        for (const WordAt& word : words)
            if (const std::string one(word.word); !is_one_of(one, shown)) shown.push_back(one);
        report<messages::little_words>(
            findings, bullet.bullet->text.place(words.front().offset, words.front().word.size()),
            some_of(shown, many), words.size() == 1 ? "costs" : "cost", cost(words.size(), lines));
    }
}

}
