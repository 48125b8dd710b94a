#include "compiler/commands/redline/redline.hpp"

#include "compiler/base/write_file.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/office_rules.hpp"
#include "compiler/commands/outputs.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/redline/redline_report.hpp"
#include "compiler/commands/set/source_date.hpp"

#include <algorithm>
#include <filesystem>
#include <string>
#include <system_error>
#include <unistd.h>
#include <vector>

namespace quoin::commands {

namespace {

bool is_one_file(const std::string& a, const std::string& b) {
    std::error_code fault;
    return a == b || std::filesystem::equivalent(a, b, fault);
}

std::optional<std::string> wrong_in(const RedlineRequest& request) {
    if (request.drafts.size() > 2) return fill<messages::redline_three>(request.drafts.size());
    if (request.drafts.size() == 2 && !request.since.empty())
        return fill<messages::redline_since_two>();
    if (request.drafts.size() == 1 && request.drafts.front() == "-")
        return fill<messages::redline_input_alone>();
    if (std::ranges::count(request.drafts, "-") > 1) return fill<messages::dash_twice>();
    if (request.marked == "-" && request.format != "text") return fill<messages::marked_and_more>();
    for (const std::string& draft : request.drafts)
        if (!request.marked.empty() && request.marked != "-" && is_one_file(draft, request.marked))
            return fill<messages::redline_marked_over>();
    return std::nullopt;
}

// Of the new draft what `set` would say; of the old one errors alone, for it is past.
void tell_faults(const ComparedDraft& draft, bool old_one) {
    if (old_one && draft.readable()) return;
    print_messages(
        all_messages(draft.read->diagnostics, draft.read->sources, isatty(STDERR_FILENO) == 1));
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
    if (fault) print_messages("quoin redline: " + *fault + '\n');
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

}

ExitCode run_redline(const RedlineRequest& asked) {
    RedlineRequest request = asked;
    if (const auto fault = wrong_in(request)) return wrong_use("redline", *fault);
    if (request.since.empty()) request.since = "HEAD";
    std::optional<std::int64_t> epoch;
    if (!read_epoch(epoch)) return wrong_use("redline", fill<messages::epoch>());
    if (request.drafts.size() == 2 && is_one_file(request.drafts[0], request.drafts[1]))
        print_messages("quoin redline: " +
                       fill<messages::redline_itself>(request.drafts[0], request.drafts[0]) + '\n');

    const std::filesystem::path data = data_folder();
    const auto fonts = open_fonts(data);
    if (!fonts) return ExitCode::errors;
    const english::Language language(data);
    advice::Offices offices(data / "themes", {});
    const std::vector<std::string> named =
        request.as.empty() ? request.drafts : std::vector{request.as};
    if (!read_offices(offices, named, "redline")) return ExitCode::wrong_use;
    const ProofTools tools{data, *fonts, language, reading_day(epoch), &offices};
    auto read = read_drafts(request, tools);
    if (!read.drafts) {
        print_messages(read.fault + '\n');
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
