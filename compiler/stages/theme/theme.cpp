// Reads a theme file, and before it the file it is based on.
#include "compiler/stages/theme/theme.hpp"

#include "compiler/base/whole_file_place.hpp"
#include "compiler/stages/syntax/parse.hpp"
#include "compiler/stages/theme/checks.hpp"
#include "compiler/stages/theme/forms.hpp"
#include "compiler/stages/theme/icons.hpp"
#include "compiler/stages/theme/messages.hpp"
#include "compiler/stages/theme/settings.hpp"
#include "compiler/stages/theme/values.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>
#include <set>
#include <span>
#include <system_error>
#include <utility>

namespace quoin::theme {

namespace {

namespace fs = std::filesystem;

using ThemeBlock = std::vector<ThemeLine>;

struct OpenBlock { // what the lines under it belong to
    std::optional<StyleName> style;
    std::optional<trade::FieldName> field;
    std::optional<FormName> form;
    Place opened;                   // the form
    std::optional<std::size_t> way; // of the form
    std::optional<std::string> icon;
    bool skip = false; // its opening line was wrong

    std::string called() const {
        if (style) return fmt::format("style {}", name_of(*style));
        return field ? fmt::format("field {}", static_cast<int>(*field)) : "";
    }
};

struct GivenSetting {
    Place place;
    bool faulty = false;
};

bool opens_block(std::string_view label) {
    return label == "style" || label == "field" || label == "form" || label == "icon";
}

class ThemeReader {
public:
    ThemeReader(Sources& sources, const fs::path& folder, Diagnostics& diagnostics)
        : sources_(sources), folder_(folder), diagnostics_(diagnostics) {}

    bool read(const fs::path& path, Place asked_at);
    void read_file(std::uint32_t file);
    void add_shared_icons();
    void drop_undrawn_icons();
    void check_whole(); // that nothing is missing, nothing too small, no field lost
    std::optional<fs::path> find(const std::string& name, const fs::path& from_folder,
                                 Place asked_at);
    Theme take() { return std::move(theme_); }

private:
    ThemeBlock lines_of(const syntax::Block& nodes);
    void read_base(const std::vector<ThemeBlock>& blocks, const fs::path& from_folder);
    void read_line(const ThemeLine& line, OpenBlock& block);
    void read_line_in(const ThemeLine& line, OpenBlock& block);
    void open_block(const ThemeLine& line, OpenBlock& block);
    void check_settings();
    void check_forms();
    Place last_place(std::initializer_list<std::string_view> labels) const;
    Form& form_of(const FormName& name) {
        return name.holds ? theme_.forms[*name.holds] : theme_.heading;
    }

