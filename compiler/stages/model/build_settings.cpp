// Values of settings: each is read by the grammar, then held against its bounds.
#include "compiler/stages/model/build_steps.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/stages/model/language_tag.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/setting_guesses.hpp"
#include "compiler/stages/model/text_pieces.hpp"
#include "grammar/messages.hpp"
#include "grammar/settings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
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
    void guide(const std::string& right) const {
        diagnostics.error(place(), fill<messages::setting_meant>(found(), node.label.text, right),
                          {{place(), right}});
    }
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

struct PageParts {
    std::string most;
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
struct SettingAction<setting_rules::page_count> {
    static void apply(const auto& in, PageParts& found) { found.most = in.string(); }
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

// Matches the whole value, or says what was meant by it, or else what was expected.
template<typename Rule, typename... Parts>
bool match(const Asked& asked, Parts&... parts) {
    pegtl::memory_input in(asked.text(), "");
    if (pegtl::parse<Rule, SettingAction>(in, parts...)) return true;
    const std::string right = meant_by_setting(asked.node.label.text, asked.text());
    if (pegtl::memory_input meant(right, ""); pegtl::parse<Rule>(meant)) {
        asked.guide(right);
        return false;
    }
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
    PageParts found;
    if (!match<setting_rules::pages_value>(asked, found)) return;
    const double pages = number_or_huge(found.most);
    if (!within({pages, pages}, page_bounds))
        return asked.error(fill<messages::out_of_bounds>(asked.label(), asked.found(), "1 to 20"));
    setting = {static_cast<int>(pages), asked.place()};
}

void read_size(const Asked& asked, Setting<Interval>& setting) {
    read_interval<setting_rules::size_value>(asked, trade::size_bounds, "points", setting);
}

void read_margins(const Asked& asked, Setting<Interval>& setting) {
    read_interval<setting_rules::margins_value>(asked, trade::margin_bounds, "inches", setting);
}

template<typename T>
void choose(const Asked& asked, std::optional<T> choice, const std::vector<std::string_view>& names,
            Setting<T>& setting) {
    const std::string right = choice ? "" : meant_by_setting(asked.node.label.text, asked.text());
    if (choice)
        setting = {*choice, asked.place()};
    else if (is_one_of(right, names))
        asked.guide(right);
    else
        asked.error(fill<messages::cannot_be>(asked.label(), asked.found(), listed(names),
                                              did_you_mean(asked.text(), names)));
}

template<typename T>
void read_name(const Asked& asked, Setting<T>& setting) {
    choose(asked, trade::named<T>(asked.text()), trade::names_of<T>(), setting);
}

void read_theme_name(const Asked& asked, Setting<std::string>& setting) {
    setting = {asked.text(), asked.place()};
}

void read_hyphenate(const Asked& asked, Setting<bool>& setting) {
    const std::string& text = asked.text();
    std::optional<bool> choice;
    if (text == "yes" || text == "no") choice = text == "yes";
    choose(asked, choice, {"yes", "no"}, setting);
}

void read_language(const Asked& asked, Setting<std::string>& setting) {
    const std::string right = meant_by_setting("language", asked.text());
    if (!right.empty()) return asked.guide(right);
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
    for (std::string& word : parted(asked.text(), " \t,;"))
        words.push_back(std::move(word));
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

template<auto member, auto read>
void once(const Asked& asked, Settings& settings) {
    auto& setting = settings.*member;
    if (setting.stated())
        asked.diagnostics.error(asked.node.label.place,
                                fill<messages::set_twice>(asked.label(), setting.place.line));
    else
        read(asked, setting);
}

template<auto member, auto read>
void again(const Asked& asked, Settings& settings) {
    read(asked, settings.*member);
}

struct SettingReader {
    trade::SettingName name;
    void (*read)(const Asked&, Settings&);
};

const SettingReader& reader_of(trade::SettingName name) {
    using enum trade::SettingName;
    static constexpr std::array readers{
        SettingReader{stage, once<&Settings::stage, read_name<trade::Stage>>},
        SettingReader{pages, once<&Settings::pages, read_pages>},
        SettingReader{theme, once<&Settings::theme, read_theme_name>},
        SettingReader{paper, once<&Settings::paper, read_name<trade::Paper>>},
        SettingReader{size, once<&Settings::size, read_size>},
        SettingReader{margins, once<&Settings::margins, read_margins>},
        SettingReader{dates_as, once<&Settings::dates_as, read_name<trade::DateForm>>},
        SettingReader{language, once<&Settings::language, read_language>},
        SettingReader{updated, once<&Settings::updated, read_updated>},
        SettingReader{words, again<&Settings::words, read_words>},
        SettingReader{accept, again<&Settings::accept, read_accept>},
        SettingReader{hyphenate, once<&Settings::hyphenate, read_hyphenate>},
        SettingReader{foreign, again<&Settings::glosses, read_foreign>},
        SettingReader{abbreviations, again<&Settings::glosses, read_abbreviations>},
    };
    return *std::ranges::find(readers, name, &SettingReader::name);
}

}

void read_setting(trade::SettingName name, const syntax::Node& node, Settings& settings,
                  Diagnostics& diagnostics) {
    const Asked asked{node, JoinedValue{node.value}, diagnostics};
    reader_of(name).read(asked, settings);
}

}
