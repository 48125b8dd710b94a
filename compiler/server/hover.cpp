// What is known of what the pointer rests on: what a label is for, what is found there and why, a
// date in words, a theme's description.
#include "compiler/base/ascii.hpp"
#include "compiler/server/markup_advice.hpp"
#include "compiler/server/ranges.hpp"
#include "compiler/server/spot.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace quoin::server {

namespace {

using session::Position;
using session::Range;

bool holds_position(const Range& range, Position at) {
    return range.start <= at && at <= range.end;
}

std::string label_text(const LabelAdvice& advice, std::string_view label) {
    if (advice.goes_in.empty() && advice.why.empty()) return {};
    std::string text = fmt::format("**{}**: {}", label, advice.goes_in);
    if (!advice.example.empty()) text += fmt::format("\n\nFor example: `{}`", advice.example);
    if (!advice.why.empty()) text += "\n\n" + advice.why;
    return text;
}

std::string finding_text(const advice::Finding& finding) {
    const advice::Check* check = advice::find_check(finding.check);
    std::string text = fmt::format("**{}** ({}): {}", finding.check, name_of(weight_of(finding)),
                                   sentence_of(finding));
    if (!check) return text;
    text += fmt::format("\n\n{} {}", check->looks_at, check->why);
    if (!check->caution.empty()) text += fmt::format(" {}", check->caution);
    return text + fmt::format("\n\nSource: {}", check->source);
}

class Pointed {
public:
    Pointed(Desk& desk, const Addressed& one, Position at)
        : desk_(desk), one_(one), at_(at), ranges_(*one.state, desk.units) {}

    Json answer() {
        add_findings();
        add_date();
        add_theme();
        add_label();
        if (text_.empty()) return {};
        Json hover{{"contents", {{"kind", "markdown"}, {"value", text_}}}};
        if (range_) hover["range"] = to_json(*range_);
        return hover;
    }

private:
    void add(std::string text, const Range& range) {
        if (text.empty()) return;
        text_ += (text_.empty() ? "" : "\n\n---\n\n") + text;
        if (!range_) range_ = range;
    }

    // True if the pointer rests on it.
    bool is_at(const Place& place) {
        return place.file == one_.file && place.line == at_.line + 1 &&
               holds_position(ranges_.of(place), at_);
    }

    void add_findings() {
        for (const advice::Finding& finding : one_.state->read.proof.findings)
            if (is_at(finding.place)) add(finding_text(finding), ranges_.of(finding.place));
    }

    void add_date() {
        const auto& resume = one_.state->read.resume;
        if (!resume) return;
        const auto look_at = [&](const model::Field& field) {
            const auto* dates = std::get_if<model::DateRange>(&field.value);
            if (dates && is_at(field.place))
                add(fmt::format("{} on the page; `{}` in EDTF",
                                print(*dates, trade::DateForm::long_month, resume->words.dates),
                                edtf(*dates)),
                    ranges_.of(field.place));
        };
        for (const model::Section& section : resume->sections)
            for (const model::Entry& entry : section.entries) {
                std::ranges::for_each(entry.fields, look_at);
                for (const model::Entry& further : entry.further)
                    std::ranges::for_each(further.fields, look_at);
            }
    }

    void add_theme() {
        const auto& typeset = one_.state->read.typeset;
        const auto& resume = one_.state->read.resume;
        if (!typeset || !resume || !resume->settings.theme.stated()) return;
        if (is_at(resume->settings.theme.place))
            add(typeset->theme.use, ranges_.of(resume->settings.theme.place));
    }

    void add_label() {
        const DocumentSpot spot = spot_at(*one_.document, one_.state, at_, desk_.units);
        const std::size_t colon = spot.whole.find(':');
        if (spot.is_bullet || colon == std::string::npos || spot.before.size() > colon) return;
        const Position end{at_.line, session::units_in(spot.whole.substr(0, colon), desk_.units)};
        const DocumentSpot named =
            spot_at(*one_.document, one_.state, {end.line, end.character + 1}, desk_.units);
        add(label_text(advice_on(named.label, named.holds, desk_.session.means().data),
                       named.label),
            {{at_.line, 0}, end});
    }

    Desk& desk_;
    const Addressed& one_;
    Position at_;
    Ranges ranges_;
    std::string text_;
    std::optional<Range> range_;
};

// Of a theme or an office's rules: what the label is for.
Json hover_on_label(Desk& desk, const Addressed& one, Position at) {
    const DocumentSpot spot = spot_at(*one.document, one.state, at, desk.units);
    const std::size_t colon = spot.whole.find(':');
    if (colon == std::string::npos || spot.before.size() > colon) return {};
    const std::string label = lower_case(trimmed(spot.whole.substr(0, colon)));
    const std::string said =
        reference_on(label, session::written_in(one.path), desk.session.means().data);
    if (said.empty()) return {};
    const Position end{at.line, session::units_in(spot.whole.substr(0, colon), desk.units)};
    return {{"contents", {{"kind", "markdown"}, {"value", fmt::format("**{}**: {}", label, said)}}},
            {"range", to_json(Range{{at.line, 0}, end})}};
}

Answer hover(Desk& desk, const Json& params) {
    const Addressed one = addressed(desk, params);
    if (!one.document) return one.refusal;
    const Position at = position_from(params.at("position"));
    if (!is_resume(one)) return hover_on_label(desk, one, at);
    return Pointed(desk, one, at).answer();
}

constexpr Method methods_of_hover[] = {{"textDocument/hover", hover}};

void announce_hover(Json& capabilities) {
    capabilities["hoverProvider"] = true;
}

}

Feature hover_feature() {
    return {methods_of_hover, announce_hover};
}

}
