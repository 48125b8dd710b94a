#include "compiler/caseload/cache.hpp"

#include "compiler/base/digest.hpp"
#include "compiler/caseload/messages.hpp"

#include <sqlite3.h>
#include <sys/stat.h>

#include <cstdlib>
#include <system_error>
#include <utility>

namespace quoin::caseload {

namespace {

namespace fs = std::filesystem;

constexpr const char* file_name = "caseload-1.sqlite"; // another number when its tables change
constexpr int longest_wait = 5000;                     // ms, for another run to end its writing
constexpr std::size_t written_together = 256;
constexpr std::int64_t days_kept = 120;

// A write-ahead log lets one run read while another writes.
constexpr const char* tables =
    "PRAGMA journal_mode=WAL; PRAGMA synchronous=NORMAL;"
    "CREATE TABLE IF NOT EXISTS appraisals (key BLOB PRIMARY KEY, day INTEGER NOT NULL,"
    " value BLOB NOT NULL, sum BLOB NOT NULL) WITHOUT ROWID;"
    "CREATE TABLE IF NOT EXISTS numbers (term TEXT NOT NULL, key BLOB NOT NULL,"
    " number INTEGER NOT NULL, PRIMARY KEY (term, key)) WITHOUT ROWID;";

std::string sum_of(std::string_view key, std::int64_t day, std::string_view value) {
    return Digest().add(key).add(std::to_string(day)).add(value).bytes();
}

// https://www.sqlite.org/uri.html: what ends a path there is written by its number.
std::string in_uri(const std::string& path) {
    std::string uri;
    for (const char c : path)
        if (c == '%' || c == '?' || c == '#')
            uri += '%' + in_hexadecimal(std::string_view(&c, 1));
        else
            uri += c;
    return uri;
}

}

std::optional<fs::path> cache_folder() {
    if (const char* named = std::getenv("XDG_CACHE_HOME"); named != nullptr && *named == '/')
        return fs::path(named) / "quoin";
    if (const char* home = std::getenv("HOME"); home != nullptr && *home == '/')
        return fs::path(home) / ".cache" / "quoin";
    return std::nullopt;
}

// One question to the data base, freed with it.
class Cache::Statement {
public:
    Statement(sqlite3* base, const char* sql) {
        if (base) code_ = sqlite3_prepare_v2(base, sql, -1, &statement_, nullptr);
    }
    ~Statement() { sqlite3_finalize(statement_); }
    Statement(const Statement&) = delete;
    Statement& operator=(const Statement&) = delete;

