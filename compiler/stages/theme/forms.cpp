// Which lines and which fields each form takes: the fields are those of the markup.
#include "compiler/stages/theme/forms.hpp"

#include "compiler/stages/theme/messages.hpp"
#include "compiler/stages/theme/pattern.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace quoin::theme {

namespace {

struct LineLabel {
    std::string_view label;
    StyleName style{};
    bool further = false, each = false;
};

constexpr LineLabel heading_lines[] = {
    {"name", StyleName::name},
    {"headline", StyleName::headline},
    {"contact", StyleName::contact},
    {"contact-each", StyleName::contact, false, true},
    {"running-head", StyleName::running_head},
};

constexpr LineLabel entry_lines[] = {
    {"title", StyleName::title},
    {"line", StyleName::line},
    {"text", StyleName::text},
    {"further", StyleName::title, true},
    {"further-line", StyleName::line, true},
};

std::span<const LineLabel> labels_for(const FormName& name) {
    if (name.holds) return entry_lines;
    return heading_lines;
}

constexpr PatternName page_name{"page", PatternPiece::Kind::page, {}};

std::vector<PatternName> names_for(const FormName& name) {
    std::vector<PatternName> names;
    for (const trade::Word& word : trade::vocabulary()) {
        const auto* field = std::get_if<trade::FieldName>(&word.means);
        if (field && (name.holds ? word.kinds.has(*name.holds) : word.heading))
            names.push_back({word.label, PatternPiece::Kind::field, *field});
    }
    if (name.holds && has_groups(*name.holds)) {
        names.push_back({"label", PatternPiece::Kind::label, trade::FieldName::group});
        names.push_back({"group", PatternPiece::Kind::field, trade::FieldName::group});
    }
    return names;
}

// The page's number is set last of a running head.
bool has_page_before_end(const std::vector<PatternPiece>& pieces) {
    const auto is_page = [](const PatternPiece& piece) {
        return piece.kind == PatternPiece::Kind::page ||
               std::ranges::find(piece.group, PatternPiece::Kind::page, &PatternPiece::kind) !=
                   piece.group.end();
    };
    const auto page = std::ranges::find_if(pieces, is_page);
    return page != pieces.end() &&
           (page + 1 != pieces.end() || page->kind == PatternPiece::Kind::group);
}

bool prints_one_field(const std::vector<PatternPiece>& pieces) {
    return std::ranges::count_if(pieces, &PatternPiece::is_name) == 1 &&
           std::ranges::find(pieces, PatternPiece::Kind::group, &PatternPiece::kind) ==
               pieces.end();
}

std::string form_called(const FormName& name) {
    return fmt::format("form '{}'", name.holds ? name_of(*name.holds) : "heading");
}

void read_way(const ThemeLine& line, const std::vector<std::string>& ways,
              std::optional<std::size_t>& way, Diagnostics& diagnostics) {
    if (ways.empty()) return diagnostics.error(line.place, fill<messages::no_ways>());
    const std::vector<std::string_view> names(ways.begin(), ways.end());
    if (const auto index = read_choice(line, names, diagnostics)) way = *index;
}

// The lines of one way, `called` so in what is said of them.
void check_lines(const Form& form, const FormName& name, std::optional<std::size_t> way,
                 const std::string& called, Place place, Diagnostics& diagnostics) {
    std::vector<const PatternLine*> lines, further;
    for (const PatternLine& line : form.lines)
        if (line.style != StyleName::running_head && (!line.way || line.way == way))
            (line.further ? further : lines).push_back(&line);
    const auto names = names_for(name);
    const std::string form_name = form_called(name) + called;
    check_coverage(lines, names, form_name, place, diagnostics);
    if (!further.empty())
        check_coverage(further, names, form_name + " for further positions", place, diagnostics);
}

}

std::optional<FormName> read_form_name(const ThemeLine& line, Diagnostics& diagnostics) {
    std::vector<std::string_view> names = trade::names_of<trade::Holds>();
    names.insert(names.begin(), "heading");
    const auto index = read_choice(line, names, diagnostics);
    if (!index) return std::nullopt;
    return *index == 0 ? FormName{} : FormName{trade::named<trade::Holds>(names[*index])};
}

void read_form_line(const ThemeLine& line, const FormName& name,
                    const std::vector<std::string>& ways, std::optional<std::size_t>& way,
                    Form& form, Diagnostics& diagnostics) {
    if (line.label == "way" && name.holds) return read_way(line, ways, way, diagnostics);
    const auto labels = labels_for(name);
    const auto row = std::ranges::find(labels, std::string_view(line.label), &LineLabel::label);
    if (row == labels.end()) {
        std::vector<std::string_view> known;
        for (const LineLabel& label : labels)
            known.push_back(label.label);
        diagnostics.error(line.label_place,
                          fill<messages::no_line>(line.label, form_called(name),
                                                  fmt::join(known, ", "),
                                                  did_you_mean(line.label, known)));
        return;
    }
    auto names = names_for(name);
    if (row->style == StyleName::running_head) names.push_back(page_name);
    auto pieces = read_pattern(line.value, names, diagnostics);
    if (!pieces) return;
    if (has_page_before_end(*pieces))
        diagnostics.error(line.place, fill<messages::page_before_end>());
    form.lines.push_back(
        {row->style, row->further, row->each, way, *std::move(pieces), line.place});
    if (row->each && !prints_one_field(form.lines.back().pieces))
        diagnostics.error(line.place, fill<messages::not_one_field>(line.label));
    if (row->style == StyleName::running_head && form.lines.back().fills())
        diagnostics.error(line.place, fill<messages::fill_in_running_head>());
}

void check_form(const Form& form, const FormName& name, const std::vector<std::string>& ways,
                Place place, Diagnostics& diagnostics) {
    const bool has_ways = std::ranges::any_of(
        form.lines, [](const PatternLine& line) { return line.way.has_value(); });
    if (!has_ways || ways.empty())
        return check_lines(form, name, std::nullopt, "", place, diagnostics);
    for (std::size_t way = 0; way < ways.size(); ++way)
        check_lines(form, name, way, fmt::format(", '{}',", ways[way]), place, diagnostics);
}

}
