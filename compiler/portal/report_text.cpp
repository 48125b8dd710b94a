#include "compiler/portal/report.hpp"

#include "compiler/base/printable.hpp"
#include "compiler/base/wrapped.hpp"

#include <fmt/format.h>

namespace quoin::portal {

namespace {

std::string number_of(std::size_t count, std::string_view one) {
    return fmt::format("{} {}{}", count, one, count == 1 ? "" : "s");
}

std::string joined(const std::vector<std::string>& all) {
    std::string text;
    for (const std::string& one : all)
        text.append(text.empty() ? "" : ", ").append(one);
    return text.empty() ? "(not found)" : text;
}

std::string found_text(const Found& found) {
    std::string text = "\nWhat a portal finds\n";
    const auto row = [&](std::string_view label, const std::string& value) {
        text += fmt::format("  {:<10}{}\n", label, value);
    };
    row("name", found.name.empty() ? "(not found)" : found.name);
    row("email", joined(found.emails));
    row("phone", joined(found.phones));
    if (!found.links.empty()) row("links", joined(found.links));
    std::size_t entry = 0;
    if (found.sections.empty()) row("sections", "(not found)");
    for (std::size_t i = 0; i < found.sections.size(); ++i) {
        row(i == 0 ? "sections" : "", found.sections[i].title);
        for (; entry < found.entries.size() && found.entries[entry].section == i; ++entry) {
            const FoundEntry& one = found.entries[entry];
            row("", fmt::format("  {}{}{}{}", one.title, one.dates.empty() ? "" : " | " + one.dates,
                                one.bullets == 0 ? "" : " | ",
                                one.bullets == 0 ? "" : number_of(one.bullets, "bullet")));
        }
    }
    return text;
}

std::string faults_text(const std::vector<ScanFault>& faults) {
    if (faults.empty()) return "\nNothing wrong was found\n";
    std::string text = "\nWhat is wrong\n";
    for (const ScanFault& fault : faults) {
        const std::string page = fault.page == 0 ? "" : fmt::format("page {}: ", fault.page);
        text +=
            fmt::format("  {}: {}{} ({})\n", name_of(fault.weight), page, fault.text, fault.check);
        text += wrapped("Why: " + fault.why, 6);
        text += wrapped("Mend: " + fault.mend, 6);
    }
    return text;
}

std::string text_in_order(const Reading& reading) {
    std::string text = "\nThe text in reading order\n";
    const std::string all = reading.text();
    for (std::string_view left = all; !left.empty();) {
        const std::size_t end = left.find_first_of("\n\f");
        const bool page = left[end] == '\f';
        text += page ? "  ----\n" : end == 0 ? "\n" : fmt::format("  {}\n", left.substr(0, end));
        left.remove_prefix(end + 1);
    }
    return text;
}

}

std::string report_text(std::string_view file, const Scan& scan) {
    const Evidence& evidence = scan.evidence;
    std::string text =
        fmt::format("{}: {}, {}\n", printable_name(file),
                    number_of(static_cast<std::size_t>(evidence.facts.pages), "page"),
                    number_of(evidence.by_place.word_count(), "word"));
    text += found_text(scan.found);
    text += faults_text(scan.faults);
    if (evidence.by_place.word_count() > 0) text += text_in_order(evidence.by_place);
    return text;
}

}
