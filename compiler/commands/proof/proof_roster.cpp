// Many résumés at a glance: a line each, and the same for programs.
#include "compiler/commands/proof/proof_report.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/printable.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <utility>

namespace quoin::commands {

namespace {

using OrderedJson = nlohmann::ordered_json;

constexpr int summary_json_version = 1; // goes up when a key changes its meaning

std::string page_words(const std::optional<PageTaken>& page) {
    if (!page) return "no page";
    std::string text = fmt::format("{} {} at {:.1f} pt", page->pages,
                                   page->pages == 1 ? "page" : "pages", page->size);
    if (page->pages > page->allowed) text += fmt::format(", {} allowed", page->allowed);
    return text;
}

OrderedJson counts_json(const Counts& counts) {
    return {{"must", counts[0]}, {"should", counts[1]}, {"consider", counts[2]}};
}

OrderedJson page_json(const std::optional<PageTaken>& page) {
    if (!page) return nullptr;
    return {{"pages", page->pages},
            {"allowed", page->allowed},
            {"size", std::round(page->size * 100) / 100}};
}

OrderedJson first_json(const std::vector<const advice::Finding*>& first) {
    OrderedJson all = OrderedJson::array();
    for (const advice::Finding* finding : first)
        all.push_back({{"check", finding->check},
                       {"weight", name_of(weight_of(*finding))},
                       {"line", finding->place.line},
                       {"text", sentence_of(*finding)}});
    return all;
}

OrderedJson verdict_json(const Proofread& one) {
    const Verdict verdict = verdict_of(one);
    OrderedJson good = OrderedJson::array();
    for (const std::string_view piece : pieces_of(verdict.good, "; "))
        good.push_back(piece);
    return {{"file", one.input},
            {"verdict", verdict.word},
            {"text", verdict.readiness},
            {"found", counts_json(verdict.found)},
            {"set_aside", counts_json(verdict.set_aside)},
            {"page", page_json(verdict.page)},
            {"first", first_json(verdict.first)},
            {"good", std::move(good)}};
}

}

std::string proof_roster(const Proofread& one) {
    const Verdict verdict = verdict_of(one);
    const auto& [musts, shoulds, others] = verdict.found;
    const Counts& aside = verdict.set_aside;
    std::string text =
        fmt::format("{}: {}; {} must, {} should, {} to consider; {}; ", printable_name(one.input),
                    verdict.word, musts, shoulds, others, page_words(verdict.page));
    const std::size_t all = aside[0] + aside[1] + aside[2];
    text += all == 0        ? "nothing set aside"
            : aside[0] == 0 ? fmt::format("{} set aside", all)
                            : fmt::format("{} set aside, {} of them must", all, aside[0]);
    return text + '\n';
}

OrderedJson summary_json(Proofreads all) {
    OrderedJson files = OrderedJson::array();
    for (const auto& one : all)
        files.push_back(verdict_json(*one));
    return {{"version", summary_json_version}, {"files", std::move(files)}};
}

}
