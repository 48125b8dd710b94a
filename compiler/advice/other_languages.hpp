// What is proofread of a résumé that is not in English.
#pragma once

#include "compiler/stages/model/resume.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::advice {

bool is_english(const model::Resume& resume);  // of any country
bool is_american(const model::Resume& resume); // or of none in particular

// Checks that read places, dates, counts and the page, and no words.
bool reads_any_language(std::string_view check);

// The dictionary of its language as Debian installs it, without `.aff` and `.dic`; none for
// American English, which quoin has, and where there is none.
std::optional<std::filesystem::path> installed_dictionary(const model::Resume& resume);

// What is passed over in the language of a résumé, to be said once.
std::vector<std::string> passed_over(const model::Resume& resume);

}
