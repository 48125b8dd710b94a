// What earlier runs found, in a file of SQLite's. Nothing hangs on it: it may be deleted, damaged,
// read-only, or in use by another run. What it gives is checked before it is believed.
#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

struct sqlite3;

namespace quoin::caseload {

// Where the base directory specification of freedesktop.org has caches: $XDG_CACHE_HOME, else
// ~/.cache; none if neither is known.
std::optional<std::filesystem::path> cache_folder();

// Safe to use from several threads.
class Cache {
public:
    explicit Cache(const std::filesystem::path& folder);
    ~Cache();
    Cache(const Cache&) = delete;
    Cache& operator=(const Cache&) = delete;

    // What was kept of `key` on that day; days are numbered. None if nothing was, or if it is not
    // as it was kept.
    std::optional<std::string> find(std::string_view key, std::int64_t day);
    void keep(std::string key, std::int64_t day, std::string value);
    void flush(); // all that was to be kept is written

    // A number for each of `keys`, from 1: the one it has in that term, else the next, in the order
    // they are given in. None if they cannot be kept.
    std::optional<std::vector<std::int64_t>> numbers(const std::string& term,
                                                     const std::vector<std::string>& keys);

    // What went wrong with it, to be said once; empty if nothing.
    std::string note();

private:
    struct Kept {
        std::int64_t day = 0;
        std::string value;
    };
    class Statement;
    enum class Outcome { done, no_row, row, busy, damaged, failed };

    void open();
    void open_as_it_is();
    void close();
    bool run(const char* sql);
    Outcome judged(int code);
    void set_aside();
    void write_waiting();
    void prune(std::int64_t today);
    bool keep_one(const std::string& key, const Kept& kept);
    std::optional<std::int64_t> number_of(const std::string& term, const std::string& key);

    std::mutex mutex_; // guards all below
    std::filesystem::path file_;
    sqlite3* base_ = nullptr; // null: there is none to be had
    bool read_only_ = false;
    bool was_set_aside_ = false, pruned_ = false;
    std::map<std::string, Kept, std::less<>> waiting_; // to be written together
    std::string note_;
};

}
