#include "compiler/commands/set.hpp"

#include "compiler/commands/depfile.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/outputs.hpp"
#include "compiler/fonts/fonts.hpp"
#include "compiler/output/write_file.hpp"
#include "compiler/pages/pages.hpp"
#include "compiler/pdf/pdf.hpp"
#include "compiler/plain/plain.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <charconv>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <span>
#include <string_view>
#include <thread>
#include <unistd.h>

namespace quoin {

namespace {

struct Outcome {
    ExitCode code = ExitCode::done;
    std::string messages; // for standard error
};

struct Context { // what every input of one call shares
    const SetRequest& request;
    const std::filesystem::path& data;
    Fonts& fonts;
    std::optional<std::int64_t> epoch; // SOURCE_DATE_EPOCH
    bool excerpts = false;             // messages go to a terminal
};

std::string all_messages(Diagnostics& diagnostics, const Sources& sources, bool excerpts) {
    diagnostics.sort();
    constexpr std::size_t most = 100; // a file that is wrong all through is not a résumé
    std::string out;
    const auto& all = diagnostics.all();
    for (const Diagnostic& diagnostic : std::span(all).first(std::min(most, all.size())))
        out += format(diagnostic, sources, excerpts) + '\n';
    if (all.size() > most) out += fmt::format("quoin: {} more like these\n", all.size() - most);
    return out;
}

// The date the document bears: the build's if it states one, else the day the writer says the
// résumé was brought up to date; never the clock's.
std::optional<std::int64_t> document_time(const std::optional<std::int64_t>& epoch,
                                          const Settings& settings) {
    if (epoch) return epoch;
    const std::optional<Date>& updated = *settings.updated;
    if (!updated) return std::nullopt;
    const std::chrono::year_month_day day(
        std::chrono::year(updated->year),
        std::chrono::month(static_cast<unsigned>(updated->month.value_or(1))),
        std::chrono::day(static_cast<unsigned>(updated->day.value_or(1))));
    return std::chrono::sys_seconds(std::chrono::sys_days(day)).time_since_epoch().count();
}

void report_overflow(const Overflow& overflow, const Typeset& typeset, std::uint32_t file,
                     Diagnostics& diagnostics) {
    const Settings& settings = typeset.resume.settings;
    const int lines = overflow.lines_too_many;
    diagnostics.error(
        {file, 0, 0, 0},
        fmt::format("{} {} too long for {} {} at {} pt and margins of {} in, the smallest "
                    "allowed; nothing was written",
                    lines, lines == 1 ? "line" : "lines", *settings.pages,
                    *settings.pages == 1 ? "page" : "pages", settings.size->least,
                    settings.margins->least));
}

struct Written { // what one input's outputs hold
    std::optional<std::string> pdf, plain, deps;
};

std::string deps_of(const Typeset& typeset, const Outputs& outputs) {
    std::vector<std::filesystem::path> prerequisites = typeset.resume.files;
    prerequisites.insert(prerequisites.end(), typeset.theme.files.begin(),
                         typeset.theme.files.end());
    std::erase_if(prerequisites, [](const auto& path) { return path.empty(); });
    std::vector<std::string> targets;
    for (const std::string& target : {outputs.pdf, outputs.plain})
        if (!target.empty() && target != "-") targets.push_back(target);
    return depfile(targets, prerequisites);
}

// Nothing is written until all that is to be written is there.
std::optional<std::string> write_all(const Written& written, const Outputs& outputs) {
    const std::pair<const std::optional<std::string>&, const std::string&> all[] = {
        {written.pdf, outputs.pdf}, {written.plain, outputs.plain}, {written.deps, outputs.deps}};
    for (const auto& [bytes, target] : all)
        if (bytes)
            if (auto fault = write_file(target, *bytes)) return fault;
    return std::nullopt;
}

ExitCode set_source(Sources& sources, std::uint32_t file, const Context& context,
                    const Outputs& outputs, Diagnostics& diagnostics) {
    const auto typeset = quoin::typeset(sources, file, context.request.choices, context.data,
                                        context.fonts, diagnostics);
    if (!typeset) return ExitCode::errors;

    Written written;
    if (!outputs.pdf.empty()) {
        if (const auto* overflow = std::get_if<Overflow>(&typeset->fit)) {
            report_overflow(*overflow, *typeset, file, diagnostics);
            return ExitCode::does_not_fit;
        }
        const Pages pages = make_pages(typeset->composition, std::get<Fit>(typeset->fit));
        written.pdf = write_pdf(typeset->composition, pages,
                                document_time(context.epoch, typeset->resume.settings));
    }
    if (!outputs.plain.empty()) written.plain = plain_text(typeset->composition);
    if (!outputs.deps.empty()) written.deps = deps_of(*typeset, outputs);
    if (auto fault = write_all(written, outputs)) {
        diagnostics.error({file, 0, 0, 0}, *fault);
        return ExitCode::errors;
    }
    return ExitCode::done;
}

Outcome set_one(const std::string& input, const Outputs& outputs, const Context& context) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file =
        input == "-" ? sources.read_standard_input(diagnostics) : sources.read(input, diagnostics);
    Outcome outcome;
    outcome.code =
        file ? set_source(sources, *file, context, outputs, diagnostics) : ExitCode::errors;
    outcome.messages = all_messages(diagnostics, sources, context.excerpts);
    return outcome;
}

// Each core takes the next input that is not yet taken.
std::vector<Outcome> set_all(const std::vector<std::string>& inputs,
                             const std::vector<Outputs>& outputs, const Context& context) {
    std::vector<Outcome> outcomes(inputs.size());
    std::atomic<std::size_t> next = 0;
    const auto work = [&] {
        for (std::size_t i = next++; i < inputs.size(); i = next++)
            try {
                outcomes[i] = set_one(inputs[i], outputs[i], context);
            } catch (const std::exception& fault) {
                outcomes[i] = {ExitCode::errors,
                               fmt::format("{}: internal error: {}; please report it\n", inputs[i],
                                           fault.what())};
            }
    };
    const std::size_t hands =
        std::min<std::size_t>(std::thread::hardware_concurrency(), inputs.size());
    std::vector<std::jthread> others;
    for (std::size_t hand = 1; hand < hands; ++hand)
        others.emplace_back(work);
    work();
    others.clear(); // joins
    return outcomes;
}

ExitCode wrong_use(const std::string& text) {
    fmt::print(stderr, "quoin set: {}\n", text);
    return ExitCode::wrong_use;
}

// https://reproducible-builds.org/specs/source-date-epoch, version 1.1: decimal seconds, or a
// fault.
bool read_epoch(std::optional<std::int64_t>& epoch) {
    const char* given = std::getenv("SOURCE_DATE_EPOCH");
    if (given == nullptr || *given == '\0') return true;
    constexpr std::int64_t end_of_year_9999 =
        253402300799; // PDF dates have four figures for a year
    const std::string_view text = given;
    std::int64_t seconds = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), seconds);
    if (fault != std::errc() || end != text.data() + text.size() || seconds < 0 ||
        seconds > end_of_year_9999)
        return false;
    epoch = seconds;
    return true;
}

}

