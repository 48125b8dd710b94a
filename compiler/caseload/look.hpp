// A draft looked at once: what was found of the same bytes under the same rules is not found again.
#pragma once

#include "compiler/caseload/appraisal.hpp"
#include "compiler/caseload/cache.hpp"

#include <filesystem>
#include <functional>
#include <map>
#include <mutex>
#include <optional>
#include <string>

namespace quoin::caseload {

struct Means { // by which drafts are looked at
    Appraise appraise{};
    // What else a draft at that place hangs on beside the files that are read for it.
    std::function<std::string(const std::filesystem::path&)> surroundings{};
    std::string version{}; // of quoin and of what was asked for
    Day today{};
    Cache* cache = nullptr; // null: none
};

class Look { // safe to use from several threads
public:
    explicit Look(const Means& means) : means_(means) {}

    Appraisal at(const std::filesystem::path& path); // of the file as it is
    // Of an earlier draft: `name` is that of its text, which is asked for if it was never looked
    // at. None if it is not there.
    using Text = std::function<std::optional<std::string>()>;
    std::optional<Appraisal> earlier(const std::filesystem::path& path, const std::string& name,
                                     const Text& text);

private:
    void keep(std::string key, const std::string& bytes, const Appraisal& found);
    std::string key_of(const std::filesystem::path& path, const std::string& text) const;
    bool is_unchanged(const ReadFile& file);
    std::optional<Appraisal> remembered(const std::string& key);

    const Means& means_;
    std::mutex mutex_;                                     // guards digests_
    std::map<std::filesystem::path, std::string> digests_; // of files as this run found them
};

// The bytes of a file; none if it cannot be read, or is too large for a résumé.
std::optional<std::string> bytes_of(const std::filesystem::path& path);

}
