// What words tell of what they name: somebody's work, who gives it, a school, a degree, a place.
#pragma once

#include <cstddef>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::transcription {

// Above 0: what somebody is called at work; below 0: a firm, an office, a club.
double leans_to_role(std::string_view text);

bool names_school(std::string_view text);
bool names_degree(std::string_view text);
bool names_credential(std::string_view text); // a licence, a certificate, a card

// Towns that are named somewhere with their state or country.
class KnownTowns {
public:
    void learn(std::string_view text);
    bool has(std::string_view town) const;

    // Bytes of a place at the text's end, with no comma before it: `Port Ellery, WA`; 0 if there is
    // none. A lone town counts if it is known.
    std::size_t place_at_end(std::string_view text) const;

private:
    std::set<std::string, std::less<>> towns_;
};

// Words with a capital each, and no more than three: as towns are called.
bool may_be_town(std::string_view text);

std::vector<std::string_view> comma_parts(std::string_view text); // outside parentheses, trimmed

}
