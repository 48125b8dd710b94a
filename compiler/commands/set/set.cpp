#include "compiler/commands/set/set.hpp"

#include "compiler/base/hands.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/write_file.hpp"
#include "compiler/caseload/cache.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/outputs.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/progress.hpp"
#include "compiler/commands/set/depfile.hpp"
#include "compiler/commands/set/explain_report.hpp"
#include "compiler/commands/set/last_set.hpp"
#include "compiler/commands/set/set_json.hpp"
#include "compiler/commands/set/source_date.hpp"
#include "compiler/commands/set/watch.hpp"
#include "compiler/commands/tailor/for_posting.hpp"
#include "compiler/portal/verify.hpp"
#include "compiler/stages/fit/cuts.hpp"
#include "compiler/stages/fonts/fonts.hpp"
#include "compiler/stages/overflow_report.hpp"
#include "compiler/stages/page_state.hpp"
#include "compiler/stages/pages/pages.hpp"
#include "compiler/stages/pdf/pdf.hpp"
#include "compiler/stages/plain/plain.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <cstdio>
#include <optional>
#include <set>
#include <system_error>
#include <thread>
#include <tuple>
#include <unistd.h>
#include <vector>

namespace quoin::commands {

namespace {

struct Context { // what every input of one call shares
    const SetRequest& request;
    const std::filesystem::path& data;
    fonts::Fonts& fonts;
    std::optional<std::int64_t> epoch; // SOURCE_DATE_EPOCH
    bool excerpts = false;             // messages go to a terminal
    bool tells = false;                // of what is done, in a line
};

struct Written { // what one input's outputs hold
    std::optional<std::string> pdf, plain, deps;
};

// What depends, and on what; an error for a name that make cannot read.
std::optional<std::string> deps_of(const stages::Typeset& typeset, const Outputs& outputs,
                                   const SetRequest& request, std::uint32_t file,
                                   Diagnostics& diagnostics) {
    std::vector<std::filesystem::path> prerequisites = typeset.resume.files;
    if (request.posting != "-") prerequisites.emplace_back(request.posting);
    for (const auto* files :
         {&typeset.theme.files, &typeset.theme.family_files, &typeset.resume.words.files})
        prerequisites.insert(prerequisites.end(), files->begin(), files->end());
    std::erase_if(prerequisites, [](const auto& path) { return path.empty(); });
    std::vector<std::string> targets;
    for (const std::string& target : {outputs.pdf, outputs.plain})
        if (!target.empty() && target != "-") targets.push_back(target);
    std::vector<std::string> names = targets;
    for (const auto& path : prerequisites)
        names.push_back(path.string());
    for (const std::string& name : names) {
        const std::string_view sign = unholdable(name);
        if (sign.empty()) continue;
        diagnostics.error({file, 0, 0, 0},
                          fill<messages::deps_cannot_hold>(in_quotes(name), in_quotes(sign)));
        return std::nullopt;
    }
    return depfile(targets, prerequisites);
}

// Nothing is written until all that is to be written is there.
std::optional<std::string> write_all(const Written& written, const Outputs& outputs) {
    std::vector<FileOutput> all;
    for (const auto& [bytes, target] :
         {std::tie(written.pdf, outputs.pdf), std::tie(written.plain, outputs.plain),
          std::tie(written.deps, outputs.deps)})
        if (bytes) all.push_back({target, *bytes});
    return write_files(all);
}

// The text for a form and the depfile, as far as they are asked for; false after an error.
bool write_texts(const stages::Typeset& typeset, const Outputs& outputs, const SetRequest& request,
                 std::uint32_t file, Written& written, Diagnostics& diagnostics) {
    if (!outputs.plain.empty()) {
        written.plain = request.entry.empty()
                            ? plain::plain_text(typeset.composition)
                            : plain::entry_text(typeset.composition, request.entry);
        if (!written.plain) {
            diagnostics.error({file, 0, 0, 0}, fill<messages::no_entry>(in_quotes(request.entry)));
            return false;
        }
        if (request.ascii) written.plain = plain::in_ascii(*written.plain);
    }
    if (!outputs.deps.empty()) written.deps = deps_of(typeset, outputs, request, file, diagnostics);
    return outputs.deps.empty() || written.deps;
}

// As it is or, for a posting, what of it serves that best.
std::optional<stages::Typeset> typeset_of(Sources& sources, std::uint32_t file,
                                          const Context& context, Diagnostics& diagnostics) {
    const SetRequest& request = context.request;
    if (request.posting.empty())
        return stages::typeset(sources, file, request.choices, context.data, context.fonts,
                               diagnostics);
    const ForPostingTools tools{request.choices, context.data, context.fonts};
    auto chosen = for_posting(sources, file, request.posting, tools, diagnostics);
    if (!chosen) return std::nullopt;
    return std::move(chosen->tailored.typeset);
}

pages::Pages pages_of(const stages::Typeset& typeset, const SetRequest& request) {
    if (!request.at_preferred) return make_pages(typeset, fit_or_draft(typeset));
    return pages::make_pages(
        typeset.composition,
        fit::preferred_fit(typeset.composition, typeset.theme, typeset.resume.settings));
}

// False, and an error, if an output would be written over what was read.
bool spares_sources(const Outputs& outputs, const Sources& sources, std::uint32_t file,
                    Diagnostics& diagnostics) {
    for (const std::string& target : {outputs.pdf, outputs.plain, outputs.deps}) {
        if (!would_spoil(target, sources)) continue;
        diagnostics.error({file, 0, 0, 0}, fill<messages::source_overwritten>(target));
        return false;
    }
    return true;
}

// "draft.pdf: 1 page, 10.7 pt, 4 lines free"
std::string done_line(const stages::Typeset& typeset, const Outputs& outputs,
                      const SetRequest& request) {
    if (outputs.pdf.empty()) return outputs.plain + ": the text alone\n";
    const std::string and_text = outputs.plain.empty() ? "" : " and " + outputs.plain;
    return outputs.pdf + and_text + ": " +
           (request.at_preferred ? "a specimen" : page_state(typeset)) + '\n';
}

// The page's bytes; without them, the code says why there are none.
ExitCode write_page(const stages::Typeset& typeset, const Sources& sources, std::uint32_t file,
                    const Context& context, Written& written, Diagnostics& diagnostics,
                    Diagnostics& cuts_report, SetOutcome& outcome) {
    const SetRequest& request = context.request;
    const auto* overflow = std::get_if<fit::Overflow>(&typeset.fit);
    if (overflow != nullptr && !request.at_preferred) {
        const fit::Cuts cuts =
            fit::cheapest_cuts(typeset.composition, typeset.theme, typeset.resume.settings);
        cuts_report = overflow_report(overflow->lines_too_many, cuts, typeset, file, request.draft);
        if (request.format == "json")
            outcome.cuts = cuts_json(overflow->lines_too_many, cuts, typeset, sources);
        if (!request.draft) return ExitCode::does_not_fit;
    }
    written.pdf = pdf::write_pdf(typeset.composition, pages_of(typeset, request),
                                 document_time(context.epoch, typeset.resume.settings));
    const bool is_whole = !request.verify || portal::verify_pdf(typeset.composition, *written.pdf,
                                                                {file, 0, 0, 0}, diagnostics);
    return is_whole ? ExitCode::done : ExitCode::errors;
}

ExitCode set_source(Sources& sources, std::uint32_t file, const Context& context,
                    const Outputs& outputs, Diagnostics& diagnostics, Diagnostics& cuts_report,
                    SetOutcome& outcome) {
    const auto typeset = typeset_of(sources, file, context, diagnostics);
    if (!typeset) return ExitCode::errors;
    if (context.request.watch) outcome.state = page_state(*typeset);
    if (context.request.format == "json") outcome.fit = fit_json(*typeset);
    const auto& of_system = typeset->theme.family_files;
    outcome.read.insert(of_system.begin(), of_system.end());
    if (!spares_sources(outputs, sources, file, diagnostics)) return ExitCode::errors;
    Written written;
    if (!outputs.pdf.empty())
        if (const ExitCode code = write_page(*typeset, sources, file, context, written, diagnostics,
                                             cuts_report, outcome);
            code != ExitCode::done)
            return code;
    if (!write_texts(*typeset, outputs, context.request, file, written, diagnostics))
        return ExitCode::errors;
    if (auto fault = write_all(written, outputs)) {
        diagnostics.error({file, 0, 0, 0}, *fault);
        return ExitCode::errors;
    }
    if (context.tells) outcome.state = done_line(*typeset, outputs, context.request);
    if (const auto* fit = std::get_if<fit::Fit>(&typeset->fit)) {
        warn_of_thin_page(*typeset, *fit, file, diagnostics);
        if (context.request.explain)
            outcome.explanation = explain_report(*typeset, *fit, sources, file);
    }
    return ExitCode::done;
}

// Of what kept the file from being read, what `quoin mend` can do.
std::string mends_offered(const Diagnostics& diagnostics, const std::string& input) {
    const auto count = std::ranges::count_if(
        diagnostics.all(), [](const Diagnostic& one) { return !one.mend.empty(); });
    if (!diagnostics.has_errors() || count == 0 || input == "-") return {};
    return "quoin: " + fill<messages::mends_offered>(input, count) + '\n';
}

// For who watches: in one line what came of it.
void note_state(const std::string& input, const Diagnostics& diagnostics, SetOutcome& outcome) {
    const std::size_t errors = diagnostics.count(Severity::error);
    if (errors > 0) outcome.state = fmt::format("{} error{}", errors, errors == 1 ? "" : "s");
    outcome.state = fmt::format("{}: {}", input, outcome.state);
}

// None where it is not asked for, where streams are read or written, and where nothing is kept.
std::optional<LastSet> last_set_of(const std::string& input, const Outputs& outputs,
                                   const Context& context) {
    const auto caches = caseload::cache_folder();
    const bool streams = is_one_of(
        "-", std::array{input, outputs.pdf, outputs.plain, outputs.deps, context.request.posting});
    const bool says_more = context.request.explain || context.request.watch;
    if (!context.request.if_changed || says_more || streams || !caches) return std::nullopt;
    std::error_code fault;
    return LastSet(*caches, fmt::format("{}\n{}{}\n{}\n{}", this_build(), context.request.asked,
                                        context.epoch.value_or(0),
                                        std::filesystem::current_path(fault).string(), input));
}

// What was read, and what was written.
std::set<std::filesystem::path> files_of(const SetOutcome& outcome, const Outputs& outputs) {
    std::set<std::filesystem::path> files = outcome.read;
    files.insert({outputs.pdf, outputs.plain, outputs.deps});
    files.erase(std::filesystem::path());
    return files;
}

SetOutcome set_anew(const std::string& input, const Outputs& outputs, const Context& context) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.read_input(input, diagnostics);
    Diagnostics cuts_report; // in an order of its own
    SetOutcome outcome;
    outcome.code =
        file ? set_source(sources, *file, context, outputs, diagnostics, cuts_report, outcome)
             : ExitCode::errors;
    for (std::uint32_t i = 0; i < sources.size(); ++i)
        outcome.read.insert(sources.file(i).path);
    if (context.request.watch) note_state(input, diagnostics, outcome);
    diagnostics.sort();
    outcome.messages = all_messages(diagnostics, sources, context.excerpts) +
                       all_messages(cuts_report, sources, context.excerpts) +
                       mends_offered(diagnostics, input);
    return outcome;
}

SetOutcome set_one(const std::string& input, const Outputs& outputs, const Context& context) {
    const auto last = last_set_of(input, outputs, context);
    if (last && last->still_stands())
        return {ExitCode::done, fill<messages::nothing_changed>(input) + '\n'};
    SetOutcome outcome = set_anew(input, outputs, context);
    // what was warned of is warned of again
    if (last && outcome.code == ExitCode::done && outcome.messages.empty())
        last->keep(files_of(outcome, outputs));
    return outcome;
}

// A fault of one stops no other.
SetOutcome set_guarded(const std::string& input, const Outputs& outputs, const Context& context) {
    try {
        return set_one(input, outputs, context);
    } catch (const std::system_error& fault) {
        return {ExitCode::errors, fmt::format("{}: error: {}\n", input, fault.what())};
    } catch (const std::exception& fault) {
        return {ExitCode::errors,
                fmt::format("{}: {}\n", input, fill<messages::internal_error>(fault.what()))};
    }
}

ExitCode watch_all(const std::vector<std::string>& inputs, const std::vector<Outputs>& outputs,
                   const Context& context) {
    watch_and_set(inputs.size(),
                  [&](std::size_t i) { return set_guarded(inputs[i], outputs[i], context); });
    return ExitCode::errors; // nobody reads what it says
}

// Each hand takes the next input that is not yet taken.
std::vector<SetOutcome> set_all(const std::vector<std::string>& inputs,
                                const std::vector<Outputs>& outputs, const Context& context) {
    std::vector<SetOutcome> outcomes(inputs.size());
    std::atomic<std::size_t> next = 0, done = 0;
    ProgressLine progress;
    const std::thread::id first = std::this_thread::get_id();
    const auto work = [&] {
        for (std::size_t i = next++; i < inputs.size(); i = next++) {
            outcomes[i] = set_guarded(inputs[i], outputs[i], context);
            ++done;
            if (std::this_thread::get_id() == first) progress.show(done, inputs.size(), inputs[i]);
        }
    };
    // a hand waits longer for its file to be safe on the disk than it works
    constexpr std::size_t hands_for_a_core = 4;
    const std::size_t hands =
        std::min(hands_for_a_core * std::thread::hardware_concurrency(), inputs.size());
    work_with_hands(hands, work);
    return outcomes;
}

bool takes_standard_output(const std::vector<Outputs>& outputs) {
    return std::ranges::any_of(outputs, [](const Outputs& each) {
        return each.pdf == "-" || each.plain == "-" || each.deps == "-";
    });
}

// What was asked for is output, and gives way only to an output that is a document. False if it
// could not be printed, which is said.
bool print_outcomes(const std::vector<SetOutcome>& outcomes, bool is_taken) {
    for (const SetOutcome& outcome : outcomes) {
        print_messages(outcome.messages);
        const std::string report = outcome.state + outcome.explanation;
        if (is_taken)
            print_messages(report);
        else if (!report.empty() && !print_report("set", report))
            return false;
    }
    return true;
}

// Errors in a source outrank one that does not fit.
ExitCode worst_of(const std::vector<SetOutcome>& outcomes) {
    ExitCode worst = ExitCode::done;
    for (const SetOutcome& outcome : outcomes)
        if (worst == ExitCode::done || outcome.code == ExitCode::errors)
            worst = outcome.code == ExitCode::done ? worst : outcome.code;
    return worst;
}

}

