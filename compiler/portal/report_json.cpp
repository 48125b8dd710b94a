#include "compiler/portal/report.hpp"

#include "compiler/base/json_text.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <nlohmann/json.hpp>

namespace quoin::portal {

namespace {

using Json = nlohmann::ordered_json;

constexpr int scan_json_version = 1; // goes up when a key changes its meaning

Json or_null(const std::string& text) {
    return text.empty() ? Json(nullptr) : Json(text);
}

Json json_of(const FoundSection& section) {
    return {{"title", section.title},
            {"known", section.known},
            {"holds", section.holds ? Json(name_of(*section.holds)) : Json(nullptr)},
            {"page", section.page + 1}};
}

Json json_of(const FoundEntry& entry, const std::vector<FoundSection>& sections) {
    return {{"section", sections[entry.section].title},
            {"title", entry.title},
            {"dates", or_null(entry.dates)},
            {"edtf", or_null(entry.edtf)},
            {"bullets", entry.bullets},
            {"page", entry.page + 1}};
}

Json json_of(const Found& found) {
    Json sections = Json::array(), entries = Json::array();
    for (const FoundSection& section : found.sections)
        sections.push_back(json_of(section));
    for (const FoundEntry& entry : found.entries)
        entries.push_back(json_of(entry, found.sections));
    return {{"name", or_null(found.name)}, {"emails", found.emails}, {"phones", found.phones},
            {"links", found.links},        {"sections", sections},   {"entries", entries}};
}

Json json_of(const ScanFault& fault) {
    return {{"check", fault.check},
            {"weight", name_of(fault.weight)},
            {"page", fault.page == 0 ? Json(nullptr) : Json(fault.page)},
            {"text", fault.text},
            {"why", fault.why},
            {"mend", fault.mend}};
}

}

Json report_json(std::string_view file, const Scan& scan) {
    const Evidence& evidence = scan.evidence;
    Json faults = Json::array();
    for (const ScanFault& fault : scan.faults)
        faults.push_back(json_of(fault));
    return {{"file", file},
            {"readable", true},
            {"pages", evidence.facts.pages},
            {"words", evidence.by_place.word_count()},
            {"title", or_null(evidence.facts.title)},
            {"tagged", evidence.facts.tagged},
            {"encrypted", evidence.facts.encrypted},
            {"found", json_of(scan.found)},
            {"faults", faults},
            {"text", evidence.by_place.text()}};
}

Json report_json(std::string_view file, const std::string& unreadable) {
    return {{"file", file}, {"readable", false}, {"error", unreadable}};
}

JsonReport::JsonReport() : files_(std::make_unique<Json>(Json::array())) {}
JsonReport::~JsonReport() = default;

void JsonReport::add(std::string_view file, const std::variant<Scan, std::string>& result) {
    std::visit([&](const auto& one) { files_->push_back(report_json(file, one)); }, result);
}

std::string JsonReport::text() const {
    return json_text({{"version", scan_json_version}, {"files", *files_}});
}

}
