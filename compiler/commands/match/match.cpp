#include "compiler/commands/match/match.hpp"

#include "compiler/base/data_places.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/match/match_report.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/outputs.hpp"
#include "compiler/commands/posting/posting_source.hpp"
#include "compiler/commands/printing.hpp"

#include <algorithm>
#include <cstdlib>
#include <memory>
#include <unistd.h>

namespace quoin::commands {

namespace {

// A terminal whose locale has UTF-8, by the order that POSIX.1-2017 gives the variables (8.2).
bool shows_blocks() {
    if (isatty(STDOUT_FILENO) == 0) return false;
    for (const char* name : {"LC_ALL", "LC_CTYPE", "LANG"})
        if (const char* value = std::getenv(name); value != nullptr && *value != '\0') {
            const std::string_view locale = value;
            return locale.find("UTF-8") != locale.npos || locale.find("utf8") != locale.npos;
        }
    return false;
}

std::optional<postings::Posting> read_postings(const MatchRequest& request, Sources& sources,
                                               Diagnostics& diagnostics) {
    std::optional<postings::Posting> posting;
    for (std::size_t i = 1; i < request.inputs.size(); ++i) {
        auto one = read_posting_at(request.inputs[i], sources, diagnostics);
        if (!one) return std::nullopt;
        if (posting)
            add_context(*posting, *one);
        else
            posting = std::move(one);
    }
    return posting;
}

std::unique_ptr<Match> make_match(const MatchRequest& request, Sources& sources,
                                  Diagnostics& diagnostics) {
    const auto file = sources.read_input(request.inputs.front(), diagnostics);
    if (!file) return nullptr;
    auto resume =
        stages::selected_resume(sources, *file, request.choices, data_folder(), diagnostics);
    auto posting = read_postings(request, sources, diagnostics);
    if (!resume || !posting) return nullptr;
    auto match = std::make_unique<Match>();
    match->resume_name = sources.file(*file).name;
    match->posting_name = request.inputs[1];
    match->resume = *std::move(resume);
    match->posting = *std::move(posting);
    const english::WordList words(word_list_in(data_folder()));
    match->coverage = matching::cover(match->resume, match->posting, words);
    match->order = matching::rank(match->resume, match->coverage);
    match->groupings = matching::group(match->resume, match->order);
    return match;
}

std::optional<std::string> wrong_in(const MatchRequest& request) {
    if (request.inputs.size() < 2) return fill<messages::no_posting>();
    if (std::ranges::count(request.inputs, "-") > 1) return fill<messages::dash_twice>();
    const std::string& resume = request.inputs.front();
    const bool turned = holds_resume(request.inputs[1]) && !holds_resume(resume) && resume != "-";
    if (turned || has_name_of_posting(resume)) return fill<messages::posting_first>(resume);
    return std::nullopt;
}

bool print_match(const Match& match, const MatchRequest& request) {
    return request.format == "json"
               ? print_output("match", match_json(match))
               : print_report("match", match_text(match, {shows_blocks(), request.explain}));
}

}

ExitCode run_match(const MatchRequest& request) {
    if (const auto fault = wrong_in(request)) return wrong_use("match", *fault);
    Sources sources;
    Diagnostics diagnostics;
    const auto match = make_match(request, sources, diagnostics);
    diagnostics.sort();
    print_all(diagnostics, sources);
    if (!match) return ExitCode::errors;
    if (!request.report.empty() &&
        !write_beside(sources, request.report, match_html(*match), "match"))
        return ExitCode::errors;
    const bool is_told = request.report == "-" || print_match(*match, request);
    return is_told ? ExitCode::done : ExitCode::errors;
}

}