ExitCode run_set(SetRequest request) {
    if (!request.paper.empty())
        request.choices.paper = request.paper == "a4" ? Paper::a4 : Paper::letter;
    std::vector<Outputs> outputs;
    if (const auto fault = plan_outputs(request, outputs)) return wrong_use(*fault);
    std::optional<std::int64_t> epoch;
    if (!read_epoch(epoch))
        return wrong_use("SOURCE_DATE_EPOCH is not a number of seconds since 1970");

    const std::filesystem::path data = data_folder();
    Sources font_sources;
    Diagnostics font_diagnostics;
    const auto fonts = Fonts::open(font_sources, data / "fonts", font_diagnostics);
    if (!fonts) {
        fmt::print(stderr, "{}", all_messages(font_diagnostics, font_sources, false));
        return ExitCode::errors;
    }

    const Context context{request, data, *fonts, epoch, isatty(STDERR_FILENO) == 1};
    const std::vector<Outcome> outcomes = set_all(request.inputs, outputs, context);
    ExitCode worst = ExitCode::done;
    for (const Outcome& outcome : outcomes) {
        std::fwrite(outcome.messages.data(), 1, outcome.messages.size(), stderr);
        // errors in a source outrank one that does not fit
        if (worst == ExitCode::done || outcome.code == ExitCode::errors)
            worst = outcome.code == ExitCode::done ? worst : outcome.code;
    }
    return worst;
}

}
