#include "compiler/commands/match/match_report.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/printable.hpp"
#include "compiler/commands/posting/told_conditions.hpp"

#include <fmt/format.h>

#include <cmath>

namespace quoin::commands {

namespace {

using matching::Share;
using matching::TermCoverage;

constexpr int bar_length = 20;

std::string bar(double share) {
    const int full = static_cast<int>(std::lround(share * bar_length));
    std::string text;
    for (int i = 0; i < bar_length; ++i)
        text += i < full ? "\u2588" : "\u2591";
    return text + "  ";
}

std::string share_text(std::string_view what, const Share& share, const MatchStyle& style) {
    if (share.terms == 0) return {};
    return fmt::format("  {:10} {}{:3.0f} % by weight; {} of {} terms are there\n", what,
                       style.bars ? bar(share.of_one()) : "", share.of_one() * 100,
                       share.terms - share.missing, share.terms);
}

std::string formula(const Share& share, std::string_view what) {
    return fmt::format("  {}: {:.2f} shown / {:.2f} asked for = {:.2f}\n", what, share.shown,
                       share.weight, share.of_one());
}

std::string term_line(const TermCoverage& covered) {
    std::string text =
        fmt::format("  {:9}  {}", name_of(covered.term->standing), name_of_term(covered));
    if (covered.verdict == matching::Verdict::spared) return text + '\n';
    text += ": line " + lines_of_showings(covered);
    const matching::Showing& first = covered.showings.front();
    if (first.how != matching::Nearness::exact)
        text += fmt::format(", as {}", in_quotes(first.words));
    if (!is_found(first.how) || first.how == matching::Nearness::implied)
        text += fmt::format(" ({})", name_of(first.how));
    return text + '\n';
}

std::string terms_text(std::span<const TermCoverage> terms, matching::Verdict verdict,
                       std::string_view title) {
    std::string text;
    for (const TermCoverage& covered : terms)
        if (covered.verdict == verdict && !covered.told_with_first) text += term_line(covered);
    return text.empty() ? text : std::string(title) + '\n' + text;
}

struct MissingOfSentence { // told together, at the heaviest
    const postings::Term* first = nullptr;
    std::vector<std::string> names;
};

bool is_of_one_sentence(const postings::Term& one, const postings::Term& other) {
    return one.place.line == other.place.line && one.sentence == other.sentence &&
           one.standing == other.standing;
}

std::vector<MissingOfSentence> missing_by_sentence(std::span<const TermCoverage> terms, bool soft) {
    std::vector<MissingOfSentence> all;
    for (const TermCoverage& covered : terms) {
        const postings::Term& term = *covered.term;
        if (covered.verdict != matching::Verdict::missing || covered.told_with_first ||
            (term.kind == postings::Kind::soft_skill) != soft)
            continue;
        auto at = std::ranges::find_if(all, [&](const MissingOfSentence& one) {
            return is_of_one_sentence(*one.first, term);
        });
        if (at == all.end()) at = all.insert(at, {&term, {}});
        at->names.push_back(name_of_term(covered));
    }
    return all;
}

std::string missing_text(std::span<const TermCoverage> terms, bool soft, std::string_view title) {
    std::string text;
    for (const MissingOfSentence& one : missing_by_sentence(terms, soft))
        text += fmt::format("  {:9}  {}\n               posting, line {}: '{}'\n",
                            name_of(one.first->standing), joined(one.names, ", "),
                            one.first->place.line, sentence_around(*one.first));
    return text.empty() ? text : std::string(title) + '\n' + text;
}

std::string order_text(const Match& match) {
    std::string text;
    for (const matching::RankedEntry& entry : match.order)
        if (entry.reordered)
            text +=
                fmt::format("  {}: lines {}\n", in_quotes(name_of_entry(match.resume, entry.spot)),
                            lines_in_order(match, entry));
    return text.empty() ? text : "Bullets in the order that serves this posting\n" + text;
}

std::string groupings_text(const Match& match) {
    std::string text;
    for (const matching::Grouping& grouping : match.groupings)
        text += fmt::format("In {}, if you part it for this posting\n  Relevant: {}\n"
                            "  Additional: {}\n",
                            in_quotes(match.resume.sections[grouping.section].title.plain()),
                            entries_of_group(match, grouping, true),
                            entries_of_group(match, grouping, false));
    return text;
}

std::string grouping_arithmetic(const Match& match) {
    std::string text;
    for (const matching::Grouping& grouping : match.groupings) {
        text += fmt::format("What is relevant in {}: a score of at least {:.2f}, a third of the "
                            "best\n",
                            in_quotes(match.resume.sections[grouping.section].title.plain()),
                            grouping.least);
        for (const matching::GroupedEntry& entry : grouping.entries)
            text +=
                fmt::format("  line {:3}  {:5.2f}\n",
                            match.resume.sections[grouping.section].entries[entry.entry].place.line,
                            entry.score);
    }
    return text;
}

std::string bullet_arithmetic(const model::Entry& entry, const matching::RankedBullet& bullet) {
    std::vector<std::string_view> shown;
    for (const postings::Term* term : bullet.shows)
        shown.push_back(term->words);
    return fmt::format("  line {:3}  {:5.2f}  {}\n", entry.bullets[bullet.bullet].place.line,
                       bullet.score, joined(shown, ", "));
}

std::string arithmetic(const Match& match) {
    const matching::Coverage& coverage = match.coverage;
    std::string text =
        fmt::format("How the shares are reckoned: of each term its weight times {} where work "
                    "shows it, {} where only a list does, {} where a search would miss it; over "
                    "all weights. What is a choice counts once.\n",
                    credit(matching::Verdict::shown), credit(matching::Verdict::list_only),
                    credit(matching::Verdict::not_found));
    text += formula(coverage.required, "required") + formula(coverage.preferred, "preferred") +
            formula(coverage.rest, "the rest");
    text +=
        "How bullets are ranked (BM25, k1 1.5, b 0.75; the sum over the terms that each shows)\n";
    for (const matching::RankedEntry& entry : match.order)
        for (const matching::RankedBullet& bullet : entry.bullets)
            text += bullet_arithmetic(entry_at(match.resume, entry.spot), bullet);
    return text + grouping_arithmetic(match);
}

}

std::string match_text(const Match& match, const MatchStyle& style) {
    std::string text = fmt::format("{} against {}\n", printable_name(match.resume_name),
                                   printable_name(match.posting_name));
    text += share_text("required", match.coverage.required, style);
    text += share_text("preferred", match.coverage.preferred, style);
    text += share_text("the rest", match.coverage.rest, style);
    const std::size_t all = match.coverage.terms.size();
    const auto told = told_terms(match, style.explain ? all : most_told);
    text += missing_text(told, false, "Missing: name it where it is true of you");
    text += missing_text(told, true, std::string(soft_skills_title));
    text +=
        terms_text(told, matching::Verdict::list_only, "Only in a list: show where you used it");
    text += terms_text(told, matching::Verdict::not_found,
                       "There, but a search for the posting's word would miss it");
    text += terms_text(told, matching::Verdict::shown, "Shown");
    text +=
        terms_text(told, matching::Verdict::spared, "Not needed: another that will do is shown");
    if (told.size() < all)
        text += fmt::format("And {} that weigh less: --explain\n", all - told.size());
    text += conditions_text(match.posting) + order_text(match) + groupings_text(match);
    if (style.explain) text += arithmetic(match);
    return text + std::string(match_caution) + '\n';
}

std::string name_of_term(const TermCoverage& covered) {
    const auto named = [](const postings::Term& term) {
        return term.other_form.empty() ? term.words
                                       : fmt::format("{} ({})", term.words, term.other_form);
    };
    std::vector<std::string> names{named(*covered.term)};
    for (const postings::Term* other : covered.others)
        names.push_back(named(*other));
    return joined(names, " or ");
}

std::string sentence_around(const postings::Term& term) {
    constexpr std::size_t longest = 100, most_before = 40;
    const std::string_view sentence = term.sentence;
    if (sentence.size() <= longest) return term.sentence;
    const std::size_t at = find_phrase(lower_case(sentence), lower_case(term.words));
    const std::size_t from = at == std::string::npos ? 0 : at;
    std::size_t begin = from <= most_before ? 0 : sentence.find(' ', from - most_before) + 1;
    if (begin > from) begin = from;
    std::size_t end = std::min(begin + longest, sentence.size());
    if (end < sentence.size()) end = sentence.rfind(' ', end);
    if (end == sentence.npos || end <= from) end = sentence.size(); // one word without an end
    return (begin > 0 ? "\u2026" : "") + std::string(sentence.substr(begin, end - begin)) +
           (end < sentence.size() ? "\u2026" : "");
}

std::string lines_of_showings(const TermCoverage& covered) {
    std::vector<std::string> lines;
    for (const matching::Showing& showing : covered.showings)
        lines.push_back(fmt::format("{} ({})", showing.place.line, name_of(showing.where)));
    constexpr std::size_t most = 4;
    return joined(lines, ", ", most);
}

std::string lines_in_order(const Match& match, const matching::RankedEntry& entry) {
    std::vector<std::string> lines;
    const model::Entry& at = entry_at(match.resume, entry.spot);
    for (const matching::RankedBullet& bullet : entry.bullets)
        lines.push_back(std::to_string(at.bullets[bullet.bullet].place.line));
    return joined(lines, ", ");
}

std::string entries_of_group(const Match& match, const matching::Grouping& grouping,
                             bool relevant) {
    std::vector<std::string> names;
    for (const matching::GroupedEntry& entry : grouping.entries) {
        if (entry.relevant != relevant) continue;
        matching::Spot spot;
        spot.section = grouping.section;
        spot.entry = entry.entry;
        names.push_back(fmt::format("{} (line {})", name_of_entry(match.resume, spot),
                                    entry_at(match.resume, spot).place.line));
    }
    return joined(names, ", ");
}

const model::Entry& entry_at(const model::Resume& resume, const matching::Spot& spot) {
    const model::Entry& entry = resume.sections.at(spot.section).entries.at(spot.entry);
    return spot.further == matching::nowhere ? entry : entry.further.at(spot.further);
}

std::string name_of_entry(const model::Resume& resume, const matching::Spot& spot) {
    for (const model::Field& field : entry_at(resume, spot).fields)
        if (const auto* text = std::get_if<model::Text>(&field.value)) return text->plain();
    return resume.sections.at(spot.section).title.plain();
}

}
