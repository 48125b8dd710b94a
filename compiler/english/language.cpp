// The parts of reading put together.
#include "compiler/english/language.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/english/reading.hpp"
#include "compiler/english/spelling.hpp"
#include "compiler/english/stronger_verbs.hpp"

#include <mutex>
#include <unordered_map>
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

BulletReading read(std::string_view text, std::span<const Extent> titles) {
    const Sentence sentence(text, titles);
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
    reading.has_figure = has_figure(sentence);
    return reading;
}

std::string key_of(std::string_view text, std::span<const Extent> titles) {
    std::string key(text);
    for (const Extent& title : titles)
        key += '\0' + std::to_string(title.offset) + '+' + std::to_string(title.length);
    return key;
}

}

// Several checks ask for the same bullets, and an editor asks again on every key.
struct Language::Data {
    explicit Data(std::filesystem::path folder) : spelling(std::move(folder), "en_US") {}

    static constexpr std::size_t most_kept = 4096;

    Spelling spelling;
    std::mutex mutex;
    std::unordered_map<std::string, BulletReading> readings;
};

Language::Language(std::filesystem::path data_folder)
    : data_(std::make_unique<Data>(std::move(data_folder) / "dictionaries")) {}

Language::~Language() = default;

BulletReading Language::read_bullet(std::string_view text, std::span<const Extent> titles) const {
    std::string key = key_of(text, titles);
    const std::lock_guard lock(data_->mutex);
    if (const auto found = data_->readings.find(key); found != data_->readings.end())
        return found->second;
    if (data_->readings.size() >= Data::most_kept) data_->readings.clear();
    return data_->readings.emplace(std::move(key), read(text, titles)).first->second;
}

std::vector<std::string> Language::stronger_verbs(std::string_view bullet) const {
    const Sentence sentence(bullet, {});
    const OpeningReading opening = read_opening(sentence);
    if (opening.kind != BulletReading::Opening::weak) return {};
    return stronger_for(sentence, {opening.first, opening.last, opening.tense});
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
    return data_->spelling.right(word);
}

std::vector<std::string> Language::spellings_near(std::string_view word) const {
    return data_->spelling.near(word);
}

}
