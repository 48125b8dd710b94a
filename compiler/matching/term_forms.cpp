#include "compiler/matching/term_forms.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/english/verb_table.hpp"
#include "compiler/matching/lists.hpp"
#include "compiler/matching/other_words.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/posting.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

namespace quoin::matching {

namespace {

using Words = std::vector<std::string>;

// A degree that is asked for by its kind is named by what it is: Bachelor of Science.
std::vector<Words> degrees_of(const Words& lower) {
    struct Row {
        std::string_view asked, named; // each name's words
    };
    constexpr std::array rows{
        Row{"bachelor's", "bachelor,bs,b.s,ba,b.a,bsn"},
        Row{"associate", "associate of,aa,a.a,a.s,aas"},
        Row{"associate's", "associate of,aa,a.a,a.s,aas"},
        Row{"master's", "master of,m.s,m.a,mba"},
    };
    std::vector<Words> forms;
    if (lower.size() != 2 || lower[1] != "degree") return forms;
    const auto* row = std::ranges::find(rows, lower[0], &Row::asked);
    if (row == rows.end()) return forms;
    for (const std::string_view name : pieces_of(row->named, ","))
        forms.push_back(parted(name, " "));
    return forms;
}

std::string without_possessive(const std::string& word) {
    return word.ends_with("'s") ? word.substr(0, word.size() - 2) : word;
}

// With one word, or each, as another of its family in WordNet: analyzed data for data analysis,
// statistical for statistics.
std::vector<Words> near_forms(const Words& lower) {
    std::vector<Words> near;
    Words all = lower;
    for (std::size_t i = 0; i < lower.size(); ++i) {
        const std::string word = without_possessive(lower[i]);
        const auto family = said_of(word, english::derived_words());
        if (const auto verb = said_of(word, english::verbs_of_nouns()))
            all[i] = verb->substr(0, verb->find(' '));
        if (!family || lower[i] == "patience") continue; // whose family is of those who are ill
        for (const std::string_view other : pieces_of(*family, " ")) {
            near.push_back(lower);
            near.back()[i] = other;
        }
    }
    if (all != lower) near.push_back(std::move(all));
    return near;
}

// Autism spectrum for autism spectrum disorder, Epic for Epic software, children for working with
// children; not: computer for computer skills.
Words without_what_is_understood(Words lower, std::string_view typed) {
    if (lower.size() > 2 && is_one_of(lower[0], List::working) &&
        is_one_of(lower[1], List::with_whom))
        return {lower.begin() + 2, lower.end()};
    std::size_t said = lower.size();
    while (said > 0 && is_one_of(lower[said - 1], List::understood_ends))
        --said;
    const bool compound = said == 1 && lower[0].find('-') != std::string::npos;
    const bool name =
        compound || (said == 1 && !typed.empty() && is_capital_letter(typed.front()) &&
                     !is_one_of(lower[0], postings::List::weak_heads));
    if (said == lower.size() || (said < 2 && !name)) return {};
    lower.resize(said);
    return lower;
}

// Keep records for keep accurate records.
Words without_how(Words lower) {
    const std::size_t all = lower.size();
    std::erase_if(lower, [](const std::string& word) { return is_one_of(word, List::said_how); });
    return lower.size() < all && lower.size() > 1 ? lower : Words{};
}

// A newsletter for an e-newsletter.
Words without_e(Words lower) {
    constexpr std::string_view sign = "e-";
    constexpr std::size_t shortest = 6; // letters of what is left; not: e-mail
    if (!lower.back().starts_with(sign) || lower.back().size() < sign.size() + shortest) return {};
    lower.back().erase(0, sign.size());
    return lower;
}

void add_other_names(std::vector<TermForm>& forms, const Words& lower) {
    for (const OtherName& name : other_names_of(lower)) {
        Words words;
        for (const std::string& word : name.words)
            words.push_back(lower_case(word));
        const bool same = name.as == OtherName::As::same;
        forms.push_back(
            form_of(std::move(words), same ? Nearness::other_words : Nearness::of_kind));
        forms.back().named = is_capital_letter(name.words.front().front());
        forms.back().job = name.as == OtherName::As::job;
    }
}

}

Words stems_of(const Words& lower) {
    Words stems;
    std::ranges::transform(lower, std::back_inserter(stems),
                           [](const std::string& word) { return postings::stem_of(word); });
    return stems;
}

TermForm form_of(Words lower, Nearness best) {
    Words stems = stems_of(lower);
    return {std::move(lower), std::move(stems), best, false, false};
}

std::vector<TermForm> other_forms_of(const Words& lower, std::string_view typed) {
    std::vector<TermForm> forms;
    const auto add = [&](Words words, Nearness best) {
        if (!words.empty()) forms.push_back(form_of(std::move(words), best));
    };
    for (const Words& degree : degrees_of(lower))
        add(degree, Nearness::form);
    const Words rest = without_what_is_understood(lower, typed);
    add(rest, Nearness::form);
    const Words plain = without_how(lower);
    add(plain, Nearness::near);
    for (const Words& near : near_forms(lower))
        add(near, Nearness::near);
    add(without_e(lower), Nearness::near);
    add_other_names(forms, lower);
    for (const Words& shorter : {rest, plain})
        if (!shorter.empty()) add_other_names(forms, shorter);
    return forms;
}

}
