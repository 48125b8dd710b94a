// The checks of a scan. Each says nothing where it is not sure.
#pragma once

#include "compiler/portal/messages.hpp"
#include "compiler/portal/scan.hpp"

#include <vector>

namespace quoin::portal {

using ScanFaults = std::vector<ScanFault>;

// A row of the table, of the whole document unless the page is set.
template<const messages::FaultRow& row, typename... Found>
ScanFault& report(ScanFaults& faults, Found&&... found) {
    return faults.emplace_back(ScanFault{std::string(row.check), row.weight, 0,
                                         fill<row>(std::forward<Found>(found)...),
                                         std::string(row.why), std::string(row.mend)});
}

ScanFaults find_faults(const Evidence& evidence, const Found& found); // all of them, sorted

void check_file(const Evidence& evidence, ScanFaults& faults);       // file_faults.cpp
void check_characters(const Evidence& evidence, ScanFaults& faults); // character_faults.cpp
void check_spacing(const Evidence& evidence, ScanFaults& faults);    // spacing_faults.cpp
void check_columns(const Evidence& evidence, ScanFaults& faults);    // column_faults.cpp
void check_edges(const Evidence& evidence, ScanFaults& faults);      // edge_faults.cpp
void check_looks(const Evidence& evidence, ScanFaults& faults);      // look_faults.cpp
void check_finds(const Evidence& evidence, const Found& found,
                 ScanFaults& faults); // find_faults.cpp

std::size_t letters_of(const Reading& reading);

// "'SUMMARY', 'SKILLS' and 3 more"
std::string list_of(const std::vector<std::string>& words);

}
