#include "compiler/commands/redline/redline.hpp"

#include "compiler/base/printable.hpp"
#include "compiler/base/write_file.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/outputs.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/proof/proof_means.hpp"
#include "compiler/commands/redline/redline_report.hpp"
#include "compiler/commands/set/source_date.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace quoin::commands {

namespace {

std::optional<std::string> wrong_drafts(const RedlineRequest& request) {
    if (request.drafts.size() > 2) return fill<messages::redline_three>(request.drafts.size());
    if (request.drafts.size() == 2 && !request.since.empty())
        return fill<messages::redline_since_two>();
    if (request.drafts.size() == 1 && request.drafts.front() == "-")
        return fill<messages::redline_input_alone>();
    if (std::ranges::count(request.drafts, "-") > 1) return fill<messages::dash_twice>();
    return std::nullopt;
}

std::optional<std::string> wrong_marked(const RedlineRequest& request) {
    if (request.marked.empty()) return std::nullopt;
    if (request.marked == "-")
        return request.format == "text" ? std::nullopt
                                        : std::optional(fill<messages::marked_and_more>());
    for (const std::string& draft : request.drafts)
        if (is_same_file(draft, request.marked)) return fill<messages::redline_marked_over>();
    return std::nullopt;
}

// Of the new draft what `set` would say; of the old one errors alone, for it is past.
void tell_faults(const ComparedDraft& draft, bool old_one) {
    if (old_one && draft.readable()) return;
    print_all(draft.read->diagnostics, draft.read->sources);
}

// Why it could not be made or written; none if all is well.
std::optional<std::string> marked_fault(const Redline& redline, const std::string& target,
                                        const ProofTools& tools, std::optional<std::int64_t> time) {
    for (const ComparedDraft* draft : {&redline.drafts.before, &redline.drafts.after})
        if (would_spoil(target, draft->read->sources)) return fill<messages::redline_marked_over>();
    const auto pdf = marked_redline(redline, tools, time);
    return pdf ? write_file(target, *pdf) : fill<messages::redline_no_page>();
}

// False if it could not be made or written, which is said.
bool write_marked_redline(const Redline& redline, const RedlineRequest& request,
                          const ProofTools& tools, const std::optional<std::int64_t>& epoch) {
    if (!redline.compared()) return false; // and its errors are said
    const Proofread& after = *redline.drafts.after.read;
    const auto time = document_time(epoch, after.resume->settings);
    const auto fault = marked_fault(redline, request.marked, tools, time);
    if (fault) tell_of("redline", *fault);
    return !fault;
}

bool print_redline(const Redline& redline, const std::string& format) {
    if (format == "json") return print_output("redline", redline_json(redline));
    const std::string text = redline_text(redline);
    return text.empty() || print_report("redline", text);
}

ExitCode report_redline(const Redline& redline, const RedlineRequest& request) {
    if (request.marked != "-" && !print_redline(redline, request.format)) return ExitCode::errors;
    return redline.compared() ? ExitCode::done : ExitCode::errors;
}

ExitCode compare_drafts(const RedlineRequest& request, const ProofTools& tools,
                        const std::optional<std::int64_t>& epoch) {
    auto read = read_drafts(request, tools);
    if (!read.drafts) {
        print_messages(on_one_line(read.fault) + '\n');
        return ExitCode::errors;
    }
    const Redline redline = redline_of(*std::move(read.drafts));
    tell_faults(redline.drafts.before, true);
    tell_faults(redline.drafts.after, false);
    const bool marked =
        request.marked.empty() || write_marked_redline(redline, request, tools, epoch);
    const ExitCode code = report_redline(redline, request);
    return marked ? code : ExitCode::errors;
}

}

ExitCode run_redline(const RedlineRequest& asked) {
    RedlineRequest request = asked;
    for (const auto& fault : {wrong_drafts(request), wrong_marked(request)})
        if (fault) return wrong_use("redline", *fault);
    if (request.since.empty()) request.since = "HEAD";
    std::optional<std::int64_t> epoch;
    if (!read_epoch(epoch)) return wrong_use("redline", fill<messages::epoch>());
    if (request.drafts.size() == 2 && is_same_file(request.drafts[0], request.drafts[1]))
        tell_of("redline", fill<messages::redline_itself>(request.drafts[0], request.drafts[0]));
    ProofMeans means({});
    const ExitCode opened =
        means.open(request.as.empty() ? request.drafts : std::vector{request.as}, "redline");
    return opened == ExitCode::done ? compare_drafts(request, means.tools(epoch), epoch) : opened;
}

}
