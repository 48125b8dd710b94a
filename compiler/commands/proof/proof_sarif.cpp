// Findings in the Static Analysis Results Interchange Format, SARIF 2.1.0 (OASIS, 2020).
#include "compiler/base/ascii.hpp"
#include "compiler/commands/command_line.hpp"
#include "compiler/commands/proof/proof_report.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <map>

namespace quoin::commands {

namespace {

using Json = nlohmann::ordered_json;

constexpr const char* schema = "https://json.schemastore.org/sarif-2.1.0.json";

const char* level_of(advice::Weight weight) {
    switch (weight) {
    case advice::Weight::must:
        return "error";
    case advice::Weight::should:
        return "warning";
    case advice::Weight::consider:
        break;
    }
    return "note";
}

// A relative reference of RFC 3986: all but unreserved characters and `/` percent-encoded.
std::string uri_of(std::string_view name) {
    std::string uri;
    for (const char c : name) {
        if (is_letter_or_figure(c) || std::string_view("-._~/").find(c) != std::string_view::npos)
            uri += c;
        else
            uri += fmt::format("%{:02X}", static_cast<unsigned char>(c));
    }
    return uri;
}

Json region_of(const Place& place, Columns& columns) {
    Json region = {{"startLine", place.line}};
    if (place.column == 0) return region;
    const auto [begin, end] = columns.of(place);
    region["startColumn"] = begin;
    region["endColumn"] = end;
    return region;
}

Json location_of(const Place& place, Columns& columns) {
    Json physical = {
        {"artifactLocation", {{"uri", uri_of(columns.sources().file(place.file).name)}}}};
    if (place.line != 0) physical["region"] = region_of(place, columns);
    return {{"physicalLocation", std::move(physical)}};
}

Json fix_of(const advice::Finding& finding, Columns& columns) {
    std::map<std::uint32_t, Json> by_file;
    for (const Edit& edit : finding.safe_mend) {
        Json& replacements = by_file.try_emplace(edit.place.file, Json::array()).first->second;
        replacements.push_back({{"deletedRegion", region_of(edit.place, columns)},
                                {"insertedContent", {{"text", edit.replacement}}}});
    }
    Json changes = Json::array();
    for (auto& [file, replacements] : by_file)
        changes.push_back(
            {{"artifactLocation", {{"uri", uri_of(columns.sources().file(file).name)}}},
             {"replacements", std::move(replacements)}});
    return {{"description", {{"text", finding.suggestion.empty() ? "mend" : finding.suggestion}}},
            {"artifactChanges", std::move(changes)}};
}

Json result_of(const advice::Finding& finding, Columns& columns) {
    Json result = {{"ruleId", finding.check},
                   {"ruleIndex", advice::check_number(finding.check)},
                   {"level", level_of(weight_of(finding))},
                   {"message", {{"text", sentence_of(finding)}}},
                   {"locations", Json::array({location_of(finding.place, columns)})}};
    if (!finding.office.empty()) result["properties"] = {{"office", finding.office}};
    if (!finding.safe_mend.empty()) result["fixes"] = Json::array({fix_of(finding, columns)});
    return result;
}

Json rule_of(const advice::Check& check) {
    std::string help = fmt::format("{} Source: {}.", check.why, check.source);
    if (!check.caution.empty()) help += fmt::format(" {}", check.caution);
    return {{"id", check.name},
            {"shortDescription", {{"text", check.looks_at}}},
            {"fullDescription", {{"text", fmt::format("{} {}", check.looks_at, check.why)}}},
            {"help", {{"text", help}}},
            {"defaultConfiguration", {{"level", level_of(check.weight)}}},
            {"properties", {{"weight", name_of(check.weight)}, {"group", check.group}}}};
}

Json notification_of(const Diagnostic& diagnostic, Columns& columns) {
    const char* level = diagnostic.severity == Severity::error     ? "error"
                        : diagnostic.severity == Severity::warning ? "warning"
                                                                   : "note";
    return {{"level", level},
            {"message", {{"text", diagnostic.text}}},
            {"locations", Json::array({location_of(diagnostic.place, columns)})}};
}

}

Json proof_sarif(Proofreads all) {
    Json rules = Json::array(), results = Json::array(), notifications = Json::array();
    for (const advice::Check* check : advice::all_checks())
        rules.push_back(rule_of(*check));
    bool successful = true;
    for (const auto& one : all) {
        Columns columns(one->sources);
        successful = successful && one->resume.has_value();
        for (const Diagnostic& diagnostic : one->diagnostics.all())
            notifications.push_back(notification_of(diagnostic, columns));
        for (const advice::Finding& finding : one->proof.findings)
            results.push_back(result_of(finding, columns));
        for (const advice::SetAside& aside : one->proof.set_aside) {
            Json result = result_of(aside.finding, columns);
            result["suppressions"] =
                Json::array({{{"kind", "inSource"}, {"justification", aside.acceptance->reason}}});
            results.push_back(std::move(result));
        }
    }
    Json run = {
        {"tool",
         {{"driver", {{"name", "quoin"}, {"version", version()}, {"rules", std::move(rules)}}}}},
        {"columnKind", "unicodeCodePoints"},
        {"invocations", Json::array({{{"executionSuccessful", successful},
                                      {"toolExecutionNotifications", std::move(notifications)}}})},
        {"results", std::move(results)}};
    return {{"$schema", schema}, {"version", "2.1.0"}, {"runs", Json::array({std::move(run)})}};
}

}
