// The families of checks that look at the same words, and what of them is left out.
#include "compiler/advice/one_cause.hpp"

#include "compiler/base/lists.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <map>
#include <set>
#include <tuple>

namespace quoin::advice {

namespace {

using Names = std::string_view;

constexpr std::array of_openings{Names{"agreement"},     Names{"first-person"},
                                 Names{"full-sentence"}, Names{"tense"},
                                 Names{"weak-opening"},  Names{"passive"},
                                 Names{"action-verb"},   Names{"repeated-opening"}};
constexpr std::array of_words{
    Names{"name-forms"}, Names{"agreement"},      Names{"word-slip"},    Names{"doubled-word"},
    Names{"spelling"},   Names{"small-opening"},  Names{"proper-names"}, Names{"spelling-region"},
    Names{"term-forms"}, Names{"species-italics"}};
constexpr std::array of_persons{
    Names{"identity-number"}, Names{"personal-details"}, Names{"salary"},
    Names{"references-line"}, Names{"another-person"},   Names{"leaving-reason"},
    Names{"confidences"},     Names{"licence-number"},   Names{"phone-notation"}};
constexpr std::array of_phones{Names{"borrowed-contact"}, Names{"phone-form"},
                               Names{"phone-notation"}};
constexpr std::array of_addresses{Names{"email-form"}, Names{"name-forms"}, Names{"email-tone"}};
constexpr std::array of_figures{Names{"impossible-figure"}, Names{"number-forms"}};
constexpr std::array of_dated{Names{"end-before-start"}, Names{"date-order"}, Names{"long-ago"}};
constexpr std::array of_lines{Names{"two-lines"}, Names{"one-word-over"}, Names{"little-words"}};

constexpr std::array of_wishes{Names{"objective-wants"}, Names{"empty-phrases"}};
constexpr std::array of_vagueness{Names{"weak-opening"}, Names{"slang"}, Names{"empty-phrases"}};
constexpr std::array of_office_and_slang{Names{"office-phrases"}, Names{"office-words"},
                                         Names{"slang"}};
constexpr std::array of_office_and_empty{Names{"office-phrases"}, Names{"office-words"},
                                         Names{"empty-phrases"}};
constexpr std::array of_spelled_names{Names{"office-names"}, Names{"name-forms"},
                                      Names{"proper-names"}};
constexpr std::array of_misspelt_openings{Names{"spelling"}, Names{"action-verb"}};
constexpr std::array of_titles{Names{"salary"}, Names{"section-title"}};
constexpr std::array of_misspelt_titles{Names{"section-title"}, Names{"spelling"}};
constexpr std::array of_leisure{Names{"idle-pastimes"}, Names{"slang"}};
constexpr std::array of_blanks{Names{"left-blank"}, Names{"slang"}};
constexpr std::array of_clauses{Names{"run-on"}, Names{"punctuation"}};

constexpr std::array families{Kin{of_openings},
                              Kin{of_words},
                              Kin{of_persons},
                              Kin{of_phones, true},
                              Kin{of_addresses},
                              Kin{of_figures},
                              Kin{of_dated},
                              Kin{of_lines, true},
                              Kin{of_wishes, true},
                              Kin{of_vagueness, true},
                              Kin{of_clauses, true},
                              Kin{of_leisure, true},
                              Kin{of_blanks, true},
                              Kin{of_titles, true},
                              Kin{of_misspelt_titles},
                              Kin{of_misspelt_openings},
                              Kin{of_office_and_slang},
                              Kin{of_office_and_empty},
                              Kin{of_spelled_names}};

using Line = std::tuple<std::size_t, std::size_t>;

Line line_of(const Finding& finding) {
    return {static_cast<std::size_t>(finding.place.file), finding.place.line};
}

bool overlap(const Place& a, const Place& b) {
    return a.column < b.column + std::max<std::uint32_t>(b.length, 1) &&
           b.column < a.column + std::max<std::uint32_t>(a.length, 1);
}

std::size_t rank_in(const Kin& family, std::string_view check) {
    return static_cast<std::size_t>(std::ranges::find(family.checks, check) -
                                    family.checks.begin());
}

// Of the findings of one line, which are few.
void mark_told(const Kin& family, const std::vector<Finding>& findings,
               const std::vector<std::size_t>& of_line, std::vector<bool>& told) {
    for (const std::size_t i : of_line)
        for (const std::size_t k : of_line) {
            const std::size_t rank = rank_in(family, findings[i].check);
            const std::size_t other = rank_in(family, findings[k].check);
            if (rank >= other || other == family.checks.size() || told[i]) continue;
            if (family.on_one_line || overlap(findings[i].place, findings[k].place)) told[k] = true;
        }
}

// What is to go as a whole needs no better wording.
constexpr std::array of_lines_to_go{Names{"another-person"}, Names{"leaving-reason"},
                                    Names{"references-line"}, Names{"salary"}};

void mark_wording_of_what_goes(const std::vector<Finding>& findings, std::vector<bool>& told) {
    std::set<Line> gone;
    for (const Finding& finding : findings)
        if (is_one_of(finding.check, of_lines_to_go)) gone.insert(line_of(finding));
    for (std::size_t i = 0; i < findings.size(); ++i)
        if (is_one_of(findings[i].check, of_openings) && gone.contains(line_of(findings[i])))
            told[i] = true;
}

}

std::span<const Kin> kin_checks() {
    return families;
}

void keep_one_of_a_cause(std::vector<Finding>& findings) {
    std::vector<bool> told(findings.size(), false);
    for (const Kin& family : families) {
        std::map<Line, std::vector<std::size_t>> by_line;
        for (std::size_t i = 0; i < findings.size(); ++i)
            if (rank_in(family, findings[i].check) < family.checks.size())
                by_line[line_of(findings[i])].push_back(i);
        constexpr std::size_t few = 50; // of more on one line nothing is left out
        for (const auto& [line, of_line] : by_line)
            if (of_line.size() > 1 && of_line.size() <= few)
                mark_told(family, findings, of_line, told);
    }
    mark_wording_of_what_goes(findings, told);
    std::size_t next = 0;
    std::erase_if(findings, [&](const Finding&) { return told[next++]; });
}

}
