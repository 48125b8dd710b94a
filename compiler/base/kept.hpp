// What was made of each word, kept while a page or two are read: the same few hundred words make up
// most of them.
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <unordered_map>

namespace quoin {

template<typename Made>
class KeptByWord {
public:
    Made of(std::string_view word, const auto& make) {
        if (const auto found = made_.find(word); found != made_.end()) return found->second;
        constexpr std::size_t most = 8192;
        if (made_.size() >= most) made_.clear();
        return made_.emplace(word, make(word)).first->second;
    }

private:
    struct Hash {
        using is_transparent = void;
        std::size_t operator()(std::string_view word) const {
            return std::hash<std::string_view>{}(word);
        }
    };

    std::unordered_map<std::string, Made, Hash, std::equal_to<>> made_;
};

}
