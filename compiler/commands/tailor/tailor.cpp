#include "compiler/commands/tailor/tailor.hpp"

#include "compiler/base/data_places.hpp"
#include "compiler/base/folder.hpp"
#include "compiler/base/printable.hpp"
#include "compiler/base/whole_file_place.hpp"
#include "compiler/base/write_file.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/outputs.hpp"
#include "compiler/commands/posting/posting_source.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/tailor/for_posting.hpp"
#include "compiler/commands/tailor/tailor_report.hpp"
#include "compiler/stages/fit/cuts.hpp"
#include "compiler/stages/overflow_report.hpp"
#include "compiler/stages/page_state.hpp"
#include "compiler/tailoring/tailored_source.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <system_error>
#include <unistd.h>

namespace quoin::commands {

namespace {

namespace fs = std::filesystem;

std::optional<std::string> fault_of(const TailorRequest& request) {
    if (request.operands.size() != 2) return fill<messages::resume_and_posting>();
    if (has_name_of_posting(request.operands[0]))
        return fill<messages::posting_first>(request.operands[0]);
    if (std::ranges::count(request.operands, "-") > 1) return fill<messages::dash_twice>();
    if (request.output.empty()) return fill<messages::tailored_needs_output>();
    return std::nullopt;
}

fs::path folder_for(const std::string& output, const SourceFile& input) {
    return folder_of(output == "-" ? input.path : fs::path(output));
}

class TailorRun {
public:
    TailorRun(const TailorRequest& request, const fs::path& data, fonts::Fonts& fonts)
        : request_(request), tools_{request.choices, data, fonts} {}

    ExitCode run() {
        const auto file = sources_.read_input(request_.operands[0], diagnostics_);
        const ExitCode code = file ? tailor(*file) : ExitCode::errors;
        diagnostics_.sort();
        print_all(diagnostics_, sources_);
        print_all(too_long_, sources_);
        if (request_.output == "-")
            print_messages(explanation_);
        else if (!explanation_.empty() && !print_report("tailor", explanation_))
            return ExitCode::errors;
        return code;
    }

private:
    ExitCode tailor(std::uint32_t file) {
        const auto found = for_posting(sources_, file, request_.operands[1], tools_, diagnostics_);
        if (!found) return ExitCode::errors;
        if (would_write_over(request_.output, sources_)) {
            diagnostics_.error(whole_file(file),
                               fill<messages::source_overwritten>(request_.output));
            return ExitCode::wrong_use;
        }
        const stages::Typeset& typeset = found->tailored.typeset;
        if (const auto* overflow = std::get_if<fit::Overflow>(&typeset.fit))
            return report_overflow(*overflow, typeset, file);
        if (const auto fault = write_file(request_.output, source_of(*found, file))) {
            diagnostics_.error(whole_file(file), *fault);
            return ExitCode::errors;
        }
        explain(*found);
        return ExitCode::done;
    }

    ExitCode report_overflow(const fit::Overflow& overflow, const stages::Typeset& typeset,
                             std::uint32_t file) {
        diagnostics_.note(whole_file(file), fill<messages::kept_is_too_long>());
        too_long_ = overflow_report(overflow.lines_too_many, stages::cheapest_cuts_of(typeset),
                                    typeset, file, false);
        return ExitCode::does_not_fit;
    }

    std::string source_of(const ForPosting& found, std::uint32_t file) const {
        const fs::path folder = folder_for(request_.output, sources_.file(file));
        const fs::path words = page_words_in(tools_.data);
        return tailoring::tailored_source(
            found.resume, found.demand, found.tailored,
            {.sources = sources_, .file = file, .folder = folder, .words = words});
    }

    void explain(const ForPosting& found) {
        if (request_.explain)
            explanation_ = tailor_report(found, sources_);
        else if (request_.output != "-" && isatty(STDOUT_FILENO) == 1)
            explanation_ = fmt::format("{}: {}\n", printable_name(request_.output),
                                       page_state(found.tailored.typeset));
    }

    const TailorRequest& request_;
    ForPostingTools tools_;
    Sources sources_;
    Diagnostics diagnostics_, too_long_; // the latter in an order of its own
    std::string explanation_;
};

}

ExitCode run_tailor(const TailorRequest& request) {
    if (const auto fault = fault_of(request)) return wrong_use("tailor", *fault);
    const fs::path data = data_folder();
    const auto fonts = open_fonts(data);
    if (!fonts) return ExitCode::errors;
    return TailorRun(request, data, *fonts).run();
}

}
