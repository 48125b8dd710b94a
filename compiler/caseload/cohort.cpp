#include "compiler/caseload/cohort.hpp"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace quoin::caseload {

namespace {

// Of examples the shortest is the plainest, but it should be a line and not a word.
bool is_plainer(std::string_view example, std::string_view than) {
    constexpr std::size_t least = 20;
    if (than.empty()) return true;
    const bool whole = example.size() >= least, other_whole = than.size() >= least;
    if (whole != other_whole) return whole;
    return std::tuple(example.size(), example) < std::tuple(than.size(), than);
}

void add_to(CommonFinding& common, const Remark& remark) {
    common.check = remark.check;
    common.weight = remark.weight;
    ++common.findings;
    const bool shows = !remark.personal && !remark.quoted.empty();
    if (shows && is_plainer(remark.quoted, common.example)) common.example = remark.quoted;
}

}

std::vector<CommonFinding> common_findings(const std::vector<Student>& students) {
    std::map<std::string_view, CommonFinding> all;
    std::map<std::string_view, const Student*> last;
    for (const Student& student : students)
        for (const Remark& remark : student.now.remarks) {
            CommonFinding& common = all[remark.check];
            add_to(common, remark);
            if (std::exchange(last[remark.check], &student) != &student) ++common.students;
        }
    std::vector<CommonFinding> order;
    for (auto& [check, common] : all)
        order.push_back(std::move(common));
    std::ranges::stable_sort(order, [](const CommonFinding& a, const CommonFinding& b) {
        return std::tuple(b.students, a.weight, b.findings) <
               std::tuple(a.students, b.weight, a.findings);
    });
    return order;
}

}
