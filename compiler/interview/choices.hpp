// What is chosen from a list: a stage or a field, by its number or its name.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::interview {

struct Choice {
    std::string_view name, told;
};

struct Choices {
    std::vector<Choice> all;

    std::optional<std::string_view> chosen(std::string_view typed) const;
    std::string meant(std::string_view typed) const; // "; did you mean 'software'?", or nothing
    std::string refusal(std::string_view typed) const;
    std::string names() const;  // in one line
    std::string listed() const; // one a line, with its number
};

Choices choices_for(std::string_view label); // `stage` or `field`

}
