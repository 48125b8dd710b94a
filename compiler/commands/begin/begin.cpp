#include "compiler/commands/begin/begin.hpp"

#include "compiler/base/write_file.hpp"
#include "compiler/commands/begin/from.hpp"
#include "compiler/commands/begin/interview_run.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/interview/choices.hpp"
#include "compiler/interview/draft_source.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <optional>
#include <string>
#include <system_error>

namespace quoin::commands {

namespace {

// Puts what was chosen into the draft, in the words of the list; none if it is in there, or nothing
// was given.
std::optional<std::string> choose(std::string_view label, const std::string& given,
                                  interview::Draft& draft) {
    if (given.empty()) return std::nullopt;
    const interview::Choices known = interview::choices_for(label);
    const auto chosen = known.chosen(given);
    if (!chosen)
        return fill<messages::no_such_choice>(label, known.names(), in_quotes(given),
                                              known.meant(given));
    draft.set(interview::choice_section, label, std::string(*chosen));
    return std::nullopt;
}

bool draft_exists(const std::string& output) {
    std::error_code ignored; // a link that leads nowhere is not written through either
    return output != "-" &&
           std::filesystem::exists(std::filesystem::symlink_status(output, ignored));
}

ExitCode write_skeleton(const std::string& output, const interview::Draft& draft) {
    const auto source = interview::draft_source(interview::plan_for(draft), draft);
    if (const auto fault = write_file(output, source.text)) {
        print_messages(fmt::format("quoin begin: {}\n", *fault));
        return ExitCode::errors;
    }
    if (output != "-") print_messages(fmt::format("quoin begin: {}\n", written(output)));
    return ExitCode::done;
}

}

ExitCode run_begin(const BeginRequest& request) {
    interview::Draft draft;
    if (const auto fault = choose("stage", request.stage, draft)) return wrong_use("begin", *fault);
    if (const auto fault = choose("field", request.field, draft)) return wrong_use("begin", *fault);
    const std::string output = request.output.empty() ? "draft.resume" : request.output;
    if (draft_exists(output)) return wrong_use("begin", fill<messages::draft_is_there>(output));
    if (!request.from.empty()) return begin_from(request.from, output);
    if (!request.stage.empty() && !request.field.empty()) return write_skeleton(output, draft);
    if (output == "-") return wrong_use("begin", fill<messages::questions_need_a_file>());
    return run_interview(output, std::move(draft));
}

}
