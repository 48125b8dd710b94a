#include "compiler/trade/spoken_languages.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/trade/lists.hpp"

namespace quoin::trade {

bool is_spoken_language(std::string_view lower) {
    return is_one_of(lower, List::spoken_languages);
}

bool are_spoken_languages(std::string_view lower) {
    for (const std::string_view sign : {" and ", " & ", "/"})
        if (const std::size_t at = lower.find(sign); at != std::string_view::npos)
            return is_spoken_language(trimmed(lower.substr(0, at), " ")) &&
                   are_spoken_languages(trimmed(lower.substr(at + sign.size()), " "));
    return is_spoken_language(lower);
}

}
