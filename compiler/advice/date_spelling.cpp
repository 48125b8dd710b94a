// Dates written in another form.
#include "compiler/advice/date_spelling.hpp"

#include "compiler/base/utf8.hpp"

namespace quoin::advice {

std::string spelled(const model::Date& date, trade::DateForm form,
                    const page_words::DateWords& words) {
    return replaced(print(model::DateRange{std::nullopt, date, false}, form, words), no_break_space,
                    " ");
}

std::vector<Edit> respellings(const model::DateRange& range, trade::DateForm form,
                              const page_words::DateWords& words) {
    std::vector<Edit> changes;
    std::string after = range.typed;
    std::size_t moved = 0; // how much longer the text before has become, modulo its size
    for (const model::WrittenDate& each : range.written) {
        if (each.form == form) continue;
        if (each.place.length != each.length) return {}; // it goes over two lines
        changes.push_back({each.place, spelled(each.date, form, words)});
        const std::string& replacement = changes.back().replacement;
        after.replace(each.offset + moved, each.length, replacement);
        moved += replacement.size() - each.length;
    }
    const auto now = model::read_dates(after, model::LocalDates(words));
    const auto* other = std::get_if<model::DateRange>(&now);
    return other && *other == range ? changes : std::vector<Edit>{};
}

}
