#include "compiler/caseload/appraisal.hpp"

#include "compiler/base/numbers.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <exception>

namespace quoin::caseload {

namespace {

using nlohmann::json;

json json_of(const Remark& remark) {
    return json::array({remark.check, static_cast<unsigned>(remark.weight), remark.line,
                        remark.text, remark.quoted, remark.personal});
}

Remark remark_from(const json& kept) {
    Remark remark{.check = kept.at(0),
                  .line = kept.at(2),
                  .text = kept.at(3),
                  .quoted = kept.at(4),
                  .personal = kept.at(5)};
    const unsigned weight = kept.at(1);
    if (weight > static_cast<unsigned>(trade::Weight::consider)) throw std::exception();
    remark.weight = static_cast<trade::Weight>(weight);
    return remark;
}

Appraisal read_appraisal(const json& kept) {
    Appraisal appraisal{.name = kept.at("name"),
                        .stage = kept.at("stage"),
                        .fault = kept.at("fault"),
                        .fault_line = kept.at("fault_line"),
                        .pages = kept.at("pages"),
                        .allowed = kept.at("allowed"),
                        .size = kept.at("size"),
                        .fits = kept.at("fits"),
                        .good = kept.at("good"),
                        .advice = kept.at("advice")};
    if (const json& months = kept.at("stale"); !months.is_null())
        appraisal.stale_months = months.get<int>();
    for (const json& each : kept.at("remarks"))
        appraisal.remarks.push_back(remark_from(each));
    return appraisal;
}

}

std::string iso(Day day) {
    const std::chrono::year_month_day date(day);
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

std::optional<Day> day_of(std::string_view iso) {
    constexpr std::string_view form = "2026-11-29";
    if (iso.size() != form.size() || iso[4] != '-' || iso[7] != '-') return std::nullopt;
    const auto year = number_from<int>(iso.substr(0, 4)),
               month = number_from<int>(iso.substr(5, 2)), day = number_from<int>(iso.substr(8));
    if (!year || !month || !day || *month < 0 || *day < 0) return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year(*year),
                                           std::chrono::month(static_cast<unsigned>(*month)),
                                           std::chrono::day(static_cast<unsigned>(*day))};
    return date.ok() ? std::optional<Day>(date) : std::nullopt;
}

Counts Appraisal::counts() const {
    Counts counts{};
    for (const Remark& remark : remarks)
        ++counts.at(static_cast<std::size_t>(remark.weight));
    return counts;
}

bool Appraisal::ready() const {
    return readable() && fits && counts().at(static_cast<std::size_t>(trade::Weight::must)) == 0;
}

std::string to_bytes(const Appraisal& appraisal) {
    json remarks = json::array();
    for (const Remark& remark : appraisal.remarks)
        remarks.push_back(json_of(remark));
    json stale;
    if (appraisal.stale_months) stale = *appraisal.stale_months;
    return json{{"name", appraisal.name},   {"stage", appraisal.stage},
                {"fault", appraisal.fault}, {"fault_line", appraisal.fault_line},
                {"pages", appraisal.pages}, {"allowed", appraisal.allowed},
                {"size", appraisal.size},   {"fits", appraisal.fits},
                {"good", appraisal.good},   {"advice", appraisal.advice},
                {"stale", stale},           {"remarks", remarks}}
        .dump(-1, ' ', false, json::error_handler_t::replace);
}

std::optional<Appraisal> appraisal_from(std::string_view bytes) {
    try {
        return read_appraisal(json::parse(bytes));
    } catch (const std::exception&) { // of another form: what is kept may be anybody's
        return std::nullopt;
    }
}

}
