#include "compiler/commands/scan/scan.hpp"

#include "compiler/base/data_places.hpp"
#include "compiler/base/printable.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/portal/report.hpp"
#include "compiler/portal/scan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <exception>

namespace quoin::commands {

namespace {

using ScanOrFault = std::variant<portal::Scan, std::string>;

ScanOrFault scan_input(const std::string& input, const portal::PageLanguages& languages) {
    try {
        return portal::scan_pdf(input, font_configuration(data_folder()), languages);
    } catch (const std::exception& fault) { // of the system: no process, no memory
        return fill<messages::not_scanned>(fault.what());
    }
}

// Null after a fault, which is said.
const portal::Scan* scan_in(const std::string& input, const ScanOrFault& result) {
    if (const auto* fault = std::get_if<std::string>(&result))
        print_messages(fmt::format("{}: error: {}\n", printable_name(input), *fault));
    return std::get_if<portal::Scan>(&result);
}

bool has_faults(const ScanOrFault& result) {
    const auto* scan = std::get_if<portal::Scan>(&result);
    return !scan || std::ranges::any_of(scan->faults, [](const portal::ScanFault& fault) {
        return fault.weight != trade::Weight::consider;
    });
}

}

ExitCode run_scan(const ScanRequest& request) {
    if (std::ranges::count(request.inputs, "-") > 0)
        return wrong_use("scan", fill<messages::no_scan_of_input>());
    const bool json = request.format == "json";
    const auto languages = portal::page_languages(page_words_in(data_folder()));
    portal::JsonReport report;
    ExitCode code = ExitCode::done;
    bool first = true;
    for (const std::string& input : request.inputs) {
        const ScanOrFault result = scan_input(input, languages);
        if (has_faults(result)) code = ExitCode::errors;
        const auto* scan = scan_in(input, result);
        if (json)
            report.add(input, result);
        else if (scan && !print_report("scan", (first ? "" : "\n") + report_text(input, *scan)))
            return ExitCode::errors;
        first = first && !scan;
    }
    if (json && !print_output("scan", report.text())) return ExitCode::errors;
    return code;
}

}
