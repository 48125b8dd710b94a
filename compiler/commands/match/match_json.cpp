#include "compiler/commands/match/match_report.hpp"

#include "compiler/base/json_text.hpp"
#include "compiler/commands/posting/told_conditions.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace quoin::commands {

namespace {

using Json = nlohmann::ordered_json;

constexpr int match_json_version = 2; // goes up when a key changes its meaning

Json share_json(const matching::Share& share) {
    return {{"terms", share.terms},
            {"missing", share.missing},
            {"weight", in_thousandths(share.weight)},
            {"shown", in_thousandths(share.shown)},
            {"share", in_thousandths(share.of_one())}};
}

Json showing_json(const matching::Showing& showing) {
    return {{"line", showing.place.line},
            {"column", showing.place.column},
            {"where", name_of(showing.where)},
            {"how", name_of(showing.how)},
            {"words", showing.words}};
}

// The same for those of which any will do; empty for what is asked by itself.
std::string choice_json(const postings::Choice& choice) {
    if (choice.list == 0) return {};
    return fmt::format("{}.{}.{}", choice.sentence, choice.side, choice.list);
}

Json covered_json(const matching::TermCoverage& covered) {
    Json json = {{"term", covered.term->words},
                 {"other_form", covered.term->other_form},
                 {"kind", name_of(covered.term->kind)},
                 {"standing", name_of(covered.term->standing)},
                 {"weight", in_thousandths(covered.term->weight)},
                 {"verdict", name_of(covered.verdict)},
                 {"choice", choice_json(covered.term->choice)},
                 {"line", covered.term->place.line},
                 {"sentence", covered.term->sentence},
                 {"showings", Json::array()}};
    for (const matching::Showing& showing : covered.showings)
        json["showings"].push_back(showing_json(showing));
    return json;
}

Json order_json(const Match& match, const matching::RankedEntry& entry) {
    const model::Entry& at = entry_at(match.resume, entry.spot);
    Json json = {{"entry", name_of_entry(match.resume, entry.spot)},
                 {"line", at.place.line},
                 {"score", in_thousandths(entry.score)},
                 {"bullets", Json::array()}};
    for (const matching::RankedBullet& bullet : entry.bullets)
        json["bullets"].push_back({{"line", at.bullets[bullet.bullet].place.line},
                                   {"score", in_thousandths(bullet.score)}});
    return json;
}

Json grouping_json(const Match& match, const matching::Grouping& grouping) {
    const model::Section& section = match.resume.sections[grouping.section];
    Json json = {{"section", section.title.plain()},
                 {"line", section.place.line},
                 {"least", in_thousandths(grouping.least)},
                 {"entries", Json::array()}};
    for (const matching::GroupedEntry& entry : grouping.entries)
        json["entries"].push_back({{"line", section.entries[entry.entry].place.line},
                                   {"score", in_thousandths(entry.score)},
                                   {"relevant", entry.relevant}});
    return json;
}

}

std::string match_json(const Match& match) {
    Json json = {{"version", match_json_version},
                 {"resume", match.resume_name},
                 {"posting", match.posting_name},
                 {"required", share_json(match.coverage.required)},
                 {"preferred", share_json(match.coverage.preferred)},
                 {"rest", share_json(match.coverage.rest)},
                 {"terms", Json::array()},
                 {"conditions", conditions_json(match.posting)},
                 {"order", Json::array()},
                 {"groups", Json::array()},
                 {"caution", match_caution}};
    for (const matching::TermCoverage& covered : match.coverage.terms)
        json["terms"].push_back(covered_json(covered));
    for (const matching::RankedEntry& entry : match.order)
        json["order"].push_back(order_json(match, entry));
    for (const matching::Grouping& grouping : match.groupings)
        json["groups"].push_back(grouping_json(match, grouping));
    return json_text(json);
}

}
