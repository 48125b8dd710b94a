// The words of titles and the kinds of sections they stand for.
#include "compiler/trade/section_titles.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/suggest.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace quoin::trade {
namespace {

using enum Holds;

struct TitleWord {
    std::string_view name;
    Holds value;
};

// Words of titles, lower case.
constexpr std::array title_words{
    TitleWord{"education", education},
    TitleWord{"academics", education},
    TitleWord{"coursework", education},
    TitleWord{"schooling", education},
    TitleWord{"courses", education},
    TitleWord{"training", education},
    TitleWord{"experience", experience},
    TitleWord{"experiences", experience},
    TitleWord{"work", experience},
    TitleWord{"employment", experience},
    TitleWord{"internship", experience},
    TitleWord{"internships", experience},
    TitleWord{"career", experience},
    TitleWord{"research", experience},
    TitleWord{"teaching", experience},
    TitleWord{"clinical", experience},
    TitleWord{"practicum", experience},
    TitleWord{"rotation", experience},
    TitleWord{"rotations", experience},
    TitleWord{"placements", experience},
    TitleWord{"military", experience},
    TitleWord{"project", projects},
    TitleWord{"projects", projects},
    TitleWord{"leadership", activities},
    TitleWord{"activity", activities},
    TitleWord{"activities", activities},
    TitleWord{"involvement", activities},
    TitleWord{"extracurricular", activities},
    TitleWord{"extracurriculars", activities},
    TitleWord{"volunteer", activities},
    TitleWord{"volunteering", activities},
    TitleWord{"service", activities},
    TitleWord{"community", activities},
    TitleWord{"outreach", activities},
    TitleWord{"giving", activities},
    TitleWord{"civic", activities},
    TitleWord{"engagement", activities},
    TitleWord{"philanthropy", activities},
    TitleWord{"clubs", activities},
    TitleWord{"athletics", activities},
    TitleWord{"memberships", activities},
    TitleWord{"affiliations", activities},
    TitleWord{"skill", skills},
    TitleWord{"skills", skills},
    TitleWord{"tools", skills},
    TitleWord{"technologies", skills},
    TitleWord{"software", skills},
    TitleWord{"competencies", skills},
    TitleWord{"proficiencies", skills},
    TitleWord{"interests", skills},
    TitleWord{"hobbies", skills},
    TitleWord{"strengths", skills},
    TitleWord{"abilities", skills},
    TitleWord{"hours", skills}, // of practice, a group a place: Pediatrics: 120 hours
    TitleWord{"honour", Holds::honors},
    TitleWord{"honours", Holds::honors},
    TitleWord{"honor", Holds::honors},
    TitleWord{"honors", Holds::honors},
    TitleWord{"award", Holds::honors},
    TitleWord{"awards", Holds::honors},
    TitleWord{"scholarships", Holds::honors},
    TitleWord{"fellowships", Holds::honors},
    TitleWord{"achievements", Holds::honors},
    TitleWord{"credentials", credentials},
    TitleWord{"certification", credentials},
    TitleWord{"certifications", credentials},
    TitleWord{"certificates", credentials},
    TitleWord{"license", credentials},
    TitleWord{"licenses", credentials},
    TitleWord{"licence", credentials},
    TitleWord{"licences", credentials},
    TitleWord{"licensure", credentials},
    TitleWord{"language", languages},
    TitleWord{"languages", languages},
    TitleWord{"publication", publications},
    TitleWord{"publications", publications},
    TitleWord{"presentations", publications},
    TitleWord{"posters", publications},
    TitleWord{"papers", publications},
    TitleWord{"articles", publications},
    TitleWord{"summary", prose},
    TitleWord{"objective", prose},
    TitleWord{"profile", prose},
    TitleWord{"about", prose},
    TitleWord{"statement", prose},
    TitleWord{"bio", prose},
    TitleWord{"introduction", prose},
    TitleWord{"goals", prose},
    TitleWord{"goal", prose},
};

// Words that stand in titles beside those that tell.
constexpr std::array<std::string_view, 21> beside_title_words{
    "and",     "additional", "academic", "back",    "background", "computer", "current",
    "history", "key",        "of",       "other",   "personal",   "previous", "professional",
    "related", "relevant",   "selected", "student", "technical",  "the",      "references"};

std::optional<Holds> title_word(std::string_view word) {
    const auto row =
        std::ranges::find(title_words, word, [](const auto& known) { return known.name; });
    return row == title_words.end() ? std::nullopt : std::optional{row->value};
}

}

// In a phrase the last word that tells decides, as English has it ("Language Skills" are skills),
// but words of experience yield ("Volunteer Work" is an activity); the first of several phrases
// decides ("Education and Honors").
std::optional<Holds> usual_holds(std::string_view title) {
    std::optional<Holds> found;
    std::string word;
    for (std::size_t i = 0; i <= title.size(); ++i) {
        if (i < title.size() && is_ascii_letter(title[i])) {
            word += small_letter(title[i]);
            continue;
        }
        const auto kind = title_word(word);
        if (kind && (!found || *kind != experience)) found = kind;
        const bool ends = word == "and" || i == title.size() ||
                          std::string_view{"&,;/+"}.find(title[i]) != std::string_view::npos;
        if (ends && found) return found;
        word.clear();
    }
    return std::nullopt;
}

std::optional<std::string_view> slip_of_title(std::string_view title) {
    std::array<std::string_view, title_words.size()> names{};
    std::ranges::transform(title_words, names.begin(), &TitleWord::name);
    return slip_of(title, names);
}

std::string_view usual_title(Holds holds) {
    switch (holds) {
    case education:
        return "Education";
    case experience:
        return "Experience";
    case projects:
        return "Projects";
    case activities:
        return "Activities";
    case skills:
        return "Skills";
    case honors:
        return "Honors";
    case credentials:
        return "Certifications";
    case languages:
        return "Languages";
    case publications:
        return "Publications";
    case prose:
        return "Summary";
    case other:
        break;
    }
    return "";
}

bool is_section_title(std::string_view line) {
    bool tells = false;
    std::string word;
    for (std::size_t i = 0; i <= line.size(); ++i) {
        if (i < line.size() && is_ascii_letter(line[i])) {
            word += small_letter(line[i]);
            continue;
        }
        const bool between =
            i == line.size() || std::string_view{" &/,-"}.find(line[i]) != std::string_view::npos;
        const bool known = title_word(word).has_value();
        if (!between || (!word.empty() && !known && !is_one_of(word, beside_title_words)))
            return false;
        tells = tells || known;
        word.clear();
    }
    return tells;
}

}
