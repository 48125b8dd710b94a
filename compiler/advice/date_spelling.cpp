// Dates written in another form.
#include "compiler/advice/date_spelling.hpp"

namespace quoin::advice {

std::string spelled(const model::Date& date, trade::DateForm form) {
    static const model::DateWords markup = [] { // in English, whatever the page's language
        model::DateWords words;
        words.seasons = {"Spring", "Summer", "Fall", "Winter"};
        std::ranges::copy(trade::month_names, words.months.begin());
        std::ranges::transform(trade::month_names, words.short_months.begin(),
                               [](std::string_view name) { return name.substr(0, 3); });
        return words;
    }();
    std::string text = print(model::DateRange{std::nullopt, date, false}, form, markup);
    const std::size_t space = text.find("\u00A0");
    if (space != std::string::npos) text.replace(space, 2, " ");
    return text;
}

std::vector<Edit> respellings(const model::DateRange& range, trade::DateForm form) {
    std::vector<Edit> changes;
    std::string after = range.typed;
    std::size_t moved = 0; // how much longer the text before has become, modulo its size
    for (const model::WrittenDate& each : range.written) {
        if (each.form == form) continue;
        if (each.place.length != each.length) return {}; // it goes over two lines
        changes.push_back({each.place, spelled(each.date, form)});
        const std::string& replacement = changes.back().replacement;
        after.replace(each.offset + moved, each.length, replacement);
        moved += replacement.size() - each.length;
    }
    const auto now = model::read_dates(after);
    const auto* other = std::get_if<model::DateRange>(&now);
    return other && *other == range ? changes : std::vector<Edit>{};
}

}
