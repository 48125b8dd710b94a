#include "compiler/tailoring/tailored_source.hpp"

#include "compiler/base/folder.hpp"
#include "compiler/base/message.hpp"
#include "compiler/stages/model/build.hpp"
#include "compiler/tailoring/source_changes.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace quoin::tailoring {

namespace {

namespace fs = std::filesystem;
using Why = LeftOut::Why;

struct OutLine {
    std::string text;
    const LeftOut* why = nullptr; // it is a comment that says so
};

using LineKey = std::pair<std::uint32_t, std::uint32_t>; // a file's line
using HoldsLines = std::map<LineKey, std::string>;       // to stand below a section's title

class Writer {
public:
    Writer(const Sources& sources, SourceNodes& nodes, const Changes& changes,
           const HoldsLines& holds, const fs::path& folder)
        : sources_(sources), nodes_(nodes), changes_(changes), holds_(holds), folder_(folder) {}

    void write(std::uint32_t file) {
        find_taken_in(file);
        add_file(file, true);
        add_deferred();
    }

    std::string text() {
        std::string text;
        for (const OutLine& line : lines_)
            text += (line.why ? comment(*line.why) : line.text) + '\n';
        return text;
    }

private:
    // --- what is taken in where

    // In the order that they are read in, each is the next file of its path.
    void find_taken_in(std::uint32_t file) {
        for (const NodeLines& node : nodes_.in(file)) {
            if (node.node->label.text != "include") continue;
            const fs::path path = target(file, node);
            for (std::uint32_t other = next_; other < sources_.size(); ++other) {
                if (sources_.file(other).path != path) continue;
                next_ = other + 1;
                taken_in_[{file, node.first}] = other;
                find_taken_in(other);
                break;
            }
        }
    }

    fs::path target(std::uint32_t file, const NodeLines& node) const {
        const SourceFile& from = sources_.file(file);
        const fs::path path = from.path.empty() ? fs::path{from.name} : from.path;
        return (folder_of(path) / node.node->value.joined()).lexically_normal();
    }

    bool is_changed(std::uint32_t file) {
        const auto found = changes_.find(file);
        if (found != changes_.end() && found->second.is_any()) return true;
        return std::ranges::any_of(nodes_.in(file), [&](const NodeLines& node) {
            const auto inner = taken_in_.find({file, node.first});
            return inner != taken_in_.end() && is_changed(inner->second);
        });
    }

    // What the output may say instead; none if it cannot.
    std::optional<std::string> name_from_output(std::uint32_t file) {
        if (is_changed(file)) return std::nullopt;
        std::error_code fault;
        const fs::path path =
            fs::weakly_canonical(sources_.file(file).path, fault)
                .lexically_relative(fs::weakly_canonical(fs::absolute(folder_), fault));
        if (path.empty() || *path.begin() == "..") return std::nullopt;
        return path.generic_string();
    }

    // --- lines

    void add(std::string text) { lines_.push_back({std::move(text), nullptr}); }

    void add_file(std::uint32_t file, bool first) {
        const auto found = changes_.find(file);
        const FileChanges& changes = found == changes_.end() ? no_changes_ : found->second;
        const SourceFile& source = sources_.file(file);
        const auto lines = static_cast<std::uint32_t>(source.line_starts.size());
        bool heading = first;
        for (std::uint32_t line = 1; line <= lines; ++line) {
            if (line == lines && source.line(line).empty()) break;
            const NodeLines* node = nodes_.at({file, line, 0, 0});
            const bool opens = node && node->opens && node->first == line;
            if (opens && node->node->label.text == "section" && heading) {
                heading = false;
                before_first_section();
            }
            if (opens && taken_in_.contains({file, line})) {
                add_taken_in(file, *node, heading);
                line = node->last;
            } else {
                line = add_stretch(file, changes, line);
            }
        }
    }

    // One line or, where bullets stand in another order, all of one; gives the last.
    std::uint32_t add_stretch(std::uint32_t file, const FileChanges& changes, std::uint32_t line) {
        for (const Reordering& moved : changes.reorderings)
            for (std::size_t place = 0; place < moved.places.size(); ++place) {
                if (moved.places[place].first != line) continue;
                const Stretch& coming = moved.places[moved.order[place]];
                for (std::uint32_t other = coming.first; other <= coming.last; ++other)
                    add_line(file, changes, other);
                return moved.places[place].last;
            }
        add_line(file, changes, line);
        return line;
    }

    void add_line(std::uint32_t file, const FileChanges& changes, std::uint32_t line) {
        add_changed(file, changes, line);
        if (const auto holds = holds_.find({file, line}); holds != holds_.end()) add(holds->second);
    }

    void add_changed(std::uint32_t file, const FileChanges& changes, std::uint32_t line) {
        std::string text(sources_.file(file).line(line));
        const auto found = changes.lines.find(line);
        const bool stays = found == changes.lines.end() || !found->second.instead.empty();
        if (stays) {
            at_[{file, line}] = lines_.size() + 1;
            return add(found == changes.lines.end() ? text : found->second.instead);
        }
        for (const LeftOut& why : found->second.before)
            lines_.push_back({{}, &why});
        const bool is_comment = text.starts_with('#');
        add(found->second.is_comment && !is_comment && !text.empty() ? "# " + text : text);
        if (!found->second.after.empty()) at_[{file, line}] = lines_.size() + 1;
        for (const std::string& after : found->second.after)
            add(after);
    }

