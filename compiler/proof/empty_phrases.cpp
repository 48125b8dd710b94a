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

}

void empty_phrases(const ProofContext& context, std::vector<Finding>& findings) {
    visit_texts(context.resume, [&](const TextInResume& part) {
        if (!may_hold_phrases(part)) return;
        const std::string text = part.text.plain();
        const std::string lower = lower_case(text);
        std::size_t told_to = 0; // a phrase within one that is told is not told again
        for (const auto& [words, mend] : phrases) {
            const std::size_t at = find_phrase(lower, words);
            if (at == std::string::npos || goes_on(lower, at + words.size(), words)) continue;
            if (at < told_to) continue;
            told_to = at + words.size();
            report(findings, part.text.place(at, words.size()),
                   in_quotes(text.substr(at, words.size())) + " tells the reader nothing",
                   std::string(mend));
        }
    });
}

}
