// Values of settings: each is read by the grammar, then held against its bounds.
#include "compiler/stages/model/build_steps.hpp"

#include "compiler/stages/model/language_tag.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/text_pieces.hpp"
#include "grammar/messages.hpp"
#include "grammar/settings.hpp"

#include <fmt/format.h>

#include <charconv>
#include <chrono>
#include <cmath>
#include <utility>

namespace quoin::model {
namespace {

namespace pegtl = tao::pegtl;
namespace setting_rules = grammar::settings;

// Nobody asks for fewer pages than one, nor reads a résumé of more than this.
constexpr Interval page_bounds{1, 20};

struct Asked { // one line that sets something
    const syntax::Node& node;
    JoinedValue value;
    Diagnostics& diagnostics;

    const std::string& text() const { return value.text(); }
    Place place() const { return value.place(0, text().size()); }
    std::string label() const { return in_quotes(node.label.text); }
    std::string found() const { return in_quotes(text()); }
    void error(std::string message) const { diagnostics.error(place(), std::move(message)); }
};

// Beyond what a double holds is far out of any bounds.
double number_or_huge(std::string_view text) {
    double number = HUGE_VAL;
    const auto result = std::from_chars(text.data(), text.data() + text.size(), number);
    return result.ec == std::errc{} ? number : HUGE_VAL;
}

int to_int(std::string_view digits) {
    int number = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), number);
    return number;
}

struct IntervalParts {
    std::vector<std::string> numbers;
};

struct DateParts {
    Date date{};
};

struct AcceptParts {
    struct Part {
        std::size_t offset = 0;
        std::string check;
        std::string reason;
    };
    std::vector<Part> parts;
};

struct GlossParts {
    struct Part {
        std::string words;
        std::size_t offset = 0; // of its gloss
        std::string gloss;
    };
    std::vector<Part> parts;
};

std::string without_end_blanks(std::string text) {
    text.erase(text.find_last_not_of(" \t") + 1);
    return text;
}

template<typename Rule>
struct SettingAction {};

template<>
struct SettingAction<setting_rules::number> {
    static void apply(const auto& in, IntervalParts& found) {
        found.numbers.push_back(in.string());
    }
};

template<>
struct SettingAction<setting_rules::updated_year> {
    static void apply(const auto& in, DateParts& found) {
        found.date.year = to_int(in.string_view());
    }
};

template<>
struct SettingAction<setting_rules::updated_month> {
    static void apply(const auto& in, DateParts& found) {
        found.date.month = to_int(in.string_view());
    }
};

template<>
struct SettingAction<setting_rules::updated_day> {
    static void apply(const auto& in, DateParts& found) {
        found.date.day = to_int(in.string_view());
    }
};

template<>
struct SettingAction<setting_rules::check_name> {
    static void apply(const auto& in, AcceptParts& found) {
        found.parts.push_back({in.position().byte, in.string(), {}});
    }
};

template<>
struct SettingAction<setting_rules::reason> {
    static void apply(const auto& in, AcceptParts& found) {
        found.parts.back().reason = without_end_blanks(in.string());
    }
};

template<>
struct SettingAction<setting_rules::glossed_words> {
    static void apply(const auto& in, GlossParts& found) {
        found.parts.push_back({without_end_blanks(in.string()), 0, {}});
    }
};

template<>
struct SettingAction<setting_rules::gloss_text> {
    static void apply(const auto& in, GlossParts& found) {
        found.parts.back().offset = in.position().byte;
        found.parts.back().gloss = without_end_blanks(in.string());
    }
};

// Matches the whole value, or says what was expected of it.
template<typename Rule, typename... Parts>
bool match(const Asked& asked, Parts&... parts) {
    pegtl::memory_input in(asked.text(), "");
    if (pegtl::parse<Rule, SettingAction>(in, parts...)) return true;
    asked.error(worded<grammar::message<Rule>>(asked.text()));
    return false;
}

bool within(const Interval& interval, const Interval& bounds) {
    return interval.least >= bounds.least && interval.most <= bounds.most;
}

template<typename Rule>
void read_interval(const Asked& asked, const Interval& bounds, std::string_view unit,
                   Setting<Interval>& setting) {
    IntervalParts found;
    if (!match<Rule>(asked, found)) return;
    const std::string& least = found.numbers.front();
    const std::string& most = found.numbers.back();
    const Interval interval{number_or_huge(least), number_or_huge(most)};
    if (interval.least > interval.most)
        return asked.error(
            fill<messages::runs_backwards>(asked.found(), in_quotes(most + ".." + least)));
    if (!within(interval, bounds))
        return asked.error(fill<messages::out_of_bounds>(
            asked.label(), asked.found(),
            fmt::format("{} to {} ({})", bounds.least, bounds.most, unit)));
    setting = {interval, asked.place()};
}

void read_pages(const Asked& asked, Setting<int>& setting) {
    if (!match<setting_rules::pages_value>(asked)) return;
    const double pages = number_or_huge(asked.text());
    if (!within({pages, pages}, page_bounds))
        return asked.error(fill<messages::out_of_bounds>(asked.label(), asked.found(), "1 to 20"));
    setting = {static_cast<int>(pages), asked.place()};
}

template<typename T>
void choose(const Asked& asked, std::optional<T> choice, const std::vector<std::string_view>& names,
            Setting<T>& setting) {
    if (choice)
        setting = {*choice, asked.place()};
    else
        asked.error(fill<messages::cannot_be>(asked.label(), asked.found(), listed(names),
                                              did_you_mean(asked.text(), names)));
}

