// What a portal looks for and does not find, and all checks together.
#include "compiler/portal/faults.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/portal/letters.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace quoin::portal {

namespace {

bool has_link_to(const Evidence& evidence, std::string_view scheme) {
    return std::ranges::any_of(evidence.looks.addresses, [&](const std::string& address) {
        return address.starts_with(scheme);
    });
}

void check_contacts(const Evidence& evidence, const Found& found, ScanFaults& faults) {
    if (found.name.empty()) report<messages::no_name>(faults);
    if (found.emails.empty())
        report<messages::no_email>(faults, has_link_to(evidence, "mailto:")
                                               ? fill<messages::only_a_link>()
                                               : fill<messages::found_nowhere>());
    if (found.phones.empty())
        report<messages::no_phone>(faults, has_link_to(evidence, "tel:")
                                               ? fill<messages::only_a_link>()
                                               : fill<messages::found_nowhere>());
}

void check_sections(const Found& found, ScanFaults& faults) {
    if (std::ranges::none_of(found.sections, &FoundSection::known))
        report<messages::no_sections>(faults);
    std::vector<std::string> unknown;
    for (const FoundSection& section : found.sections)
        if (!section.known) unknown.push_back(section.title);
    if (!unknown.empty())
        report<messages::unusual_titles>(faults, list_of(unknown),
                                         unknown.size() == 1 ? "a heading" : "headings");
}

std::string without_spaces(std::string_view text) {
    std::string kept;
    for (const char c : text)
        if (c != ' ' && c != '\n') kept += c;
    return kept;
}

// Tags leave out what the file calls a page header or footer; many readers leave that out too.
std::vector<std::string> outside_of_tags(const Evidence& evidence, const Found& found) {
    std::vector<std::string> missing;
    if (evidence.tagged_text.empty()) return missing;
    const std::string tagged = without_spaces(evidence.tagged_text);
    const auto look = [&](const std::string& text) {
        if (!text.empty() && tagged.find(without_spaces(text)) == std::string::npos)
            missing.push_back(text);
    };
    look(found.name);
    for (const auto* all : {&found.emails, &found.phones})
        if (!all->empty()) look(all->front());
    return missing;
}

// Lines that every page has, in the same place near its top or bottom.
std::vector<std::string> repeated_lines(const Reading& reading) {
    constexpr double part = 0.1;
    std::map<std::pair<long, std::string>, std::size_t> pages;
    for (const ReadLine& line : reading.lines) {
        const ReadPage& page = reading.pages[line.page];
        if (line.box.bottom < page.height * part || line.box.top > page.height * (1 - part))
            ++pages[{std::lround(line.box.top), line.text()}];
    }
    std::vector<std::string> lines;
    for (const auto& [line, count] : pages)
        if (reading.pages.size() > 1 && count >= reading.pages.size()) lines.push_back(line.second);
    return lines;
}

void check_page_headers(const Evidence& evidence, const Found& found, ScanFaults& faults) {
    std::vector<std::string> in_header = outside_of_tags(evidence, found);
    const bool all_tagged = evidence.facts.tagged && evidence.names.all_text_marked;
    if (evidence.tagged_text.empty() && !all_tagged)
        for (const std::string& line : repeated_lines(evidence.by_place))
            for (const auto* all : {&found.emails, &found.phones})
                for (const std::string& one : *all)
                    if (line.find(one) != std::string::npos) in_header.push_back(one);
    if (in_header.empty()) return;
    report<messages::contact_in_page_header>(faults, list_of(in_header),
                                             in_header.size() == 1 ? "stands" : "stand");
}

}

std::size_t letters_of(const Reading& reading) {
    std::size_t letters = 0;
    for (const ReadLine& line : reading.lines)
        for (const ReadWord& word : line.words)
            letters += count_letters(word.text).characters;
    return letters;
}

std::string list_of(const std::vector<std::string>& words) {
    constexpr std::size_t shown = 3;
    return joined(words, " and ", shown, in_quotes);
}

void check_finds(const Evidence& evidence, const Found& found, ScanFaults& faults) {
    if (letters_of(evidence.by_place) < few_letters) return; // no-text says it all
    check_contacts(evidence, found, faults);
    check_sections(found, faults);
    check_page_headers(evidence, found, faults);
}

ScanFaults find_faults(const Evidence& evidence, const Found& found) {
    ScanFaults faults;
    check_file(evidence, faults);
    check_characters(evidence, faults);
    check_spacing(evidence, faults);
    check_columns(evidence, faults);
    check_edges(evidence, faults);
    check_looks(evidence, faults);
    check_finds(evidence, found, faults);
    std::ranges::stable_sort(faults, {}, &ScanFault::weight);
    return faults;
}

}
