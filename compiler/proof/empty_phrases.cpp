// Phrases that anybody could write, and so tell nothing.
#include "compiler/model/wording.hpp"
#include "compiler/proof/bullet_wording.hpp"

#include <array>

namespace quoin {

namespace {

struct Phrase {
    std::string_view words; // in small letters
    std::string_view mend;
};

constexpr std::string_view show_it = "leave it out, and let a bullet show it";
constexpr std::string_view name_them = "name them, or give their number";
constexpr std::string_view stop_there = "name what is meant, or stop before it";

constexpr std::array phrases{
    Phrase{"hard worker", show_it},
    Phrase{"hard working", show_it},
    Phrase{"hard-working", show_it},
    Phrase{"hardworking", show_it},
    Phrase{"team player", show_it},
    Phrase{"team-player", show_it},
    Phrase{"detail oriented", show_it},
    Phrase{"detail-oriented", show_it},
    Phrase{"attention to detail", show_it},
    Phrase{"self starter", show_it},
    Phrase{"self-starter", show_it},
    Phrase{"self motivated", show_it},
    Phrase{"self-motivated", show_it},
    Phrase{"highly motivated", show_it},
    Phrase{"go-getter", show_it},
    Phrase{"go getter", show_it},
    Phrase{"fast learner", show_it},
    Phrase{"quick learner", show_it},
    Phrase{"people person", show_it},
    Phrase{"problem solver", show_it},
    Phrase{"multi-tasker", show_it},
    Phrase{"multitasker", show_it},
    Phrase{"results driven", show_it},
    Phrase{"results-driven", show_it},
    Phrase{"results oriented", show_it},
    Phrase{"results-oriented", show_it},
    Phrase{"goal oriented", show_it},
    Phrase{"goal-oriented", show_it},
    Phrase{"strong work ethic", show_it},
    Phrase{"good work ethic", show_it},
    Phrase{"works well with others", show_it},
    Phrase{"work well with others", show_it},
    Phrase{"works well under pressure", show_it},
    Phrase{"work well under pressure", show_it},
    Phrase{"proven track record", "give the record instead"},
    Phrase{"track record of success", "give the record instead"},
    Phrase{"excellent communication skills", show_it},
    Phrase{"strong communication skills", show_it},
    Phrase{"good communication skills", show_it},
    Phrase{"great communication skills", show_it},
    Phrase{"excellent interpersonal skills", show_it},
    Phrase{"strong interpersonal skills", show_it},
    Phrase{"outside the box", "say what was new about it"},
    Phrase{"passionate about", show_it},
    Phrase{"synergy", "say who worked with whom on what"},
    Phrase{"various", name_them},
    Phrase{"a variety of", name_them},
    Phrase{"a wide range of", name_them},
    Phrase{"a wide variety of", name_them},
    Phrase{"etc", stop_there},
    Phrase{"et cetera", stop_there},
    Phrase{"and so on", stop_there},
    Phrase{"and so forth", stop_there},
    Phrase{"and much more", stop_there},
    Phrase{"and more", stop_there},
    Phrase{"duties as assigned", stop_there},
    Phrase{"other tasks as needed", stop_there},
    Phrase{"other duties as needed", stop_there},
};

bool may_hold_phrases(const TextInResume& part) {
    if (part.bullet) return true;
    if (!part.field) return false;
    const FieldName name = part.field->name;
    return name == FieldName::headline || name == FieldName::text || name == FieldName::group;
}

// `and more than 40 guests` counts them.
bool goes_on(std::string_view text, std::size_t after, std::string_view words) {
    return words == "and more" && text.substr(after).starts_with(" ") && after + 1 < text.size();
}

// Not of a longer compound: various-length nets.
bool stands_alone(std::string_view text, std::size_t at, std::size_t length) {
    const auto joins = [&](std::size_t i) { return i < text.size() && text[i] == '-'; };
    return !joins(at + length) && (at == 0 || !joins(at - 1));
}

// etc and Etc. say nothing; ETC makes lighting desks.
bool is_meant(std::string_view text, std::size_t at, const Phrase& phrase) {
    const std::string_view as_written = text.substr(at, phrase.words.size());
    if (phrase.words != "etc" || as_written == "etc") return true;
    return as_written == "Etc" && text.substr(at + as_written.size()).starts_with('.');
}

// Where the phrase first tells nothing; npos if it does nowhere.
std::size_t find_empty(std::string_view text, std::string_view lower, const Phrase& phrase) {
    for (std::size_t from = 0; from < lower.size();) {
        const std::size_t found = find_phrase(lower.substr(from), phrase.words);
        if (found == std::string_view::npos) return found;
        const std::size_t at = from + found, length = phrase.words.size();
        if (stands_alone(text, at, length) && is_meant(text, at, phrase) &&
            !goes_on(lower, at + length, phrase.words))
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
        for (const Phrase& phrase : phrases) {
            const auto& [words, mend] = phrase;
            const std::size_t at = find_empty(text, lower, phrase);
            if (at == std::string::npos || at < told_to) continue;
            told_to = at + words.size();
            report(findings, part.text.place(at, words.size()),
                   in_quotes(text.substr(at, words.size())) + " tells the reader nothing",
                   std::string(mend));
        }
    });
}

}
