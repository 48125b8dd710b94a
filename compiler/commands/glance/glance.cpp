#include "compiler/commands/glance/glance.hpp"

#include "compiler/advice/first_look.hpp"
#include "compiler/base/json_text.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/printable.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/marked_targets.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/outputs.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/set/source_date.hpp"
#include "compiler/stages/pages/pages.hpp"
#include "compiler/stages/pdf/pdf.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <optional>
#include <unistd.h>
#include <utility>

namespace quoin::commands {

namespace {

constexpr std::string_view of_the_model =
    "A model, and no promise: what is large, heavy, high on the page and has white above it comes\n"
    "first, and words are skimmed at {:.0f} a minute.\n";

struct Glance { // of one résumé
    std::string input;
    Sources sources;
    stages::Typeset typeset;
    pages::Pages pages;
    std::vector<glance::Look> looks;
    std::vector<advice::Landmark> landmarks; // point into the résumé
};

struct GlanceTools {
    std::filesystem::path data;
    fonts::Fonts& fonts;
    std::optional<std::int64_t> epoch;
};

std::unique_ptr<Glance> glance_at(const std::string& input, const GlanceRequest& request,
                                  const GlanceTools& tools) {
    Diagnostics diagnostics;
    auto one = std::make_unique<Glance>();
    one->input = input == "-" ? standard_input : input;
    const auto file = one->sources.read_input(input, diagnostics);
    auto typeset = file ? stages::typeset(one->sources, *file, request.choices, tools.data,
                                          tools.fonts, diagnostics)
                        : std::nullopt;
    diagnostics.sort();
    print_all(diagnostics, one->sources);
    if (!typeset) return nullptr;
    one->typeset = *std::move(typeset);
    one->pages = make_pages(one->typeset, fit_or_draft(one->typeset));
    one->looks = glance::looks(one->typeset.composition, one->pages);
    one->landmarks = advice::landmarks(one->typeset.resume, one->looks, one->typeset.composition);
    return one;
}

// --- text

bool is_in_time(double seconds) {
    return seconds <= glance::first_look;
}

std::string landmark_names(const Glance& one, bool in_time) {
    std::vector<std::string_view> names;
    for (const advice::Landmark& landmark : one.landmarks)
        if (is_in_time(landmark.at) == in_time) names.push_back(landmark.what);
    return joined(names, " and ");
}

std::string glance_text(const Glance& one) {
    std::string text = printable_name(one.input) + ": what a reader takes in first\n";
    for (const glance::Look& look : one.looks)
        if (is_in_time(look.at)) text += fmt::format("  {:4.1f} s  {}\n", look.at, look.text);
    const std::string reached = landmark_names(one, true), missed = landmark_names(one, false);
    if (!reached.empty())
        text += fmt::format("In {:.0f} seconds: {}.\n", glance::first_look, reached);
    if (!missed.empty()) text += fmt::format("Not yet: {}.\n", missed);
    return text + fmt::format(of_the_model, glance::words_a_minute);
}

// --- for programs

using Json = nlohmann::ordered_json;

Json seconds_json(double seconds) {
    return seconds == glance::never ? Json() : Json(std::round(seconds * 100) / 100);
}

Json glance_json(const Glance& one) {
    Json json = {{"file", one.input}, {"first_look", glance::first_look}};
    json["landmarks"] = Json::array();
    for (const advice::Landmark& landmark : one.landmarks)
        json["landmarks"].push_back({{"what", landmark.what}, {"at", seconds_json(landmark.at)}});
    json["looks"] = Json::array();
    for (const glance::Look& look : one.looks)
        json["looks"].push_back({{"at", seconds_json(look.at)},
                                 {"page", look.page + 1},
                                 {"text", look.text},
                                 {"words", look.words}});
    return json;
}

// --- the marked page

// False if it could not be written, which is said.
bool write_glance(const Glance& one, const std::string& target, const GlanceTools& tools) {
    composition::Composition composition = one.typeset.composition;
    composition.title += ", at first glance";
    const pages::Pages pages =
        glance::greyed(one.looks, composition, one.pages, glance::first_look);
    const auto time = document_time(tools.epoch, one.typeset.resume.settings);
    return write_beside(one.sources, target, pdf::write_pdf(composition, pages, time), "glance");
}

// --- of all

bool print_glances(const nlohmann::ordered_json& files) {
    return print_output("glance", json_text({{"version", 1}, {"files", files}}));
}

ExitCode glance_at_all(const GlanceRequest& request, const std::vector<std::string>& targets,
                       const GlanceTools& tools) {
    ExitCode code = ExitCode::done;
    Json files = Json::array();
    for (std::size_t i = 0; i < request.inputs.size(); ++i) {
        const auto one = glance_at(request.inputs[i], request, tools);
        if (!one || (!targets.empty() && !write_glance(*one, targets[i], tools)))
            code = ExitCode::errors;
        if (!one || request.marked == "-") continue;
        if (request.format == "json")
            files.push_back(glance_json(*one));
        else if (!print_report("glance", (i == 0 ? "" : "\n") + glance_text(*one)))
            return ExitCode::errors;
    }
    return request.format == "json" && !print_glances(files) ? ExitCode::errors : code;
}

std::optional<std::string> wrong_in(const GlanceRequest& request,
                                    std::vector<std::string>& targets) {
    if (std::ranges::count(request.inputs, "-") > 1) return fill<messages::dash_twice>();
    return plan_marked({request.inputs, request.marked, ".glance.pdf", request.format != "text"},
                       targets);
}

}

ExitCode run_glance(const GlanceRequest& request) {
    std::vector<std::string> targets;
    if (const auto fault = wrong_in(request, targets)) return wrong_use("glance", *fault);
    std::optional<std::int64_t> epoch;
    if (!read_epoch(epoch)) return wrong_use("glance", fill<messages::epoch>());
    const std::filesystem::path data = data_folder();
    const auto fonts = open_fonts(data);
    return fonts ? glance_at_all(request, targets, {data, *fonts, epoch}) : ExitCode::errors;
}

}
