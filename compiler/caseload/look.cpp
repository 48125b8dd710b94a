#include "compiler/caseload/look.hpp"

#include "compiler/base/descriptor.hpp"
#include "compiler/base/digest.hpp"
#include "compiler/base/source.hpp"

#include <fcntl.h>
#include <sys/stat.h>

#include <algorithm>
#include <system_error>

namespace quoin::caseload {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t digest_figures = 2 * digest_size; // of a digest

// A line for each file that was read, its digest and its path; an empty line; what was found. None
// for what does not go in lines, and for what failed: that may mend itself with no byte changed.
std::optional<std::string> value_of(const Appraisal& appraisal) {
    if (!appraisal.readable()) return std::nullopt;
    std::string value;
    for (const ReadFile& file : appraisal.read) {
        const std::string path = file.path.string();
        if (path.find('\n') != path.npos || file.digest.size() != digest_figures)
            return std::nullopt;
        value += file.digest + path + '\n';
    }
    return value + '\n' + to_bytes(appraisal);
}

}

std::optional<std::string> bytes_of(const fs::path& path) {
    const Descriptor file(open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
    struct stat status {};
    if (file.number() < 0 || fstat(file.number(), &status) != 0 || !S_ISREG(status.st_mode) ||
        static_cast<std::size_t>(status.st_size) > Sources::most_bytes)
        return std::nullopt;
    std::string bytes(static_cast<std::size_t>(status.st_size) + 1, '\0');
    std::size_t filled = 0;
    for (ssize_t count = 1; count > 0 && filled < bytes.size();
         filled += static_cast<std::size_t>(std::max<ssize_t>(count, 0)))
        count = read(file.number(), bytes.data() + filled, bytes.size() - filled);
    bytes.resize(filled);
    return bytes;
}

std::string Look::key_of(const fs::path& path, const std::string& text) const {
    std::error_code fault;
    return Digest()
        .add(means_.version)
        .add(fs::absolute(path, fault).string())
        .add(means_.surroundings ? means_.surroundings(path) : std::string())
        .add(text)
        .bytes();
}

bool Look::is_unchanged(const ReadFile& file) {
    {
        const std::scoped_lock lock(mutex_);
        if (const auto known = digests_.find(file.path); known != digests_.end())
            return known->second == file.digest;
    }
    const auto bytes = bytes_of(file.path);
    std::string digest = bytes ? digest_of(*bytes) : std::string();
    const bool same = digest == file.digest;
    const std::scoped_lock lock(mutex_);
    digests_.emplace(file.path, std::move(digest));
    return same;
}

// What is kept, if all that it was found from is still so.
std::optional<Appraisal> Look::remembered(const std::string& key) {
    const auto kept = means_.cache->find(key, means_.today.time_since_epoch().count());
    if (!kept) return std::nullopt;
    std::string_view left = *kept;
    std::vector<ReadFile> read;
    for (std::size_t end = left.find('\n'); end != left.npos; end = left.find('\n')) {
        const std::string_view line = left.substr(0, end);
        left.remove_prefix(end + 1);
        if (line.empty()) break;
        if (line.size() <= digest_figures) return std::nullopt;
        read.push_back(
            {fs::path(line.substr(digest_figures)), std::string(line.substr(0, digest_figures))});
        if (read.size() > 1 && !is_unchanged(read.back())) return std::nullopt;
    }
    auto appraisal = appraisal_from(left);
    if (appraisal) appraisal->read = std::move(read);
    return appraisal;
}

// What was found of these bytes; if they changed while they were read, it is of others.
void Look::keep(std::string key, const std::string& bytes, const Appraisal& found) {
    const auto value = value_of(found);
    if (value && !found.read.empty() && found.read.front().digest == digest_of(bytes))
        means_.cache->keep(std::move(key), means_.today.time_since_epoch().count(), *value);
}

Appraisal Look::at(const fs::path& path) {
    const auto bytes = means_.cache ? bytes_of(path) : std::nullopt;
    if (!bytes) return means_.appraise(path, std::nullopt);
    std::string key = key_of(path, "bytes " + *bytes);
    if (auto known = remembered(key)) return *std::move(known);
    Appraisal found = means_.appraise(path, std::nullopt);
    keep(std::move(key), *bytes, found);
    return found;
}

std::optional<Appraisal> Look::earlier(const fs::path& path, const std::string& name,
                                       const Text& text) {
    std::string key = key_of(path, "name " + name);
    if (means_.cache)
        if (auto known = remembered(key)) return known;
    const auto bytes = text();
    if (!bytes) return std::nullopt;
    Appraisal found = means_.appraise(path, bytes);
    if (means_.cache) keep(std::move(key), *bytes, found);
    return found;
}

}
