// The tables of verbs and options, for programs: the manual's pages and the completions of shells
// are made from them.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace quoin::commands {

std::string table_json(std::span<const std::string_view> pages);

}
