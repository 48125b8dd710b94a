// The steps of build_resume, and what they share. Nothing outside compiler/model includes this.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/stages/model/other_languages.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/syntax/tree.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <cstdint>
#include <filesystem>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace quoin::model {

// Which labels an entry or the heading has so far. A label may stand again with other tags, as
// another wording for other builds.
class Standing {
public:
    // False, and an error at `node` that ends in `mend`, if the label may not stand again.
    bool add(const trade::Word& word, const Tags& tags, const syntax::Node& node,
             std::string_view mend, Diagnostics& diagnostics);

    bool has(const trade::Word& word) const;

private:
    struct Before {
        std::uint32_t first_line = 0;
        bool untagged = false;
        std::set<std::pair<std::vector<std::string>, std::vector<std::string>>> tags;
    };
    std::map<trade::FieldName, Before> before_;
};

struct OpenFile { // one that is being read, with those that led to it below it
    std::uint32_t file = 0;
    std::filesystem::path canonical;
};

struct Build {
    Sources& sources;
    Diagnostics& diagnostics;
    Resume resume;
    LocalDates dates; // of its language
    OtherLanguages others;
    std::vector<OpenFile> open;
    std::size_t included = 0, included_bytes = 0;
    Standing contact;
};

using Nodes = std::span<const syntax::Node>;

bool is_label(const syntax::Node& node, std::string_view label);

inline Place whole_line(const syntax::Node& node) { // with its end, for a mend that takes it out
    return {node.place.file, node.place.line, 1, node.place.length + 1};
}

// build_heading.cpp: contact fields, settings and includes above the first section.
void build_heading(Build& build, const syntax::Tree& tree);
// An included file gives sections only.
void build_included_heading(Build& build, const syntax::Tree& tree);

// build_settings.cpp
void read_setting(trade::SettingName name, const syntax::Node& node, Settings& settings,
                  Diagnostics& diagnostics);

// build_fields.cpp. None after an error that leaves nothing to keep.
std::optional<Field> read_field(const trade::Word& word, const syntax::Node& node,
                                const LocalDates& dates, Diagnostics& diagnostics);
std::optional<Field> read_group(const syntax::Node& node, Diagnostics& diagnostics);
Tags read_tags(const std::vector<syntax::TagMark>& marks);
constexpr std::string_view keep_tag = "keep";
std::optional<Tags> read_tags_line(const syntax::Node& node, Diagnostics& diagnostics); // `for:`
void refuse_tags(const syntax::Node& node, Diagnostics& diagnostics);

// build_entries.cpp: one block of a section; none if it holds only comments.
std::optional<Entry> build_entry(Nodes block, trade::Holds holds, const LocalDates& dates,
                                 Diagnostics& diagnostics);

// build_sections.cpp
void build_sections(Build& build, const syntax::Tree& tree);

// infer.cpp: what a section holds, by the labels of its entries, then by its title. None if that
// cannot be told.
std::optional<trade::Holds> infer_holds(std::span<const Nodes> blocks, const std::string& title);

// open_sections.cpp: titles that lack their `section:`, told by the entries below them, open
// theirs, and so do entries above all sections.
void open_sections(syntax::Tree& tree, Diagnostics& diagnostics);

// include.cpp
void open_first(Build& build, std::uint32_t file);
void take_in(Build& build, const syntax::Node& include);

}
