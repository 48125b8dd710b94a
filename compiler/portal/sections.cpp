// Section headings: titles that portals know, and lines that look like headings and are not known.
#include "compiler/base/lists.hpp"
#include "compiler/portal/found.hpp"
#include "compiler/portal/letters.hpp"
#include "compiler/trade/section_titles.hpp"

#include <algorithm>
#include <array>

namespace quoin::portal {

namespace {

constexpr std::size_t most_words_of_title = 6;

// Common practice: what a section is headed by. A title is usual if it has one of the first and
// nothing but words of the two lists.
constexpr std::array<std::string_view, 43> nouns = {
    "certification",  "education",    "experience",      "employment",     "skills",
    "projects",       "project",      "activities",      "honors",         "awards",
    "certifications", "certificates", "licenses",        "licensure",      "credentials",
    "languages",      "publications", "presentations",   "research",       "summary",
    "objective",      "profile",      "leadership",      "volunteering",   "volunteer",
    "involvement",    "coursework",   "courses",         "training",       "interests",
    "references",     "achievements", "accomplishments", "qualifications", "internships",
    "affiliations",   "memberships",  "portfolio",       "service",        "scholarships",
    "contact",        "history",      "background"};

constexpr std::array<std::string_view, 39> modifiers = {"relevant",
                                                        "additional",
                                                        "work",
                                                        "professional",
                                                        "academic",
                                                        "technical",
                                                        "related",
                                                        "other",
                                                        "selected",
                                                        "key",
                                                        "core",
                                                        "teaching",
                                                        "clinical",
                                                        "laboratory",
                                                        "lab",
                                                        "field",
                                                        "community",
                                                        "campus",
                                                        "extracurricular",
                                                        "career",
                                                        "and",
                                                        "&",
                                                        "/",
                                                        "of",
                                                        "computer",
                                                        "language",
                                                        "personal",
                                                        "student",
                                                        "independent",
                                                        "class",
                                                        "course",
                                                        "military",
                                                        "industry",
                                                        "in",
                                                        "competencies",
                                                        "fieldwork",
                                                        "legal",
                                                        "design",
                                                        "recent"};

constexpr std::array<std::string_view, 4> whole_titles = {"about me", "areas of expertise",
                                                          "core competencies", "study abroad"};

std::string_view without_marks(std::string_view word) {
    constexpr std::string_view signs = ":,|-_()";
    while (!word.empty() && signs.find(word.back()) != std::string_view::npos)
        word.remove_suffix(1);
    while (!word.empty() && signs.find(word.front()) != std::string_view::npos)
        word.remove_prefix(1);
    return word;
}

bool is_set_in_capitals(std::string_view text) {
    constexpr std::size_t least = 4;
    const LetterCount count = count_letters(text);
    return count.letters >= least && count.capitals == count.letters;
}

// Most words of a title begin with a capital, of a sentence only the first.
bool is_written_as_title(std::string_view text) {
    return !text.empty() && !text.ends_with('.') && !text.ends_with(',') &&
           count_letters(text.substr(0, text.find(' '))).capitals > 0;
}

bool looks_like_heading(const ReadLine& line, const std::string& text, double usual) {
    const LetterCount count = count_letters(text);
    if (count.digits > 0 || count.letters * 10 < count.characters * 8 ||
        text.find_first_of("@|,;/.") != std::string::npos)
        return false;
    const bool larger = line.words.front().box.height() > 1.12 * usual;
    return line.words.size() <= most_words_of_title - 1 && (larger || is_set_in_capitals(text)) &&
           is_written_as_title(text);
}

// `Accounting Experience`: in the looks of a heading, the last word is enough.
bool ends_usual(std::string_view title) {
    const std::string lower = in_small_letters(without_marks(title));
    return is_one_of(without_marks(std::string_view(lower).substr(lower.rfind(' ') + 1)), nouns);
}

// A heading stands alone: nothing else on its line.
bool stands_alone(const Reading& reading, std::size_t at) {
    const ReadLine& line = reading.lines[at];
    const auto shares = [&](std::size_t other) {
        return other < reading.lines.size() && reading.lines[other].page == line.page &&
               std::abs(reading.lines[other].box.middle() - line.box.middle()) <
                   line.box.height() / 4 &&
               std::abs(reading.lines[other].box.left - line.box.right) < 4 * line.box.height();
    };
    return !shares(at + 1) && (at == 0 || !shares(at - 1));
}

}

bool is_usual_title(std::string_view title) {
    std::size_t known = 0, words = 0;
    const std::string lower = in_small_letters(without_marks(title));
    if (is_one_of(lower, whole_titles)) return true;
    for (std::string_view left = lower; !left.empty();) {
        const std::size_t end = std::min(left.find(' '), left.size());
        const std::string_view word = without_marks(left.substr(0, end));
        left.remove_prefix(std::min(end + 1, left.size()));
        if (word.empty()) continue;
        ++words;
        if (is_one_of(word, nouns))
            ++known;
        else if (!is_one_of(word, modifiers))
            return false;
    }
    return known > 0 && words <= most_words_of_title;
}

bool is_continued(std::string_view line, const FoundSection& section,
                  const PageLanguages& languages) {
    return line.starts_with(section.title) &&
           languages.says_continued(line.substr(section.title.size()));
}

std::vector<FoundSection> find_sections(const Reading& reading, std::string_view name,
                                        const PageLanguages& languages) {
    std::vector<FoundSection> sections;
    const double usual = usual_height(reading);
    for (std::size_t i = 0; i < reading.lines.size(); ++i) {
        const ReadLine& line = reading.lines[i];
        if (line.words.size() > most_words_of_title || !stands_alone(reading, i)) continue;
        const std::string text = line.text();
        if (!sections.empty() && is_continued(text, sections.back(), languages)) continue;
        const bool looks = text != name && looks_like_heading(line, text, usual);
        const auto local = languages.title(text); // of another language than English
        const bool known = (is_usual_title(text) && is_written_as_title(text)) ||
                           (looks && ends_usual(text)) || local;
        // before the first known one there is only the heading block
        const bool unknown = !known && !sections.empty() && looks;
        if (known || unknown)
            sections.push_back(
                {text, line.page, i, known, local ? local : trade::usual_holds(text)});
    }
    return sections;
}

}
