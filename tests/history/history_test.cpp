// Earlier drafts, in repositories made by git itself.
#include "compiler/history/history.hpp"

#include "tests/history/git_folder.hpp"

#include <doctest/doctest.h>

#include <string>

namespace {

using namespace quoin::history;

constexpr long day = 86400;
constexpr long first_day = 1'790'000'000;

const std::string long_text = "name: Ottoline Brandt\n\nsection: Experience\n\nrole: Intern\n"
                              "- Counted 212 quadrats\n- Trained 4 volunteers\n- Drew 9 maps\n";

// Three drafts of a file, of which the second renames it, and one commit that does not touch it.
void make_drafts(const GitFolder& folder) {
    folder.run("git init -q .");
    folder.write("fall.resume", long_text);
    folder.commit("First draft", first_day);
    folder.run("mkdir -p term && git mv fall.resume term/spring.resume");
    folder.commit("Renamed", first_day + day);
    folder.write("notes.txt", "call the office");
    folder.commit("Notes", first_day + 2 * day);
    folder.write("term/spring.resume", long_text + "- Wrote a field guide\n");
    folder.commit("Field guide", first_day + 3 * day);
}

std::unique_ptr<Repository> opened(const std::filesystem::path& of) {
    auto outcome = open_repository(of);
    if (auto* fault = std::get_if<Fault>(&outcome)) FAIL(said(*fault));
    return std::move(std::get<std::unique_ptr<Repository>>(outcome));
}

template<typename T>
std::string what(const Outcome<T>& outcome, const GitFolder& folder) {
    const auto* fault = std::get_if<Fault>(&outcome);
    if (fault == nullptr) return "no fault";
    std::string text = said(*fault);
    const std::string root = folder.path.string() + '/';
    return text.starts_with(root) ? text.substr(root.size()) : text;
}

std::string text_of(const std::filesystem::path& file, const std::string& revision) {
    const auto repository = opened(file);
    const auto text = repository->text_at(path_within(*repository, file), revision);
    if (const auto* fault = std::get_if<Fault>(&text)) return said(*fault);
    return std::get<Text>(text).bytes;
}

}

TEST_CASE("history: the drafts of a file, newest first, by its names then") {
    const GitFolder folder;
    make_drafts(folder);
    const auto repository = opened(folder.path / "term");
    CHECK(repository->root() == folder.path.string() + '/');
    CHECK(repository->identity().size() == 40);
    const auto outcome = repository->drafts("term/spring.resume");
    const auto& drafts = std::get<Drafts>(outcome);
    CHECK_FALSE(drafts.cut_off);
    REQUIRE(drafts.all.size() == 3);
    const char* paths[] = {"term/spring.resume", "term/spring.resume", "fall.resume"};
    const char* summaries[] = {"Field guide", "Renamed", "First draft"};
    const long days[] = {3, 1, 0};
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(drafts.all[i].path == paths[i]);
        CHECK(drafts.all[i].summary == summaries[i]);
        CHECK(drafts.all[i].time == first_day + days[i] * day);
    }
    const auto counts = repository->counts();
    const auto& of = std::get<Counts>(counts).of;
    REQUIRE(of.size() == 2);
    const auto& moments = of.at("term/spring.resume").moments;
    REQUIRE(moments.size() == 3);
    CHECK(moments.front().time == first_day + 3 * day);
    CHECK(moments.back().path == drafts.all.back().path);
    CHECK(moments.back().commit == drafts.all.back().commit);
    CHECK(of.at("notes.txt").moments.size() == 1);
}

TEST_CASE("history: a file's text at a revision, by the name it had there") {
    const GitFolder folder;
    make_drafts(folder);
    const auto file = folder.path / "term/spring.resume";
    CHECK(text_of(file, "HEAD") == long_text + "- Wrote a field guide\n");
    CHECK(text_of(file, "HEAD~1") == long_text);
    CHECK(text_of(file, "HEAD~3") == long_text);
}

TEST_CASE("history: a merge counts where it is like none of its parents") {
    const GitFolder folder;
    make_drafts(folder);
    folder.run("git checkout -q -b side HEAD~1");
    folder.write("notes.txt", "call the office again");
    folder.commit("More notes", first_day + 4 * day);
    folder.run(
        "git checkout -q - && GIT_COMMITTER_DATE='@1790500000 +0000' git merge -q -m Merge side");
    const auto repository = opened(folder.path);
    CHECK(std::get<Drafts>(repository->drafts("notes.txt")).all.size() == 2);
    CHECK(std::get<Drafts>(repository->drafts("term/spring.resume")).all.size() == 3);
    const auto counts = repository->counts();
    CHECK(std::get<Counts>(counts).of.at("notes.txt").moments.size() == 2);
    CHECK(std::get<Counts>(counts).of.at("term/spring.resume").moments.size() == 3);
}

