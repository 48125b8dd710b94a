#include "compiler/stages/model/odd_values.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/stages/model/dates_meant.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/text_pieces.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>

namespace quoin::model {
namespace {

// Signs of other markups, most of HTML's that are pasted from pages: character references, and tags
// of text.
constexpr std::array<std::string_view, 17> other_marks{
    "'''", "&amp;", "&nbsp;", "&lt;",  "&gt;", "&quot;", "&#39;", "<b>",     "</b>",
    "<i>", "</i>",  "<br>",   "<br/>", "<em>", "<p>",    "<u>",   "<strong>"};

constexpr std::array<std::pair<std::string_view, std::string_view>, 3> quote_pairs{
    {{"\"", "\""}, {"\u201C", "\u201D"}, {"'", "'"}}};

// What a person or a place is called stands in no quotes; of a work, they may be part of the title.
bool names_no_work(trade::FieldName field) {
    switch (field) {
    case trade::FieldName::name:
    case trade::FieldName::pronouns:
    case trade::FieldName::headline:
    case trade::FieldName::address:
    case trade::FieldName::phone:
    case trade::FieldName::email:
    case trade::FieldName::school:
    case trade::FieldName::place:
    case trade::FieldName::degree:
    case trade::FieldName::role:
    case trade::FieldName::employer:
    case trade::FieldName::activity:
    case trade::FieldName::issuer:
        return true;
    default:
        return false;
    }
}

// `5/27`, whose second figure is a year, for it is no time of the past that something lapses
std::optional<std::string> dates_of_expiry(std::string_view typed) {
    std::string text(trimmed(typed, " .:()"));
    const std::size_t slash = text.find('/');
    if (slash != text.npos && text.size() == slash + 3 && text.find(' ') == text.npos)
        text.insert(slash + 1, "20");
    return as_dates(text);
}

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

    // `[R, Python]`, as files of settings have lists
    void brackets() {
        if (text_.size() < 3 || text_.front() != '[' || text_.back() != ']' ||
            text_.find_first_of("[]", 1) != text_.size() - 1)
            return;
        const std::string inner = text_.substr(1, text_.size() - 2);
        diagnostics_.warning(value_.place(0, text_.size()),
                             fill<messages::in_printed_brackets>(inner),
                             {{value_.place(0, 1), ""}, {value_.place(text_.size() - 1, 1), ""}});
    }

    // Quotes around the whole of it, with the comma of a list behind: `"Port Ellery, WA",`
    bool quotes() {
        const std::string_view inner = trimmed(text_, ", ");
        for (const auto& [open, close] : quote_pairs) {
            if (inner.size() <= open.size() + close.size() || !inner.starts_with(open) ||
                !inner.ends_with(close))
                continue;
            const std::string_view words =
                inner.substr(open.size(), inner.size() - open.size() - close.size());
            if (words.find(open) != words.npos || words.find(close) != words.npos) return false;
            const Place place = value_.place(0, text_.size());
            const bool one_line = place.length == text_.size();
            diagnostics_.warning(place, fill<messages::in_printed_quotes>(words),
                                 one_line ? Edits{{place, std::string(words)}} : Edits{});
            return true;
        }
        return false;
    }

    // `address:: Port Ellery`, `degree := Bachelor of Arts`
    void second_colon() {
        const std::size_t end = text_.find_first_not_of(":=");
        if (end == 0 || end == text_.npos) return;
        const Place sign = value_.place(0, end);
        diagnostics_.warning(sign, fill<messages::begins_in_sign>(text_.substr(0, end)),
                             {{sign, ""}});
    }

    // `1. Education`
    void number() {
        const std::size_t end = text_.find_first_not_of("0123456789");
        if (end == 0 || end == text_.npos || (text_[end] != '.' && text_[end] != ')')) return;
        const std::size_t title = std::min(text_.find_first_not_of(". )", end), text_.size());
        const Place place = value_.place(0, title);
        diagnostics_.warning(
            place, fill<messages::numbered_title>(text_.substr(0, end), text_.substr(title)),
            {{place, ""}});
    }

    // `Skills section: Certificates`
    void second_title() {
        const std::size_t at = lower_case(text_).find(" section: ");
        if (at == text_.npos) return;
        diagnostics_.warning(value_.place(at + 1, 7), fill<messages::label_in_value>("section"),
                             {{value_.place(at, 1), "\n\n"}});
    }

    // `employer: "`, as in a list by hand
    bool says_nothing() {
        if (text_.empty() || std::ranges::any_of(text_, is_word_byte)) return false;
        diagnostics_.error(value_.place(0, text_.size()),
                           fill<messages::no_words>(in_quotes(text_)));
        return true;
    }

    // `name: name: Ottoline Brandt`. What a mend takes out stands in one line.
    bool repeats(std::string_view label) {
        if (!lower_case(text_).starts_with(std::string(label) + ':')) return false;
        const std::size_t end =
            std::min(text_.find_first_not_of(' ', label.size() + 1), text_.size());
        const Place twice = value_.place(0, end);
        diagnostics_.warning(twice, fill<messages::label_repeated>(label), {{twice, ""}});
        return true;
    }

