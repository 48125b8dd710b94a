#include "compiler/commands/redline/drafts.hpp"

#include "compiler/base/folder.hpp"
#include "compiler/commands/office_rules.hpp"
#include "compiler/history/history.hpp"

#include <filesystem>
#include <utility>

namespace quoin::commands {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view null_device = "/dev/null";

// A path of theirs, by the one that the old draft had in the repository.
std::string path_then(const fs::path& asked, const fs::path& file, const history::Text& draft) {
    if (asked == file) return draft.path;
    const fs::path within = asked.lexically_relative(folder_of(file));
    return (fs::path(draft.path).parent_path() / within).lexically_normal().generic_string();
}

std::unique_ptr<Proofread> blank_draft(std::string name) {
    auto one = std::make_unique<Proofread>();
    one->input = std::move(name);
    return one;
}

// A copy by whatever name is read as the file that it is a copy of, and what it takes in is looked
// for beside that one.
ComparedDraft read_copy(const std::string& copy, const RedlineRequest& request,
                        std::string_view which, const ProofTools& tools) {
    ComparedDraft draft;
    const fs::path as = request.as;
    draft.read = blank_draft(request.as + std::string(which));
    Sources copies;
    const auto file = copies.read_input(copy, draft.read->diagnostics);
    if (!file) { // its faults name it as it was named
        draft.read->sources = std::move(copies);
        return draft;
    }
    Sources& sources = draft.read->sources;
    sources.read_by(
        [as, bytes = copies.file(*file).bytes](const fs::path& path) {
            return path == as ? std::optional(bytes) : std::nullopt;
        },
        std::string(which));
    draft.read->file = sources.read(as, draft.read->diagnostics);
    draft.read->office = office_of(tools.offices, request.as);
    proofread(*draft.read, request.choices, tools);
    return draft;
}

ComparedDraft read_draft(const std::string& file, const RedlineRequest& request,
                         std::string_view which, const ProofTools& tools) {
    if (file == null_device) {
        ComparedDraft none{blank_draft("no draft"), {}, true};
        none.read->resume.emplace();
        return none;
    }
    if (!request.as.empty()) return read_copy(file, request, which, tools);
    return {proofread(file, request.choices, tools), {}, false};
}

// The repository lives on while its files are read.
ComparedDraft read_from(const std::shared_ptr<history::Repository>& repository,
                        const history::Text& text, const RedlineRequest& request,
                        const ProofTools& tools) {
    const fs::path file = request.drafts.front();
    const std::string aside = " at " + request.since;
    ComparedDraft draft{blank_draft(file.string() + aside), text.commit, false};
    draft.read->sources.read_by(
        [repository, text, file](const fs::path& path) -> std::optional<std::string> {
            if (path == file) return text.bytes;
            const auto there = repository->text_at(path_then(path, file, text), text.commit);
            const auto* found = std::get_if<history::Text>(&there);
            return found == nullptr ? std::nullopt : std::optional(found->bytes);
        },
        aside);
    draft.read->file = draft.read->sources.read(file, draft.read->diagnostics);
    draft.read->office = office_of(tools.offices, file.string());
    proofread(*draft.read, request.choices, tools);
    return draft;
}

DraftsOrFault since_revision(const RedlineRequest& request, const ProofTools& tools) {
    const fs::path file = request.drafts.front();
    auto opened = history::open_repository(file);
    if (const auto* fault = std::get_if<history::Fault>(&opened)) return {{}, said(*fault)};
    const std::shared_ptr<history::Repository> repository =
        std::get<std::unique_ptr<history::Repository>>(std::move(opened));
    auto text = repository->text_at(path_within(*repository, file), request.since);
    if (auto* fault = std::get_if<history::Fault>(&text)) {
        fault->path = file.string();
        return {{}, said(*fault)};
    }
    ComparedDrafts drafts;
    drafts.before = read_from(repository, std::get<history::Text>(text), request, tools);
    drafts.after = read_draft(file.string(), request, {}, tools);
    return {std::move(drafts), {}};
}

}

DraftsOrFault read_drafts(const RedlineRequest& request, const ProofTools& tools) {
    if (request.drafts.size() == 1) return since_revision(request, tools);
    ComparedDrafts drafts;
    drafts.before = read_draft(request.drafts[0], request, " (old)", tools);
    drafts.after = read_draft(request.drafts[1], request, " (new)", tools);
    return {std::move(drafts), {}};
}

}
