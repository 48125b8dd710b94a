// Fuzz target: what a git repository holds, kept in memory: commits, trees and texts that name one
// another in any way, in circles too, as in a repository that somebody made to do harm. Whatever it
// is, drafts, texts and counts are found, or what is wrong with it is told.
#include "compiler/history/git_repository.hpp"

#include <git2/sys/odb_backend.h>
#include <git2/sys/repository.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

extern "C" quoin::history::Opener* quoin_history(); // sets libgit2 up as the program does

namespace quoin::history { namespace {

void require(bool holds) {
    if (!holds) std::abort();
}

struct GitObject {
    git_object_t type{};
    std::string bytes;
};

constexpr std::size_t most_objects = 32;

// An object's name is twenty times one byte: its number from 1.
std::string name_of(unsigned number) {
    return std::string(GIT_OID_RAWSZ, static_cast<char>(number));
}

std::string digits_of(unsigned number) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string all;
    for (int i = 0; i < GIT_OID_RAWSZ; ++i) {
        all += digits[number >> 4 & 0xFU];
        all += digits[number & 0xFU];
    }
    return all;
}

// The objects that the bytes of the input ask for, one after the other.
class Maker {
public:
    explicit Maker(std::string_view bytes) : rest_(bytes) {}

    std::vector<GitObject> objects() {
        std::vector<GitObject> all;
        while (!rest_.empty() && all.size() < most_objects)
            all.push_back(object());
        return all;
    }

private:
    unsigned byte() {
        if (rest_.empty()) return 0;
        const auto first = static_cast<unsigned char>(rest_.front());
        rest_.remove_prefix(1);
        return first;
    }
    std::string text() {
        const std::string taken(rest_.substr(0, byte()));
        rest_.remove_prefix(std::min(taken.size(), rest_.size()));
        return taken;
    }
    unsigned number() { return byte() % (most_objects + 2); } // one that is not there, too

    GitObject object() {
        switch (byte() % 5) {
        case 0:
            return {GIT_OBJECT_COMMIT, commit()};
        case 1:
            return {GIT_OBJECT_TREE, tree()};
        case 2:
            return {GIT_OBJECT_BLOB, text()};
        case 3: // as no git would write one
            return {GIT_OBJECT_COMMIT, text()};
        default:
            return {GIT_OBJECT_TREE, text()};
        }
    }

    std::string commit() {
        std::string made = "tree " + digits_of(number()) + '\n';
        for (unsigned parents = byte() % 4; parents > 0; --parents)
            made += "parent " + digits_of(number()) + '\n';
        const std::string who =
            " Student <student@ellerystate.example> " + std::to_string(byte()) + " +0000\n";
        return made + "author" + who + "committer" + who + '\n' + text();
    }

    std::string tree() {
        constexpr std::array<std::string_view, 5> modes{"100644", "40000", "120000", "160000",
                                                        "100755"};
        constexpr std::array<std::string_view, 5> names{"a", "b.resume", "c.resume", "d", "é"};
        std::string made;
        for (unsigned entries = byte() % 8; entries > 0; --entries) {
            made += std::string(modes[byte() % modes.size()]) + ' ';
            made += names[byte() % names.size()];
            made += '\0' + name_of(number());
        }
        return made;
    }

    std::string_view rest_;
};

// Where libgit2 looks for objects.
struct Store : git_odb_backend {
    std::vector<GitObject> objects;

    const GitObject* find(const git_oid* id) const {
        const unsigned number = id->id[0];
        const bool held = std::memcmp(id->id, name_of(number).data(), GIT_OID_RAWSZ) == 0 &&
                          number > 0 && number <= objects.size();
        return held ? &objects[number - 1] : nullptr;
    }
};

const GitObject* find(git_odb_backend* store, const git_oid* id) {
    return static_cast<Store*>(store)->find(id);
}

int read_header(std::size_t* size, git_object_t* type, git_odb_backend* store, const git_oid* id) {
    const GitObject* object = find(store, id);
    if (!object) return GIT_ENOTFOUND;
    *size = object->bytes.size();
    *type = object->type;
    return 0;
}

int read_object(void** bytes, std::size_t* size, git_object_t* type, git_odb_backend* store,
                const git_oid* id) {
    if (read_header(size, type, store, id) != 0) return GIT_ENOTFOUND;
    *bytes = git_odb_backend_data_alloc(store, *size + 1);
    std::memcpy(*bytes, find(store, id)->bytes.c_str(), *size + 1);
    return 0;
}

int has_object(git_odb_backend* store, const git_oid* id) {
    return find(store, id) ? 1 : 0;
}

// A repository of an empty folder, whose HEAD is the first object.
class Opened {
public:
    Opened() : opener_(quoin_history()) {
        require(::mkdtemp(folder_.data()) != nullptr);
        git_libgit2_opts(GIT_OPT_ENABLE_CACHING, 0); // the next input's objects have the same names
        git_repository* made = nullptr;
        require(git_repository_init(&made, folder_.c_str(), 0) == 0);
        std::ofstream(folder_ + "/.git/HEAD") << digits_of(1) << '\n';
        git_ = made;
        repository_ = std::make_unique<GitRepository>(git::Repository(made));
        git_odb_init_backend(&store_, GIT_ODB_BACKEND_VERSION);
        store_.read = read_object;
        store_.read_header = read_header;
        store_.exists = has_object;
        store_.free = [](git_odb_backend*) {};
        git_odb* objects = nullptr;
        require(git_odb_new(&objects) == 0 && git_odb_add_backend(objects, &store_, 1) == 0 &&
                git_repository_set_odb(git_, objects) == 0);
        git_odb_free(objects);
    }
    ~Opened() { std::filesystem::remove_all(folder_); }
    Opened(const Opened&) = delete;
    Opened& operator=(const Opened&) = delete;

    Repository& holding(std::vector<GitObject> objects) {
        store_.objects = std::move(objects);
        return *repository_;
    }

private:
    std::unique_ptr<Opener> opener_;
    std::string folder_ = std::filesystem::temp_directory_path() / "history-XXXXXX";
    git_repository* git_ = nullptr;
    Store store_{};
    std::unique_ptr<GitRepository> repository_;
};

void require_name(const std::string& commit) {
    require(commit.size() == GIT_OID_HEXSZ &&
            commit.find_first_not_of("0123456789abcdef") == std::string::npos);
}

void check_drafts(Repository& repository, const std::string& path) {
    const auto found = repository.drafts(path);
    const auto* drafts = std::get_if<Drafts>(&found);
    if (!drafts) return require(!std::get<Fault>(found).path.empty());
    for (const Draft& draft : drafts->all) {
        require_name(draft.commit);
        require(!draft.path.empty());
    }
    if (drafts->all.empty()) return;
    const auto text = repository.text_at(path, drafts->all.back().commit);
    if (const auto* there = std::get_if<Text>(&text)) require_name(there->commit);
}

void check_counts(Repository& repository) {
    const auto found = repository.counts();
    const auto* counts = std::get_if<Counts>(&found);
    if (!counts) return;
    for (const auto& [path, past] : counts->of) {
        require(!path.empty() && !past.moments.empty());
        for (const Moment& moment : past.moments)
            require_name(moment.commit);
    }
}

}}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace quoin::history;
    static Opened opened;
    const std::string bytes(data, data + size);
    Repository& repository = opened.holding(Maker(bytes).objects());
    check_drafts(repository, "b.resume");
    check_drafts(repository, "a/c.resume");
    (void)repository.text_at("b.resume", digits_of(2));
    check_counts(repository);
    return 0;
}
