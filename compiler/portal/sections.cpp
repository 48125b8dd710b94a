// Section headings: titles that portals know, and lines that look like headings and are not known.
// A heading that is neither known nor larger than the text is told by the known ones: it looks as
// most of them do and has as much white above it, and there are no more such lines than known
// titles.
#include "compiler/base/lists.hpp"
#include "compiler/portal/found.hpp"
#include "compiler/portal/letters.hpp"
#include "compiler/trade/section_titles.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <set>
#include <tuple>

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

bool reads_as_heading(const ReadLine& line, const std::string& text) {
    const LetterCount count = count_letters(text);
    if (count.digits > 0 || count.letters * 10 < count.characters * 8 ||
        text.find_first_of("@|,;/.") != std::string::npos)
        return false;
    return line.words.size() <= most_words_of_title - 1 && is_written_as_title(text);
}

bool looks_like_heading(const ReadLine& line, const std::string& text, double usual) {
    const bool larger = line.words.front().box.height() > 1.12 * usual;
    return (larger || is_set_in_capitals(text)) && reads_as_heading(line, text);
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

constexpr double endless = std::numeric_limits<double>::infinity();

// The white above a line; endless at the top of a page or a column.
double white_above(const Reading& reading, std::size_t at) {
    if (at == 0) return endless;
    const ReadLine &before = reading.lines[at - 1], &line = reading.lines[at];
    const bool below = before.page == line.page && before.box.middle() < line.box.top;
    return below ? line.box.top - before.box.bottom : endless;
}

// Half of the lines have no more white above them.
double usual_white(const Reading& reading) {
    std::vector<double> whites;
    for (std::size_t i = 0; i < reading.lines.size(); ++i)
        if (const double gap = white_above(reading, i); gap < endless) whites.push_back(gap);
    if (whites.empty()) return endless;
    const auto middle = whites.begin() + static_cast<std::ptrdiff_t>(whites.size() / 2);
    std::ranges::nth_element(whites, middle);
    return *middle;
}

class LikeTitles {
public:
    LikeTitles(const Reading& reading, const std::vector<StyledText>& styles)
        : reading_(reading), styles_(styles), usual_(usual_white(reading)) {}

    void learn(const FoundSection& section) {
        ++known_;
        if (const auto look = look_of(reading_.lines[section.line])) ++looks_[*look];
        least_ = std::min(least_, white_above(reading_, section.line));
    }

    bool is_like(std::size_t at) const {
        const ReadLine& line = reading_.lines[at];
        const double height = line.box.height();
        const auto look = look_of(line);
        return look && is_usual(*look) && least_ < endless &&
               white_above(reading_, at) >= std::max(least_ - height / 8, usual_ + height / 4);
    }

private:
    // Its font, size and weight, whether it is slanted and whether in capitals.
    using TitleLook = std::tuple<std::size_t, double, bool, bool, bool>;

    // A single line that has a title's words may be none.
    bool is_usual(const TitleLook& look) const {
        const auto found = looks_.find(look);
        return found != looks_.end() && 2 * found->second >= known_;
    }

    // None if its words differ.
    std::optional<TitleLook> look_of(const ReadLine& line) const {
        std::optional<TitleLook> look;
        const bool capitals = is_set_in_capitals(line.text());
        for (const ReadWord& word : line.words) {
            const StyledText* style = styles_.at(line.page, word.box);
            if (!style) return std::nullopt;
            const TitleLook here{style->font, style->size, style->strong, style->slanted, capitals};
            if (look && *look != here) return std::nullopt;
            look = here;
        }
        return look;
    }

    const Reading& reading_;
    StylesOfPages styles_;
    std::map<TitleLook, std::size_t> looks_;
    std::size_t known_ = 0;
    double least_ = endless, usual_;
};

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

namespace {

// In order of their lines, behind the first that is found otherwise: before it there is only the
// heading block.
void add_like_titles(std::vector<FoundSection>& sections, const Reading& reading,
                     const PageLanguages& languages, const std::vector<StyledText>& styles) {
    LikeTitles titles(reading, styles);
    std::set<std::size_t> taken;
    for (const FoundSection& section : sections) {
        if (section.known) titles.learn(section);
        taken.insert(section.line);
    }
    const auto goes_on = [&](const std::string& text) {
        return std::ranges::any_of(sections, [&](const FoundSection& section) {
            return is_continued(text, section, languages);
        });
    };
    std::vector<FoundSection> more;
    for (std::size_t i = sections.empty() ? reading.lines.size() : sections.front().line;
         i < reading.lines.size(); ++i) {
        const ReadLine& line = reading.lines[i];
        const std::string text = line.text();
        if (!taken.contains(i) && reads_as_heading(line, text) && titles.is_like(i) &&
            stands_alone(reading, i) && !goes_on(text))
            more.push_back({text, line.page, i, false, trade::usual_holds(text)});
    }
    if (more.size() > sections.size()) return;
    sections.insert(sections.end(), more.begin(), more.end());
    std::ranges::sort(sections, {}, &FoundSection::line);
}

}

std::vector<FoundSection> find_sections(const Reading& reading, std::string_view name,
                                        const PageLanguages& languages,
                                        const std::vector<StyledText>& styles) {
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
    add_like_titles(sections, reading, languages, styles);
    return sections;
}

}
