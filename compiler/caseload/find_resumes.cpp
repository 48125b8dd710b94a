#include "compiler/caseload/find_resumes.hpp"

#include "compiler/caseload/messages.hpp"

#include <sys/stat.h>

#include <algorithm>
#include <set>
#include <string_view>
#include <system_error>
#include <utility>

namespace quoin::caseload {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view suffix = ".resume";

class Walk {
public:
    Search search;

    void go(const fs::path& place) {
        struct stat status {};
        if (stat(place.c_str(), &status) != 0)
            search.faults.push_back(fill<messages::no_such_place>(place.string()));
        else if (S_ISDIR(status.st_mode))
            go_through(place, status);
        else if (!S_ISREG(status.st_mode)) // a pipe may never end
            search.faults.push_back(fill<messages::no_regular_file>(place.string()));
        else
            take(place, status, true);
    }

private:
    using Identity = std::pair<dev_t, ino_t>;

    bool is_new(const struct stat& status) {
        return seen_.insert({status.st_dev, status.st_ino}).second;
    }

    void take(const fs::path& path, const struct stat& status, bool named) {
        ++search.looked_at;
        if (is_new(status)) search.resumes.push_back({path, named});
    }

    // Not by recursion: folders may be nested as deep as anybody likes.
    void go_through(const fs::path& top, const struct stat& status) {
        std::vector<fs::path> waiting;
        if (is_new(status)) waiting.push_back(top);
        while (!waiting.empty()) {
            const fs::path folder = std::move(waiting.back());
            waiting.pop_back();
            look_into(folder, waiting);
        }
    }

    void look_into(const fs::path& folder, std::vector<fs::path>& waiting) {
        std::error_code fault;
        fs::directory_iterator at(folder, fault);
        for (; !fault && at != fs::directory_iterator(); at.increment(fault))
            look_at(*at, waiting);
        if (fault)
            search.faults.push_back(
                fill<messages::folder_unreadable>(folder.string(), fault.message()));
    }

    void look_at(const fs::directory_entry& entry, std::vector<fs::path>& waiting) {
        const std::string name = entry.path().filename().string();
        if (name.starts_with('.')) return;
        std::error_code fault;
        const bool may_be_folder = entry.is_directory(fault);
        const bool is_resume = !may_be_folder && std::string_view(name).ends_with(suffix);
        if (!may_be_folder) ++search.looked_at;
        if (!may_be_folder && !is_resume) return;
        struct stat status {};
        if (stat(entry.path().c_str(), &status) != 0) {
            search.faults.push_back(fill<messages::no_such_place>(entry.path().string()));
        } else if (may_be_folder && is_submodule(entry.path())) {
            search.notes.push_back(fill<messages::submodule_left_out>(entry.path().string()));
        } else if (may_be_folder && is_new(status)) {
            waiting.push_back(entry.path());
        } else if (S_ISREG(status.st_mode) && is_new(status)) {
            search.resumes.push_back({entry.path(), false});
        }
    }

    // https://git-scm.com/docs/gitsubmodules: there `.git` is a file that names the folder.
    static bool is_submodule(const fs::path& folder) {
        std::error_code fault;
        return fs::is_regular_file(folder / ".git", fault);
    }

    std::set<Identity> seen_;
};

}

Search find_resumes(const std::vector<std::string>& places) {
    Walk walk;
    for (const std::string& place : places)
        walk.go(place);
    std::ranges::sort(walk.search.resumes, {}, &Found::path);
    std::ranges::sort(walk.search.faults);
    std::ranges::sort(walk.search.notes);
    return std::move(walk.search);
}

}
