// Phrases that anybody could write, and so tell nothing.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::advice {

namespace {

// By the names that words/ has for them.
constexpr std::array<std::pair<std::string_view, Message>, 7> mends{{
    {"show_it", messages::show_it},
    {"name_them", messages::name_them},
    {"stop_there", messages::stop_there},
    {"give_record", messages::give_record},
    {"say_news", messages::say_news},
    {"say_who", messages::say_who},
    {"say_plainly", messages::say_plainly},
}};

std::string_view mend_named(std::string_view name) {
    return std::ranges::find(mends, name, [](const auto& one) { return one.first; })->second.text;
}

bool may_hold_phrases(const TextInResume& part) {
    return part.bullet || (part.field && has(part.field->name, trade::Trait::may_pad));
}

// `and more than 40 guests` counts them.
bool goes_on_counting(std::string_view text, std::size_t after, std::string_view words) {
    if (words == "lots of" && after + 1 < text.size() && is_figure(text[after + 1])) return true;
    return words == "and more" && text.substr(after).starts_with(" ") && after + 1 < text.size();
}

// Not of a longer compound: various-length nets.
bool stands_alone(std::string_view text, std::size_t at, std::size_t length) {
    const auto joins = [&](std::size_t i) { return i < text.size() && text[i] == '-'; };
    return !joins(at + length) && (at == 0 || !joins(at - 1));
}

// etc and Etc. say nothing; ETC makes lighting desks.
bool is_meant(std::string_view text, std::size_t at, std::string_view phrase) {
    const std::string_view as_written = text.substr(at, phrase.size());
    if (phrase != "etc" || as_written == "etc") return true;
    return as_written == "Etc" && text.substr(at + as_written.size()).starts_with('.');
}

// Where the phrase first tells nothing; npos if it does nowhere.
std::size_t find_empty(std::string_view text, std::string_view lower, std::string_view phrase) {
    for (std::size_t from = 0; from < lower.size();) {
        const std::size_t found = find_phrase(lower.substr(from), phrase);
        if (found == std::string_view::npos) return found;
        const std::size_t at = from + found, length = phrase.size();
        if (stands_alone(text, at, length) && is_meant(text, at, phrase) &&
            !goes_on_counting(lower, at + length, phrase))
            return at;
        from = at + length;
    }
    return std::string_view::npos;
}

}

namespace {

// `Successfully imaged laptops`: what is told was done so.
void opening_fillers(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::array<std::string_view, 6> fillers{"efficiently", "effectively", "diligently",
                                                      "seamlessly",  "proactively", "expertly"};
    for (const WordedBullet& bullet : context.bullets) {
        const auto words = words_in(std::string_view(bullet.text).substr(0, 40));
        if (words.empty() || words.front().offset != 0) continue;
        if (is_one_of(lower_case(words.front().word), fillers))
            report<messages::empty_phrase>(findings, bullet.place({0, words.front().word.size()}),
                                           in_quotes(words.front().word))
                .suggestion = fill<messages::say_plainly>();
    }
}

}

// All of one text are one finding: they go together.
void empty_phrases(const ProofContext& context, std::vector<Finding>& findings) {
    opening_fillers(context, findings);
    for (const TextInResume& part : context.texts) {
        if (!may_hold_phrases(part)) continue;
        const std::string &text = part.plain, &lower = part.lower;
        std::size_t told_to = 0; // a phrase within one that is told is not told again
        Finding* told = nullptr;
        std::vector<std::string> all;
        for (const std::string_view words : listed(List::worn_phrases)) {
            if (!part.phrased.has(words)) continue;
            const std::size_t at = find_empty(text, lower, words);
            if (at == std::string::npos || at < told_to) continue;
            told_to = at + words.size();
            all.push_back(text.substr(at, words.size()));
            if (told) {
                told->text = fill<messages::empty_phrases>(some_of(all, 3));
                continue;
            }
            told = &report<messages::empty_phrase>(findings, part.text.place(at, words.size()),
                                                   in_quotes(all.back()));
            told->suggestion =
                mend_named(said_of(words, lines_of(List::worn_phrases)).value_or(""));
        }
    }
}

}
