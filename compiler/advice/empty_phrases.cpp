// Phrases that anybody could write, and so tell nothing.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/stages/model/wording.hpp"

#include <array>

namespace quoin::advice {

namespace {

struct EmptyPhrase {
    std::string_view words; // in small letters
    std::string_view mend;
};

constexpr std::string_view show_it = "leave it out, and let a bullet show it";
constexpr std::string_view name_them = "name them, or give their number";
constexpr std::string_view stop_there = "name what is meant, or stop before it";

constexpr std::array worn_phrases{
    EmptyPhrase{"hard worker", show_it},
    EmptyPhrase{"hard working", show_it},
    EmptyPhrase{"hard-working", show_it},
    EmptyPhrase{"hardworking", show_it},
    EmptyPhrase{"team player", show_it},
    EmptyPhrase{"team-player", show_it},
    EmptyPhrase{"detail oriented", show_it},
    EmptyPhrase{"detail-oriented", show_it},
    EmptyPhrase{"attention to detail", show_it},
    EmptyPhrase{"self starter", show_it},
    EmptyPhrase{"self-starter", show_it},
    EmptyPhrase{"self motivated", show_it},
    EmptyPhrase{"self-motivated", show_it},
    EmptyPhrase{"highly motivated", show_it},
    EmptyPhrase{"go-getter", show_it},
    EmptyPhrase{"go getter", show_it},
    EmptyPhrase{"fast learner", show_it},
    EmptyPhrase{"quick learner", show_it},
    EmptyPhrase{"people person", show_it},
    EmptyPhrase{"problem solver", show_it},
    EmptyPhrase{"multi-tasker", show_it},
    EmptyPhrase{"multitasker", show_it},
    EmptyPhrase{"results driven", show_it},
    EmptyPhrase{"results-driven", show_it},
    EmptyPhrase{"results oriented", show_it},
    EmptyPhrase{"results-oriented", show_it},
    EmptyPhrase{"goal oriented", show_it},
    EmptyPhrase{"goal-oriented", show_it},
    EmptyPhrase{"strong work ethic", show_it},
    EmptyPhrase{"good work ethic", show_it},
    EmptyPhrase{"works well with others", show_it},
    EmptyPhrase{"work well with others", show_it},
    EmptyPhrase{"works well under pressure", show_it},
    EmptyPhrase{"work well under pressure", show_it},
    EmptyPhrase{"proven track record", "give the record instead"},
    EmptyPhrase{"track record of success", "give the record instead"},
    EmptyPhrase{"excellent communication skills", show_it},
    EmptyPhrase{"strong communication skills", show_it},
    EmptyPhrase{"good communication skills", show_it},
    EmptyPhrase{"great communication skills", show_it},
    EmptyPhrase{"excellent interpersonal skills", show_it},
    EmptyPhrase{"strong interpersonal skills", show_it},
    EmptyPhrase{"outside the box", "say what was new about it"},
    EmptyPhrase{"passionate about", show_it},
    EmptyPhrase{"synergy", "say who worked with whom on what"},
    EmptyPhrase{"various", name_them},
    EmptyPhrase{"a variety of", name_them},
    EmptyPhrase{"a wide range of", name_them},
    EmptyPhrase{"a wide variety of", name_them},
    EmptyPhrase{"etc", stop_there},
    EmptyPhrase{"et cetera", stop_there},
    EmptyPhrase{"and so on", stop_there},
    EmptyPhrase{"and so forth", stop_there},
    EmptyPhrase{"and much more", stop_there},
    EmptyPhrase{"and more", stop_there},
    EmptyPhrase{"duties as assigned", stop_there},
    EmptyPhrase{"other tasks as needed", stop_there},
    EmptyPhrase{"other duties as needed", stop_there},
};

bool may_hold_phrases(const TextInResume& part) {
    if (part.bullet) return true;
    if (!part.field) return false;
    const trade::FieldName name = part.field->name;
    return name == trade::FieldName::headline || name == trade::FieldName::text ||
           name == trade::FieldName::group;
}

// `and more than 40 guests` counts them.
bool goes_on_counting(std::string_view text, std::size_t after, std::string_view words) {
    return words == "and more" && text.substr(after).starts_with(" ") && after + 1 < text.size();
}

// Not of a longer compound: various-length nets.
bool stands_alone(std::string_view text, std::size_t at, std::size_t length) {
    const auto joins = [&](std::size_t i) { return i < text.size() && text[i] == '-'; };
    return !joins(at + length) && (at == 0 || !joins(at - 1));
}

// etc and Etc. say nothing; ETC makes lighting desks.
bool is_meant(std::string_view text, std::size_t at, const EmptyPhrase& phrase) {
    const std::string_view as_written = text.substr(at, phrase.words.size());
    if (phrase.words != "etc" || as_written == "etc") return true;
    return as_written == "Etc" && text.substr(at + as_written.size()).starts_with('.');
}

// Where the phrase first tells nothing; npos if it does nowhere.
std::size_t find_empty(std::string_view text, std::string_view lower, const EmptyPhrase& phrase) {
    for (std::size_t from = 0; from < lower.size();) {
        const std::size_t found = find_phrase(lower.substr(from), phrase.words);
        if (found == std::string_view::npos) return found;
        const std::size_t at = from + found, length = phrase.words.size();
        if (stands_alone(text, at, length) && is_meant(text, at, phrase) &&
            !goes_on_counting(lower, at + length, phrase.words))
            return at;
        from = at + length;
    }
    return std::string_view::npos;
}

}

void empty_phrases(const ProofContext& context, std::vector<Finding>& findings) {
    visit_texts(context.resume, [&](const TextInResume& part) {
        if (!may_hold_phrases(part)) return;
        const std::string text = part.text.plain();
        const std::string lower = lower_case(text);
        std::size_t told_to = 0; // a phrase within one that is told is not told again
        for (const EmptyPhrase& phrase : worn_phrases) {
            const auto& [words, mend] = phrase;
            const std::size_t at = find_empty(text, lower, phrase);
            if (at == std::string::npos || at < told_to) continue;
            told_to = at + words.size();
            report(findings, part.text.place(at, words.size()),
                   model::in_quotes(text.substr(at, words.size())) + " tells the reader nothing",
                   std::string(mend));
        }
    });
}

}
