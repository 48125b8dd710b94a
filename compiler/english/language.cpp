// The parts of reading put together.
#include "compiler/english/language.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/english/agreement.hpp"
#include "compiler/english/articles.hpp"
#include "compiler/english/plurals.hpp"
#include "compiler/english/reading.hpp"
#include "compiler/english/spelling.hpp"
#include "compiler/english/stronger_verbs.hpp"
#include "compiler/english/word_slips.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace quoin::english {
namespace {

// `Design of`, `Tutoring for`; but `Bake sale`, `LED of`.
bool names_deed(const Sentence& sentence, const OpeningReading& opening) {
    const std::size_t i = opening.first;
    return opening.kind == BulletReading::Opening::no_verb && sentence.classes(i) == 0 &&
           !sentence.forms(i).none() && !is_all_capitals(sentence.token(i)) &&
           sentence.is(i + 1, word_class::preposition);
}

}

Language::Language(const std::filesystem::path& data_folder, const Lexicon& lexicon)
    : lexicon_(lexicon),
      spelling_(std::make_unique<Spelling>(data_folder / "dictionaries", "en_US")),
      contexts_(std::make_unique<WordContexts>(data_folder / "dictionaries" / "en_US.contexts")) {}

Language::~Language() = default;

Sentence Language::sentence(std::string_view text, std::span<const Extent> titles) const {
    return {text, titles, lexicon_};
}

BulletReading Language::read_bullet(std::string_view text) const {
    return read_bullet(sentence(text));
}

BulletReading Language::read_bullet(const Sentence& sentence) const {
    BulletReading reading;
    if (sentence.size() == 0) return reading;
    const OpeningReading opening = read_opening(sentence);
    reading.opening = opening.kind;
    reading.verb = sentence.extent(opening.first, opening.last);
    reading.sentence = opening.sentence;
    reading.names_deed = names_deed(sentence, opening);
    judge_tense(sentence, opening, reading);
    reading.first_person = find_first_person(sentence);
    reading.passive = find_passives(sentence, opening);
    std::ranges::move(find_disagreements(sentence), std::back_inserter(reading.disagreements));
    reading.number_slips = find_number_slips(sentence);
    reading.has_figure = has_figure(sentence);
    if (opening.kind == BulletReading::Opening::weak)
        reading.stronger_verbs =
            stronger_for(sentence, {opening.first, opening.last, opening.tense});
    return reading;
}

std::vector<WordSlip> Language::word_slips(const Sentence& sentence) const {
    std::vector<WordSlip> slips = find_word_slips(sentence, *contexts_);
    const auto articles = find_article_slips(sentence);
    slips.insert(slips.end(), articles.begin(), articles.end());
    std::ranges::sort(slips, {}, [](const WordSlip& slip) { return slip.extent.offset; });
    return slips;
}

std::optional<std::string> Language::past_of(std::string_view verb) const {
    const std::string small = lower_case(verb);
    const VerbForms forms = verb_forms(small);
    if (forms.none()) return std::nullopt;
    return std::string(forms.prefix) + past_form(forms.verb->base);
}

std::optional<std::string> Language::base_of(std::string_view verb) const {
    const std::string small = lower_case(verb);
    const VerbForms forms = verb_forms(small);
    if (forms.none()) return std::nullopt;
    return std::string(forms.prefix) + std::string(forms.verb->base);
}

bool Language::spelled_right(std::string_view word) const {
    return spelling_->right(word);
}

bool Language::in_use(std::string_view word) const {
    return spelling_->in_use(word);
}

std::optional<std::string> Language::true_past_of(std::string_view word) const {
    if (!word.ends_with("ed") || word.size() < 5) return std::nullopt;
    const bool doubled = word[word.size() - 3] == word[word.size() - 4]; // runned
    for (const std::size_t ending : {2u, 1u, doubled ? 3u : 2u}) {
        const std::string stem(word.substr(0, word.size() - ending));
        const VerbForms forms = verb_forms(stem);
        if (!forms.base || forms.past || forms.verb->base != stem) continue;
        if (std::string past = past_form(stem); !past.ends_with("ed") || past.size() < stem.size())
            return past;
    }
    return std::nullopt;
}

std::vector<std::string> Language::spellings_near(std::string_view word, double surer_by) const {
    constexpr double least_told = -0.5; // log-odds; slip_odds.cpp says what that takes in
    const NearWords near = spelling_->near(word);
    return near.odds >= least_told + surer_by ? near.words : std::vector<std::string>();
}

}
