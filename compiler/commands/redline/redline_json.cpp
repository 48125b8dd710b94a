// A redline for programs; grammar/schemas/redline.schema.json holds its form.
#include "compiler/commands/redline/redline_report.hpp"

#include "compiler/base/json_text.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace quoin::commands {

namespace {

using RedlineJson = nlohmann::ordered_json;

constexpr int redline_json_version = 1; // goes up when a key changes its meaning

RedlineJson redline_place_json(const Place& place, const Proofread& of) {
    if (place.line == 0) return nullptr;
    return {{"file", of.sources.file(place.file).name},
            {"line", place.line},
            {"column", of.sources.display_column(place)}};
}

RedlineJson pieces_json(const std::vector<redlining::Piece>& pieces) {
    constexpr const char* names[] = {"kept", "deleted", "inserted"};
    RedlineJson all = RedlineJson::array();
    for (const redlining::Piece& piece : pieces)
        all.push_back(
            {{"fate", names[static_cast<std::size_t>(piece.fate)]}, {"text", piece.text}});
    return all;
}

RedlineJson change_json(const redlining::Change& change, const Redline& redline) {
    RedlineJson json = {{"kind", name_of(change.kind)}, {"what", name_of(change.what)}};
    json["nature"] = change.kind == redlining::Kind::changed ? RedlineJson(name_of(change.nature))
                                                             : RedlineJson(nullptr);
    json["section"] = change.section;
    json["entry"] = change.entry;
    json["label"] = change.label;
    json["before"] = change.before;
    json["after"] = change.after;
    json["words"] = pieces_json(change.pieces);
    json["old_place"] = redline_place_json(change.old_place, *redline.drafts.before.read);
    json["new_place"] = redline_place_json(change.new_place, *redline.drafts.after.read);
    return json;
}

RedlineJson finding_list_json(const std::vector<const advice::Finding*>& findings,
                              const Proofread& of) {
    RedlineJson all = RedlineJson::array();
    for (const advice::Finding* finding : findings)
        all.push_back({{"check", finding->check},
                       {"weight", name_of(weight_of(*finding))},
                       {"text", sentence_of(*finding)},
                       {"place", redline_place_json(finding->place, of)}});
    return all;
}

RedlineJson page_state_json(const Proofread& one) {
    const auto page = page_state(one);
    if (!page) return nullptr;
    return {{"pages", page->pages},
            {"allowed", page->allowed},
            {"size", std::round(page->size * 100) / 100},
            {"lines_free", page->lines_free},
            {"lines_over", page->lines_over}};
}

RedlineJson draft_json(const ComparedDraft& draft) {
    return {{"name", draft.name()},
            {"commit", draft.commit},
            {"read", draft.readable()},
            {"page", page_state_json(*draft.read)}};
}

}

std::string redline_json(const Redline& redline) {
    const ComparedDrafts& drafts = redline.drafts;
    RedlineJson json = {{"version", redline_json_version},
                        {"before", draft_json(drafts.before)},
                        {"after", draft_json(drafts.after)},
                        {"changes", RedlineJson::array()}};
    for (const redlining::Change& change : redline.changes)
        json["changes"].push_back(change_json(change, redline));
    json["findings"] = {{"mended", finding_list_json(redline.findings.mended, *drafts.before.read)},
                        {"new", finding_list_json(redline.findings.fresh, *drafts.after.read)}};
    return json_text(json);
}

}
