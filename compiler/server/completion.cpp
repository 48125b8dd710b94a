// What may be written here, each with a line of advice.
#include "compiler/server/completing.hpp"

#include <fmt/format.h>

namespace quoin::server {

namespace {

constexpr int plain_text = 1, snippet_text = 2; // "InsertTextFormat"

Candidates candidates_at(const Completing& at) {
    if (Candidates tags = tag_candidates(at); !tags.all.empty()) return tags;
    if (at.spot.is_bullet) return bullet_candidates(at);
    if (at.spot.before.starts_with(' ') || at.spot.before.starts_with('#')) return {};
    return at.spot.label.empty() ? line_candidates(at) : value_candidates(at);
}

Json item_of(const Candidate& candidate, std::size_t index, const session::Range& range) {
    const std::string& inserted = candidate.inserted.empty() ? candidate.text : candidate.inserted;
    Json item{
        {"label", candidate.text},
        {"kind", static_cast<int>(candidate.kind)},
        {"detail", candidate.advice},
        {"sortText", fmt::format("{:04}", index)},
        {"insertTextFormat", candidate.kind == CandidateKind::snippet ? snippet_text : plain_text},
        {"textEdit", {{"range", to_json(range)}, {"newText", inserted}}}};
    if (!candidate.more.empty()) item["documentation"] = candidate.more;
    return item;
}

Answer completions(Desk& desk, const Json& params) {
    const Addressed one = addressed_text(desk, params);
    if (!one.document) return one.refusal;
    if (!is_resume(one)) return Json{};
    const session::Position position = position_from(params.at("position"));
    const session::State* last = desk.session.last_whole_state_of(one.path);
    const DocumentSpot spot = spot_at(*one.document, last, position, desk.units);
    const Candidates candidates = candidates_at({desk, one.path, spot, last});
    const std::string_view typed =
        std::string_view(spot.before).substr(spot.before.size() - candidates.typed);
    const std::uint32_t end = session::units_in(spot.before, desk.units);
    const session::Range range{{position.line, end - session::units_in(typed, desk.units)},
                               {position.line, end}};
    Json items = Json::array();
    for (const Candidate& candidate : candidates.all)
        items.push_back(item_of(candidate, items.size(), range));
    return Json{{"isIncomplete", false}, {"items", items}};
}

constexpr Method methods_of_completion[] = {{"textDocument/completion", completions}};

void announce_completion(Json& capabilities) {
    capabilities["completionProvider"] = {{"triggerCharacters", {":", " ", "{", "(", "-"}}};
}

}

Feature completion_feature() {
    return {methods_of_completion, announce_completion};
}

}
