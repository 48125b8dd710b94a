// Named looks of a word processor's file, each of which may build upon another.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace quoin::transcription {

struct StyleLook { // what a style says; none: what it builds upon says
    std::string parent, name;
    std::optional<double> size, left, above; // pt
    std::optional<bool> strong, slanted, listed;
    std::optional<int> outline; // from 1
};

class StyleTable {
public:
    StyleLook& at(std::string_view id) { return styles_[std::string(id)]; }

    // With all that it builds upon.
    StyleLook whole(std::string_view id) const;

private:
    std::map<std::string, StyleLook, std::less<>> styles_;
};

// `12pt`, `0.5in`, `1.2cm`, `3mm`; none: no such length.
std::optional<double> points_of(std::string_view length);
std::optional<double> number_of(std::string_view text);

}
