// Which files are taken, of folders as they can be: links that go round, folders in folders.
#include "compiler/caseload/find_resumes.hpp"

#include <doctest/doctest.h>

#include <sys/stat.h>

#include <unistd.h>

#include <fstream>

namespace quoin::caseload {

namespace {

namespace fs = std::filesystem;

class Tree {
public:
    Tree() { fs::create_directories(top); }
    ~Tree() { fs::remove_all(top); }
    Tree(const Tree&) = delete;
    Tree& operator=(const Tree&) = delete;

    void file(const std::string& name, std::string_view text = "name: A\n") const {
        fs::create_directories((top / name).parent_path());
        std::ofstream(top / name) << text;
    }
    // The names below the top, of what is found there.
    std::vector<std::string> found(std::vector<std::string> places = {}) const {
        for (std::string& place : places)
            place = top / place;
        if (places.empty()) places = {top};
        std::vector<std::string> names;
        for (const Found& one : find_resumes(places).resumes)
            names.push_back(one.path.lexically_relative(top).string());
        return names;
    }

    fs::path top = fs::temp_directory_path() / ("quoin-caseload-" + std::to_string(getpid()));
};

using Names = std::vector<std::string>;

}

TEST_CASE("caseload: every résumé below a folder, in the order of paths, nothing else") {
    const Tree tree;
    for (const char* name : {"b/z.resume", "a.resume", "b/c/d.resume", "b/notes.txt",
                             ".git/x.resume", ".hidden.resume", "b/e.resume.bak", "b/E.RESUME"})
        tree.file(name);
    CHECK(tree.found() == Names{"a.resume", "b/c/d.resume", "b/z.resume"});
    CHECK(find_resumes({tree.top}).looked_at == 6);
}

TEST_CASE("caseload: links are followed, and what they lead to is taken once") {
    const Tree tree;
    tree.file("a/one.resume");
    fs::create_directory_symlink("..", tree.top / "a" / "round");
    fs::create_directory_symlink(".", tree.top / "a" / "self");
    fs::create_symlink("a/one.resume", tree.top / "two.resume");
    fs::create_symlink("nowhere", tree.top / "gone.resume");
    CHECK(tree.found().size() == 1);
    CHECK(find_resumes({tree.top}).faults.size() == 1);
    CHECK(tree.found({"a", ".", "a/one.resume"}).size() == 1);
}

TEST_CASE(
    "caseload: a file that is named is taken whatever its name, and a place that is not is said") {
    const Tree tree;
    tree.file("draft.txt");
    const Search search = find_resumes({tree.top / "draft.txt", tree.top / "none"});
    REQUIRE(search.resumes.size() == 1);
    CHECK(search.resumes.front().named);
    REQUIRE(search.faults.size() == 1);
    CHECK(search.faults.front().ends_with("none: no such file or folder"));

    REQUIRE(mkfifo((tree.top / "pipe.resume").c_str(), S_IRWXU) == 0);
    const Search pipe = find_resumes({tree.top / "pipe.resume"});
    CHECK(pipe.resumes.empty());
    REQUIRE(pipe.faults.size() == 1);
    CHECK(pipe.faults.front().find("neither a file with text in it nor a folder") !=
          std::string::npos);
}

TEST_CASE("caseload: a submodule is gone into only where it is named") {
    const Tree tree;
    tree.file("own.resume");
    tree.file("sub/other.resume");
    tree.file("sub/.git", "gitdir: ../.git/modules/sub\n");
    tree.file("clone/theirs.resume");
    tree.file("clone/.git/HEAD", "ref: refs/heads/main\n");
    CHECK(tree.found() == Names{"clone/theirs.resume", "own.resume"});
    CHECK(find_resumes({tree.top}).notes.size() == 1);
    CHECK(tree.found({"sub"}) == Names{"sub/other.resume"});
}

}
