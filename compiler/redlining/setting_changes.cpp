#include "compiler/redlining/setting_changes.hpp"

#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <set>
#include <utility>

namespace quoin::redlining {

namespace {

std::string words_of_value(const std::string& value) {
    return value;
}

std::string words_of_value(int value) {
    return std::to_string(value);
}

std::string words_of_value(bool value) {
    return value ? "yes" : "no";
}

std::string words_of_value(const model::Interval& interval) {
    if (interval.least == interval.most) return fmt::format("{}", interval.least);
    return fmt::format("{}..{}", interval.least, interval.most);
}

std::string words_of_value(const std::optional<model::Date>& date) {
    return date ? edtf(*date) : std::string{};
}

template<typename Enum>
requires std::is_enum_v<Enum> std::string words_of_value(Enum value) {
    return std::string(trade::name_of(value));
}

class SettingComparison {
public:
    template<typename T>
    void compare(std::string_view label, const model::Setting<T>& was,
                 const model::Setting<T>& is) {
        std::string before = words_of_value(*was), after = words_of_value(*is);
        if (before != after)
            add(Kind::changed, label, std::move(before), std::move(after), was.place, is.place);
    }

    // Each row by itself, as `words` has it.
    template<typename T, typename Words>
    void compare(std::string_view label, const std::vector<T>& was, const std::vector<T>& is,
                 const Words& words) {
        const std::vector<std::string> before = worded(was, words), after = worded(is, words);
        const std::set<std::string_view> there(before.begin(), before.end()),
            here(after.begin(), after.end());
        for (const std::string& row : after)
            if (!there.contains(row)) add(Kind::added, label, {}, row, {}, {});
        for (const std::string& row : before)
            if (!here.contains(row)) add(Kind::removed, label, row, {}, {}, {});
    }

    std::vector<Change> take() { return std::move(changes_); }

private:
    template<typename T, typename Words>
    static std::vector<std::string> worded(const std::vector<T>& rows, const Words& words) {
        std::vector<std::string> all;
        std::ranges::transform(rows, std::back_inserter(all), words);
        return all;
    }

    void add(Kind kind, std::string_view label, std::string before, std::string after,
             const Place& was, const Place& is) {
        Change& change = changes_.emplace_back();
        change.kind = kind;
        change.what = What::setting;
        change.nature = Nature::value;
        change.label = label;
        change.before = std::move(before);
        change.after = std::move(after);
        change.old_place = was;
        change.new_place = is;
    }

    std::vector<Change> changes_;
};

std::string acceptance_words(const model::Acceptance& one) {
    return fmt::format("{} ({})", one.check, one.reason);
}

std::string gloss_words(const model::Gloss& gloss) {
    return gloss.words + ": " + gloss.language + gloss.expansion;
}

}

std::vector<Change> setting_changes(const model::Settings& before, const model::Settings& after) {
    SettingComparison comparison;
    comparison.compare("stage", before.stage, after.stage);
    comparison.compare("pages", before.pages, after.pages);
    comparison.compare("theme", before.theme, after.theme);
    comparison.compare("paper", before.paper, after.paper);
    comparison.compare("size", before.size, after.size);
    comparison.compare("margins", before.margins, after.margins);
    comparison.compare("dates-as", before.dates_as, after.dates_as);
    comparison.compare("language", before.language, after.language);
    comparison.compare("updated", before.updated, after.updated);
    comparison.compare("hyphenate", before.hyphenate, after.hyphenate);
    comparison.compare("words", before.words, after.words,
                       [](const std::string& word) { return word; });
    comparison.compare("accept", before.accept, after.accept, acceptance_words);
    comparison.compare("abbreviations", before.glosses, after.glosses, gloss_words);
    return comparison.take();
}

}
