// What can be done about what is told: mends, one by one, of a check, or all that are safe; a
// finding set aside; a word added to the résumé's own; words cut that save a line.
#include "compiler/advice/mend_all.hpp"
#include "compiler/base/data_places.hpp"
#include "compiler/base/message.hpp"
#include "compiler/server/edits.hpp"
#include "compiler/server/entry_order.hpp"
#include "compiler/server/heading_lines.hpp"
#include "compiler/server/source_cuts.hpp"
#include "compiler/stages/overflow_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace quoin::server {

namespace {

using advice::Finding;
using session::Range;

constexpr std::string_view fix_kind = "quickfix", fix_all_kind = "source.fixAll.quoin",
                           order_kind = "refactor.rewrite.quoin";
constexpr std::string_view spelling_check = "spelling";

bool meet(const Range& a, const Range& b) {
    return a.start <= b.end && b.start <= a.end;
}

class Offers {
public:
    Offers(Desk& desk, const Addressed& one, const Json& params)
        : desk_(desk), one_(one), ranges_(*one.state, desk.units),
          asked_(range_from(params.at("range"))),
          context_(params.value("context", Json::object())) {}

    Json all() {
        for (const Diagnostic& diagnostic : one_.state->read.diagnostics.all())
            if (is_asked(diagnostic.place) && !diagnostic.mend.empty())
                mend_of(diagnostic.text, diagnostic.mend);
        for (const Finding& finding : one_.state->read.proof.findings)
            if (is_asked(finding.place)) offer_for(finding);
        offer_cuts();
        offer(order_kind, "Put the entries of this section in order, the most recent first",
              entries_by_date(desk_, *one_.state, one_.file, asked_.start.line + 1), "date-order");
        offer_all_mends();
        return std::move(offers_);
    }

private:
    bool is_asked(const Place& place) {
        return place.file == one_.file && meet(ranges_.of(place), asked_);
    }

    // A kind is asked for by itself or by what it begins with: `source` has `source.fixAll`.
    bool is_wanted(std::string_view kind) const {
        const Json only = context_.value("only", Json{});
        return !only.is_array() || only.empty() || std::ranges::any_of(only, [&](const Json& one) {
            const auto& asked = one.get_ref<const std::string&>();
            return kind == asked || kind.starts_with(asked + '.');
        });
    }

    // Those that the editor shows for this check.
    Json shown_for(std::string_view check) const {
        Json shown = Json::array();
        for (const Json& one : context_.value("diagnostics", Json::array()))
            if (one.value("code", Json{}) == check) shown.push_back(one);
        return shown;
    }

    void offer(std::string_view kind, std::string title, const EditBook& edits,
               std::string_view check = {}) {
        if (edits.empty() || !is_wanted(kind)) return;
        Json action{{"title", std::move(title)}, {"kind", kind}, {"edit", edits.json()}};
        if (Json shown = shown_for(check); !shown.empty()) action["diagnostics"] = shown;
        offers_.push_back(std::move(action));
    }

    EditBook book() const { return EditBook(desk_); }

    void mend_of(const std::string& text, const Edits& mend, std::string_view check = "markup") {
        offer(fix_kind, "Mend: " + text, book().add(*one_.state, ranges_, mend), check);
    }

    void offer_for(const Finding& finding) {
        const std::string& what = finding.suggestion.empty() ? finding.text : finding.suggestion;
        if (!finding.safe_mend.empty()) {
            mend_of(what, finding.safe_mend, finding.check);
            offer_all_of(finding.check);
        }
        if (finding.check == spelling_check) offer_word(finding);
        offer_acceptance(finding);
    }

    void offer_all_of(std::string_view check) {
        Edits edits;
        std::size_t count = 0;
        for (const Finding& other : one_.state->read.proof.findings) {
            if (other.check != check || other.place.file != one_.file) continue;
            count += other.safe_mend.empty() ? 0 : 1;
            edits.insert(edits.end(), other.safe_mend.begin(), other.safe_mend.end());
        }
        if (count < 2 || !offered_.insert(check).second) return;
        offer(fix_kind, fmt::format("Mend all {} of '{}' in this file", count, check),
              book().add(*one_.state, ranges_, edits), check);
    }