    Statement& with(int at, std::string_view bytes) {
        sqlite3_bind_blob(statement_, at, bytes.data(), static_cast<int>(bytes.size()),
                          SQLITE_STATIC);
        return *this;
    }
    Statement& with(int at, std::int64_t number) {
        sqlite3_bind_int64(statement_, at, number);
        return *this;
    }
    int step() { return statement_ ? code_ = sqlite3_step(statement_) : code_; }
    std::int64_t number(int column) const { return sqlite3_column_int64(statement_, column); }
    std::string bytes(int column) const {
        const void* data = sqlite3_column_blob(statement_, column);
        const int size = sqlite3_column_bytes(statement_, column);
        return data ? std::string(static_cast<const char*>(data), static_cast<std::size_t>(size))
                    : std::string();
    }

private:
    sqlite3_stmt* statement_ = nullptr;
    int code_ = SQLITE_ERROR;
};

Cache::Cache(const fs::path& folder) : file_(folder / file_name) {
    std::error_code fault;
    if (fs::create_directories(folder, fault))
        fs::permissions(folder, fs::perms::owner_all, fault); // it tells of people
    open();
}

Cache::~Cache() {
    flush();
    close();
}

void Cache::close() {
    sqlite3_close(base_);
    base_ = nullptr;
}

// For writing or, if that is not allowed, for reading what is there.
void Cache::open() {
    const mode_t before = umask(S_IRWXG | S_IRWXO);
    constexpr int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_NOMUTEX;
    const int code = sqlite3_open_v2(file_.c_str(), &base_, flags, nullptr);
    umask(before);
    if (code == SQLITE_OK) {
        sqlite3_busy_timeout(base_, longest_wait);
        if (run(tables) || was_set_aside_) return;
    }
    if (note_.empty()) open_as_it_is(); // else it was damaged, and stands anew
}

// To be read alone.
void Cache::open_as_it_is() {
    close();
    note_ = fill<messages::cache_unkept>(file_.string());
    read_only_ = true;
    const std::string as_it_is = "file:" + in_uri(file_.string()) + "?immutable=1";
    constexpr int flags = SQLITE_OPEN_READONLY | SQLITE_OPEN_URI | SQLITE_OPEN_NOMUTEX;
    if (sqlite3_open_v2(as_it_is.c_str(), &base_, flags, nullptr) != SQLITE_OK) close();
}

// Whether it went well. What was damaged is set aside on the way.
bool Cache::run(const char* sql) {
    return base_ && judged(sqlite3_exec(base_, sql, nullptr, nullptr, nullptr)) == Outcome::done;
}

Cache::Outcome Cache::judged(int code) {
    switch (code & 0xFF) {
    case SQLITE_OK:
    case SQLITE_DONE:
        return Outcome::done;
    case SQLITE_ROW:
        return Outcome::row;
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return Outcome::busy;
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
    case SQLITE_FORMAT:
    case SQLITE_MISMATCH:
        set_aside();
        return Outcome::damaged;
    default:
        return Outcome::failed;
    }
}

// Once: what is damaged again at once is the disk's fault, and is done without.
void Cache::set_aside() {
    close();
    if (std::exchange(was_set_aside_, true) || read_only_) return;
    const fs::path aside = fs::path(file_) += ".damaged";
    std::error_code fault;
    fs::rename(file_, aside, fault);
    for (const char* end : {"-wal", "-shm"})
        fs::remove(fs::path(file_) += end, fault);
    note_ = fill<messages::cache_set_aside>(aside.string());
    open();
}

std::optional<std::string> Cache::find(std::string_view key, std::int64_t day) {
    const std::scoped_lock lock(mutex_);
    if (const auto found = waiting_.find(key); found != waiting_.end() && found->second.day == day)
        return found->second.value;
    std::string value;
    int code = SQLITE_ERROR;
    if (!base_) return std::nullopt;
    {
        Statement ask(base_, "SELECT value, sum FROM appraisals WHERE key = ?1 AND day = ?2");
        code = ask.with(1, key).with(2, day).step();
        if (code == SQLITE_ROW) {
            value = ask.bytes(0);
            if (ask.bytes(1) != sum_of(key, day, value)) return std::nullopt;
        }
    }
    return judged(code) == Outcome::row ? std::optional(std::move(value)) : std::nullopt;
}

void Cache::keep(std::string key, std::int64_t day, std::string value) {
    const std::scoped_lock lock(mutex_);
    if (!base_ || read_only_) return;
    waiting_.insert_or_assign(std::move(key), Kept{day, std::move(value)});
    if (waiting_.size() >= written_together) write_waiting();
}

void Cache::flush() {
    const std::scoped_lock lock(mutex_);
    write_waiting();
}

// All or nothing. Where another run writes for too long, it is not kept, and made again next time.
void Cache::write_waiting() {
    const auto waiting = std::exchange(waiting_, {});
    if (waiting.empty() || !run("BEGIN IMMEDIATE")) return;
    for (const auto& [key, kept] : waiting)
        if (!keep_one(key, kept)) break;
    if (!std::exchange(pruned_, true)) prune(waiting.begin()->second.day);
    run("COMMIT");
}

// A draft that nobody has looked at for so long has most likely gone.
void Cache::prune(std::int64_t today) {
    Statement(base_, "DELETE FROM appraisals WHERE day < ?1").with(1, today - days_kept).step();
}

bool Cache::keep_one(const std::string& key, const Kept& kept) {
    const std::string sum = sum_of(key, kept.day, kept.value);
    int code = SQLITE_ERROR;
    {
        Statement put(base_, "INSERT OR REPLACE INTO appraisals VALUES (?1, ?2, ?3, ?4)");
        code = put.with(1, key).with(2, kept.day).with(3, kept.value).with(4, sum).step();
    }
    return judged(code) == Outcome::done;
}

std::optional<std::int64_t> Cache::number_of(const std::string& term, const std::string& key) {
    int code = SQLITE_ERROR;
    std::int64_t number = 0;
    {
        Statement ask(base_, "SELECT number FROM numbers WHERE term = ?1 AND key = ?2");
        code = ask.with(1, term).with(2, key).step();
        if (code == SQLITE_ROW) number = ask.number(0);
    }
    if (judged(code) != Outcome::done) return number > 0 ? std::optional(number) : std::nullopt;
    {
        Statement put(base_, "INSERT INTO numbers SELECT ?1, ?2, ifnull(max(number), 0) + 1 FROM "
                             "numbers WHERE term = ?1 RETURNING number");
        code = put.with(1, term).with(2, key).step();
        if (code == SQLITE_ROW) number = put.number(0);
    }
    return judged(code) == Outcome::row ? std::optional(number) : std::nullopt;
}

std::optional<std::vector<std::int64_t>> Cache::numbers(const std::string& term,
                                                        const std::vector<std::string>& keys) {
    const std::scoped_lock lock(mutex_);
    if (read_only_ || !run("BEGIN IMMEDIATE")) return std::nullopt;
    std::vector<std::int64_t> numbers;
    for (const std::string& key : keys)
        if (const auto number = number_of(term, key)) numbers.push_back(*number);
    const bool all = numbers.size() == keys.size();
    return run(all ? "COMMIT" : "ROLLBACK") && all ? std::optional(numbers) : std::nullopt;
}

std::string Cache::note() {
    const std::scoped_lock lock(mutex_);
    return std::exchange(note_, {});
}

}