    // Sections cannot stand among the fields of the heading: they come below them, in their order.
    void add_taken_in(std::uint32_t file, const NodeLines& node, bool heading) {
        const std::uint32_t taken = taken_in_.at({file, node.first});
        const auto name = name_from_output(taken);
        if (heading && (!name || !deferred_.empty())) {
            deferred_.push_back({taken, name});
        } else if (name) {
            add("include: " + *name);
        } else {
            add_text_of(taken);
        }
    }

    void add_text_of(std::uint32_t file) {
        part_from_above();
        add("# taken in: " + sources_.file(file).path.filename().string());
        add_file(file, false);
        part_from_above();
    }

    void part_from_above() {
        if (!lines_.empty() && !lines_.back().text.empty()) add("");
    }

    // Comments right above the first section stay with it.
    void before_first_section() {
        if (deferred_.empty()) return;
        std::size_t begin = lines_.size();
        while (begin > 0 && lines_[begin - 1].text.starts_with('#'))
            --begin;
        std::vector<OutLine> comments(lines_.begin() + static_cast<std::ptrdiff_t>(begin),
                                      lines_.end());
        lines_.resize(begin);
        add_deferred();
        lines_.insert(lines_.end(), comments.begin(), comments.end());
    }

    void add_deferred() {
        for (const auto& [file, name] : std::exchange(deferred_, {})) {
            if (!name) {
                add_text_of(file);
                continue;
            }
            part_from_above();
            add("include: " + *name);
            add("");
        }
    }

    // --- what comments say

    std::string comment(const LeftOut& each) const {
        const std::string term = in_quotes(each.term);
        switch (each.why) {
        case Why::shows_nothing:
            return "# left out for this posting: it asks for nothing here, and the page is full";
        case Why::shown_already:
            if (const auto at = at_.find({each.by.file, each.by.line}); at != at_.end())
                return fmt::format(
                    "# left out for this posting: shows {}, which line {} shows already", term,
                    at->second);
            return fmt::format("# left out for this posting: shows {}, as other lines do", term);
        case Why::no_room:
            return fmt::format("# left out for this posting: shows {}, and there is no room for it",
                               term);
        case Why::another_wording:
            return "# left out for this posting: another wording serves it better";
        case Why::list_is_gone:
            return "# left out for this posting, to save its lines";
        case Why::list_is_shorter:
            return "# shortened for this posting, to save a line; it was";
        }
        return {};
    }

    const Sources& sources_;
    SourceNodes& nodes_;
    const Changes& changes_;
    const HoldsLines& holds_;
    const fs::path& folder_;
    std::uint32_t next_ = 0;
    std::map<LineKey, std::uint32_t> taken_in_; // by the line that takes it in
    std::vector<std::pair<std::uint32_t, std::optional<std::string>>> deferred_;
    std::vector<OutLine> lines_;
    std::map<LineKey, std::size_t> at_; // the line of the output, from 1
    const FileChanges no_changes_{};
};

}

namespace {

bool says_what_it_holds(SourceNodes& nodes, const Place& section) {
    const auto lines = nodes.from(section, std::numeric_limits<std::uint32_t>::max());
    return std::ranges::any_of(
        lines, [](const NodeLines& line) { return line.node->label.text == "holds"; });
}

// Of the sections that the text, read again, holds as something else: what each holds, by its line.
HoldsLines untold(const std::string& text, const model::Resume& chosen, SourceNodes& nodes,
                  const SourceTools& tools) {
    Sources again;
    Diagnostics unheard;
    const fs::path path = tools.folder / "tailored.resume";
    for (std::uint32_t file = 0; file < tools.sources.size(); ++file) // as they were read
        again.hold(tools.sources.file(file).path, tools.sources.file(file).bytes);
    again.hold(path, text);
    std::optional<model::Resume> read;
    if (const auto file = again.read(path, unheard))
        read = model::build_resume(again, *file, tools.words, unheard);
    const bool all = !read || read->sections.size() != chosen.sections.size();
    HoldsLines lines;
    for (std::size_t s = 0; s < chosen.sections.size(); ++s) {
        const model::Section& section = chosen.sections[s];
        const bool told = !all && read->sections[s].holds == section.holds;
        if (!told && !says_what_it_holds(nodes, section.place))
            lines[{section.place.file, section.place.line}] =
                fmt::format("holds: {}", trade::name_of(section.holds));
    }
    return lines;
}

}

std::string tailored_source(const model::Resume& resume, const Demand& demand,
                            const Tailored& tailored, const SourceTools& tools) {
    SourceNodes nodes(tools.sources);
    const auto left = left_out(resume, tailored.offer, tailored.choice.taken, demand);
    const Changes changes = changes_of(resume, tailored.offer, tailored.choice.taken, left, nodes);
    const auto write = [&](const HoldsLines& holds) {
        Writer writer(tools.sources, nodes, changes, holds, tools.folder);
        writer.write(tools.file);
        return writer.text();
    };
    std::string text = write({});
    const HoldsLines holds = untold(text, tailored.typeset.resume, nodes, tools);
    return holds.empty() ? text : write(holds);
}

}