ExitCode run_set(const SetRequest& request) {
    std::vector<Outputs> outputs;
    if (const auto fault = plan_outputs(request, outputs)) return wrong_use("set", *fault);
    if (request.watch && is_one_of("-", request.inputs))
        return wrong_use("set", fill<messages::watch_input>());
    const bool is_taken = takes_standard_output(outputs),
               is_for_programs = request.format == "json";
    if (is_taken && is_for_programs) return wrong_use("set", fill<messages::json_and_output>());
    std::optional<std::int64_t> epoch;
    if (!read_epoch(epoch)) return wrong_use("set", fill<messages::epoch>());

    const std::filesystem::path data = data_folder();
    const auto fonts = open_fonts(data);
    if (!fonts) return ExitCode::errors;

    const bool tells =
        !is_for_programs && !is_taken && !request.watch && isatty(STDOUT_FILENO) == 1;
    const Context context{request, data, *fonts, epoch, isatty(STDERR_FILENO) == 1, tells};
    if (request.watch) return watch_all(request.inputs, outputs, context);
    const std::vector<SetOutcome> outcomes = set_all(request.inputs, outputs, context);
    if (!print_outcomes(outcomes, is_taken)) return ExitCode::errors;
    if (is_for_programs && !print_output("set", set_json(request.inputs, outputs, outcomes)))
        return ExitCode::errors;
    return worst_of(outcomes);
}

}
