#include "compiler/portal/looks.hpp"

#include "compiler/portal/markup.hpp"

#include <algorithm>
#include <charconv>
#include <map>

namespace quoin::portal {

namespace {

constexpr double zoom = 3; // the most pdftohtml takes; it rounds sizes to whole numbers

double channel(std::string_view hex) {
    unsigned value = 0;
    std::from_chars(hex.data(), hex.data() + hex.size(), value, 16);
    return value / 255.0;
}

// Of `#rrggbb`; weights as luma has them (Rec. 709), enough to tell white from the rest.
double lightness_of(std::string_view colour) {
    if (colour.size() < 7) return 0;
    return 0.2126 * channel(colour.substr(1, 2)) + 0.7152 * channel(colour.substr(3, 2)) +
           0.0722 * channel(colour.substr(5, 2));
}

std::size_t letters_in(std::string_view written) {
    const std::string text = clean_text(written);
    return static_cast<std::size_t>(std::ranges::count_if(text, [](char c) {
        const bool inside = (static_cast<unsigned char>(c) & 0xC0) == 0x80;
        return !inside && c != ' ';
    }));
}

}

Looks read_looks(std::string_view xml) {
    Looks looks;
    std::map<std::string, LookOfText, std::less<>> styles; // by number
    LookOfText* open = nullptr;
    TagReader tags(xml);
    while (const auto tag = tags.next()) {
        if (tag->name == "fontspec") {
            styles[std::string(attribute_of(*tag, "id").value_or(""))] = {
                number_in(*tag, "size") / zoom,
                lightness_of(attribute_of(*tag, "color").value_or("")), 0};
        } else if (tag->name == "text") {
            const auto style = styles.find(attribute_of(*tag, "font").value_or(""));
            open = style == styles.end() ? nullptr : &style->second;
        } else if (tag->name == "/text") {
            open = nullptr;
            continue;
        } else if (tag->name == "a") {
            if (const auto address = attribute_of(*tag, "href"))
                looks.addresses.push_back(clean_text(*address));
        }
        if (!open) continue;
        const std::size_t letters = letters_in(tag->text);
        open->letters += letters;
        looks.letters += letters;
    }
    for (const auto& [number, style] : styles)
        if (style.letters > 0) looks.texts.push_back(style);
    std::ranges::sort(looks.addresses);
    looks.addresses.erase(std::unique(looks.addresses.begin(), looks.addresses.end()),
                          looks.addresses.end());
    return looks;
}

}
