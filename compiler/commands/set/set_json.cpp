#include "compiler/commands/set/set_json.hpp"

#include "compiler/base/json_text.hpp"
#include "compiler/stages/fit/explain.hpp"

#include <nlohmann/json.hpp>

#include <variant>

namespace quoin::commands {

namespace {

using SetJson = nlohmann::ordered_json;

constexpr int set_json_version = 1; // goes up when a key changes its meaning

SetJson chosen_json(const fit::Explanation& explanation) {
    constexpr const char* names[fit::quantity_count] = {
        "size", "leading", "side_margin", "top_margin", "bottom_margin", "gaps"};
    SetJson json = SetJson::object();
    for (std::size_t i = 0; i < fit::quantity_count; ++i)
        json[names[i]] = in_thousandths(explanation.chosen[i].value);
    return json;
}

SetJson cut_json(const fit::Cut& cut, const Sources& sources) {
    constexpr const char* kinds[] = {"entry", "bullet", "words"};
    SetJson places = SetJson::array();
    for (const Place& place : cut.places)
        places.push_back({{"file", sources.file(place.file).name},
                          {"line", place.line},
                          {"column", sources.display_column(place)}});
    return {{"kind", kinds[static_cast<std::size_t>(cut.kind)]},
            {"lines", cut.lines},
            {"characters", cut.characters},
            {"words", cut.words},
            {"places", std::move(places)}};
}

SetJson all_cuts_json(const std::vector<fit::Cut>& cuts, const Sources& sources) {
    SetJson all = SetJson::array();
    for (const fit::Cut& cut : cuts)
        all.push_back(cut_json(cut, sources));
    return all;
}

const char* status_name(ExitCode code) {
    if (code == ExitCode::done) return "done";
    return code == ExitCode::does_not_fit ? "does not fit" : "errors";
}

// Null: nothing is written there.
SetJson outputs_json(const Outputs& outputs, bool are_written) {
    const auto target = [&](const std::string& name) {
        return are_written && !name.empty() ? SetJson(name) : SetJson();
    };
    return {{"pdf", target(outputs.pdf)},
            {"plain", target(outputs.plain)},
            {"deps", target(outputs.deps)}};
}

}

SetJson fit_json(const stages::Typeset& typeset) {
    const auto* fit = std::get_if<fit::Fit>(&typeset.fit);
    if (fit == nullptr) return nullptr;
    const fit::Explanation explanation =
        fit::explain(typeset.composition, typeset.theme, typeset.resume.settings, *fit);
    SetJson json = {{"pages", explanation.pages}, {"allowed", *typeset.resume.settings.pages}};
    json.update(chosen_json(explanation));
    json["lines_free"] = in_thousandths(explanation.room / explanation.line);
    return json;
}

SetJson cuts_json(int lines_too_many, const fit::Cuts& cuts, const stages::Typeset& typeset,
                  const Sources& sources) {
    return {{"lines", lines_too_many},
            {"allowed", *typeset.resume.settings.pages},
            {"pieces", all_cuts_json(cuts.pieces, sources)},
            {"words", all_cuts_json(cuts.words, sources)},
            {"either", cuts.either},
            {"enough", cuts.enough}};
}

std::string set_json(const std::vector<std::string>& inputs, const std::vector<Outputs>& outputs,
                     const std::vector<SetOutcome>& outcomes) {
    SetJson files = SetJson::array();
    for (std::size_t i = 0; i < inputs.size(); ++i)
        files.push_back(
            {{"file", inputs[i]},
             {"status", status_name(outcomes[i].code)},
             {"fit", outcomes[i].fit},
             {"cuts", outcomes[i].cuts},
             {"outputs", outputs_json(outputs[i], outcomes[i].code == ExitCode::done)}});
    return json_text({{"version", set_json_version}, {"files", std::move(files)}});
}

}
