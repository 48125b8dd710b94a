#include "compiler/stages/model/odd_values.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/text_pieces.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <array>
#include <string>
#include <string_view>

namespace quoin::model {
namespace {

// The signs of HTML that are pasted from pages: character references, and tags of text.
constexpr std::array<std::string_view, 16> html{
    "&amp;", "&nbsp;", "&lt;", "&gt;",  "&quot;", "&#39;", "<b>", "</b>",
    "<i>",   "</i>",   "<br>", "<br/>", "<em>",   "<p>",   "<u>", "<strong>"};

class OddValue {
public:
    OddValue(const syntax::Value& value, Diagnostics& diagnostics)
        : value_(value), text_(value_.text()), diagnostics_(diagnostics) {}

    void look() {
        comment();
        other_link();
        other_signs();
    }

    // Sections, and fields of one text
    void end(std::string_view signs) {
        if (text_.size() < 2 || signs.find(text_.back()) == std::string::npos) return;
        const Place place = value_.place(text_.size() - 1, 1);
        diagnostics_.warning(place, fill<messages::ends_in_sign>(text_.substr(text_.size() - 1)),
                             {{place, ""}});
    }

private:
    // `value  # what it is for`
    void comment() {
        for (std::size_t at = 0; (at = text_.find(" # ", at)) != std::string::npos; ++at) {
            if (at + 3 >= text_.size() || !is_ascii_letter(text_[at + 3])) continue;
            diagnostics_.warning(value_.place(at + 1, 1), fill<messages::comment_in_line>());
            return;
        }
    }

    // `[words](https://name.example)`
    void other_link() {
        const std::size_t middle = text_.find("](");
        if (middle == std::string::npos) return;
        const std::size_t open = text_.rfind('[', middle), close = text_.find(')', middle);
        const std::string_view address = std::string_view{text_}.substr(middle + 2);
        if (open == std::string::npos || close == std::string::npos || !address.starts_with("http"))
            return;
        const std::string right = text_.substr(open + 1, middle - open - 1) + " <" +
                                  text_.substr(middle + 2, close - middle - 2) + '>';
        const Place place = value_.place(open, close + 1 - open);
        const bool one_line = place.length == close + 1 - open;
        diagnostics_.warning(place, fill<messages::other_link>(in_quotes(right)),
                             one_line ? Edits{{place, right}} : Edits{});
    }

    void other_signs() {
        for (const std::string_view sign : html)
            if (const std::size_t at = text_.find(sign); at != std::string::npos)
                return diagnostics_.warning(value_.place(at, sign.size()),
                                            fill<messages::html_sign>(in_quotes(sign)));
        const std::size_t tick = text_.find('`');
        if (tick != std::string::npos && text_.find('`', tick + 1) != std::string::npos)
            diagnostics_.warning(value_.place(tick, 1), fill<messages::backquote>());
    }

    JoinedValue value_;
    const std::string& text_;
    Diagnostics& diagnostics_;
};

}

void warn_of_odd_field(const syntax::Node& field, Diagnostics& diagnostics) {
    const trade::Word* word = trade::find_word(field.label.text);
    if (word && word->value == trade::ValueKind::link) return;
    OddValue odd(field.value, diagnostics);
    odd.look();
    if (word && word->value == trade::ValueKind::text) odd.end(";,");
}

void warn_of_odd_bullet(const syntax::Node& bullet, trade::Holds holds, Diagnostics& diagnostics) {
    if (bullet.value.slices.empty()) return; // what stood there could not be read
    OddValue(bullet.value, diagnostics).look();
    const syntax::Slice& first = bullet.value.slices.front();
    const std::string label = first.text.substr(0, first.text.find(": "));
    const trade::Word* word = label.size() < first.text.size() ? trade::find_word(label) : nullptr;
    if (!word || !word->kinds.has(holds)) return;
    diagnostics.warning(bullet.place, fill<messages::bullet_of_label>(label, label));
}

void warn_of_odd_title(const syntax::Node& section, Diagnostics& diagnostics) {
    OddValue(section.value, diagnostics).end(":;,");
}

}
