#include "compiler/server/diagnostics.hpp"

#include "compiler/server/ranges.hpp"
#include "compiler/server/reference.hpp"

#include <algorithm>
#include <span>

namespace quoin::server {

namespace {

using session::State;

// "DiagnosticSeverity" and "DiagnosticTag" of the protocol.
enum class Shown { error = 1, warning = 2, information = 3, hint = 4 };
constexpr int unnecessary = 1;

Shown shown_as(Severity severity) {
    switch (severity) {
    case Severity::error:
        return Shown::error;
    case Severity::warning:
        return Shown::warning;
    case Severity::note:
        break;
    }
    return Shown::information;
}

Shown shown_as(advice::Weight weight) {
    switch (weight) {
    case advice::Weight::must:
        return Shown::warning;
    case advice::Weight::should:
        return Shown::information;
    case advice::Weight::consider:
        break;
    }
    return Shown::hint;
}

// What a mend takes out and puts nothing for.
bool is_superfluous(const Edits& mend) {
    return !mend.empty() &&
           std::ranges::all_of(mend, [](const Edit& edit) { return edit.replacement.empty(); });
}

class Gathering {
public:
    Gathering(const Desk& desk, const State& state)
        : desk_(desk), state_(state), ranges_(state, desk.units) {}

    std::map<std::filesystem::path, Json> all() {
        const Sources& sources = state_.read.sources;
        for (std::uint32_t file = 0; file < sources.size(); ++file)
            by_file_.try_emplace(sources.file(file).path, Json::array());
        for (const Diagnostic& one : state_.read.diagnostics.all())
            add(one.place, of_reading(one));
        add_overflow();
        for (const advice::Finding& finding : state_.read.proof.findings)
            add(finding.place, of_finding(finding));
        return std::move(by_file_);
    }

private:
    Json said(const Place& place, Shown shown, const std::string& text) {
        return {{"range", to_json(ranges_.of(place))},
                {"severity", static_cast<int>(shown)},
                {"source", "quoin"},
                {"message", text}};
    }

    Json of_reading(const Diagnostic& one) {
        Json json = said(one.place, shown_as(one.severity), one.text);
        json["code"] = "markup";
        json["codeDescription"] = {{"href", markup_reference(desk_.session.means().data)}};
        if (is_superfluous(one.mend)) json["tags"] = {unnecessary};
        return json;
    }

    Json of_finding(const advice::Finding& finding) {
        Json json = said(finding.place, shown_as(weight_of(finding)), sentence_of(finding));
        json["code"] = finding.check;
        json["codeDescription"] = {
            {"href", check_reference(desk_.session.means().data, finding.check)}};
        if (is_superfluous(finding.safe_mend)) json["tags"] = {unnecessary};
        return json;
    }

    // What `set` refuses; the cuts are the places that have to do with it.
    void add_overflow() {
        const std::span<const Diagnostic> all = state_.overflow.all();
        if (all.empty()) return;
        Json json = said(all.front().place, shown_as(all.front().severity), all.front().text);
        json["code"] = "too-long";
        json["relatedInformation"] = Json::array();
        for (const Diagnostic& note : all.subspan(1))
            json["relatedInformation"].push_back(
                {{"location",
                  {{"uri", desk_.uri_of(state_.read.sources.file(note.place.file).path)},
                   {"range", to_json(ranges_.of(note.place))}}},
                 {"message", note.text}});
        add(all.front().place, json);
    }

    void add(const Place& place, Json json) {
        by_file_[state_.read.sources.file(place.file).path].push_back(std::move(json));
    }

    const Desk& desk_;
    const State& state_;
    Ranges ranges_;
    std::map<std::filesystem::path, Json> by_file_;
};

}

std::map<std::filesystem::path, Json> diagnostics_of(const Desk& desk, const State& state) {
    return Gathering(desk, state).all();
}

}
