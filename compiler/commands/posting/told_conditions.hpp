// The conditions of a posting, as `posting` and `match` tell them.
#pragma once

#include "compiler/postings/posting.hpp"

#include <nlohmann/json_fwd.hpp>
#include <string>

namespace quoin::commands {

// With a title; empty if there are none.
std::string conditions_text(const postings::Posting& posting);

nlohmann::ordered_json conditions_json(const postings::Posting& posting);

}
