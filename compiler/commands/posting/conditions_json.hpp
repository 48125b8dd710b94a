// The conditions of a posting, as `posting` and `match` print them for programs.
#pragma once

#include "compiler/postings/posting.hpp"

#include <nlohmann/json_fwd.hpp>

namespace quoin::commands {

nlohmann::ordered_json conditions_json(const postings::Posting& posting);

}
