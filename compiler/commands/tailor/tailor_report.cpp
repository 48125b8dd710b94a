#include "compiler/commands/tailor/tailor_report.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/tailoring/left_out.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace quoin::commands {

namespace {

using tailoring::Part;

std::string share_taken(const ForPosting& chosen, Part::Kind kind, std::string_view several) {
    std::size_t taken = 0, all = 0;
    for (std::size_t p = 0; p < chosen.tailored.offer.parts.size(); ++p) {
        if (chosen.tailored.offer.parts[p].kind != kind) continue;
        ++all;
        taken += chosen.tailored.choice.taken[p] ? 1 : 0;
    }
    return fmt::format("{} of {} {}", taken, all, several);
}

std::string words_of(const model::Text& text) {
    return in_quotes(text.plain());
}

// `draft.resume:41 'Mapped 34 acres …'`
std::string called(const ForPosting& chosen, std::size_t piece, const Sources& sources) {
    const Part& part = chosen.tailored.offer.parts[piece];
    Place place = tailoring::place_of(chosen.resume, part);
    place.column = 0;
    std::string at = location(place, sources);
    if (!at.empty()) at.pop_back(); // its colon
    const model::Entry& position = tailoring::position_of(chosen.resume, part);
    if (part.kind == Part::Kind::bullet)
        return at + ' ' + words_of(position.bullets[part.bullet].text);
    for (const model::Field& field : position.fields)
        if (const auto* text = std::get_if<model::Text>(&field.value))
            return at + ' ' + words_of(*text);
    return at;
}

std::string in_line(const ForPosting& chosen, const tailoring::Displaced& next,
                    const Sources& sources) {
    std::string text = fmt::format("  {}\n", called(chosen, next.piece, sources));
    for (const std::size_t gone : next.gone)
        text += fmt::format("    in place of {}\n", called(chosen, gone, sources));
    return text + fmt::format("    would serve the posting {:.1f} % less\n",
                              std::max(0.0, next.lost) * 100);
}

std::string terms_shown(const ForPosting& chosen) {
    double shown = 0, all = 0;
    const auto& offer = chosen.tailored.offer;
    for (std::size_t t = 0; t < chosen.demand.size(); ++t) {
        bool there = false;
        for (std::size_t p = 0; p < offer.parts.size(); ++p)
            there = there || (chosen.tailored.choice.taken[p] &&
                              std::ranges::find(offer.problem.pieces[p].shows, 2 * t) !=
                                  offer.problem.pieces[p].shows.end());
        if (chosen.demand[t].spots.empty()) continue;
        all += chosen.demand[t].weight;
        if (there) shown += chosen.demand[t].weight;
    }
    return fmt::format("{:.0f} %", all > 0 ? 100 * shown / all : 100);
}

}

std::string tailor_report(const ForPosting& chosen, const Sources& sources) {
    const tailoring::Choice& choice = chosen.tailored.choice;
    std::string text =
        fmt::format("Chosen: {}, {}.\n", share_taken(chosen, Part::Kind::position, "entries"),
                    share_taken(chosen, Part::Kind::bullet, "bullets"));
    text += fmt::format("Of what the résumé shows of the posting, by weight, {} is there.\n",
                        terms_shown(chosen));
    const double more = 100 * static_cast<double>(choice.bound - choice.worth) /
                        static_cast<double>(std::max<std::int64_t>(1, choice.worth));
    text += choice.is_best() ? std::string("No other choice as high serves it better.\n")
                             : fmt::format("No other choice as high serves it more than {:.2f} % "
                                           "better.\n",
                                           more);
    constexpr std::size_t most = 3;
    const auto next = next_in_line(chosen.tailored, most);
    if (!next.empty()) text += "Next in line:\n";
    for (const tailoring::Displaced& each : next)
        text += in_line(chosen, each, sources);
    return text;
}

}
