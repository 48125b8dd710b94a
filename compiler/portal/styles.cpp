#include "compiler/portal/styles.hpp"

#include "compiler/portal/markup.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace quoin::portal {

namespace {

constexpr double zoomed = 3; // as the tool is told

struct StyleFont {
    std::size_t number = 0;
    double size = 0;
};

class StyleReader {
public:
    void take(const MarkupTag& tag) {
        if (tag.name == "page")
            ++pages_;
        else if (tag.name == "fontspec")
            add_font(tag);
        else if (tag.name == "text" && pages_ > 0)
            add_text(tag);
        else if (tag.name == "b" && open_)
            texts_.back().strong = true;
        else if (tag.name == "i" && open_)
            texts_.back().slanted = true;
        else if (tag.name == "/text")
            open_ = false;
    }

    std::vector<StyledText> result() { return std::move(texts_); }

private:
    // A subset's tag, `ABCDEF+`, parts no two fonts.
    void add_font(const MarkupTag& tag) {
        std::string_view family = attribute_of(tag, "family").value_or("");
        if (family.size() > 7 && family[6] == '+') family.remove_prefix(7);
        const std::string key = std::string(family) + '\n' +
                                std::string(attribute_of(tag, "size").value_or("")) + '\n' +
                                std::string(attribute_of(tag, "color").value_or(""));
        const auto number = numbers_.try_emplace(key, numbers_.size()).first->second;
        fonts_[std::string(attribute_of(tag, "id").value_or(""))] = {
            number, number_in(tag, "size") / zoomed};
    }

    void add_text(const MarkupTag& tag) {
        const auto font = fonts_.find(attribute_of(tag, "font").value_or(""));
        const StyleFont known = font == fonts_.end() ? StyleFont{} : font->second;
        const double left = number_in(tag, "left") / zoomed, top = number_in(tag, "top") / zoomed;
        texts_.push_back({pages_ - 1,
                          {left, top, left + number_in(tag, "width") / zoomed,
                           top + number_in(tag, "height") / zoomed},
                          known.number,
                          known.size,
                          false,
                          false});
        open_ = true;
    }

    std::map<std::string, std::size_t> numbers_;
    std::map<std::string, StyleFont, std::less<>> fonts_;
    std::vector<StyledText> texts_;
    std::size_t pages_ = 0;
    bool open_ = false;
};

long cell_of(double y) {
    return static_cast<long>(y / 8);
}

double distance_to(const StyledText& style, const ReadBox& word) {
    return std::abs(style.box.middle() - word.middle());
}

}

std::vector<StyledText> read_styles(std::string_view xml) {
    StyleReader reader;
    TagReader tags(xml);
    while (const auto tag = tags.next())
        reader.take(*tag);
    return reader.result();
}

StylesOfPages::StylesOfPages(const std::vector<StyledText>& styles) {
    constexpr std::size_t most = 400; // in one cell; who has more is no résumé
    for (const StyledText& style : styles) {
        auto& cell = cells_[{style.page, cell_of(style.box.middle())}];
        if (cell.size() < most) cell.push_back(&style);
    }
}

const StyledText* StylesOfPages::at(std::size_t page, const ReadBox& word) const {
    const double x = word.left + std::min(2.0, word.width() / 4);
    const StyledText* nearest = nullptr;
    for (long cell = cell_of(word.middle()) - 1; cell <= cell_of(word.middle()) + 1; ++cell) {
        const auto found = cells_.find({page, cell});
        if (found == cells_.end()) continue;
        for (const StyledText* style : found->second)
            if (style->box.left - 1 <= x && x <= style->box.right &&
                (!nearest || distance_to(*style, word) < distance_to(*nearest, word)))
                nearest = style;
    }
    return nearest;
}

}