    // The reason is the writer's to give, and the line is told of until one stands there.
    void offer_acceptance(const Finding& finding) {
        offer(fix_kind, fmt::format("Set '{}' aside, for a reason that you give", finding.check),
              with_heading_line(desk_, *one_.state, ranges_,
                                fmt::format("accept: {} ()", finding.check)),
              finding.check);
    }

    void offer_word(const Finding& finding) {
        const std::string word(one_.state->read.sources.file(finding.place.file)
                                   .line(finding.place.line)
                                   .substr(finding.place.column - 1, finding.place.length));
        constexpr std::size_t most_near = 3;
        std::vector<std::string> near = desk_.session.means().language.spellings_near(word);
        near.resize(std::min(near.size(), most_near));
        for (const std::string& other : near)
            offer(fix_kind, fmt::format("Write '{}'", other),
                  book().add(*one_.state, ranges_, {{finding.place, other}}), finding.check);
        offer(fix_kind, fmt::format("Add '{}' to this résumé's own words", word),
              with_heading_line(desk_, *one_.state, ranges_, "words: " + word), finding.check);
    }

    void offer_cut(const fit::Cut& cut, const Edits& edits) {
        const auto asked = [&](const Place& place) { return is_asked(place); };
        if (std::ranges::none_of(cut.places, asked)) return;
        offer(fix_kind,
              "Cut: " + stages::saved_by(cut.characters, cut.lines) + ", without " +
                  in_quotes(cut.words),
              book().add(*one_.state, ranges_, edits), "too-long");
    }

    void offer_cuts() {
        if (!one_.state->cuts) return;
        EditBook together = book();
        std::size_t characters = 0, count = 0;
        for (const fit::Cut& cut : one_.state->cuts->words) {
            if (cut.kind != fit::Cut::Kind::words) continue;
            const Edits edits = edits_of_cut(*one_.state, cut);
            together.add(*one_.state, ranges_, edits);
            characters += cut.characters;
            ++count;
            offer_cut(cut, edits);
        }
        if (count > 1)
            offer(fix_kind,
                  fmt::format("Cut the fewest words there are: {} characters in {} places",
                              characters, count),
                  together, "too-long");
    }

    // As `quoin mend` makes them.
    void offer_all_mends() {
        const auto& read = one_.state->read;
        const auto has_mend = [](const auto& one) { return !one.safe_mend.empty(); };
        const bool some = std::ranges::any_of(read.proof.findings, has_mend) ||
                          std::ranges::any_of(read.diagnostics.all(), [](const Diagnostic& one) {
                              return !one.mend.empty();
                          });
        if (some && is_wanted(fix_all_kind))
            offer(fix_all_kind, "Make all safe mends", all_safe_mends(desk_, *one_.state));
    }

    Desk& desk_;
    const Addressed& one_;
    Ranges ranges_;
    Range asked_;
    Json context_;
    Json offers_ = Json::array();
    std::set<std::string_view> offered_; // all of a check
};

Answer code_actions(Desk& desk, const Json& params) {
    const Addressed one = addressed(desk, params);
    if (!one.document) return one.refusal;
    return Offers(desk, one, params).all();
}

constexpr Method methods_of_code_actions[] = {{"textDocument/codeAction", code_actions}};

void announce_code_actions(Json& capabilities) {
    capabilities["codeActionProvider"] = {
        {"codeActionKinds", {fix_kind, fix_all_kind, order_kind}}};
}

}

EditBook all_safe_mends(const Desk& desk, const session::State& state) {
    const session::Means& means = desk.session.means();
    const Sources& sources = state.read.sources;
    advice::SourceReading first;
    first.words = page_words_in(means.data);
    for (const auto& [path, bytes] : advice::texts_of(sources))
        first.sources.hold(path, bytes);
    first.file = first.sources.read(sources.file(*state.read.file).path, first.diagnostics);
    first.build();
    const advice::AllMended all =
        mend_all(first, {means.language, means.read_on, state.read.office});
    EditBook book(desk);
    if (!all.last) return book;
    const advice::Texts before = advice::texts_of(first.sources);
    for (const auto& [path, bytes] : advice::texts_of(all.last->sources))
        if (const auto known = before.find(path); known != before.end())
            book.rewrite(path, known->second, bytes);
    return book;
}

Feature code_actions_feature() {
    return {methods_of_code_actions, announce_code_actions};
}

}
