// The page, live: its state above the name, or behind it where an editor shows nothing above a
// line, and on the lines that would gain one how many characters fewer save a line.
#include "compiler/server/desk.hpp"
#include "compiler/server/line_savings.hpp"
#include "compiler/server/ranges.hpp"
#include "compiler/stages/overflow_report.hpp"
#include "compiler/stages/page_state.hpp"

#include <fmt/format.h>

namespace quoin::server {

namespace {

using session::Range;

// Where a résumé's name stands in the document; none if it stands in another.
std::optional<Range> name_range(const Addressed& one, Ranges& ranges) {
    const auto& resume = one.state->read.resume;
    const model::Field* name = resume ? resume->find(trade::FieldName::name) : nullptr;
    if (!name || name->place.file != one.file || name->place.line == 0) return std::nullopt;
    return ranges.of(name->place);
}

std::optional<std::string> page_state_of(const session::State& state) {
    if (!state.read.typeset) return std::nullopt;
    return page_state(*state.read.typeset);
}

Answer code_lenses(Desk& desk, const Json& params) {
    const Addressed one = addressed(desk, params);
    if (!one.document) return one.refusal;
    Ranges ranges(*one.state, desk.units);
    const auto state = page_state_of(*one.state);
    const auto name = name_range(one, ranges);
    Json lenses = Json::array();
    if (state && name)
        lenses.push_back({{"range", to_json(*name)},
                          {"command",
                           {{"title", *state},
                            {"command", set_command},
                            {"arguments", {{{"uri", desk.uri_of(one.path)}}}}}}});
    return lenses;
}

Json hint(session::Position position, std::string label, std::string more) {
    return {{"position", to_json(position)},
            {"label", std::move(label)},
            {"tooltip", std::move(more)},
            {"paddingLeft", true}};
}

session::Position end_of_line(Place place, Ranges& ranges) {
    place.column = place.length = 0;
    return ranges.of(place).end;
}

Answer inlay_hints(Desk& desk, const Json& params) {
    const Addressed one = addressed(desk, params);
    if (!one.document) return one.refusal;
    const Range shown = range_from(params.at("range"));
    const auto is_shown = [&](session::Position at) {
        return shown.start <= at && at <= shown.end;
    };
    Ranges ranges(*one.state, desk.units);
    Json hints = Json::array();
    const auto state = desk.shows_lenses ? std::nullopt : page_state_of(*one.state);
    if (const auto name = name_range(one, ranges); state && name && is_shown(name->end))
        hints.push_back(hint(name->end, *state, "the page as 'quoin set' makes it"));
    for (const LineSaving& saving : line_savings(*one.state)) {
        if (saving.place.line == 0 || saving.place.file != one.file) continue;
        const session::Position end = end_of_line(saving.place, ranges);
        if (is_shown(end))
            hints.push_back(hint(end, fmt::format("−{}", saving.characters),
                                 stages::saved_by(saving.characters, 1)));
    }
    return hints;
}

constexpr Method methods_of_page_hints[] = {{"textDocument/codeLens", code_lenses},
                                            {"textDocument/inlayHint", inlay_hints}};

void announce_page_hints(Json& capabilities) {
    capabilities["codeLensProvider"] = Json::object();
    capabilities["inlayHintProvider"] = true;
}

}

Feature page_hints_feature() {
    return {methods_of_page_hints, announce_page_hints};
}

}
