#include "compiler/commands/proof/proof.hpp"

#include "compiler/base/json_text.hpp"
#include "compiler/commands/marked_targets.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/outputs.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/progress.hpp"
#include "compiler/commands/proof/proof_means.hpp"
#include "compiler/commands/proof/proof_report.hpp"
#include "compiler/commands/set/source_date.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdio>
#include <exception>
#include <unistd.h>

namespace quoin::commands {

namespace {

bool fails(const Proofread& one, bool strict) {
    if (!one.resume || one.diagnostics.has_errors()) return true;
    return std::ranges::any_of(one.proof.findings, [&](const advice::Finding& finding) {
        const advice::Weight weight = weight_of(finding);
        return weight == advice::Weight::must || (strict && weight == advice::Weight::should);
    });
}

// False if it could not be written, which is said.
bool write_marked(const Proofread& one, const std::string& target, const ProofTools& tools,
                  const std::optional<std::int64_t>& epoch) {
    if (!one.typeset) return false; // and its errors are said
    const auto time = document_time(epoch, one.typeset->resume.settings);
    return write_beside(one.sources, target, marked_proof(one, tools, time), "proof");
}

std::string text_for(const Proofread& one, const ProofRequest& request) {
    if (request.roster) return proof_roster(one);
    if (request.summary) return proof_summary(one);
    return one.resume ? proof_text(one, isatty(STDOUT_FILENO) == 1) : std::string{};
}

std::string text_for_programs(Proofreads all, const ProofRequest& request) {
    return request.summary ? json_text(summary_json(all)) : proof_for_programs(all, request.format);
}

std::unique_ptr<Proofread> proofread_for(const std::string& input, const ProofRequest& request,
                                         const ProofTools& tools, ProgressLine& progress) {
    auto one = proofread(input, request.choices, tools);
    if (request.ignore_accept) take_back_set_aside(one->proof);
    const std::string messages = all_messages(one->diagnostics, one->sources, shows_excerpts());
    if (!messages.empty()) progress.clear();
    print_messages(messages);
    return one;
}

// `marked` holds a target for each input, or nothing.
ExitCode report_all(const ProofRequest& request, const std::vector<std::string>& marked,
                    const ProofTools& tools, const std::optional<std::int64_t>& epoch) {
    ExitCode code = ExitCode::done;
    std::vector<std::unique_ptr<Proofread>> all;
    const bool whole = request.format != "text"; // printed when all are read
    ProgressLine progress;
    for (std::size_t i = 0; i < request.inputs.size(); ++i) {
        auto one = proofread_for(request.inputs[i], request, tools, progress);
        if (fails(*one, request.strict)) code = ExitCode::errors;
        if (!marked.empty() && !write_marked(*one, marked[i], tools, epoch))
            code = ExitCode::errors;
        if (request.marked == "-") continue; // the page takes the findings' place
        if (whole) {
            all.push_back(std::move(one));
            progress.show(i + 1, request.inputs.size(), request.inputs[i]);
        } else if (!print_report("proof", text_for(*one, request)))
            return ExitCode::errors;
    }
    progress.clear();
    if (whole && !print_output("proof", text_for_programs(all, request))) return ExitCode::errors;
    return code;
}

// What of the request does not go together; nothing, and where the marked pages go.
std::optional<std::string> wrong_in(const ProofRequest& request, std::vector<std::string>& marked) {
    if (request.summary && request.format == "sarif") return fill<messages::summary_no_sarif>();
    if (request.summary && request.roster) return fill<messages::summary_or_roster>();
    if (std::ranges::count(request.inputs, "-") > 1) return fill<messages::dash_twice>();
    const bool prints_more = request.format != "text" || request.summary || request.roster;
    return plan_marked({request.inputs, request.marked, ".marked.pdf", prints_more}, marked);
}

}

ExitCode run_proof_command(const ProofRequest& request) {
    std::vector<std::string> marked;
    if (const auto fault = wrong_in(request, marked)) return wrong_use("proof", *fault);
    std::optional<std::int64_t> epoch;
    if (!read_epoch(epoch)) return wrong_use("proof", fill<messages::epoch>());

    ProofMeans means(request.office);
    const ExitCode opened = means.open(request.inputs, "proof");
    return opened == ExitCode::done ? report_all(request, marked, means.tools(epoch), epoch)
                                    : opened;
}

}
