#include "compiler/office/values.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/message.hpp"
#include "compiler/office/messages.hpp"
#include "compiler/stages/theme/read_by_grammar.hpp"
#include "grammar/office.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <limits>

namespace quoin::office {

namespace {

namespace rules = grammar::office;

// Of offsets that grow, so that a value of many lines is gone through once.
class PlacesInOrder {
public:
    explicit PlacesInOrder(const syntax::Value& value) : value_(value) {}

    Place at(std::size_t offset, std::size_t length) {
        while (slice_ + 1 < value_.slices.size() && offset > begin_ + size())
            begin_ += size() + 1, ++slice_; // the space that joins two lines
        if (value_.slices.empty()) return {};
        Place place = value_.slices[slice_].place;
        const std::size_t within = std::min(offset - begin_, size());
        place.column += static_cast<std::uint32_t>(within);
        place.length = static_cast<std::uint32_t>(std::min(length, size() - within));
        return place;
    }

private:
    std::size_t size() const { return value_.slices[slice_].text.size(); }

    const syntax::Value& value_;
    std::size_t slice_ = 0, begin_ = 0;
};

struct ItemsFound {
    PlacesInOrder places;
    std::vector<RuleItem> items = {};
};

void add_item(const auto& in, ItemsFound& found) {
    const std::string text(trimmed(in.string_view()));
    found.items.push_back({text, {}, found.places.at(in.position().byte, text.size())});
}

template<typename Rule>
struct OfficeAction : tao::pegtl::nothing<Rule> {};
struct AddItem {
    static void apply(const auto& in, ItemsFound& found) { add_item(in, found); }
};
template<>
struct OfficeAction<rules::check_name> : AddItem {};
template<>
struct OfficeAction<rules::wording> : AddItem {};
template<>
struct OfficeAction<rules::listed_name> : AddItem {};
template<>
struct OfficeAction<rules::choice> : AddItem {};
template<>
struct OfficeAction<rules::remark> {
    static void apply(const auto& in, ItemsFound& found) {
        found.items.back().remark = trimmed(in.string_view());
    }
    static void apply(const auto& in, LimitValue& found) {
        found.remark = trimmed(in.string_view());
    }
};

double number_in(std::string_view text) { // beyond what a double holds is out of any range
    double number = std::numeric_limits<double>::infinity();
    std::from_chars(text.data(), text.data() + text.size(), number);
    return number;
}

template<>
struct OfficeAction<rules::limit_start> {
    static void apply(const auto& in, LimitValue& found) {
        found.least = found.most = number_in(in.string_view());
    }
};
template<>
struct OfficeAction<rules::limit_end> {
    static void apply(const auto& in, LimitValue& found) {
        found.most = number_in(in.string_view());
    }
};

template<typename Rule>
bool read_by(const syntax::Value& value, auto& found, Diagnostics& diagnostics) {
    return theme::read_by_grammar<Rule, OfficeAction>(value, found, diagnostics);
}

bool read_form(const syntax::Value& value, ItemForm form, ItemsFound& found,
               Diagnostics& diagnostics) {
    switch (form) {
    case ItemForm::rulings:
        return read_by<rules::rulings_value>(value, found, diagnostics);
    case ItemForm::words:
        return read_by<rules::words_value>(value, found, diagnostics);
    case ItemForm::names:
        return read_by<rules::names_value>(value, found, diagnostics);
    case ItemForm::choices:
        break;
    }
    return read_by<rules::choices_value>(value, found, diagnostics);
}

// What a number is wrong by; empty if it is right.
std::string fault_of(const LimitValue& value, const LimitRow& row, const std::string& text) {
    const auto outside = [&](double number) {
        return number < row.range.least || number > row.range.most;
    };
    const std::string label = in_quotes(row.label);
    if (!row.most && value.least != value.most)
        return fill<messages::one_number>(label, value.most, in_quotes(text));
    if (value.least > value.most)
        return fill<messages::backwards>(label, value.least, value.most, value.most, value.least);
    if (outside(value.least) || outside(value.most))
        return fill<messages::outside>(label, in_quotes(text), row.range.least, row.range.most,
                                       row.unit);
    if (row.whole &&
        (value.least != std::floor(value.least) || value.most != std::floor(value.most)))
        return fill<messages::whole_number>(label, row.unit, in_quotes(text));
    return {};
}

}

std::optional<std::vector<RuleItem>> read_rule_items(const syntax::Value& value, ItemForm form,
                                                     Diagnostics& diagnostics) {
    ItemsFound found{PlacesInOrder(value)};
    if (!read_form(value, form, found, diagnostics)) return std::nullopt;
    return std::move(found.items);
}

std::optional<LimitValue> read_limit(const syntax::Value& value, const LimitRow& row,
                                     Diagnostics& diagnostics) {
    LimitValue found;
    if (!read_by<rules::limit_value>(value, found, diagnostics)) return std::nullopt;
    const std::string text = value.joined();
    const std::string fault =
        fault_of(found, row, std::string(trimmed(text.substr(0, text.find('(')))));
    if (fault.empty()) return found;
    diagnostics.error(value.place(), fault);
    return std::nullopt;
}

}
