#include "compiler/session/session.hpp"

#include "compiler/base/data_places.hpp"
#include "compiler/base/folder.hpp"
#include "compiler/base/whole_file_place.hpp"
#include "compiler/session/takers.hpp"
#include "compiler/stages/overflow_report.hpp"
#include "compiler/stages/syntax/parse.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <algorithm>
#include <utility>
#include <variant>

namespace quoin::session {

namespace {

namespace fs = std::filesystem;

// What `set` would say of a page that is too long.
void add_overflow(State& state) {
    if (!state.read.typeset) return;
    const stages::Typeset& typeset = *state.read.typeset;
    const auto* overflow = std::get_if<fit::Overflow>(&typeset.fit);
    if (!overflow) return;
    state.cuts = stages::cheapest_cuts_of(typeset);
    state.overflow = stages::overflow_report(overflow->lines_too_many, *state.cuts, typeset,
                                             *state.read.file, false);
}

// A theme, or an office's rules; `themes` is the folder of themes.
void read_by_itself(State& state, const fs::path& themes) {
    advice::Proofread& read = state.read;
    if (state.written == Written::theme)
        theme::read_theme(read.sources, *read.file, themes, read.diagnostics);
    else
        advice::read_rules(read.sources, *read.file, themes, read.diagnostics);
}

void apply(std::string& text, const Change& change, Units units) {
    if (!change.range) {
        text = change.text;
        return;
    }
    const TextLines lines(text);
    const std::size_t begin = lines.offset_of(change.range->start, units);
    const std::size_t end = std::max(begin, lines.offset_of(change.range->end, units));
    text.replace(begin, end - begin, change.text);
}

}

Written written_in(const fs::path& path) {
    if (path.extension() == ".theme") return Written::theme;
    return path.extension() == ".rules" ? Written::office_rules : Written::resume;
}

std::optional<std::uint32_t> State::file_at(const fs::path& path) const {
    for (std::uint32_t file = 0; file < read.sources.size(); ++file)
        if (read.sources.file(file).path == path) return file;
    return std::nullopt;
}

Session::Session(const Means& means)
    : means_(means),
      offices_(std::make_unique<advice::Offices>(themes_in(means.data), means.office)) {}

void Session::open(const fs::path& path, std::string text, std::int64_t version) {
    documents_[path] = {std::move(text), version};
    disk_changed();
    if (written_in(path) == Written::resume && path.is_absolute()) adopt_taker(path);
}

bool Session::change(const fs::path& path, const std::vector<Change>& changes, Units units,
                     std::int64_t version) {
    const auto found = documents_.find(path);
    if (found == documents_.end()) return false;
    for (const Change& one : changes)
        apply(found->second.text, one, units);
    found->second.version = version;
    mark_stale(path);
    return true;
}

bool Session::close(const fs::path& path) {
    if (documents_.erase(path) == 0) return false;
    std::erase_if(roots_, [&](const auto& root) {
        return std::ranges::none_of(documents_, [&](const auto& document) {
            return root.first == document.first ||
                   (root.second.state && root.second.state->file_at(document.first));
        });
    });
    disk_changed();
    return true;
}

// What is not open is a root too, if it takes in what is.
void Session::adopt_taker(const fs::path& path) {
    if (root_of(path) != path) return;
    if (const auto taker = taker_of(path, folders_)) roots_.try_emplace(*taker);
}

const Document* Session::find(const fs::path& path) const {
    const auto found = documents_.find(path);
    return found == documents_.end() ? nullptr : &found->second;
}

void Session::mark_stale(const fs::path& path) {
    roots_.try_emplace(path);
    for (auto& [own, root] : roots_)
        if (own == path || (root.state && root.state->file_at(path))) root.stale = true;
}

void Session::disk_changed() {
    for (const auto& [path, document] : documents_)
        roots_.try_emplace(path);
    for (auto& [path, root] : roots_) { // their rules go
        if (root.state) root.state->read.office = nullptr;
        if (root.whole) root.whole->read.office = nullptr;
        root.stale = true;
    }
    offices_ = std::make_unique<advice::Offices>(themes_in(means_.data), means_.office);
}

// Of two that take in each other, the first by its path.
fs::path Session::root_of(const fs::path& path) const {
    const auto own = roots_.find(path);
    for (const auto& [other, root] : roots_) {
        if (other == path || !root.state || !root.state->file_at(path)) continue;
        const bool mutual =
            own != roots_.end() && own->second.state && own->second.state->file_at(other);
        if (!mutual || other < path) return other;
    }
    return path;
}

void Session::hold_documents(Sources& sources) const {
    for (const auto& [path, document] : documents_)
        sources.hold(path, document.text);
}

std::unique_ptr<State> Session::read(const fs::path& path, const stages::Choices& choices) {
    auto state = std::make_unique<State>();
    advice::Proofread& read = state->read;
    hold_documents(read.sources);
    read.input = path.string();
    read.file = read.sources.read(path, read.diagnostics);
    state->written = written_in(path);
    if (state->written != Written::resume) {
        if (read.file) read_by_itself(*state, themes_in(means_.data));
        read.diagnostics.sort();
        return state;
    }
    read.office = offices_->of(path);
    if (read.file && offices_->diagnostics().has_errors())
        read.diagnostics.warning(
            whole_file(*read.file),
            format(offices_->diagnostics().all().front(), offices_->sources()));
    proofread(read, choices,
              {means_.data, means_.fonts, means_.language, means_.read_on, offices_.get()});
    add_overflow(*state);
    return state;
}

const State& Session::rebuilt(const fs::path& path, Root& root) {
    if (root.state && !root.stale) return *root.state;
    if (root.state && root.state->read.resume) root.whole = std::move(root.state);
    root.state = read(path, {});
    root.stale = false;
    if (root.state->read.resume) root.whole.reset();
    return *root.state;
}

const State* Session::state_of(const fs::path& path) {
    if (!find(path)) return nullptr;
    for (auto& [own, root] : roots_)
        rebuilt(own, root);
    return last_state_of(path);
}

const State* Session::last_state_of(const fs::path& path) const {
    const auto found = roots_.find(root_of(path));
    return found == roots_.end() ? nullptr : found->second.state.get();
}

const State* Session::last_whole_state_of(const fs::path& path) const {
    const auto found = roots_.find(root_of(path));
    if (found == roots_.end()) return nullptr;
    return (found->second.whole ? found->second.whole : found->second.state).get();
}

std::map<fs::path, const State*> Session::all_states() {
    std::map<fs::path, const State*> states;
    for (auto& [path, root] : roots_)
        states[path] = &rebuilt(path, root);
    std::erase_if(states, [&](const auto& one) { return root_of(one.first) != one.first; });
    return states;
}

std::set<fs::path> Session::files_read() const {
    std::set<fs::path> files;
    for (const auto& [path, root] : roots_) {
        if (!root.state) continue;
        const Sources& sources = root.state->read.sources;
        for (std::uint32_t file = 0; file < sources.size(); ++file)
            if (sources.file(file).path.is_absolute()) files.insert(sources.file(file).path);
        if (!path.is_absolute()) continue;
        files.insert(folder_of(path) / "office.rules");
        if (const auto file = root.state->file_at(path)) // what is not there may come to be
            for (const fs::path& named : named_includes(tree_of(*root.state, *file), path))
                files.insert(named);
    }
    return files;
}

syntax::Tree tree_of(const State& state, std::uint32_t file) {
    Diagnostics ignored;
    return syntax::parse(state.read.sources, file, ignored);
}

}
