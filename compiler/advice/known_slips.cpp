// Slips that need no dictionary: names of the trades that are often misspelt, forms that are no
// words, and two words run together.
#include "compiler/advice/spelling_checks.hpp"

#include "compiler/advice/lists.hpp"
#include "compiler/advice/spelling_messages.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/english/spelling.hpp"

#include <algorithm>
#include <array>

namespace quoin::advice {

bool is_known_slip(std::string_view word) {
    return is_one_of(lower_case(word), List::known_slips);
}

// `onthe`, `ofthe`, `inChemistry`: two words without the blank between. One of them is of the
// little words, so that no compound is taken apart.
std::string parted_words(const std::string& word, const english::Language& language) {
    constexpr std::array<std::string_view, 10> before{"of",   "and",  "for", "the", "with",
                                                      "from", "into", "at",  "in",  "that"};
    constexpr std::array<std::string_view, 4> behind{"the", "of", "and", "with"};
    constexpr std::size_t shortest = 2;
    const auto is_word = [&](const std::string& one) {
        return one.size() >= shortest && one != "s" && language.in_use(lower_case(one));
    };
    if (has_inner_capital(word)) {
        const std::size_t at =
            static_cast<std::size_t>(std::ranges::find_if(word, is_capital_letter) - word.begin());
        const std::string first = word.substr(0, at), rest = word.substr(at);
        const bool name = has_inner_capital(rest) || english::is_technical_name(capitalised(word));
        return is_one_of(first, before) && rest.size() > 3 && !name && is_word(rest)
                   ? first + ' ' + rest
                   : std::string();
    }
    for (const std::string_view little : behind) {
        const std::string first =
            word.substr(0, word.size() - std::min(word.size(), little.size()));
        const bool short_word = first.size() > shortest || is_one_of(first, List::function_words);
        if (word.ends_with(little) && short_word && is_word(first))
            return first + ' ' + std::string(little);
    }
    return {};
}

namespace {

void report_slip(const ProofContext& context, const TextInResume& part, const WordAt& word,
                 const std::string& right, std::vector<Finding>& findings) {
    if (is_address(part.plain, word) || is_one_of(part.small(word), context.resume.settings.words))
        return;
    report<messages::known_slip>(findings, part.text.place(word.offset, word.word.size()),
                                 in_quotes(word.word))
        .suggestion = fill<messages::write>(in_quotes(right));
}

}

void known_slips(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (part.in_heading) continue;
        const std::string &text = part.plain, &lower = part.lower;
        for (const std::string_view phrase : listed(List::known_phrase_slips))
            if (const std::size_t at = part.phrased.find(phrase); at != lower.npos)
                report<messages::known_slip>(findings, part.text.place(at, phrase.size()),
                                             in_quotes(text.substr(at, phrase.size())))
                    .suggestion = fill<messages::write>(
                    in_quotes(*said_of(phrase, lines_of(List::known_phrase_slips))));
        for (const WordAt& word : part.words)
            if (const auto right = said_of(part.small(word), lines_of(List::known_slips)))
                report_slip(context, part, word, std::string(*right), findings);
    }
}

void slips_in_names(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (part.in_heading) continue;
        for (const WordAt& word : part.words) {
            if (!is_capitalised(word.word)) continue;
            const auto right = said_of(part.small(word), lines_of(List::slips_in_names));
            const Place place = part.text.place(word.offset, word.word.size());
            if (right && std::ranges::find(findings, place, &Finding::place) == findings.end())
                report_slip(context, part, word, capitalised(std::string(*right)), findings);
        }
    }
}

}
