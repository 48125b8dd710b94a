#include "compiler/trade/months.hpp"

#include "compiler/base/ascii.hpp"

#include <algorithm>

namespace quoin::trade {

namespace {

bool begins_alike(std::string_view name, std::string_view word) {
    return word.size() <= name.size() &&
           std::ranges::equal(name.substr(0, word.size()), word, {}, small_letter, small_letter);
}

}

std::optional<NamedMonth> month_named(std::string_view word) {
    constexpr std::size_t short_length = 3, september = 8;
    for (std::size_t i = 0; i < month_names.size(); ++i) {
        if (!begins_alike(month_names[i], word)) continue;
        const bool whole = word.size() == month_names[i].size();
        const bool sept = i == september && word.size() == short_length + 1;
        if (whole || sept || word.size() == short_length)
            return NamedMonth{static_cast<int>(i) + 1, whole};
    }
    return std::nullopt;
}

}