    Sources& sources_;
    const fs::path& folder_;
    Diagnostics& diagnostics_;
    Theme theme_;
    std::vector<fs::path> chain_; // the files being read, each based on the next
    std::set<std::string> given_; // settings of the file being read
    std::map<std::string, GivenSetting, std::less<>> settings_; // the last of each label
    std::set<std::optional<trade::Holds>> faulty_forms_;        // no field of theirs is missed
    std::map<std::optional<trade::Holds>, Place> form_places_;  // of their first lines
    bool incomplete_ = false; // something of it could not be read at all
    std::uint32_t file_ = 0;  // the last that was read whole: the theme's own
};

constexpr std::size_t longest_chain = 16; // of themes, each based on the next

bool is_path(const std::string& name) {
    return name.find('/') != std::string::npos || name.ends_with(".theme");
}

// By its real name too: what stands in a file that is no theme is not shown as faults of one.
bool is_theme_file(const fs::path& path) {
    std::error_code fault;
    return path.extension() == ".theme" && fs::canonical(path, fault).extension() == ".theme";
}

std::optional<fs::path> ThemeReader::find(const std::string& name, const fs::path& from_folder,
                                          Place asked_at) {
    const fs::path path = is_path(name) ? from_folder / name : folder_ / (name + ".theme");
    std::error_code fault;
    const fs::file_status there = fs::status(path, fault);
    if (there.type() == fs::file_type::none) return path; // whoever reads it tells why not
    if (fs::exists(there)) {
        if (fs::is_regular_file(there) && is_theme_file(path)) return path;
        diagnostics_.error(asked_at, fill<messages::not_a_theme_file>(in_quotes(name)));
        return std::nullopt;
    }
    if (is_path(name)) {
        diagnostics_.error(asked_at, fill<messages::no_theme_file>(in_quotes(name)));
        return std::nullopt;
    }
    const auto names = theme_names(folder_);
    const std::vector<std::string_view> known(names.begin(), names.end());
    diagnostics_.error(asked_at, fill<messages::no_theme>(name, fmt::join(known, ", "),
                                                          did_you_mean(name, known)));
    return std::nullopt;
}

bool ThemeReader::read(const fs::path& path, Place asked_at) {
    std::error_code fault;
    const fs::path same = fs::weakly_canonical(path, fault);
    const auto again = std::ranges::find(chain_, same);
    if (again != chain_.end()) {
        std::string circle;
        for (auto link = again; link != chain_.end(); ++link)
            circle += link->stem().string() + " -> ";
        diagnostics_.error(asked_at, fill<messages::based_on_itself>(circle, same.stem().string()));
        return false;
    }
    if (chain_.size() >= longest_chain) {
        diagnostics_.error(asked_at, fill<messages::based_too_deep>(longest_chain));
        return false;
    }
    const auto file = sources_.read(path, diagnostics_);
    if (!file) return false;
    chain_.push_back(same);
    read_file(*file);
    chain_.pop_back();
    return true;
}

void ThemeReader::read_file(std::uint32_t file) {
    const std::size_t errors_before = diagnostics_.count(Severity::error);
    const syntax::Tree tree = parse(sources_, file, diagnostics_, syntax::Braces::text);
    const fs::path path = sources_.file(file).path;
    std::vector<ThemeBlock> blocks;
    for (const auto& nodes : tree.heading)
        blocks.push_back(lines_of(nodes));
    for (const syntax::SectionTree& section : tree.sections)
        diagnostics_.error(section.opening.place, fill<messages::section_in_theme>());
    incomplete_ = incomplete_ || diagnostics_.count(Severity::error) > errors_before;

    read_base(blocks, path.parent_path());
    theme_.files.push_back(path);
    theme_.name = fs::path(sources_.file(file).name).stem().string();
    given_.clear();
    for (const ThemeBlock& lines : blocks) {
        OpenBlock open;
        for (const ThemeLine& line : lines)
            read_line(line, open);
    }
    file_ = file;
}

ThemeBlock ThemeReader::lines_of(const syntax::Block& nodes) {
    ThemeBlock lines;
    for (const syntax::Node& node : nodes) {
        if (node.kind == syntax::Node::Kind::field)
            lines.push_back({node.label.text, node.label.place, node.value, node.value.place()});
        if (node.kind == syntax::Node::Kind::bullet)
            diagnostics_.error(node.place, fill<messages::bullet_in_theme>());
    }
    return lines;
}

void ThemeReader::read_base(const std::vector<ThemeBlock>& blocks, const fs::path& from_folder) {
    for (const ThemeBlock& lines : blocks) {
        const auto base = std::ranges::find(lines, "based-on", &ThemeLine::label);
        if (base == lines.end()) continue;
        const auto path = find(base->value.joined(), from_folder, base->place);
        incomplete_ = !path || !read(*path, base->place) || incomplete_;
        return;
    }
}

void ThemeReader::open_block(const ThemeLine& line, OpenBlock& block) {
    block = {};
    if (line.label == "icon") {
        block.icon = read_icon_name(line, diagnostics_);
        block.skip = !block.icon;
        if (block.icon) theme_.icons[*block.icon] = {}; // as a form, replaced whole
        return;
    }
    if (line.label == "field") {
        block.field = read_field_block(line, diagnostics_);
        block.skip = !block.field;
        return;
    }
    if (line.label == "style") {
        block.style = read_style_name(line, diagnostics_);
        block.skip = !block.style;
        return;
    }
    block.form = read_form_name(line, diagnostics_);
    block.skip = !block.form;
    incomplete_ = incomplete_ || block.skip;
    if (!block.form) return;
    form_of(*block.form) = {}; // a form is replaced whole
    form_places_[block.form->holds] = block.opened = line.place;
    faulty_forms_.erase(block.form->holds);
}

void ThemeReader::read_line(const ThemeLine& line, OpenBlock& block) {
    const bool opens = opens_block(line.label);
    if (opens || (!block.form && !block.icon && !block.skip)) {
        const std::string key =
            fmt::format("{}:{}", opens ? "" : block.called(),
                        opens ? line.label + ':' + line.value.joined() : line.label);
        if (!given_.insert(key).second) {
            diagnostics_.error(line.label_place,
                               fill<messages::given_twice>(
                                   opens ? line.label + ": " + line.value.joined() : line.label));
            block.skip = opens;
            return;
        }
    }
    if (opens)
        open_block(line, block);
    else if (!block.skip)
        read_line_in(line, block);
}

void ThemeReader::read_line_in(const ThemeLine& line, OpenBlock& block) {
    const std::size_t errors_before = diagnostics_.count(Severity::error);
    if (block.style)
        read_style_setting(line, theme_.styles[static_cast<std::size_t>(*block.style)],
                           diagnostics_);
    else if (block.field)
        read_field_setting(line, theme_.fields[*block.field], diagnostics_);
    else if (block.icon)
        read_icon_line(line, theme_.icons[*block.icon], diagnostics_);
    else if (block.form)
        read_form_line(line, *block.form, theme_.ways, block.way, form_of(*block.form),
                       diagnostics_);
    else
        read_theme_setting(line, theme_, diagnostics_);
    const bool faulty = diagnostics_.count(Severity::error) > errors_before;
    if (block.form) {
        if (faulty) faulty_forms_.insert(block.form->holds);
        if (auto& place = form_places_[block.form->holds];
            place == block.opened && line.label != "way")
            place = line.place;
    }
    if (!block.style && !block.field && !block.icon && !block.form)
        settings_[line.label] = {line.place, faulty};
}

// The drawings that all themes share. A theme's own of the same name stands.
void ThemeReader::add_shared_icons() {
    if (!theme_.draws_icons) return;
    const fs::path path = folder_ / "icons";
    const auto file = sources_.read(path, diagnostics_);
    if (!file) return;
    theme_.files.push_back(path);
    const syntax::Tree tree = parse(sources_, *file, diagnostics_, syntax::Braces::text);
    for (const syntax::Block& nodes : tree.heading) {
        const ThemeBlock lines = lines_of(nodes);
        if (lines.empty()) continue;
        if (lines.front().label != "icon") {
            diagnostics_.error(lines.front().label_place,
                               fill<messages::expected_icon>(lines.front().label));
            continue;
        }
        const auto name = read_icon_name(lines.front(), diagnostics_);
        if (!name || theme_.icons.contains(*name)) continue;
        for (const ThemeLine& line : std::span(lines).subspan(1))
            read_icon_line(line, theme_.icons[*name], diagnostics_);
    }
}

void drop_icons(std::vector<PatternPiece>& pieces) {
    std::erase_if(pieces, [](PatternPiece& piece) {
        drop_icons(piece.group);
        return piece.kind == PatternPiece::Kind::icon;
    });
}

void ThemeReader::drop_undrawn_icons() {
    if (theme_.draws_icons) return;
    for (PatternLine& line : theme_.heading.lines)
        drop_icons(line.pieces);
    for (auto& [holds, form] : theme_.forms)
        for (PatternLine& line : form.lines)
            drop_icons(line.pieces);
}

void ThemeReader::check_whole() {
    check_accents(theme_, diagnostics_);
    const auto size = settings_.find("size");
    const bool own = size != settings_.end() && size->second.place.file == file_;
    check_sizes(theme_, own ? std::optional(size->second.place) : std::nullopt, diagnostics_);
    check_fills(theme_, diagnostics_);
    check_geometry(
        theme_, [this](const auto& labels) { return last_place(labels); }, diagnostics_);
    if (incomplete_) return; // what is not there may be what could not be read
    check_icons(theme_, diagnostics_);
    check_settings();
    check_forms();
}

// Of the settings, where one was made: in the theme's own file, if it makes any of them.
Place ThemeReader::last_place(std::initializer_list<std::string_view> labels) const {
    Place last;
    for (const std::string_view label : labels) {
        const auto setting = settings_.find(label);
        if (setting == settings_.end()) continue;
        const Place place = setting->second.place;
        if (last.line == 0 || (last.file != file_ && place.file == file_)) last = place;
    }
    return last;
}

void ThemeReader::check_settings() {
    const std::pair<std::string_view, bool> needed[] = {
        {"family", !theme_.family.empty()},
        {"size", theme_.size.most > 0},
        {"side-margin", theme_.side_margin.most > 0},
        {"top-margin", theme_.top_margin.most > 0},
        {"bottom-margin", theme_.bottom_margin.most > 0},
        {"leading", theme_.leading.most > 0},
        {"form: heading", !theme_.heading.lines.empty() || faulty_forms_.contains(std::nullopt)},
    };
    for (const auto& [label, given] : needed)
        if (!given && !settings_.contains(label))
            diagnostics_.error(whole_file(file_), fill<messages::theme_lacks>(theme_.name, label));
}

void ThemeReader::check_forms() {
    std::vector<FormName> names{{}};
    for (const std::string_view name : trade::names_of<trade::Holds>())
        names.push_back({trade::named<trade::Holds>(name)});
    for (const FormName& name : names) {
        if (faulty_forms_.contains(name.holds)) continue;
        const auto place = form_places_.find(name.holds);
        if (place != form_places_.end())
            check_form(form_of(name), name, theme_.ways, place->second, diagnostics_);
        else if (name.holds)
            diagnostics_.error(whole_file(file_),
                               fill<messages::theme_lacks>(
                                   theme_.name, fmt::format("form: {}", name_of(*name.holds))));
    }
}

std::optional<Theme> finish(ThemeReader& reader, std::size_t errors_before,
                            Diagnostics& diagnostics) {
    reader.add_shared_icons();
    reader.drop_undrawn_icons();
    reader.check_whole();
    if (diagnostics.count(Severity::error) != errors_before) return std::nullopt;
    return reader.take();
}

}

std::vector<std::string> theme_names(const fs::path& folder) {
    std::vector<std::string> names;
    std::error_code fault;
    for (const auto& entry : fs::directory_iterator(folder, fault))
        if (entry.path().extension() == ".theme") names.push_back(entry.path().stem().string());
    if (fault && fault != std::errc::no_such_file_or_directory)
        throw fs::filesystem_error("cannot read the folder of themes", folder, fault);
    std::ranges::sort(names);
    return names;
}

std::optional<Theme> read_theme(Sources& sources, const std::filesystem::path& folder,
                                const std::string& name, const std::filesystem::path& from_folder,
                                Place asked_at, Diagnostics& diagnostics) {
    const std::size_t errors_before = diagnostics.count(Severity::error);
    ThemeReader reader(sources, folder, diagnostics);
    const auto path = reader.find(name, from_folder, asked_at);
    if (!path || !reader.read(*path, asked_at)) return std::nullopt;
    return finish(reader, errors_before, diagnostics);
}

std::optional<Theme> read_theme(Sources& sources, std::uint32_t file,
                                const std::filesystem::path& folder, Diagnostics& diagnostics) {
    const std::size_t errors_before = diagnostics.count(Severity::error);
    ThemeReader reader(sources, folder, diagnostics);
    reader.read_file(file);
    return finish(reader, errors_before, diagnostics);
}

}
