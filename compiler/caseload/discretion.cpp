#include "compiler/caseload/discretion.hpp"

#include "compiler/base/digest.hpp"
#include "compiler/caseload/masking.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <random>
#include <system_error>

namespace quoin::caseload {

namespace {

namespace fs = std::filesystem;

std::string key_of(const Student& student) {
    std::error_code fault;
    return digest_of(fs::weakly_canonical(student.place.path, fault).string());
}

void mask(Student& student, const Masking& masking) {
    student.now.fault = masking.masked(student.now.fault);
    student.why = masking.masked(student.why);
    for (Remark& remark : student.now.remarks) {
        remark.text = masking.masked(remark.text);
        remark.quoted = masking.masked(remark.quoted);
    }
}

// Findings of what is personal quote it; of the others the name alone is looked for.
void forget(Student& student) {
    student.now.name.clear();
    student.place.path.clear();
    for (Remark& remark : student.now.remarks) {
        remark.text.clear();
        if (remark.personal) remark.quoted.clear();
    }
    if (student.now.readable()) return;
    student.now.fault = "an error";
    weigh(student);
}

Masking all_names(const Caseload& caseload) {
    Masking masking;
    for (const Student& student : caseload.students) {
        masking.hide_name(student.now.name.empty() ? student.place.path.stem().string()
                                                   : student.now.name);
    }
    return masking;
}

}

void hide_contacts(Caseload& caseload) {
    const Masking masking;
    for (Student& student : caseload.students) {
        student.called = masking.masked(student.called);
        mask(student, masking);
    }
}

bool hide_names(Caseload& caseload, Cache* cache) {
    const Masking masking = all_names(caseload);
    std::vector<std::size_t> order(caseload.students.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::random_device chance;
    std::ranges::shuffle(order, chance);
    std::vector<std::string> keys;
    for (const std::size_t i : order)
        keys.push_back(key_of(caseload.students[i]));
    const auto kept = cache ? cache->numbers(term_of(caseload.today), keys) : std::nullopt;
    for (std::size_t i = 0; i < order.size(); ++i) {
        Student& student = caseload.students[order[i]];
        const std::int64_t number = kept ? (*kept)[i] : static_cast<std::int64_t>(i) + 1;
        mask(student, masking);
        forget(student);
        student.called = fmt::format("Student {}", number);
    }
    put_in_order(caseload.students); // of equals no longer by name
    return kept.has_value();
}

}
