#include "compiler/caseload/caseload.hpp"

#include "compiler/base/hands.hpp"
#include "compiler/caseload/terms.hpp"

#include <algorithm>
#include <exception>
#include <mutex>
#include <set>
#include <system_error>
#include <thread>
#include <tuple>
#include <utility>

namespace quoin::caseload {

namespace {

namespace fs = std::filesystem;

bool is_resume(const ReadFile& file) {
    return file.path.extension() == ".resume";
}

// There may be ten thousand of them.
void make_small(Appraisal& appraisal, const Wanted& wanted) {
    std::erase_if(appraisal.read, [](const ReadFile& file) { return !is_resume(file); });
    appraisal.read.shrink_to_fit();
    for (Remark& remark : appraisal.remarks) {
        if (!wanted.texts) std::string().swap(remark.text);
        const bool shown = wanted.texts || (wanted.examples && !remark.personal);
        if (!shown) std::string().swap(remark.quoted);
    }
}

// Of several hands each takes the next that nobody has taken.
class Work {
public:
    Work(std::vector<Student>& students, Look& look, const Drafts& drafts, const Wanted& wanted,
         const Watch& watch)
        : students_(students), look_(look), drafts_(drafts), wanted_(wanted), watch_(watch) {}

    void run() {
        const std::size_t hands =
            std::min<std::size_t>(std::thread::hardware_concurrency(), students_.size());
        work_with_hands(hands, [this] { take_all(); });
    }

    std::vector<bool> done() const { return {done_.begin(), done_.end()}; }

private:
    void take_all() {
        for (std::size_t i = next_++; i < students_.size() && !stopped(); i = next_++) {
            take(students_[i]);
            const std::scoped_lock lock(mutex_);
            done_[i] = 1;
            ++count_;
            if (watch_.progress)
                watch_.progress(count_, students_.size(), students_[i].place.path.string());
        }
    }

    bool stopped() const { return watch_.stop && *watch_.stop; }

    void take(Student& student) {
        const fs::path& path = student.place.path;
        student.now = look_.at(path);
        make_small(student.now, wanted_);
        student.drafts = drafts_.of(path);
        if (wanted_.terms) take_terms(student);
        if (student.drafts.size() < 2) return;
        const auto before = earlier(path, student.drafts[student.drafts.size() - 2]);
        if (before && before->readable()) student.before = before->counts();
    }

    void take_terms(Student& student) {
        for (const Draft& draft : last_of_terms(student.drafts)) {
            const bool is_now = draft == student.drafts.back();
            const auto then =
                is_now ? std::optional(student.now) : earlier(student.place.path, draft);
            student.at_ends.push_back(
                {draft.day, then ? then->counts() : Counts{}, then && then->ready()});
        }
    }

    // None if it is not there.
    std::optional<Appraisal> earlier(const fs::path& path, const Draft& draft) {
        if (draft.revision.empty()) return std::nullopt;
        return look_.earlier(path, draft.revision + ' ' + draft.path,
                             [&] { return drafts_.text(path, draft); });
    }

    std::vector<Student>& students_;
    Look& look_;
    const Drafts& drafts_;
    const Wanted& wanted_;
    const Watch& watch_;
    std::atomic<std::size_t> next_ = 0;
    std::mutex mutex_; // guards all below, and the watch
    std::size_t count_ = 0;
    std::vector<char> done_ = std::vector<char>(students_.size());
};

std::string name_of(const Student& student) {
    return student.now.name.empty() ? student.place.path.stem().string() : student.now.name;
}

// What another one takes in is no résumé of its own, unless it was named.
void leave_out_included(std::vector<Student>& students) {
    std::set<fs::path> included;
    std::error_code fault;
    for (const Student& student : students)
        for (std::size_t i = 1; i < student.now.read.size(); ++i)
            included.insert(fs::weakly_canonical(student.now.read[i].path, fault));
    if (included.empty()) return;
    std::erase_if(students, [&](const Student& student) {
        return !student.place.named &&
               included.contains(fs::weakly_canonical(student.place.path, fault));
    });
}

void settle(Student& student, Day today) {
    student.called = name_of(student);
    if (!student.drafts.empty())
        student.days = static_cast<int>(
            std::max<std::int64_t>((today - student.drafts.back().day).count(), 0));
    weigh(student);
}

bool stands_before(const Student& a, const Student& b) {
    if (a.need != b.need) return a.need > b.need;
    return std::tie(a.called, a.place.path) < std::tie(b.called, b.place.path);
}

}

void put_in_order(std::vector<Student>& students) {
    std::ranges::sort(students, stands_before);
}

Caseload read_caseload(const std::vector<Found>& resumes, const Means& means, const Drafts& drafts,
                       const Wanted& wanted, const Watch& watch) {
    Caseload all{.today = means.today, .all = resumes.size()};
    std::vector<Student> students;
    for (const Found& found : resumes)
        students.push_back({.place = found});
    Look look(means);
    Work work(students, look, drafts, wanted, watch);
    work.run();
    const std::vector<bool> done = work.done();
    for (std::size_t i = 0; i < students.size(); ++i)
        if (done[i]) all.students.push_back(std::move(students[i]));
    all.done = all.students.size();
    leave_out_included(all.students);
    for (Student& student : all.students)
        settle(student, means.today);
    put_in_order(all.students);
    if (wanted.terms && all.done == all.all) all.terms = terms_of(all.students);
    return all;
}

}
