#include "compiler/commands/mend/mend.hpp"

#include "compiler/advice/mend_all.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/data_places.hpp"
#include "compiler/base/source.hpp"
#include "compiler/base/write_file.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/mend/line_diff.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/office_rules.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/set/source_date.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <memory>
#include <set>
#include <unistd.h>

namespace quoin::commands {

namespace {

namespace fs = std::filesystem;

advice::ReadingOwner first_reading(const std::string& input) {
    auto reading = std::make_unique<advice::SourceReading>();
    reading->words = page_words_in(data_folder());
    reading->file = reading->sources.read_input(input, reading->diagnostics);
    reading->build();
    reading->diagnostics.sort();
    return reading;
}

std::string told(const std::string& name, std::size_t made) {
    return fmt::format("{}: {} made\n", name, advice::counted(made, "mend", "mends"));
}

void show_mended(const SourceFile& file, const std::string& bytes, MendOutcome& outcome) {
    const std::string name = file.path.empty() ? file.name : file.path.string();
    outcome.output += line_diff(name, file.bytes, bytes);
}

// Into its file; what is for standard output waits for who prints it.
void write_mended(const SourceFile& file, const std::string& bytes, const advice::MendsMade& mends,
                  MendOutcome& outcome) {
    const auto of_file = mends.find(file.path);
    const std::size_t made = of_file == mends.end() ? 0 : of_file->second;
    if (!is_replaceable(file.path.empty() ? "-" : file.path.string())) {
        outcome.output = bytes;
        if (made > 0) outcome.once_written = told(file.name, made);
        return;
    }
    if (bytes == file.bytes) return;
    const FileOutput output{file.path.string(), bytes, &file.bytes};
    if (const auto fault = write_files({&output, 1})) {
        outcome.messages += fmt::format("{}: error: {}\n", file.name, *fault);
        outcome.failed = true;
    } else {
        outcome.messages += told(file.name, made);
    }
}

}

MendOutcome mend_input(const std::string& input, const MendTools& tools, bool dry_run) {
    MendOutcome outcome;
    const bool excerpts = shows_excerpts();
    const advice::ReadingOwner first = first_reading(input);
    const advice::AllMended all =
        mend_all(*first, {tools.language, tools.read_on, office_of(tools.offices, input)});
    advice::SourceReading& last = all.last ? *all.last : *first;
    last.diagnostics.sort();
    outcome.messages = all_messages(last.diagnostics, last.sources, excerpts);
    outcome.failed = !last.resume;
    const advice::Texts after = advice::texts_of(last.sources);
    std::set<fs::path> seen;
    for (std::uint32_t index = 0; index < first->sources.size(); ++index) {
        const SourceFile& file = first->sources.file(index);
        const auto text = after.find(file.path);
        if (!seen.insert(file.path).second || text == after.end()) continue;
        if (dry_run)
            show_mended(file, text->second, outcome);
        else
            write_mended(file, text->second, all.made, outcome);
    }
    outcome.messages += all_messages(all.left, last.sources, excerpts);
    return outcome;
}

ExitCode run_mend(const MendRequest& request) {
    if (std::ranges::count(request.inputs, "-") > 1)
        return wrong_use("mend", fill<messages::dash_twice>());
    std::optional<std::int64_t> epoch;
    if (!read_epoch(epoch)) return wrong_use("mend", fill<messages::epoch>());

    const english::Language language(data_folder());
    advice::Offices offices(themes_in(data_folder()), request.office);
    if (!read_offices(offices, request.inputs, "mend")) return ExitCode::wrong_use;
    const MendTools tools{language, reading_day(epoch), &offices};
    ExitCode code = ExitCode::done;
    for (const std::string& input : request.inputs) {
        const MendOutcome outcome = mend_input(input, tools, request.dry_run);
        print_messages(outcome.messages);
        if (outcome.failed) code = ExitCode::errors;
        if (!print_output("mend", outcome.output)) return ExitCode::errors;
        print_messages(outcome.once_written);
    }
    return code;
}

}
