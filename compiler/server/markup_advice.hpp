// What is said of a label, from where it is said already: the questions that a first draft is made
// by, and the reference of the markup that is installed.
#pragma once

#include "compiler/session/session.hpp"
#include "compiler/trade/kinds.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace quoin::server {

struct LabelAdvice {
    std::string goes_in; // one line; may be empty
    std::string example; // a value, or a line
    std::string why;     // what to leave out, or to see to
};

// In the heading where there is no kind of section. `data` is data_folder().
LabelAdvice advice_on(std::string_view label, std::optional<trade::Holds> holds,
                      const std::filesystem::path& data);

// What the reference of that kind of document says of a label; empty if nothing.
std::string reference_on(std::string_view label, session::Written written,
                         const std::filesystem::path& data);

}
