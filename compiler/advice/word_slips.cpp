// Slips that are words of their own, as english/word_slips.hpp finds them.
#include "compiler/advice/spelling_checks.hpp"

#include "compiler/advice/other_languages.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/utf8.hpp"

#include <utility>

namespace quoin::advice {

namespace {

// Titles in italics and links are as their owners wrote them.
std::vector<english::Extent> not_the_writers(const model::Text& text) {
    std::vector<english::Extent> extents;
    std::size_t offset = 0;
    for (const model::Span& span : text.spans) {
        if (span.marks.emphasis || span.link) extents.push_back({offset, span.text.size()});
        offset += span.text.size();
    }
    return extents;
}

std::vector<english::WordSlip> slips_in(const TextInResume& part,
                                        const english::Language& language) {
    const auto titles = not_the_writers(part.text);
    if (titles.empty()) return language.word_slips(part.sentence);
    return language.word_slips(language.sentence(part.plain, titles));
}

void report_slip(const english::WordSlip& slip, const TextInResume& part, std::string_view plain,
                 const Sources& sources, std::vector<Finding>& findings) {
    const Place place = part.text.place(slip.extent.offset, slip.extent.length);
    const std::string typed =
        straight_apostrophes(plain.substr(slip.extent.offset, slip.extent.length));
    std::vector<Edit> mend;
    // no mark stands between, and no line ends
    if (slip.certain && straight_apostrophes(source_at(sources, place)) == typed)
        mend.push_back({place, slip.meant});
    const bool one_word = typed.size() > 2 && typed.find(' ') == std::string::npos;
    const std::string meant = in_quotes(slip.meant);
    Finding& finding = report<messages::word_slip>(findings, place, in_quotes(typed), meant);
    finding.suggestion =
        one_word ? fill<messages::write_word_or_keep>(meant) : fill<messages::write_word>(meant);
    finding.safe_mend = std::move(mend);
    if (slip.by_context) finding.weight = Weight::should;
}

}

void word_slips(const ProofContext& context, std::vector<Finding>& findings) {
    if (!is_american(context.resume)) return;
    const KnownWords known(context);
    for (const TextInResume& part : context.texts) {
        if (!is_spelled(part)) continue;
        const std::string& plain = part.plain;
        for (const english::WordSlip& slip : slips_in(part, context.language)) {
            const std::string typed = straight_apostrophes(
                std::string_view(plain).substr(slip.extent.offset, slip.extent.length));
            if (!known.holds(typed)) report_slip(slip, part, plain, context.sources, findings);
        }
    }
}

}
