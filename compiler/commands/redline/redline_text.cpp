// A redline to be read aloud: short, and both wordings in quotes.
#include "compiler/commands/redline/redline_report.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/printable.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace quoin::commands {

namespace {

using redlining::Change;
using redlining::Fate;
using redlining::Kind;
using redlining::Nature;
using redlining::What;

constexpr std::size_t told_whole = 72;  // bytes of a wording
constexpr std::size_t words_around = 3; // of what changed, in a longer one

std::string in_marks(std::string_view text) {
    return "'" + std::string(text) + "'";
}

// Of words that were kept, those next to what changed.
std::string near_changes(const std::string& kept, bool first, bool last) {
    const auto words = redlining::words_of(kept);
    if (words.size() <= 2 * words_around + 1) return kept;
    const std::string head = kept.substr(0, words[words_around - 1].end);
    const std::string tail = kept.substr(words[words.size() - words_around].begin);
    if (first) return "… " + tail;
    return last ? head + " …" : head + " … " + tail;
}

// One of the two wordings.
std::string wording_told(const Change& change, Fate without) {
    const std::string& whole = without == Fate::inserted ? change.before : change.after;
    if (whole.size() <= told_whole || change.pieces.empty()) return in_marks(whole);
    std::string text;
    for (const redlining::Piece& piece : change.pieces) {
        if (piece.fate == without) continue;
        const bool first = &piece == &change.pieces.front(), last = &piece == &change.pieces.back();
        text += text.empty() ? "" : " ";
        text += piece.fate == Fate::kept ? near_changes(piece.text, first, last) : piece.text;
    }
    return in_marks(text);
}

std::string both_wordings(const Change& change) {
    return wording_told(change, Fate::inserted) + " is now " + wording_told(change, Fate::deleted);
}

std::string stated(const std::string& value) {
    return value.empty() ? "not stated" : in_marks(value);
}

// What a change is about: "bullet", "dates", "Laboratory".
std::string subject_of(const Change& change) {
    if (change.what == What::item) return change.label + " item";
    if (!change.label.empty()) return change.label;
    return std::string(name_of(change.what));
}

// Among other words, of a bullet or the like.
bool figures_too(const Change& change) {
    return change.nature == Nature::wording &&
           std::any_of(change.pieces.begin(), change.pieces.end(), [](const auto& piece) {
               return piece.fate != Fate::kept && has_digit(piece.text);
           });
}

std::string changed_sentence(const Change& change) {
    const std::string subject = subject_of(change);
    switch (change.nature) {
    case Nature::marks:
        return subject + ": bold, italics or underlines changed in " + in_quotes(change.after);
    case Nature::link:
        return subject + ": the link " + stated(change.before) + " is now " + stated(change.after);
    case Nature::order:
        return subject + ": in another order, now " + in_marks(change.after);
    case Nature::level:
        return subject + (change.after == "2" ? ": moved in, under the one above it"
                                              : ": moved out, to stand by itself");
    case Nature::tags:
        return subject + ": tags " + stated(change.before) + ", now " + stated(change.after);
    case Nature::label:
        return (change.what == What::section ? "title: " : "label: ") + both_wordings(change);
    case Nature::value:
        return subject + ": " + stated(change.before) + " is now " + stated(change.after);
    case Nature::figures:
        return subject + ", figures: " + both_wordings(change);
    case Nature::wording:
    case Nature::dates:
        break;
    }
    return subject + (figures_too(change) ? ", figures too: " : ": ") + both_wordings(change);
}

std::string moved_sentence(const Change& change) {
    if (change.what == What::section) return "this section was moved";
    if (change.what == What::entry)
        return change.before == change.after ? "this entry was moved"
                                             : "this entry was moved here from " + change.before;
    const bool within = change.before == change.entry;
    return "bullet moved" + (within ? std::string() : " here from " + change.before) + ": " +
           in_quotes(change.after);
}

// What was added or removed, whole.
std::string whole_sentence(const Change& change) {
    const bool added = change.kind == Kind::added;
    if (change.what == What::section || change.what == What::entry)
        return std::string(added ? "new " : "removed ") + std::string(name_of(change.what));
    return (added ? "new " : "") + subject_of(change) + (added ? ": " : " gone: ") +
           in_marks(added ? change.after : change.before);
}

std::string finding_line(const advice::Finding& finding, std::string_view how, bool with_line) {
    std::string line = fmt::format("  {}, {} [{}]: {}", how, name_of(weight_of(finding)),
                                   finding.check, finding.text);
    if (with_line && finding.place.line != 0) line += fmt::format(" (line {})", finding.place.line);
    return line + '\n';
}

std::string findings_text(const Redline& redline) {
    std::string text;
    for (const advice::Finding* finding : redline.findings.mended)
        text += finding_line(*finding, "mended", false);
    for (const advice::Finding* finding : redline.findings.fresh)
        text += finding_line(*finding, "new", true);
    return text.empty() ? text : "\nFindings\n" + text;
}

std::string page_text(const Redline& redline) {
    const std::string was = redline.drafts.before.absent
                                ? std::string("no page")
                                : page_state_words(page_state(*redline.drafts.before.read));
    const std::string is = redline.drafts.after.absent
                               ? std::string("no page")
                               : page_state_words(page_state(*redline.drafts.after.read));
    return "\nPage\n  " + (was == is ? "as before: " + is : was + "; now " + is) + '\n';
}

// Of the one draft that can be read.
std::string half_text(const Redline& redline) {
    const ComparedDrafts& drafts = redline.drafts;
    const ComparedDraft& one = drafts.before.readable() ? drafts.before : drafts.after;
    if (!one.readable() || one.absent) return {};
    std::array<std::size_t, 3> counts{};
    for (const advice::Finding& finding : one.read->proof.findings)
        ++counts.at(static_cast<std::size_t>(weight_of(finding)));
    return fmt::format("{} alone can be read: {}; {} must, {} should, {} to consider\n",
                       printable_name(one.name()), page_state_words(page_state(*one.read)),
                       counts[0], counts[1], counts[2]);
}

std::string at_new_line(const Change& change) {
    if (change.new_place.line != 0) return fmt::format(" (line {})", change.new_place.line);
    return {};
}

}

std::string headed_by(const Change& change) {
    if (change.what == What::setting) return "Settings";
    if (change.what == What::contact || change.section.empty()) return "Heading";
    return change.entry.empty() ? change.section : change.section + ": " + change.entry;
}

std::string change_sentence(const Change& change) {
    switch (change.kind) {
    case Kind::changed:
        return changed_sentence(change);
    case Kind::moved:
        return moved_sentence(change);
    case Kind::added:
    case Kind::removed:
        break;
    }
    return whole_sentence(change);
}

std::string redline_text(const Redline& redline) {
    if (!redline.compared()) return half_text(redline);
    if (redline.changes.empty()) return {};
    std::string text =
        fmt::format("{}, since {}: {}\n", printable_name(redline.drafts.after.name()),
                    printable_name(redline.drafts.before.name()),
                    advice::counted(redline.changes.size(), "change", "changes"));
    std::string heading;
    for (const Change& change : redline.changes) {
        if (std::string next = headed_by(change); next != heading) {
            heading = std::move(next);
            text += '\n' + heading + '\n';
        }
        text += "  " + change_sentence(change) + at_new_line(change) + '\n';
    }
    return text + findings_text(redline) + page_text(redline);
}

}
