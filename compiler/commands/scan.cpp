#include "compiler/commands/scan.hpp"

#include "compiler/commands/messages.hpp"
#include "compiler/scan/report.hpp"
#include "compiler/scan/scan.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdio>
#include <exception>

namespace quoin {

namespace {

constexpr int json_version = 1; // goes up when a key changes its meaning

std::variant<Scan, std::string> scan_input(const std::string& input) {
    try {
        return scan_pdf(input);
    } catch (const std::exception& fault) { // of the system: no process, no memory
        return std::string("it could not be scanned: ") + fault.what();
    }
}

bool has_faults(const std::variant<Scan, std::string>& result) {
    const auto* scan = std::get_if<Scan>(&result);
    return !scan || std::ranges::any_of(scan->faults, [](const ScanFault& fault) {
        return fault.weight != ScanWeight::consider;
    });
}

}

ExitCode run_scan(const ScanRequest& request) {
    const bool json = request.format == "json";
    nlohmann::ordered_json files = nlohmann::ordered_json::array();
    ExitCode code = ExitCode::done;
    bool first = true;
    for (const std::string& input : request.inputs) {
        const auto result = scan_input(input);
        if (has_faults(result)) code = ExitCode::errors;
        const auto* scan = std::get_if<Scan>(&result);
        if (!scan) fmt::print(stderr, "{}: error: {}\n", input, std::get<std::string>(result));
        if (json)
            files.push_back(scan ? report_json(input, *scan)
                                 : report_json(input, std::get<std::string>(result)));
        else if (scan && !print_output("scan", (first ? "" : "\n") + report_text(input, *scan)))
            return ExitCode::errors;
        first = first && !scan;
    }
    if (json) {
        const nlohmann::ordered_json all = {{"version", json_version}, {"files", std::move(files)}};
        // file names may be of any bytes
        const auto text =
            all.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + '\n';
        if (!print_output("scan", text)) return ExitCode::errors;
    }
    return code;
}

}
