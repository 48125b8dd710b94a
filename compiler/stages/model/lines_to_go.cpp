#include "compiler/stages/model/lines_to_go.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/stages/model/bare_forms.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/trade/guessed_labels.hpp"

#include <array>

namespace quoin::model {
namespace {

constexpr std::array<std::string_view, 3> offers{"available upon request", "available on request",
                                                 "references available"};
// Common practice: what stands above the name on paper.
constexpr std::array<std::string_view, 8> paper_titles{
    "resume", "resume of", "r\u00E9sum\u00E9", "r\u00E9sum\u00E9 of",
    "cv",     "cv of",     "curriculum vitae", "curriculum vitae of"};
constexpr std::array<std::string_view, 19> question_words{
    "may", "did",  "do",    "does", "are",  "is",  "was", "were", "have",     "has",
    "can", "will", "would", "what", "when", "who", "why", "how",  "currently"};
constexpr std::array<std::string_view, 4> answers{"yes", "no", "y", "n"};

// `- page 1 of 2 -`
bool is_page_number(std::string_view text) {
    auto words = pieces_of(trimmed(text, " -|*."), " ");
    if (!words.empty() && words.front().ends_with(','))
        words.erase(words.begin()); // `Brandt, page 2`
    if (words.size() == 4 && (words[2] != "of" || !all_figures(words[3]))) return false;
    return (words.size() == 2 || words.size() == 4) && words[0] == "page" && all_figures(words[1]);
}

// `Port Ellery, den 30. November 2026`: where and when it was signed, as letters and forms have it.
bool is_signing(std::string_view text) {
    constexpr std::array<std::string_view, 4> articles{", den ", ", le ", ", el ", ", dated "};
    constexpr std::size_t longest = 60, year = 4;
    if (text.size() > longest || !is_capital_letter(text.front())) return false;
    const std::size_t comma = text.rfind(", "); // `Port Ellery, 30/11/2026`
    const std::string_view day = comma == text.npos ? "" : text.substr(comma + 2);
    if (!day.empty() && day.find_first_not_of("0123456789/.") == day.npos &&
        day.find_first_of("/.") != day.find_last_of("/.") && !has_digit(text.substr(0, comma)))
        return true;
    return std::ranges::any_of(articles, [text](std::string_view article) {
        const std::size_t at = text.find(article);
        if (at == text.npos || has_digit(text.substr(0, at))) return false;
        const std::string_view date = trimmed(text.substr(at + article.size()), " .");
        return is_figure(date.front()) && date.size() > year &&
               all_figures(date.substr(date.size() - year));
    });
}

}

std::optional<LineToGo> line_to_go(std::string_view text) {
    const std::string small = lower_case(trimmed(text, " :-"));
    if (is_one_of(small, paper_titles) || small.ends_with("/ curriculum vitae") ||
        is_page_number(small) || small.starts_with("sent from my ") || is_signing(text))
        return LineToGo{fill<messages::of_paper>(in_quotes(text)), true};
    if (has_any(text, offers)) return LineToGo{fill<messages::references_offered>(in_quotes(text))};
    if (text.find_first_not_of("{}[]();, ") == text.npos)
        return LineToGo{fill<messages::bracket_alone>(in_quotes(text)), true};
    if (text.starts_with("!["))
        return LineToGo{
            fill<messages::has_no_place>(in_quotes(text), trade::has_no_place("photo"))};
    return std::nullopt;
}

std::optional<std::string_view> answer_in_form(std::string_view text) {
    const std::size_t mark = text.find('?');
    if (mark == text.npos) return std::nullopt;
    const std::string first = lower_case(text.substr(0, text.find(' ')));
    std::string_view answer = trimmed(text.substr(mark + 1), " \t:");
    const std::string_view word = trimmed(answer.substr(0, answer.find(' ')), ",.;");
    const bool yes_or_no = is_one_of(lower_case(word), answers);
    if (!yes_or_no && !is_one_of(first, question_words)) return std::nullopt;
    if (yes_or_no) answer = trimmed(answer.substr(word.size()), " ,.;-");
    const bool in_parentheses = answer.starts_with('(') && answer.ends_with(')');
    return in_parentheses ? trimmed(answer, "()") : answer;
}

}
