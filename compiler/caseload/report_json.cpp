// For programs, by grammar/schemas/caseload.schema.json.
#include "compiler/base/json_text.hpp"
#include "compiler/caseload/report.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace quoin::caseload {

namespace {

using OrderedJson = nlohmann::ordered_json;

constexpr int json_version = 1; // goes up when a key changes its meaning

double rounded(double value) {
    return std::round(value * 100) / 100;
}

OrderedJson counts_of(const Counts& counts) {
    return {{"must", counts[0]}, {"should", counts[1]}, {"consider", counts[2]}};
}

OrderedJson page_of(const Appraisal& now) {
    if (now.pages == 0) return nullptr;
    return {{"pages", now.pages},
            {"allowed", now.allowed},
            {"fits", now.fits},
            {"size", rounded(now.size)}};
}

OrderedJson findings_of(const Appraisal& now, bool anonymous) {
    OrderedJson all = OrderedJson::array();
    for (const Remark& remark : now.remarks) {
        OrderedJson one{
            {"check", remark.check}, {"weight", name_of(remark.weight)}, {"line", remark.line}};
        if (!anonymous) one["text"] = remark.text;
        all.push_back(std::move(one));
    }
    return all;
}

OrderedJson drafts_of(const Student& student) {
    OrderedJson days = OrderedJson::array();
    for (const Draft& draft : student.drafts)
        days.push_back(iso(draft.day));
    return days;
}

OrderedJson student_of(const Student& student, bool anonymous) {
    OrderedJson one{{"who", student.called}};
    if (!anonymous) one["file"] = student.place.path.string();
    one["stage"] = student.now.readable() ? OrderedJson(student.now.stage) : OrderedJson();
    one["fault"] = student.now.readable() ? OrderedJson() : OrderedJson(student.now.fault);
    one["page"] = page_of(student.now);
    one["found"] = counts_of(student.now.counts());
    one["before"] = student.before ? counts_of(*student.before) : OrderedJson();
    one["drafts"] = drafts_of(student);
    one["days"] = student.days ? OrderedJson(*student.days) : OrderedJson();
    one["trend"] = trend_words(student);
    one["ready"] = student.now.ready();
    one["due"] = student.due();
    one["why"] = student.why;
    one["findings"] = findings_of(student.now, anonymous);
    return one;
}

OrderedJson common_of(const CommonFinding& common) {
    return {{"check", common.check},
            {"weight", name_of(common.weight)},
            {"students", common.students},
            {"findings", common.findings},
            {"looks_at", looked_at(common.check)},
            {"example", common.example}};
}

OrderedJson state_of(const TermState& state) {
    return {{"term", state.term},
            {"students", state.students},
            {"drafts", state.drafts},
            {"ready", state.ready},
            {"musts", rounded(state.musts)},
            {"shoulds", rounded(state.shoulds)}};
}

template<typename Values>
OrderedJson array_of(const Values& values, auto json_of) {
    OrderedJson array = OrderedJson::array();
    for (const auto& value : values)
        array.push_back(json_of(value));
    return array;
}

}

std::string as_json(const Report& report) {
    const auto student = [&](const Student& one) { return student_of(one, report.anonymous); };
    return json_text({{"version", json_version},
                      {"on", iso(report.caseload.today)},
                      {"anonymous", report.anonymous},
                      {"cautions", report.cautions},
                      {"students", array_of(report.caseload.students, student)},
                      {"cohort", array_of(report.common, common_of)},
                      {"terms", array_of(report.caseload.terms, state_of)}});
}

}
