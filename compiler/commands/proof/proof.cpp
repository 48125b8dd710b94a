#include "compiler/commands/proof/proof.hpp"

#include "compiler/base/write_file.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/proof/proof_report.hpp"
#include "compiler/commands/set/source_date.hpp"
#include "compiler/stages/model/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <exception>
#include <unistd.h>

namespace quoin::commands {

namespace {

bool print_proof(const std::string& text) {
    return print_output("proof", text);
}

void print_messages(const std::string& text) {
    std::fwrite(text.data(), 1, text.size(), stderr);
}

model::Date day_of(const std::optional<std::int64_t>& epoch) {
    const auto now =
        epoch
            ? std::chrono::sys_seconds(std::chrono::seconds(*epoch))
            : std::chrono::time_point_cast<std::chrono::seconds>(std::chrono::system_clock::now());
    const std::chrono::year_month_day day(std::chrono::floor<std::chrono::days>(now));
    return {static_cast<int>(day.year()), static_cast<int>(static_cast<unsigned>(day.month())),
            std::nullopt, static_cast<int>(static_cast<unsigned>(day.day()))};
}

// What is printed from the table of checks, without a résumé; none if nothing of it was asked for.
std::optional<ExitCode> run_tables(const ProofRequest& request) {
    std::string text;
    if (request.list)
        text = list_of_checks();
    else if (request.reference)
        text = reference_page();
    else if (request.explain.empty())
        return std::nullopt;
    else if (const advice::Check* check = advice::find_check(request.explain))
        text = explanation_of(*check);
    else {
        std::vector<std::string_view> names;
        for (const advice::Check* known : advice::all_checks())
            names.push_back(known->name);
        return wrong_use("proof", "there is no check " + model::in_quotes(request.explain) +
                                      model::did_you_mean(request.explain, names));
    }
    return print_proof(text) ? ExitCode::done : ExitCode::errors;
}

bool fails(const Proofread& one, bool strict) {
    if (!one.resume || one.diagnostics.has_errors()) return true;
    return std::ranges::any_of(one.proof.findings, [&](const advice::Finding& finding) {
        const advice::Weight weight = weight_of(finding);
        return weight == advice::Weight::must || (strict && weight == advice::Weight::should);
    });
}

// False if it could not be written, which is said.
bool write_marked(const Proofread& one, const ProofRequest& request, const ProofTools& tools,
                  const std::optional<std::int64_t>& epoch) {
    if (!one.typeset) return false; // and its errors are said
    const auto time = document_time(epoch, one.typeset->resume.settings);
    const auto fault = write_file(request.marked, marked_proof(one, tools, time));
    if (fault) fmt::print(stderr, "quoin proof: {}\n", *fault);
    return !fault;
}

std::string text_for(const Proofread& one, const ProofRequest& request, const ProofTools& tools) {
    if (request.summary) return proof_summary(one, tools.language);
    return one.resume ? proof_text(one, isatty(STDOUT_FILENO) == 1) : std::string{};
}

ExitCode report_all(const ProofRequest& request, const ProofTools& tools,
                    const std::optional<std::int64_t>& epoch) {
    ExitCode code = ExitCode::done;
    std::vector<std::unique_ptr<Proofread>> all;
    const bool whole = request.format != "text"; // printed when all are read
    for (const std::string& input : request.inputs) {
        auto one = proofread(input, request.choices, tools);
        print_messages(all_messages(one->diagnostics, one->sources, isatty(STDERR_FILENO) == 1));
        if (fails(*one, request.strict)) code = ExitCode::errors;
        if (!request.marked.empty() && !write_marked(*one, request, tools, epoch))
            code = ExitCode::errors;
        if (request.marked == "-") continue; // the page takes the findings' place
        if (whole)
            all.push_back(std::move(one));
        else if (!print_proof(text_for(*one, request, tools)))
            return ExitCode::errors;
    }
    if (whole && !print_proof(proof_for_programs(all, request.format))) return ExitCode::errors;
    return code;
}

// What --marked does not go with.
std::optional<ExitCode> check_marked(const ProofRequest& request) {
    if (request.marked.empty()) return std::nullopt;
    if (request.mend) return wrong_use("proof", "--marked and --mend do not go together");
    if (request.inputs.size() > 1)
        return wrong_use("proof", "--marked marks one résumé; name one file at a time");
    std::error_code none; // a file that is not there is not the source
    if (request.marked != "-" &&
        std::filesystem::equivalent(request.marked, request.inputs.front(), none))
        return wrong_use("proof", "--marked would write over the résumé itself");
    if (request.marked == "-" && (request.format != "text" || request.summary))
        return wrong_use("proof", "standard output holds one thing; give --marked a file");
    return std::nullopt;
}

// Words of the command line that would go unheard.
std::optional<ExitCode> check_choices(const ProofRequest& request) {
    if (request.summary && request.format != "text")
        return wrong_use("proof",
                         "--summary is text, and does not go with --format " + request.format);
    if (!request.mend) return std::nullopt;
    struct Option {
        bool given;
        const char* name;
        const char* why;
    };
    const Option options[] = {
        {request.format != "text", "--format", "it reports nothing"},
        {request.summary, "--summary", "it reports nothing"},
        {request.strict, "--strict", "it reports nothing"},
        {!request.choices.tags.empty(), "--for", "it mends the whole file, whatever its tags"},
        {request.choices.theme.has_value(), "--theme", "it mends the file, and sets no page"},
        {!request.paper.empty(), "--paper", "it mends the file, and sets no page"}};
    for (const Option& option : options)
        if (option.given)
            return wrong_use(
                "proof", fmt::format("--mend does not go with {}: {}", option.name, option.why));
    return std::nullopt;
}

ExitCode mend_all(const ProofRequest& request, const ProofTools& tools) {
    ExitCode code = ExitCode::done;
    for (const std::string& input : request.inputs) {
        const MendOutcome outcome = mend_input(input, tools, request.dry_run);
        print_messages(outcome.messages);
        if (outcome.failed) code = ExitCode::errors;
        if (!print_proof(outcome.output)) return ExitCode::errors;
        print_messages(outcome.once_written);
    }
    return code;
}

}

ExitCode run_proof_command(ProofRequest request) {
    if (const auto code = run_tables(request)) return *code;
    if (request.inputs.empty())
        return wrong_use("proof", "a résumé file is required; use - for standard input");
    if (request.dry_run && !request.mend) return wrong_use("proof", "--dry-run goes with --mend");
    if (const auto code = check_choices(request)) return *code;
    if (const auto code = check_marked(request)) return *code;
    if (std::ranges::count(request.inputs, "-") > 1)
        return wrong_use("proof", "standard input can be read once; give - once");
    if (!request.paper.empty())
        request.choices.paper = request.paper == "a4" ? trade::Paper::a4 : trade::Paper::letter;
    std::optional<std::int64_t> epoch;
    if (!read_epoch(epoch)) return wrong_use("proof", epoch_fault);

    const std::filesystem::path data = data_folder();
    const auto fonts = open_fonts(data);
    if (!fonts) return ExitCode::errors;
    const english::Language language(data);
    const ProofTools tools{data, *fonts, language, day_of(epoch)};
    return request.mend ? mend_all(request, tools) : report_all(request, tools, epoch);
}

}
