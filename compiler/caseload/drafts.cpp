#include "compiler/caseload/drafts.hpp"

#include "compiler/base/digest.hpp"
#include "compiler/base/folder.hpp"
#include "compiler/base/module.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/caseload/look.hpp"
#include "compiler/history/history.hpp"

#include <sys/stat.h>

#include <map>
#include <mutex>
#include <system_error>
#include <utility>

namespace quoin::caseload {

namespace {

namespace fs = std::filesystem;

Day day_at(std::int64_t seconds) {
    return std::chrono::floor<std::chrono::days>(
        std::chrono::sys_seconds{std::chrono::seconds(seconds)});
}

std::vector<Draft> day_of_file(const fs::path& file) {
    struct stat status {};
    if (stat(file.c_str(), &status) != 0) return {};
    return {{.day = day_at(status.st_mtim.tv_sec)}};
}

bool same_but_for_line_ends(const std::string& a, const std::string& b) {
    return a == b || replaced(a, "\r\n", "\n") == replaced(b, "\r\n", "\n");
}

// One repository, with the moments of all its files; asked by one thread at a time.
class Kept {
public:
    Kept(std::unique_ptr<history::Repository> repository, history::Counts counts)
        : repository_(std::move(repository)), root_(repository_->root()),
          past_(std::move(counts.of)) {}

    std::vector<Draft> of(const std::string& path) const {
        std::vector<Draft> drafts;
        const auto found = past_.find(path);
        if (found == past_.end()) return drafts;
        const auto& moments = found->second.moments;
        for (auto moment = moments.rbegin(); moment != moments.rend(); ++moment)
            drafts.push_back({day_at(moment->time), moment->commit, moment->path});
        return drafts;
    }

    std::optional<std::string> text(const Draft& draft) const {
        const std::scoped_lock lock(mutex_);
        auto text = repository_->text_at(draft.path, draft.revision);
        auto* found = std::get_if<history::Text>(&text);
        return found ? std::optional(std::move(found->bytes)) : std::nullopt;
    }

    // Whether the file holds what HEAD has; ends of lines, which git may change, aside.
    bool is_as_in_head(const std::string& path, const std::string& now) const {
        const history::Past& past = past_.at(path);
        if (past.blob == blob_name(now)) return true;
        const auto last = text({.revision = "HEAD", .path = path});
        return !last || same_but_for_line_ends(*last, now);
    }

    const std::string& root() const { return root_; }

private:
    mutable std::mutex mutex_; // guards repository_
    std::unique_ptr<history::Repository> repository_;
    std::string root_;
    std::map<std::string, history::Past> past_;
};

std::string path_within(const Kept& kept, const fs::path& file) {
    std::error_code fault;
    const std::string real = fs::canonical(file, fault).string();
    return !fault && real.starts_with(kept.root()) ? real.substr(kept.root().size())
                                                   : std::string{};
}

class GitDrafts : public Drafts {
public:
    GitDrafts(const std::vector<Found>& resumes, std::vector<std::string>& notes) : notes_(notes) {
        for (const Found& found : resumes) {
            const fs::path folder = folder_of(found.path);
            if (!kept_.contains(folder)) kept_.emplace(folder, kept_at(top_of(folder)));
        }
    }

    std::vector<Draft> of(const fs::path& file) const override {
        const Kept* kept = kept_.at(folder_of(file)).get();
        if (!kept) return day_of_file(file);
        const std::string path = path_within(*kept, file);
        auto drafts = kept->of(path);
        if (drafts.empty()) return day_of_file(file);
        const auto now = bytes_of(file);
        if (now && !kept->is_as_in_head(path, *now))
            for (Draft& changed : day_of_file(file))
                drafts.push_back(std::move(changed));
        return drafts;
    }

    std::optional<std::string> text(const fs::path& file, const Draft& draft) const override {
        const Kept* kept = kept_.at(folder_of(file)).get();
        if (draft.revision.empty()) return bytes_of(file);
        return kept ? kept->text(draft) : std::nullopt;
    }

private:
    using Shared = std::shared_ptr<const Kept>;

    // The folder at or above that holds `.git`; empty: none.
    fs::path top_of(const fs::path& folder) {
        std::error_code fault;
        fs::path at = fs::canonical(folder, fault);
        std::vector<fs::path> passed;
        for (; !fault && !at.empty(); at = at.parent_path()) {
            if (const auto known = tops_.find(at); known != tops_.end()) {
                at = known->second;
                break;
            }
            passed.push_back(at);
            if (fs::exists(at / ".git", fault)) break;
            if (at == at.root_path()) at.clear();
            if (at.empty()) break;
        }
        for (fs::path& one : passed)
            tops_.emplace(std::move(one), at);
        return at;
    }

    Shared kept_at(const fs::path& top) {
        if (top.empty()) return nullptr;
        const auto [found, is_new] = of_tops_.try_emplace(top, nullptr);
        if (is_new) found->second = opened(top);
        return found->second;
    }

    Shared opened(const fs::path& top) {
        auto repository = history::open_repository(top);
        if (const auto* fault = std::get_if<history::Fault>(&repository)) return none(*fault);
        auto& open = std::get<std::unique_ptr<history::Repository>>(repository);
        auto counts = open->counts();
        if (const auto* fault = std::get_if<history::Fault>(&counts)) return none(*fault);
        if (std::get<history::Counts>(counts).cut_off)
            notes_.push_back(top.string() + ": " + history::said_of_cut_off());
        return std::make_shared<const Kept>(std::move(open),
                                            std::get<history::Counts>(std::move(counts)));
    }

    // Without a commit there is no history to be missed.
    Shared none(const history::Fault& fault) {
        if (fault.problem != history::Problem::no_commits) notes_.push_back(said(fault));
        return nullptr;
    }

    std::vector<std::string>& notes_;
    std::map<fs::path, fs::path> tops_;
    std::map<fs::path, Shared> of_tops_, kept_; // kept_ by the folders of résumés
};

class FileDays : public Drafts {
public:
    std::vector<Draft> of(const fs::path& file) const override { return day_of_file(file); }
    std::optional<std::string> text(const fs::path& file, const Draft&) const override {
        return bytes_of(file);
    }
};

}

std::unique_ptr<const Drafts> drafts_of(const std::vector<Found>& resumes,
                                        std::vector<std::string>& notes) {
    try {
        return std::make_unique<GitDrafts>(resumes, notes);
    } catch (const ModuleFault& fault) {
        notes.emplace_back(fault.what());
        return std::make_unique<FileDays>();
    }
}

}
