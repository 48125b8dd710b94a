#include "compiler/commands/caseload/appraise.hpp"

#include "compiler/advice/proof.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/digest.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/office_rules.hpp"
#include "compiler/trade/kinds.hpp"

#include <algorithm>
#include <array>
#include <exception>

namespace quoin::commands {

namespace {

// The line at a place, or its beginning.
std::string line_quoted(const Place& place, const Sources& sources) {
    if (place.line == 0) return {};
    constexpr std::size_t most = 160; // bytes
    std::string_view line = trimmed(sources.file(place.file).line(place.line));
    if (line.size() <= most) return std::string(line);
    std::size_t end = most;
    while (end > 0 && continues_character(line[end]))
        --end;
    return std::string(line.substr(0, end)) + "\u2026";
}

// Of whom the résumé is, and what is nobody's business.
bool is_personal(const advice::Finding& finding, const model::Resume& resume) {
    constexpr std::array<std::string_view, 2> groups{"contact", "privacy"};
    const advice::Check* check = advice::find_check(finding.check);
    if (!check || is_one_of(check->group, groups)) return true;
    return std::ranges::any_of(resume.heading, [&](const model::Field& field) {
        return field.place.file == finding.place.file && field.place.line == finding.place.line;
    });
}

caseload::Remark remark_of(const advice::Finding& finding, const Proofread& one) {
    return {.check = std::string(finding.check),
            .weight = weight_of(finding),
            .line = finding.place.line,
            .text = sentence_of(finding),
            .quoted = line_quoted(finding.place, one.sources),
            .personal = is_personal(finding, *one.resume)};
}

void note_fault(const Proofread& one, caseload::Appraisal& appraisal) {
    const auto& all = one.diagnostics.all();
    auto error = std::ranges::find(all, Severity::error, &Diagnostic::severity);
    if (error == all.end()) return;
    const auto placed = std::find_if(error, all.end(), [](const Diagnostic& next) {
        return next.severity == Severity::error && next.place.line > 0;
    });
    if (placed != all.end()) error = placed; // what has none sums up those that have
    appraisal.fault = error->text;
    appraisal.fault_line = error->place.line;
}

// All that was read for it, by the bytes that were.
void note_files(const Sources& sources, caseload::Appraisal& appraisal) {
    for (std::uint32_t i = 0; i < sources.size(); ++i) {
        const SourceFile& file = sources.file(i);
        if (!file.path.empty()) appraisal.read.push_back({file.path, digest_of(file.bytes)});
    }
}

void note_page(const Proofread& one, const Verdict& verdict, caseload::Appraisal& appraisal) {
    if (!verdict.page) return;
    appraisal.pages = verdict.page->pages;
    appraisal.allowed = verdict.page->allowed;
    appraisal.size = verdict.page->size;
    appraisal.fits = std::holds_alternative<fit::Fit>(one.typeset->fit);
}

caseload::Appraisal appraisal_of(const Proofread& one) {
    caseload::Appraisal appraisal;
    note_files(one.sources, appraisal);
    note_fault(one, appraisal);
    if (!one.resume) return appraisal;
    appraisal.name = advice::plain_in(one.resume->find(trade::FieldName::name));
    appraisal.stage = trade::name_of(*one.resume->settings.stage);
    const Verdict verdict = verdict_of(one);
    note_page(one, verdict, appraisal);
    appraisal.good = verdict.good;
    if (one.office) {
        appraisal.advice = one.office->closing;
        appraisal.stale_months =
            static_cast<int>(one.office->at(*one.resume->settings.stage).limits.updated_within);
    }
    for (const advice::Finding& finding : one.proof.findings)
        appraisal.remarks.push_back(remark_of(finding, one));
    return appraisal;
}

}

caseload::Appraisal appraise(const std::filesystem::path& path,
                             const std::optional<std::string>& text, const ProofTools& tools) {
    try {
        Proofread one;
        one.input = path.string();
        if (text) one.sources.hold(path, *text);
        one.file = one.sources.read(path, one.diagnostics);
        one.office = office_of(tools.offices, one.input);
        proofread(one, {}, tools);
        return appraisal_of(one);
    } catch (const std::exception& fault) { // this one is a row, and the others go on
        return {.fault = fill<messages::internal_error>(fault.what())};
    }
}

}
