#include "compiler/commands/posting/posting.hpp"

#include "compiler/base/json_text.hpp"
#include "compiler/base/printable.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/posting/posting_source.hpp"
#include "compiler/commands/posting/told_conditions.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/postings/evidence.hpp"
#include "compiler/postings/weights.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace quoin::commands {

namespace {

using Json = nlohmann::ordered_json;
using postings::Posting;
using postings::Term;

constexpr std::size_t most_terms = 40;

constexpr std::string_view caution =
    "Name what is true of you, and only that, in the posting's own words.\n";

// The logarithms that are added, then what they make.
std::string evidence_text(const Term& term) {
    std::string text;
    for (std::size_t i = 0; i < term.signs.size(); ++i)
        if (term.signs[i] && postings::sign_rows()[i].log_odds != 0)
            text += fmt::format("{}{} {:+.2f}", text.empty() ? "" : ", ",
                                postings::sign_rows()[i].name, postings::sign_rows()[i].log_odds);
    const double odds = postings::odds_of(term.signs);
    return text + fmt::format(": odds {:.2f}, so {:.2f}; x {:.2f} for its standing", odds,
                              odds / (1 + odds), postings::importance_of(term.standing));
}

std::string term_text(const Term& term, bool explain) {
    std::string text = fmt::format("  {:3.0f}  {:9}  {:14}  {}", term.weight * 100,
                                   name_of(term.standing), name_of(term.kind), term.words);
    if (!term.other_form.empty()) text += fmt::format(" ({})", term.other_form);
    text += '\n';
    if (!explain) return text;
    return text + fmt::format("       line {}: {}\n"
                              "       {}\n",
                              term.place.line, term.sentence, evidence_text(term));
}

std::string left_out_text(const Posting& posting) {
    std::string text = posting.left_out.empty() ? "" : "Left out:\n";
    for (const postings::Statement& statement : posting.left_out)
        text += fmt::format("  line {}, {}: {}\n", statement.line, name_of(*statement.left_out),
                            statement.text);
    return text;
}

std::string posting_text(const std::string& name, const Posting& posting, bool explain) {
    std::string text = printable_name(name) + ": what the posting asks for\n";
    const auto listed =
        static_cast<std::size_t>(std::ranges::count(posting.terms, true, &Term::listed));
    const std::size_t shown = explain ? posting.terms.size() : std::min(most_terms, listed);
    for (std::size_t i = 0; i < shown; ++i) {
        if (i == listed) text += "Also said:\n";
        text += term_text(posting.terms[i], explain);
    }
    if (shown < posting.terms.size())
        text += fmt::format("  and {} that weigh less: --explain\n", posting.terms.size() - shown);
    text += conditions_text(posting);
    if (explain) text += left_out_text(posting);
    return text + std::string(caution);
}

Json evidence_json(const Term& term) {
    Json evidence = Json::array();
    for (std::size_t i = 0; i < term.signs.size(); ++i)
        if (term.signs[i]) evidence.push_back(postings::sign_rows()[i].name);
    return evidence;
}

Json term_json(const Term& term) {
    return {{"term", term.words},
            {"other_form", term.other_form},
            {"kind", name_of(term.kind)},
            {"standing", name_of(term.standing)},
            {"weight", in_thousandths(term.weight)},
            {"times", term.times},
            {"listed", term.listed},
            {"line", term.place.line},
            {"sentence", term.sentence},
            {"evidence", evidence_json(term)}};
}

Json posting_json(const std::string& name, const Posting& posting) {
    Json json = {{"file", name},
                 {"terms", Json::array()},
                 {"conditions", conditions_json(posting)},
                 {"left_out", Json::array()}};
    for (const Term& term : posting.terms)
        json["terms"].push_back(term_json(term));
    for (const postings::Statement& statement : posting.left_out)
        json["left_out"].push_back({{"line", statement.line},
                                    {"reason", name_of(*statement.left_out)},
                                    {"text", statement.text}});
    return json;
}

}

ExitCode run_posting(const PostingRequest& request) {
    if (std::ranges::count(request.inputs, "-") > 1)
        return wrong_use("posting", fill<messages::dash_twice>());
    ExitCode code = ExitCode::done;
    Json files = Json::array();
    for (const std::string& input : request.inputs) {
        Sources sources;
        Diagnostics diagnostics;
        const auto posting = read_posting_at(input, sources, diagnostics);
        print_all(diagnostics, sources);
        const std::string name(input == "-" ? standard_input : input);
        if (!posting)
            code = ExitCode::errors;
        else if (request.format == "json")
            files.push_back(posting_json(name, *posting));
        else if (!print_report("posting", posting_text(name, *posting, request.explain)))
            return ExitCode::errors;
    }
    if (request.format == "json" &&
        !print_output("posting", json_text({{"version", 2}, {"files", files}})))
        return ExitCode::errors;
    return code;
}

}