TEST_CASE("history: what is not there is told, and the mend") {
    const GitFolder folder;
    make_drafts(folder);
    const auto repository = opened(folder.path);
    CHECK(what(repository->text_at("term/spring.resume", "HEAD~9"), folder) ==
          "term/spring.resume: there is no revision 'HEAD~9' in its git repository; 'git log "
          "--oneline' lists those there are");
    CHECK(what(repository->text_at("other.resume", "HEAD"), folder) ==
          "other.resume: was not there at revision 'HEAD', by this name or by one that it was "
          "renamed from; 'git log --follow' lists the drafts of it there are");
    CHECK(what(repository->text_at("term", "HEAD"), folder) ==
          "term: is no file at revision 'HEAD', but a folder or a symbolic link: name the file "
          "itself");
}

TEST_CASE("history: no repository, none with a work tree, none with a commit") {
    const GitFolder folder;
    folder.write("a.resume", long_text);
    CHECK(what(open_repository(folder.path / "a.resume"), folder) ==
          "a.resume: is in no git repository, so there is no earlier draft of it: 'git init' in "
          "its folder begins one; to compare two files, name both");
    folder.run("git init -q --bare bare.git");
    CHECK(what(open_repository(folder.path / "bare.git"), folder) ==
          "bare.git: is in a bare git repository, which has no work tree: clone it, and name the "
          "file in the clone");
    folder.run("git init -q .");
    const std::string none = "a.resume: nothing was committed yet, so there is no earlier draft: "
                             "'git add' and 'git commit' keep one";
    const auto repository = opened(folder.path);
    CHECK(repository->identity().empty());
    CHECK(what(repository->text_at("a.resume", "HEAD"), folder) == none);
    CHECK(what(repository->drafts("a.resume"), folder) == none);
    CHECK(what(open_repository(folder.path / "gone"), folder) ==
          "gone: its git repository cannot be read: No such file or directory");
}

TEST_CASE("history: of a shallow clone what is there is read, and that there was more is said") {
    const GitFolder folder;
    folder.run("mkdir whole");
    const GitFolder whole;
    make_drafts(whole);
    folder.run("git clone -q --depth 2 'file://" + whole.path.string() + "' clone");
    const auto repository = opened(folder.path / "clone");
    const auto outcome = repository->drafts("term/spring.resume");
    CHECK(std::get<Drafts>(outcome).cut_off);
    CHECK(std::get<Drafts>(outcome).all.size() == 2); // the oldest commit that is here has it, too
    CHECK(std::get<Counts>(repository->counts()).cut_off);
    CHECK(what(repository->text_at("term/spring.resume", "HEAD~3"), folder) ==
          "clone/term/spring.resume: this is a shallow clone, and revision 'HEAD~3' is older than "
          "it reaches: 'git fetch --unshallow' brings the rest");
}

TEST_CASE("history: of a submodule the drafts are its own") {
    const GitFolder folder;
    const GitFolder inner;
    make_drafts(inner);
    folder.run("git init -q . && git -c protocol.file.allow=always submodule add -q '" +
               inner.path.string() + "' student");
    folder.commit("Student", first_day);
    CHECK(text_of(folder.path / "student/term/spring.resume", "HEAD~2") == long_text);
    const auto repository = opened(folder.path);
    CHECK(what(repository->text_at("student", "HEAD"), folder) ==
          "student: is a submodule in its git repository: name a file within it, whose drafts are "
          "its own");
}

TEST_CASE("history: folders without end are told, and not gone through") {
    const std::string told = "a commit in its git repository names more files than are gone "
                             "through, millions, or folders within each other without end: keep "
                             "résumés in a repository of their own";
    const GitFolder folder;
    make_drafts(folder);
    // thirty levels, each the one below it twice; and a commit that has it beside a new file
    folder.run(
        "tree=$(printf '100644 blob %s\\tx\\n' $(git rev-parse HEAD:term/spring.resume) "
        "| git mktree); for level in $(seq 30); do tree=$(printf "
        "'040000 tree %s\\ta\\n040000 tree %s\\tb\\n' $tree $tree | git mktree); done; "
        "top=$( (git ls-tree HEAD; printf '040000 tree %s\\tz\\n' $tree; "
        "printf '100644 blob %s\\tnew.resume\\n' $(echo 'name: A' | git hash-object -w "
        "--stdin)) | git mktree); git update-ref HEAD $(git commit-tree -p HEAD -m Many $top)");
    const auto repository = opened(folder.path);
    CHECK(what(repository->counts(), folder) == ": " + told);
    CHECK(what(repository->drafts("new.resume"), folder) == "new.resume: " + told);
    CHECK(text_of(folder.path / "term/spring.resume", "HEAD~2") == long_text);
}

TEST_CASE("history: what HEAD names and is no commit is told") {
    const GitFolder folder;
    make_drafts(folder);
    folder.run("printf '%040d' 7 > .git/HEAD");
    const auto repository = opened(folder.path);
    CHECK(what(repository->drafts("term/spring.resume"), folder)
              .starts_with("term/spring.resume: its git repository cannot be read: "));
}

TEST_CASE("history: a repository that is damaged is told") {
    const GitFolder folder;
    make_drafts(folder);
    folder.run("printf rubbish > .git/HEAD");
    const auto outcome = open_repository(folder.path);
    const auto* fault = std::get_if<Fault>(&outcome);
    const bool told = fault == nullptr ||
                      said(*fault).find("its git repository cannot be read") != std::string::npos ||
                      said(*fault).find("is in no git repository") != std::string::npos;
    CHECK(told);
}
