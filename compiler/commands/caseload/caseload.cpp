#include "compiler/commands/caseload/caseload.hpp"

#include "compiler/advice/proof.hpp"
#include "compiler/advice/repository.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/numbers.hpp"
#include "compiler/caseload/asked.hpp"
#include "compiler/caseload/discretion.hpp"
#include "compiler/caseload/messages.hpp"
#include "compiler/caseload/report.hpp"
#include "compiler/commands/caseload/appraise.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/outputs.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/progress.hpp"
#include "compiler/commands/proof/proof_means.hpp"
#include "compiler/commands/set/source_date.hpp"
#include "compiler/office/find.hpp"

#include <algorithm>
#include <iostream>
#include <memory>
#include <set>

namespace quoin::commands {

namespace {

namespace fs = std::filesystem;
namespace said = caseload::messages;

constexpr std::string_view this_verb = "caseload";

void tell(const std::string& text) {
    tell_of(this_verb, text);
}

void tell_notes(const std::vector<std::string>& notes) {
    for (const std::string& note : notes)
        tell("note: " + note);
}

// --- what was asked for

std::string no_such_check(const std::string& name) {
    std::vector<std::string_view> names;
    for (const advice::Check* check : advice::all_checks())
        names.push_back(check->name);
    return fill<messages::no_check>(in_quotes(name), did_you_mean(name, names));
}

std::optional<std::string> read_asked(const CaseloadRequest& request, caseload::Asked& asked) {
    if (request.cohort && request.terms) return fill<messages::cohort_or_terms>();
    asked = {
        .due = request.due, .stage = request.stage, .needs = request.needs, .check = request.check};
    for (const auto& [name, text, day] : {std::tuple("since", &request.since, &asked.since),
                                          std::tuple("until", &request.until, &asked.until)})
        if (!text->empty() && !(*day = caseload::day_of(*text)))
            return fill<messages::no_day>(name, in_quotes(*text));
    asked.first = number_from<std::size_t>(request.first).value_or(0);
    if (!request.first.empty() && asked.first == 0)
        return fill<messages::no_count>(in_quotes(request.first));
    const bool is_known = request.check.empty() || advice::find_check(request.check);
    return is_known ? std::nullopt : std::optional(no_such_check(request.check));
}

void read_places(std::vector<std::string>& places, std::size_t most) {
    for (std::string line; places.size() < most && std::getline(std::cin, line);) {
        if (line.ends_with('\r')) line.pop_back();
        if (!line.empty()) places.push_back(line);
    }
    if (places.size() >= most) tell(fill<messages::list_is_long>(most));
}

// The list on standard input, in the place of `-`.
std::vector<std::string> all_places(const std::vector<std::string>& given) {
    constexpr std::size_t most = 1'000'000;
    std::vector<std::string> places;
    for (const std::string& place : given)
        if (place == "-")
            read_places(places, most);
        else
            places.push_back(place);
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

bool print_asked(const caseload::Report& report, const CaseloadRequest& request) {
    const caseload::View view = view_of(request);
    if (request.format == "text") return print_report(this_verb, as_text(report, view));
    return print_output(this_verb,
                        request.format == "json" ? as_json(report) : as_csv(report, view));
}

ExitCode write_report(const caseload::Report& report, const CaseloadRequest& request) {
    if (!request.report.empty() &&
        !write_beside(Sources{}, request.report, as_html(report), this_verb))
        return ExitCode::errors;
    const bool is_told = request.report == "-" || print_asked(report, request);
    return is_told ? ExitCode::done : ExitCode::errors;
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
    tell_notes(notes);
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

std::unique_ptr<caseload::Cache> cache_for(const CaseloadRequest& request) {
    const auto folder = caseload::cache_folder();
    if (!folder || request.no_cache) return nullptr;
    return std::make_unique<caseload::Cache>(*folder);
}

ExitCode report_on(const std::vector<caseload::Found>& resumes, const CaseloadRequest& request,
                   const caseload::Asked& asked, const ProofTools& tools) {
    const std::unique_ptr<caseload::Cache> cache = cache_for(request);
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

caseload::Search searched(const CaseloadRequest& request) {
    caseload::Search search = caseload::find_resumes(all_places(request.places));
    for (const std::string& fault : search.faults)
        tell(fault);
    tell_notes(search.notes);
    if (search.resumes.empty() && search.faults.empty())
        tell(fill<said::no_resume_there>(search.looked_at));
    return search;
}

}

ExitCode run_caseload(const CaseloadRequest& request) {
    caseload::Asked asked;
    if (const auto fault = read_asked(request, asked)) return wrong_use(this_verb, *fault);
    std::optional<std::int64_t> epoch;
    if (!read_epoch(epoch)) return wrong_use(this_verb, fill<messages::epoch>());
    const caseload::Search search = searched(request);
    if (search.resumes.empty()) return ExitCode::errors;
    std::vector<std::string> paths;
    for (const caseload::Found& found : search.resumes)
        paths.push_back(found.path.string());
    ProofMeans means(request.office);
    if (const ExitCode opened = means.open(paths, this_verb); opened != ExitCode::done)
        return opened;
    const ExitCode code = report_on(search.resumes, request, asked, means.tools(epoch));
    return search.faults.empty() ? code : ExitCode::errors;
}

}
