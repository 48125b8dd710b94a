// Findings for other programs.
#include "compiler/commands/proof/proof_report.hpp"

#include "compiler/base/json_text.hpp"

#include <nlohmann/json.hpp>

namespace quoin::commands {

namespace {

using Json = nlohmann::ordered_json;

constexpr int proof_json_version = 1; // goes up when a key changes its meaning

Json place_json(const Place& place, Columns& columns) {
    Json json = {{"file", columns.sources().file(place.file).name}};
    if (place.line == 0) return json;
    json["line"] = place.line;
    if (place.column == 0) return json;
    const auto [begin, end] = columns.of(place);
    json["column"] = begin;
    json["length"] = end - begin;
    return json;
}

Json finding_json(const advice::Finding& finding, Columns& columns) {
    const advice::Check* check = advice::find_check(finding.check);
    Json json = {{"check", finding.check},
                 {"weight", name_of(weight_of(finding))},
                 {"group", check ? check->group : ""},
                 {"place", place_json(finding.place, columns)},
                 {"text", finding.text},
                 {"suggestion", finding.suggestion},
                 {"why", check ? check->why : ""}};
    if (check && !check->caution.empty()) json["caution"] = check->caution;
    if (!finding.office.empty()) json["office"] = finding.office;
    Json mend = Json::array();
    for (const Edit& edit : finding.safe_mend)
        mend.push_back(
            {{"place", place_json(edit.place, columns)}, {"replacement", edit.replacement}});
    if (!mend.empty()) json["mend"] = std::move(mend);
    return json;
}

Json diagnostic_json(const Diagnostic& diagnostic, Columns& columns) {
    const char* severity = diagnostic.severity == Severity::error     ? "error"
                           : diagnostic.severity == Severity::warning ? "warning"
                                                                      : "note";
    return {{"severity", severity},
            {"place", place_json(diagnostic.place, columns)},
            {"text", diagnostic.text}};
}

Json office_json(const Proofread& one) {
    Json left_out = Json::array();
    for (const advice::LeftOut& each : one.proof.left_out)
        left_out.push_back({{"check", each.check}, {"count", each.count}, {"text", each.office}});
    return {{"name", one.office->name},
            {"file", one.office->path.string()},
            {"closing", one.office->closing},
            {"left_out", std::move(left_out)}};
}

Json file_json(const Proofread& one) {
    Json json = {{"file", one.input}, {"read", one.resume.has_value()}};
    Columns columns(one.sources);
    json["messages"] = Json::array();
    for (const Diagnostic& diagnostic : one.diagnostics.all())
        json["messages"].push_back(diagnostic_json(diagnostic, columns));
    json["findings"] = Json::array();
    for (std::size_t number = 1; const advice::Finding& finding : one.proof.findings) {
        Json each = {{"number", number++}};
        each.update(finding_json(finding, columns));
        json["findings"].push_back(std::move(each));
    }
    json["set_aside"] = Json::array();
    for (const advice::SetAside& aside : one.proof.set_aside) {
        Json each = finding_json(aside.finding, columns);
        each["reason"] = aside.acceptance->reason;
        json["set_aside"].push_back(std::move(each));
    }
    if (one.office) json["office"] = office_json(one);
    return json;
}

}

Json proof_json(Proofreads all) {
    Json files = Json::array();
    for (const auto& one : all)
        files.push_back(file_json(*one));
    return {{"version", proof_json_version},
            {"columns", "Unicode characters from 1"},
            {"files", std::move(files)}};
}

std::string proof_for_programs(Proofreads all, std::string_view format) {
    return json_text(format == "sarif" ? proof_sarif(all) : proof_json(all));
}

}
