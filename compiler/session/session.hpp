// The documents that an editor has open, and of each what the program knows of its newest text: the
// tree of its lines, the model, the fit and the findings. A document that others take in is read
// within them.
#pragma once

#include "compiler/advice/proofread.hpp"
#include "compiler/session/text_lines.hpp"
#include "compiler/stages/fit/cuts.hpp"
#include "compiler/stages/syntax/tree.hpp"

#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace quoin::session {

// What a document is, by its name.
enum class Written { resume, theme, office_rules };
Written written_in(const std::filesystem::path& path);

struct State { // of a résumé, or of another by itself, as they were read together
    advice::Proofread read;
    Diagnostics overflow;          // what `set` says of a page that is too long
    std::optional<fit::Cuts> cuts; // that bring it onto its pages
    Written written = Written::resume;

    // Of a file by its path; none if it was not read.
    std::optional<std::uint32_t> file_at(const std::filesystem::path& path) const;
};

struct Change {
    std::optional<Range> range; // none: the whole text
    std::string text;
};

struct Document {
    std::string text;
    std::int64_t version = 0;
};

// What documents are read by.
struct Means {
    std::filesystem::path data; // data_folder()
    fonts::Fonts& fonts;
    const english::Language& language;
    model::Date read_on;
    advice::OfficeChoice office = {};
    std::optional<std::int64_t> epoch = {}; // that the build states for itself
};

class Session {
public:
    explicit Session(const Means& means);

    // A document is known by its path, which is absolute and normal for a file; what has no file is
    // known by a name of its own.
    void open(const std::filesystem::path& path, std::string text, std::int64_t version);
    // False if it is not open.
    bool change(const std::filesystem::path& path, const std::vector<Change>& changes, Units units,
                std::int64_t version);
    bool close(const std::filesystem::path& path);
    // That the editor works in.
    const std::vector<std::filesystem::path>& folders() const { return folders_; }
    void set_folders(std::vector<std::filesystem::path> folders) { folders_ = std::move(folders); }

    const Document* find(const std::filesystem::path& path) const; // null if it is not open
    // What a document is read within, by its newest text: its own state, or that of one which takes
    // it in. Null if it is not open.
    const State* state_of(const std::filesystem::path& path);
    // The same as it was last read, which may be older than the text; null if it never was.
    const State* last_state_of(const std::filesystem::path& path) const;
    // And as it was when the résumé could last be read whole: half a line is mostly an error.
    const State* last_whole_state_of(const std::filesystem::path& path) const;
    // The newest states of all documents that nobody takes in, by their paths.
    std::map<std::filesystem::path, const State*> all_states();

    // A document read anew for a build of its own.
    std::unique_ptr<State> read(const std::filesystem::path& path, const stages::Choices& choices);

    // To be read instead of what the disk has.
    void hold_documents(Sources& sources) const;

    // Files on the disk that states hang on.
    std::set<std::filesystem::path> files_read() const;
    void disk_changed(); // some of them, or of the offices' rules
    const Means& means() const { return means_; }

private:
    struct Root { // a document that is read by itself
        std::unique_ptr<State> state;
        std::unique_ptr<State> whole = nullptr; // an earlier one, if that of now is not
        bool stale = true;
    };

    void mark_stale(const std::filesystem::path& path);
    void adopt_taker(const std::filesystem::path& path);
    std::filesystem::path root_of(const std::filesystem::path& path) const;
    const State& rebuilt(const std::filesystem::path& path, Root& root);

    Means means_;
    std::unique_ptr<advice::Offices> offices_;
    std::vector<std::filesystem::path> folders_;
    std::map<std::filesystem::path, Document> documents_;
    std::map<std::filesystem::path, Root> roots_;
};

// The lines of one of its files as the markup groups them.
syntax::Tree tree_of(const State& state, std::uint32_t file);

}
