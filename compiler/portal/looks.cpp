#include "compiler/portal/looks.hpp"

#include "compiler/base/numbers.hpp"
#include "compiler/portal/markup.hpp"

#include <algorithm>
#include <map>

namespace quoin::portal {

namespace {

constexpr double zoom = 3; // the most pdftohtml takes; it rounds sizes to whole numbers

double channel(std::string_view hex) {
    return number_from<unsigned>(hex, 16).value_or(0) / 255.0;
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

class LookReader {
public:
    void take(const MarkupTag& tag) {
        if (tag.name == "fontspec")
            add_style(tag);
        else if (tag.name == "text")
            open_ = style_named(attribute_of(tag, "font").value_or(""));
        else if (tag.name == "/text")
            open_ = nullptr;
        else if (tag.name == "a")
            add_address(tag);
        if (open_) count(letters_in(tag.text));
    }

    Looks result() {
        for (const auto& [number, style] : styles_)
            if (style.letters > 0) looks_.texts.push_back(style);
        std::ranges::sort(looks_.addresses);
        const auto again = std::unique(looks_.addresses.begin(), looks_.addresses.end());
        looks_.addresses.erase(again, looks_.addresses.end());
        return std::move(looks_);
    }

private:
    void add_style(const MarkupTag& tag) {
        styles_[std::string(attribute_of(tag, "id").value_or(""))] = {
            number_in(tag, "size") / zoom, lightness_of(attribute_of(tag, "color").value_or("")),
            0};
    }

    LookOfText* style_named(std::string_view number) {
        const auto style = styles_.find(number);
        return style == styles_.end() ? nullptr : &style->second;
    }

    void add_address(const MarkupTag& tag) {
        if (const auto address = attribute_of(tag, "href"))
            looks_.addresses.push_back(clean_text(*address));
    }

    void count(std::size_t letters) {
        open_->letters += letters;
        looks_.letters += letters;
    }

    Looks looks_;
    std::map<std::string, LookOfText, std::less<>> styles_; // by number
    LookOfText* open_ = nullptr;
};

}

Looks read_looks(std::string_view xml) {
    LookReader reader;
    TagReader tags(xml);
    while (const auto tag = tags.next())
        reader.take(*tag);
    return reader.result();
}

}