    // `First Aid, exp. 5/2027`, where another line tells it
    void expiry() {
        constexpr std::array<std::string_view, 8> words{
            "exp.",        "expires",       "expiring",   "expiration",
            "valid until", "valid through", "valid thru", "exp"};
        const std::string small = lower_case(text_);
        for (const std::string_view word : words) {
            const std::size_t at = find_phrase(small, word);
            if (at == small.npos) continue;
            const std::size_t before = text_.find_last_not_of(" ,;(|-", at - (at > 0 ? 1 : 0));
            const auto dates = dates_of_expiry(std::string_view{text_}.substr(at + word.size()));
            if (at == 0 || before == text_.npos || before + 1 == at || !dates) continue;
            const Place whole = value_.place(before + 1, text_.size() - before - 1);
            const bool one_line = whole.length == text_.size() - before - 1;
            return diagnostics_.warning(
                value_.place(at, text_.size() - at),
                fill<messages::expires_in_value>(in_quotes(trimmed(text_.substr(at), " )")),
                                                 *dates),
                one_line ? Edits{{whole, "\nexpires: " + *dates}} : Edits{});
        }
    }

    // `- - Sold`, `- [x] Restocked`
    void second_dash() {
        constexpr std::array<std::string_view, 7> signs{"- ",      "* ",   "+ ",  "\u2022",
                                                        "\u2013 ", "[x] ", "[ ] "};
        const auto* sign = std::ranges::find_if(
            signs, [&](std::string_view one) { return text_.starts_with(one); });
        if (sign == signs.end()) return;
        const std::size_t end = std::min(text_.find_first_not_of(' ', sign->size()), text_.size());
        const Place twice = value_.place(0, end);
        diagnostics_.warning(twice, fill<messages::dash_repeated>(trimmed(*sign)), {{twice, ""}});
    }

    // `role: Nanny, employer: a family`: several fields in one line.
    void labels() {
        for (std::size_t colon = text_.find(": "); colon != std::string::npos;
             colon = text_.find(": ", colon + 1)) {
            const std::size_t sign = text_.find_last_of(",;|", colon);
            if (sign == std::string::npos) continue;
            const std::string_view typed =
                trimmed(std::string_view{text_}.substr(sign + 1, colon - sign - 1));
            const trade::Word* word = trade::find_word(lower_case(typed));
            if (!word || word->is_setting()) continue;
            const std::size_t label = static_cast<std::size_t>(typed.data() - text_.data());
            const std::size_t end = text_.find_last_not_of(" |,;", sign) + 1;
            const Place between = value_.place(end, label - end);
            diagnostics_.warning(value_.place(label, typed.size()),
                                 fill<messages::label_in_value>(typed),
                                 between.length == label - end ? Edits{{between, "\n"}} : Edits{});
        }
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
        const std::string_view inner = address.substr(0, address.find(')'));
        const bool of_web = inner.find('.') != inner.npos && inner.find(' ') == inner.npos;
        if (open == std::string::npos || close == std::string::npos || !of_web) return;
        const std::string right = text_.substr(open + 1, middle - open - 1) + " <" +
                                  text_.substr(middle + 2, close - middle - 2) + '>';
        const Place place = value_.place(open, close + 1 - open);
        const bool one_line = place.length == close + 1 - open;
        diagnostics_.warning(place, fill<messages::other_link>('\'' + right + '\''),
                             one_line ? Edits{{place, right}} : Edits{});
    }

    void other_signs() {
        for (const std::string_view sign : other_marks)
            if (const std::size_t at = text_.find(sign); at != std::string::npos)
                return diagnostics_.warning(value_.place(at, sign.size()),
                                            fill<messages::html_sign>(in_quotes(sign)));
        const std::size_t inch = text_.find("''"); // 1 1/4''
        if (inch != std::string::npos && inch > 0 && is_figure(text_[inch - 1])) {
            const Place place = value_.place(inch, 2);
            return diagnostics_.warning(place, fill<messages::no_inch_sign>(), {{place, " in"}});
        }
        backquotes();
    }

    // `Rust` in backquotes, as chats have it
    void backquotes() {
        const std::size_t open = text_.find('`');
        const std::size_t close = open == text_.npos ? open : text_.find('`', open + 1);
        if (close == text_.npos) return;
        diagnostics_.warning(value_.place(open, 1), fill<messages::backquote>(),
                             {{value_.place(open, 1), ""}, {value_.place(close, 1), ""}});
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
    odd.second_colon();
    if (!word || word->value == trade::ValueKind::items) odd.brackets();
    const auto* name = word ? std::get_if<trade::FieldName>(&word->means) : nullptr;
    const bool named = name && names_no_work(*name);
    if (word && odd.repeats(word->label)) return;
    if (named && (odd.says_nothing() || odd.quotes())) return;
    if (named) odd.labels();
    if (name && *name == trade::FieldName::credential) odd.expiry();
    if (word && word->value == trade::ValueKind::text) odd.end(";,");
}

void warn_of_odd_bullet(const syntax::Node& bullet, trade::Holds holds, Diagnostics& diagnostics) {
    if (bullet.value.slices.empty()) return; // what stood there could not be read
    OddValue odd(bullet.value, diagnostics);
    odd.look();
    odd.second_dash();
    const syntax::Slice& first = bullet.value.slices.front();
    const std::string label = first.text.substr(0, first.text.find(": "));
    const trade::Word* word = label.size() < first.text.size() ? trade::find_word(label) : nullptr;
    if (!word || !word->kinds.has(holds)) return;
    const Place dash{bullet.place.file, bullet.place.line, 1, first.place.column - 1};
    diagnostics.warning(bullet.place, fill<messages::bullet_of_label>(label, label),
                        first.place.line == bullet.place.line ? Edits{{dash, ""}} : Edits{});
}

void warn_of_odd_title(const syntax::Node& section, Diagnostics& diagnostics) {
    OddValue odd(section.value, diagnostics);
    odd.look();
    odd.number();
    odd.second_title();
    if (!odd.quotes()) odd.end(":;,");
}

}