void read_hyphenate(const Asked& asked, Setting<bool>& setting) {
    const std::string& text = asked.text();
    std::optional<bool> choice;
    if (text == "yes" || text == "no") choice = text == "yes";
    choose(asked, choice, {"yes", "no"}, setting);
}

void read_language(const Asked& asked, Setting<std::string>& setting) {
    if (match<setting_rules::language_value>(asked))
        setting = {recommended_case(asked.text()), asked.place()};
}

bool in_calendar(const Date& date) {
    const auto month = static_cast<unsigned>(*date.month);
    const auto day = static_cast<unsigned>(date.day.value_or(1));
    return (std::chrono::year{date.year} / std::chrono::month{month} / std::chrono::day{day}).ok();
}

void read_updated(const Asked& asked, Setting<std::optional<Date>>& setting) {
    DateParts found;
    if (!match<setting_rules::updated_value>(asked, found)) return;
    if (!in_calendar(found.date))
        return asked.error(fill<messages::not_in_calendar>(asked.found()));
    setting = {found.date, asked.place()};
}

void read_words(const Asked& asked, std::vector<std::string>& words) {
    constexpr std::string_view separators = " \t,;";
    const std::string& text = asked.text();
    for (std::size_t start = text.find_first_not_of(separators); start != std::string::npos;) {
        const std::size_t end = std::min(text.find_first_of(separators, start), text.size());
        words.push_back(text.substr(start, end - start));
        start = text.find_first_not_of(separators, end);
    }
}

void read_accept(const Asked& asked, std::vector<Acceptance>& accept) {
    AcceptParts found;
    if (!match<setting_rules::accept_value>(asked, found)) return;
    for (auto& part : found.parts) {
        const Place place = asked.value.place(part.offset, part.check.size());
        accept.push_back({std::move(part.check), std::move(part.reason), place});
    }
}

void read_foreign(const Asked& asked, std::vector<Gloss>& glosses) {
    GlossParts found;
    if (!match<setting_rules::foreign_value>(asked, found)) return;
    for (auto& part : found.parts) {
        pegtl::memory_input in(part.gloss, "");
        if (pegtl::parse<setting_rules::language_value>(in))
            glosses.push_back({std::move(part.words), recommended_case(part.gloss), {}});
        else
            asked.diagnostics.error(
                asked.value.place(part.offset, part.gloss.size()),
                worded<grammar::message<setting_rules::language_value>>(part.gloss));
    }
}

void read_abbreviations(const Asked& asked, std::vector<Gloss>& glosses) {
    GlossParts found;
    if (!match<setting_rules::abbreviations_value>(asked, found)) return;
    for (auto& part : found.parts)
        glosses.push_back({std::move(part.words), {}, std::move(part.gloss)});
}

// Where the setting was set already; line 0 if it was not, or may be set again.
Place set_at(trade::SettingName name, const Settings& settings) {
    switch (name) {
    case trade::SettingName::stage:
        return settings.stage.place;
    case trade::SettingName::pages:
        return settings.pages.place;
    case trade::SettingName::theme:
        return settings.theme.place;
    case trade::SettingName::paper:
        return settings.paper.place;
    case trade::SettingName::size:
        return settings.size.place;
    case trade::SettingName::margins:
        return settings.margins.place;
    case trade::SettingName::dates_as:
        return settings.dates_as.place;
    case trade::SettingName::language:
        return settings.language.place;
    case trade::SettingName::updated:
        return settings.updated.place;
    case trade::SettingName::hyphenate:
        return settings.hyphenate.place;
    case trade::SettingName::words:
    case trade::SettingName::accept:
    case trade::SettingName::foreign:
    case trade::SettingName::abbreviations:
        break;
    }
    return {};
}

void read_value(trade::SettingName name, const Asked& asked, Settings& settings) {
    const std::string& text = asked.text();
    switch (name) {
    case trade::SettingName::stage:
        return choose(asked, trade::stage_named(text), trade::stage_names(), settings.stage);
    case trade::SettingName::pages:
        return read_pages(asked, settings.pages);
    case trade::SettingName::theme:
        settings.theme = {text, asked.place()};
        return;
    case trade::SettingName::paper:
        return choose(asked, trade::paper_named(text), trade::paper_names(), settings.paper);
    case trade::SettingName::size:
        return read_interval<setting_rules::size_value>(asked, trade::size_bounds, "points",
                                                        settings.size);
    case trade::SettingName::margins:
        return read_interval<setting_rules::margins_value>(asked, trade::margin_bounds, "inches",
                                                           settings.margins);
    case trade::SettingName::dates_as:
        return choose(asked, trade::date_form_named(text), trade::date_form_names(),
                      settings.dates_as);
    case trade::SettingName::language:
        return read_language(asked, settings.language);
    case trade::SettingName::updated:
        return read_updated(asked, settings.updated);
    case trade::SettingName::words:
        return read_words(asked, settings.words);
    case trade::SettingName::accept:
        return read_accept(asked, settings.accept);
    case trade::SettingName::hyphenate:
        return read_hyphenate(asked, settings.hyphenate);
    case trade::SettingName::foreign:
        return read_foreign(asked, settings.glosses);
    case trade::SettingName::abbreviations:
        return read_abbreviations(asked, settings.glosses);
    }
}

}

void read_setting(trade::SettingName name, const syntax::Node& node, Settings& settings,
                  Diagnostics& diagnostics) {
    const Asked asked{node, JoinedValue{node.value}, diagnostics};
    const Place before = set_at(name, settings);
    if (before.line != 0)
        return diagnostics.error(node.label.place,
                                 fill<messages::set_twice>(asked.label(), before.line));
    read_value(name, asked, settings);
}

}
