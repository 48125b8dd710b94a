#include "compiler/commands/begin/interview_run.hpp"

#include "compiler/base/data_places.hpp"
#include "compiler/base/module.hpp"
#include "compiler/base/source.hpp"
#include "compiler/base/wrapped.hpp"
#include "compiler/base/write_file.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/office_rules.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/set/source_date.hpp"
#include "compiler/interview/interview.hpp"
#include "compiler/interview/kept_file.hpp"
#include "compiler/interview/line_reader.hpp"
#include "compiler/interview/messages.hpp"

#include <fmt/format.h>

#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <memory>
#include <optional>
#include <string_view>
#include <unistd.h>
#include <utility>

namespace quoin::commands {

namespace {

ExitCode say_fault(const std::string& fault) {
    print_messages(fmt::format("quoin begin: {}\n", fault));
    return ExitCode::errors;
}

// On a terminal that can move its cursor, with editing and a history; if that part of quoin is
// missing, without.
std::unique_ptr<interview::LineReader> line_reader() {
    const char* terminal = std::getenv("TERM");
    const bool edits = isatty(STDIN_FILENO) == 1 && isatty(STDOUT_FILENO) == 1 &&
                       terminal != nullptr && std::string_view(terminal) != "dumb";
    try {
        if (interview::LineReader* reader =
                edits ? make_by_module<interview::LineReader>("editing") : nullptr)
            return std::unique_ptr<interview::LineReader>(reader);
    } catch (const ModuleFault&) {
    }
    return interview::plain_lines();
}

class InterviewRun {
public:
    InterviewRun(const std::string& output, const interview::Judge& judge)
        : output_(output), file_(std::filesystem::path(output).replace_extension(".begin")),
          judge_(judge) {}

    ExitCode run(interview::Draft draft) {
        auto kept = begin_or_go_on(std::move(draft));
        if (!kept) return ExitCode::errors;
        interview::Interview interview(std::move(kept->draft), kept->next, judge_);
        remember_answers(interview);
        bool moved = true;
        while (!interview.is_done()) {
            if (moved && !say(interview.asks())) return ExitCode::errors;
            const interview::TypedLine line = reader_->read(interview.prompt());
            if (line.ended != interview::TypedLine::Ended::no) return leave(interview, line.ended);
            reader_->remember(line.text);
            if (const auto ended = take(line, interview, moved)) return *ended;
        }
        return finish(interview);
    }

private:
    // How it ends, if it does.
    std::optional<ExitCode> take(const interview::TypedLine& line, interview::Interview& interview,
                                 bool& moved) {
        const interview::Spot last = interview.spot();
        const interview::Reply reply = interview.take(line.text);
        if (!say(reply.says)) return ExitCode::errors;
        if (reply.then == interview::Then::leave) return leave(interview, line.ended);
        moved = reply.moved;
        if (moved && !save({interview.draft(), interview.is_done() ? last : interview.spot()}))
            return ExitCode::errors;
        return std::nullopt;
    }

    static bool say(std::string_view lines) { return print_report("begin", wrapped_lines(lines)); }

    // What was typed in an earlier run can be brought back as well.
    void remember_answers(const interview::Interview& interview) {
        const interview::Plan& plan = interview.plan();
        for (const interview::Spot& spot : all_spots(plan, interview.draft()))
            reader_->remember(answer_at(plan, interview.draft(), spot));
    }

    bool save(const interview::Kept& kept) {
        const auto fault = file_.save(kept);
        if (fault) say_fault(*fault);
        return !fault;
    }

    // None if it cannot, which is said.
    std::optional<interview::Kept> begin_or_go_on(interview::Draft draft) {
        const bool goes_on = file_.is_there();
        if (const auto fault = goes_on ? file_.hold() : std::nullopt) {
            say_fault(*fault);
            return std::nullopt;
        }
        auto kept = goes_on ? read_file() : interview::Kept{std::move(draft), {}};
        if (!kept || !save(*kept)) return std::nullopt;
        const std::string opening = goes_on ? fill<messages::goes_on_from>(file_.path().string())
                                            : fill<interview::messages::welcome>();
        const std::string keys =
            reader_->edits() ? fill<interview::messages::keys>() + '\n' : std::string{};
        const bool said =
            say(fmt::format("{}\n{}\n{}", opening, fill<interview::messages::signs>(), keys));
        return said ? std::move(kept) : std::nullopt;
    }

    std::optional<interview::Kept> read_file() {
        Sources sources;
        Diagnostics diagnostics;
        const auto file = sources.read(file_.path(), diagnostics, TextOf::elsewhere);
        auto kept = file ? interview::read_kept(sources, *file, diagnostics) : std::nullopt;
        print_all(diagnostics, sources);
        if (!kept) say_fault(fill<messages::kept_not_read>(file_.path().string()));
        return kept;
    }

    std::string command() const {
        return output_ == "draft.resume" ? "quoin begin"
                                         : fmt::format("quoin begin -o {}", output_);
    }

    ExitCode leave(const interview::Interview& interview, interview::TypedLine::Ended ended) {
        const bool ended_early =
            ended == interview::TypedLine::Ended::of_input && isatty(STDIN_FILENO) != 1;
        if (interview.draft().sections.empty()) {
            file_.remove();
            if (ended_early) return say_fault(fill<messages::nobody_answers>());
            return ExitCode::done;
        }
        const std::string told = fill<messages::answers_kept>(file_.path().string(), command());
        if (ended_early) return say_fault(fill<messages::input_ended>(told));
        return say(fmt::format("\n{}\n", told)) ? ExitCode::done : ExitCode::errors;
    }

    ExitCode finish(const interview::Interview& interview) {
        const auto source = draft_source(interview.plan(), interview.draft(),
                                         judge_.unreadable(interview.plan(), interview.draft()));
        std::error_code ignored;
        if (std::filesystem::exists(output_, ignored))
            return say_fault(fill<messages::draft_came_meanwhile>(output_, command()));
        if (const auto fault = write_file(output_, source.text))
            return say_fault(fill<messages::draft_not_written>(*fault, command()));
        file_.remove();
        return say(fmt::format("\n{}\n", written(output_))) ? ExitCode::done : ExitCode::errors;
    }

    const std::string& output_;
    interview::KeptFile file_;
    const interview::Judge& judge_;
    const std::unique_ptr<interview::LineReader> reader_ = line_reader();
};

}

std::string written(const std::string& output) {
    return fill<messages::draft_written>(output, output, output);
}

ExitCode run_interview(const std::string& output, interview::Draft draft) {
    std::optional<std::int64_t> epoch;
    if (!read_epoch(epoch)) return wrong_use("begin", fill<messages::epoch>());
    const std::filesystem::path data = data_folder();
    const english::Language language(data);
    advice::Offices offices(themes_in(data), {});
    if (!read_offices(offices, {output}, "begin")) return ExitCode::wrong_use;
    const interview::Judge judge(data, language, reading_day(epoch), office_of(&offices, output));
    return InterviewRun(output, judge).run(std::move(draft));
}

}
