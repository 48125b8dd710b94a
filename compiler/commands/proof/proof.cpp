#include "compiler/commands/proof/proof.hpp"

#include "compiler/base/write_file.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/proof/proof_report.hpp"
#include "compiler/commands/set/source_date.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <exception>
#include <unistd.h>

namespace quoin::commands {

namespace {

bool print_proof(const std::string& text) {
    return print_output("proof", text);
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

std::string text_for(const Proofread& one, const ProofRequest& request) {
    if (request.summary) return proof_summary(one);
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
        else if (!print_proof(text_for(*one, request)))
            return ExitCode::errors;
    }
    if (whole && !print_proof(proof_for_programs(all, request.format))) return ExitCode::errors;
    return code;
}

// What --marked does not go with.
std::optional<ExitCode> check_marked(const ProofRequest& request) {
    if (request.marked.empty()) return std::nullopt;
    if (request.inputs.size() > 1) return wrong_use("proof", fill<messages::marked_several>());
    std::error_code none; // a file that is not there is not the source
    if (request.marked != "-" &&
        std::filesystem::equivalent(request.marked, request.inputs.front(), none))
        return wrong_use("proof", fill<messages::marked_over_source>());
    if (request.marked == "-" && (request.format != "text" || request.summary))
        return wrong_use("proof", fill<messages::marked_and_more>());
    return std::nullopt;
}

}

ExitCode run_proof_command(const ProofRequest& request) {
    if (const auto code = check_marked(request)) return *code;
    if (std::ranges::count(request.inputs, "-") > 1)
        return wrong_use("proof", fill<messages::dash_twice>());
    std::optional<std::int64_t> epoch;
    if (!read_epoch(epoch)) return wrong_use("proof", fill<messages::epoch>());

    const std::filesystem::path data = data_folder();
    const auto fonts = open_fonts(data);
    if (!fonts) return ExitCode::errors;
    const english::Language language(data);
    const ProofTools tools{data, *fonts, language, reading_day(epoch)};
    return report_all(request, tools, epoch);
}

}
