#include "compiler/commands/caseload/caseload.hpp"

#include "compiler/advice/proof.hpp"
#include "compiler/advice/repository.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/write_file.hpp"
#include "compiler/caseload/asked.hpp"
#include "compiler/caseload/discretion.hpp"
#include "compiler/caseload/messages.hpp"
#include "compiler/caseload/report.hpp"
#include "compiler/commands/caseload/appraise.hpp"
#include "compiler/commands/progress.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/office_rules.hpp"
#include "compiler/commands/outputs.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/set/source_date.hpp"
#include "compiler/office/find.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <iostream>
#include <memory>
#include <set>
#include <system_error>

namespace quoin::commands {

namespace {

namespace fs = std::filesystem;
namespace said = caseload::messages;

constexpr std::string_view this_verb = "caseload";

void tell(const std::string& text) {
    print_messages(fmt::format("quoin {}: {}\n", this_verb, text));
}

// --- what was asked for

std::optional<std::string> read_asked(const CaseloadRequest& request, caseload::Asked& asked) {
    if (request.cohort && request.terms) return fill<messages::cohort_or_terms>();
    asked = {
        .due = request.due, .stage = request.stage, .needs = request.needs, .check = request.check};
    for (const auto& [name, text, day] : {std::tuple("since", &request.since, &asked.since),
                                          std::tuple("until", &request.until, &asked.until)})
        if (!text->empty() && !(*day = caseload::day_of(*text)))
            return fill<messages::no_day>(name, in_quotes(*text));
    if (const std::string& first = request.first; !first.empty()) {
        const auto [end, fault] =
            std::from_chars(first.data(), first.data() + first.size(), asked.first);
        if (fault != std::errc() || end != first.data() + first.size() || asked.first == 0)
            return fill<messages::no_count>(in_quotes(first));
    }
    if (request.check.empty() || advice::find_check(request.check)) return std::nullopt;
    std::vector<std::string_view> names;
    for (const advice::Check* check : advice::all_checks())
        names.push_back(check->name);
    return fill<messages::no_check>(in_quotes(request.check), did_you_mean(request.check, names));
}

// The list on standard input, in the place of `-`.
std::vector<std::string> all_places(const std::vector<std::string>& given) {
    constexpr std::size_t most = 1'000'000;
    std::vector<std::string> places;
    for (const std::string& place : given) {
        if (place != "-") {
            places.push_back(place);
            continue;
        }
        for (std::string line; places.size() < most && std::getline(std::cin, line);) {
            if (line.ends_with('\r')) line.pop_back();
            if (!line.empty()) places.push_back(line);
        }
        if (places.size() >= most) tell(fill<messages::list_is_long>(most));
    }
    return places;
}

// --- what it is found from

caseload::Day day_of(const model::Date& date) {
    return std::chrono::year(date.year) / date.month.value_or(1) / date.day.value_or(1);
}

// Where it is sent to, and the rules of its office, which may come or go with no byte of it
// changed.
std::string surroundings_of(const fs::path& path, const advice::OfficeChoice& choice) {
    std::string all = advice::public_host(path).value_or("") + '\n';
    std::optional<fs::path> rules;
    if (!choice.file.empty())
        rules = choice.file;
    else if (!choice.none)
        rules = office::find_rules(path);
    if (rules) all += rules->string() + '\n' + caseload::bytes_of(*rules).value_or("");
    return all;
}

caseload::Means means_of(const ProofTools& tools, const advice::OfficeChoice& choice,
                         caseload::Cache* cache) {
    return {
        .appraise =
            [&tools](const fs::path& path, const std::optional<std::string>& text) {
                return appraise(path, text, tools);
            },
        .surroundings = [&choice](const fs::path& path) { return surroundings_of(path, choice); },
        .version = this_build(),
        .today = day_of(tools.read_on),
        .cache = cache};
}

// A remote cannot be known to be private: its address is said, and who reads it knows.
std::vector<std::string> cautions_of(const std::vector<caseload::Found>& resumes) {
    std::set<fs::path> folders, repositories;
    std::vector<std::string> cautions;
    for (const caseload::Found& found : resumes) {
        if (!folders.insert(found.path.parent_path()).second) continue;
        const auto sent = advice::sent_to(found.path);
        if (!sent || sent->addresses.empty() || !repositories.insert(sent->repository).second)
            continue;
        cautions.push_back(fill<said::sent_elsewhere>(sent->repository.string(),
                                                      joined(sent->addresses, " and ")));
    }
    return cautions;
}

// --- what is done with it

caseload::View view_of(const CaseloadRequest& request) {
    if (request.terms) return caseload::View::terms;
    return request.cohort ? caseload::View::cohort : caseload::View::students;
}

ExitCode write_report(const caseload::Report& report, const CaseloadRequest& request) {
    if (is_source(request.report)) {
        tell(fill<messages::source_overwritten>(request.report));
        return ExitCode::errors;
    }
    if (!request.report.empty())
        if (const auto fault = write_file(request.report, as_html(report))) {
            tell(*fault);
            return ExitCode::errors;
        }
    if (request.report == "-") return ExitCode::done;
    const caseload::View view = view_of(request);
    if (request.format == "text")
        return print_report(this_verb, as_text(report, view)) ? ExitCode::done : ExitCode::errors;
    const std::string text = request.format == "json" ? as_json(report) : as_csv(report, view);
    return print_output(this_verb, text) ? ExitCode::done : ExitCode::errors;
}

// Names are hidden before anybody is left out: who has which number hangs on no filter.
caseload::Report report_of(caseload::Caseload found, const CaseloadRequest& request,
                           const caseload::Asked& asked, caseload::Cache* cache) {
    hide_contacts(found);
    if (request.anonymous && !hide_names(found, cache)) tell(fill<said::numbers_unkept>());
    const std::size_t all = found.students.size();
    keep_asked(found.students, asked);
    if (found.students.empty()) tell(fill<said::no_resume_left>(all));
    caseload::Report report{.caseload = std::move(found), .anonymous = request.anonymous};
    report.of = all;
    report.common = common_findings(report.caseload.students);
    return report;
}

caseload::Caseload followed(const std::vector<caseload::Found>& resumes,
                            const caseload::Means& means, const caseload::Wanted& wanted) {
    ProgressLine progress;
    const Interrupt interrupt;
    std::vector<std::string> notes;
    const auto drafts = caseload::drafts_of(resumes, notes);
    for (const std::string& note : notes)
        tell("note: " + note);
    auto found =
        read_caseload(resumes, means, *drafts, wanted,
                      {.progress = [&](std::size_t done, std::size_t all,
                                       const std::string& what) { progress.show(done, all, what); },
                       .stop = &Interrupt::flag()});
    if (means.cache) means.cache->flush();
    return found;
}

void end_by_interrupt(const caseload::Caseload& found, bool kept) {
    tell(kept ? fill<said::stopped>(found.done, found.all)
              : fill<said::stopped_unkept>(found.done, found.all));
    Interrupt::pass_on();
}

ExitCode report_on(const std::vector<caseload::Found>& resumes, const CaseloadRequest& request,
                   const caseload::Asked& asked, const ProofTools& tools) {
    std::unique_ptr<caseload::Cache> cache;
    if (const auto folder = caseload::cache_folder(); folder && !request.no_cache)
        cache = std::make_unique<caseload::Cache>(*folder);
    const bool texts = !request.report.empty() || request.format == "json";
    auto found = followed(resumes, means_of(tools, request.office, cache.get()),
                          {.terms = request.terms, .texts = texts, .examples = request.cohort});
    if (found.done < found.all) end_by_interrupt(found, cache != nullptr);
    caseload::Report report = report_of(std::move(found), request, asked, cache.get());
    const auto cautions = cautions_of(resumes);
    for (const std::string& caution : cautions)
        tell("caution: " + caution);
    if (!request.anonymous) report.cautions = cautions; // for they name folders
    const ExitCode code = write_report(report, request);
    if (cache)
        if (const std::string note = cache->note(); !note.empty()) tell("note: " + note);
    return code;
}

}

ExitCode run_caseload(const CaseloadRequest& request) {
    caseload::Asked asked;
    if (const auto fault = read_asked(request, asked)) return wrong_use(this_verb, *fault);
    std::optional<std::int64_t> epoch;
    if (!read_epoch(epoch)) return wrong_use(this_verb, fill<messages::epoch>());
    const caseload::Search search = caseload::find_resumes(all_places(request.places));
    for (const std::string& fault : search.faults)
        tell(fault);
    for (const std::string& note : search.notes)
        tell("note: " + note);
    if (search.resumes.empty() && search.faults.empty())
        tell(fill<said::no_resume_there>(search.looked_at));
    const fs::path data = data_folder();
    const auto fonts = open_fonts(data);
    if (!fonts || search.resumes.empty()) return ExitCode::errors;
    const english::Language language(data);
    advice::Offices offices(data / "themes", request.office);
    std::vector<std::string> paths;
    for (const caseload::Found& found : search.resumes)
        paths.push_back(found.path.string());
    if (!read_offices(offices, paths, this_verb)) return ExitCode::wrong_use;
    const ProofTools tools{data, *fonts, language, reading_day(epoch), &offices};
    const ExitCode code = report_on(search.resumes, request, asked, tools);
    return search.faults.empty() ? code : ExitCode::errors;
}

}
