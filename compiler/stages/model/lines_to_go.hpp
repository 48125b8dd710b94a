// What no résumé says, wherever it stands.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace quoin::model {

struct LineToGo {
    std::string says; // why it is to go
    bool surely = false;
};
std::optional<LineToGo> line_to_go(std::string_view text);

// `Did you graduate? No (expected 06-2027)`: what stands behind a question of a form, without its
// yes or no; none if the line is no such question.
std::optional<std::string_view> answer_in_form(std::string_view text);

}
