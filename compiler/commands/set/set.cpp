#include "compiler/commands/set/set.hpp"

#include "compiler/base/hands.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/printable.hpp"
#include "compiler/base/whole_file_place.hpp"
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

// What the PDF is made from, as make is to know it.
std::vector<std::filesystem::path> prerequisites_of(const stages::Typeset& typeset,
                                                    const SetRequest& request) {
    std::vector<std::filesystem::path> all = typeset.resume.files;
    if (request.posting != "-") all.emplace_back(request.posting);
    for (const auto* files :
         {&typeset.theme.files, &typeset.theme.family_files, &typeset.resume.words.files})
        all.insert(all.end(), files->begin(), files->end());
    std::erase_if(all, [](const auto& path) { return path.empty(); });
    return all;
}

// A name that make cannot read.
std::optional<std::string> odd_name(const std::string& name) {
    const std::string_view sign = unholdable(name);
    if (sign.empty()) return std::nullopt;
    return fill<messages::deps_cannot_hold>(in_quotes(name), in_quotes(sign));
}

// What depends, and on what; an error for a name that make cannot read.
std::optional<std::string> deps_of(const stages::Typeset& typeset, const Outputs& outputs,
                                   const SetRequest& request, std::uint32_t file,
                                   Diagnostics& diagnostics) {
    const auto prerequisites = prerequisites_of(typeset, request);
    std::vector<std::string> targets;
    for (const std::string& target : {outputs.pdf, outputs.plain})
        if (!target.empty() && target != "-") targets.push_back(target);
    std::vector<std::string> names = targets;
    for (const auto& path : prerequisites)
        names.push_back(path.string());
    for (const std::string& name : names)
        if (const auto fault = odd_name(name)) {
            diagnostics.error(whole_file(file), *fault);
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

// "draft.pdf: 1 page, 10.7 pt, 4 lines free"
std::string done_line(const stages::Typeset& typeset, const Outputs& outputs,
                      const SetRequest& request) {
    if (outputs.pdf.empty()) return outputs.plain + ": the text alone\n";
    const std::string and_text = outputs.plain.empty() ? "" : " and " + outputs.plain;
    return outputs.pdf + and_text + ": " +
           (request.at_preferred ? "a specimen" : page_state(typeset)) + '\n';
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
    outcome.state = fmt::format("{}: {}", printable_name(input), outcome.state);
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

// One input on its way to its outputs.
class SetRun {
public:
    SetRun(const std::string& input, const Outputs& outputs, const Context& context)
        : input_(input), outputs_(outputs), context_(context), request_(context.request) {}

    SetOutcome run() {
        const auto file = sources_.read_input(input_, diagnostics_);
        file_ = file.value_or(0);
        outcome_.code = file ? set() : ExitCode::errors;
        for (std::uint32_t i = 0; i < sources_.size(); ++i)
            outcome_.read.insert(sources_.file(i).path);
        if (request_.watch) note_state(input_, diagnostics_, outcome_);
        diagnostics_.sort();
        outcome_.messages = all_messages(diagnostics_, sources_, context_.excerpts) +
                            all_messages(cuts_report_, sources_, context_.excerpts) +
                            mends_offered(diagnostics_, input_);
        return std::move(outcome_);
    }

private:
    ExitCode set() {
        const auto typeset = typeset_of(sources_, file_, context_, diagnostics_);
        if (!typeset) return ExitCode::errors;
        note_setting(*typeset);
        if (!spares_sources()) return ExitCode::errors;
        if (!outputs_.pdf.empty())
            if (const ExitCode code = make_page(*typeset); code != ExitCode::done) return code;
        if (!make_text(*typeset) || !make_deps(*typeset)) return ExitCode::errors;
        if (const auto fault = write_all(written_, outputs_)) return fail(*fault);
        note_done(*typeset);
        return ExitCode::done;
    }

    ExitCode fail(const std::string& fault) {
        diagnostics_.error(whole_file(file_), fault);
        return ExitCode::errors;
    }

    void note_setting(const stages::Typeset& typeset) {
        if (request_.watch) outcome_.state = page_state(typeset);
        if (request_.format == "json") outcome_.fit = fit_json(typeset);
        const auto& of_system = typeset.theme.family_files;
        outcome_.read.insert(of_system.begin(), of_system.end());
    }

    // False, and an error, if an output would be written over what was read.
    bool spares_sources() {
        for (const std::string& target : {outputs_.pdf, outputs_.plain, outputs_.deps}) {
            if (!would_spoil(target, sources_)) continue;
            fail(fill<messages::source_overwritten>(target));
            return false;
        }
        return true;
    }

    // The page's bytes; without them, the code says why there are none.
    ExitCode make_page(const stages::Typeset& typeset) {
        const auto* overflow = std::get_if<fit::Overflow>(&typeset.fit);
        if (overflow != nullptr && !request_.at_preferred) {
            note_overflow(*overflow, typeset);
            if (!request_.draft) return ExitCode::does_not_fit;
        }
        const pages::Pages pages = pages_of(typeset, request_);
        written_.pdf = pdf::write_pdf(typeset.composition, pages,
                                      document_time(context_.epoch, typeset.resume.settings));
        const bool is_whole =
            !request_.verify || portal::verify_pdf(typeset.composition, pages, *written_.pdf,
                                                   whole_file(file_), diagnostics_);
        return is_whole ? ExitCode::done : ExitCode::errors;
    }

    void note_overflow(const fit::Overflow& overflow, const stages::Typeset& typeset) {
        const int lines = overflow.lines_too_many;
        const fit::Cuts cuts = stages::cheapest_cuts_of(typeset);
        cuts_report_ = overflow_report(lines, cuts, typeset, file_, request_.draft);
        if (request_.format == "json") outcome_.cuts = cuts_json(lines, cuts, typeset, sources_);
    }

    // The text for a form, as far as it is asked for; false after an error.
    bool make_text(const stages::Typeset& typeset) {
        if (outputs_.plain.empty()) return true;
        written_.plain = request_.entry.empty()
                             ? plain::plain_text(typeset.composition)
                             : plain::entry_text(typeset.composition, request_.entry);
        if (!written_.plain)
            fail(fill<messages::no_entry>(in_quotes(request_.entry)));
        else if (request_.ascii)
            written_.plain = plain::in_ascii(*written_.plain);
        return written_.plain.has_value();
    }

    bool make_deps(const stages::Typeset& typeset) {
        if (outputs_.deps.empty()) return true;
        written_.deps = deps_of(typeset, outputs_, request_, file_, diagnostics_);
        return written_.deps.has_value();
    }

    void note_done(const stages::Typeset& typeset) {
        if (context_.tells) outcome_.state = done_line(typeset, outputs_, request_);
        const auto* fit = std::get_if<fit::Fit>(&typeset.fit);
        if (fit == nullptr) return;
        warn_of_thin_page(typeset, *fit, file_, diagnostics_);
        if (request_.explain) outcome_.explanation = explain_report(typeset, *fit, sources_, file_);
    }

    const std::string& input_;
    const Outputs& outputs_;
    const Context& context_;
    const SetRequest& request_;
    Sources sources_;
    std::uint32_t file_ = 0;
    Diagnostics diagnostics_, cuts_report_; // the latter in an order of its own
    Written written_;
    SetOutcome outcome_;
};

SetOutcome set_one(const std::string& input, const Outputs& outputs, const Context& context) {
    const auto last = last_set_of(input, outputs, context);
    if (last && last->still_stands())
        return {ExitCode::done, fill<messages::nothing_changed>(input) + '\n'};
    SetOutcome outcome = SetRun(input, outputs, context).run();
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

ExitCode set_and_tell(const std::vector<Outputs>& outputs, const Context& context) {
    const SetRequest& request = context.request;
    const std::vector<SetOutcome> outcomes = set_all(request.inputs, outputs, context);
    if (!print_outcomes(outcomes, takes_standard_output(outputs))) return ExitCode::errors;
    if (request.format == "json" &&
        !print_output("set", set_json(request.inputs, outputs, outcomes)))
        return ExitCode::errors;
    return worst_of(outcomes);
}

// What of the request does not go together; nothing, and where the outputs go.
std::optional<std::string> wrong_in(const SetRequest& request, std::vector<Outputs>& outputs) {
    if (auto fault = plan_outputs(request, outputs)) return fault;
    if (request.watch && is_one_of("-", request.inputs)) return fill<messages::watch_input>();
    if (takes_standard_output(outputs) && request.format == "json")
        return fill<messages::json_and_output>();
    return std::nullopt;
}

}

ExitCode run_set(const SetRequest& request) {
    std::vector<Outputs> outputs;
    if (const auto fault = wrong_in(request, outputs)) return wrong_use("set", *fault);
    std::optional<std::int64_t> epoch;
    if (!read_epoch(epoch)) return wrong_use("set", fill<messages::epoch>());

    const std::filesystem::path data = data_folder();
    const auto fonts = open_fonts(data);
    if (!fonts) return ExitCode::errors;

    const bool tells = request.format != "json" && !takes_standard_output(outputs) &&
                       !request.watch && isatty(STDOUT_FILENO) == 1;
    const Context context{request, data, *fonts, epoch, shows_excerpts(), tells};
    return request.watch ? watch_all(request.inputs, outputs, context)
                         : set_and_tell(outputs, context);
}

}
