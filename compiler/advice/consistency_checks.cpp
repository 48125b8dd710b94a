// The table of the consistency checks, and those of signs and spaces, most of which can be mended.
#include "compiler/advice/consistency.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::advice {

namespace {

bool is_blank(char c) {
    return c == ' ' || c == '\t';
}

// --- ends of bullets

// After the last blank; the text loses it, and the blank.
std::string_view take_last_word(std::string_view& text) {
    const std::size_t space = text.rfind(' ');
    const bool alone = space == std::string_view::npos;
    const std::string_view word = text.substr(alone ? 0 : space + 1);
    text = text.substr(0, alone ? 0 : space);
    return word;
}

bool ends_in_abbreviation(std::string_view text) { // which ends in a full stop
    text.remove_suffix(1);
    std::string_view word = take_last_word(text);
    while (word.starts_with('(')) // and what else opens
        word.remove_prefix(1);
    const bool letter = word.size() == 1 && !is_figure(word.front());
    if (letter || word.find('.') != std::string_view::npos) return true;
    const std::string small = lower_case(word);
    if (is_one_of(small, List::with_full_stop) || is_one_of(word, List::short_names)) return true;
    if (!is_one_of(small, List::units_after_figure)) return false;
    const std::string_view before = take_last_word(text);
    return !before.empty() &&
           (is_figure(before.back()) || before.back() == '.' || before.ends_with("½") ||
            before.ends_with("¼") || before.ends_with("¾"));
}

// A bullet of several sentences needs its full stops.
bool has_inner_sentence_end(std::string_view text) {
    for (std::size_t at = text.find(". "); at != std::string_view::npos;
         at = text.find(". ", at + 1)) {
        const bool capital = is_capitalised(text.substr(at + 2));
        if (capital && !ends_in_abbreviation(text.substr(0, at + 1))) return true;
    }
    return false;
}

struct BulletEnd {
    const model::Bullet* bullet = nullptr;
    bool stop = false;
};

// One that needs no full stop, or has it within: the end tells nothing of the writer's way.
bool ends_in_another_sign(std::string_view text) {
    std::string_view inner = text;
    for (const std::string_view closing : {")", "]", "”", "’", "\"", "'"})
        if (inner.ends_with(closing)) inner.remove_suffix(closing.size());
    constexpr std::string_view signs = "!?:;,";
    if (inner.empty() || inner.ends_with("…") || signs.find(inner.back()) != signs.npos)
        return true;
    if (inner.size() < text.size()) return inner.ends_with('.');
    while (inner.ends_with('.'))
        inner.remove_suffix(1);
    // such a stop may be all that keeps braces from being tags, or a fold from being empty
    return inner.size() < text.size() &&
           (inner.ends_with(' ') || inner.ends_with("\u00A0") || inner.ends_with('}'));
}

std::vector<BulletEnd> ends_of_bullets(const std::vector<WordedBullet>& bullets) {
    std::vector<BulletEnd> ends;
    for (const WordedBullet& bullet : bullets) {
        const std::string& text = bullet.text;
        if (text.empty() || has_inner_sentence_end(text)) continue;
        if (ends_in_another_sign(text)) continue;
        const bool stop = text.ends_with('.');
        if (stop && ends_in_abbreviation(text)) continue;
        ends.push_back({bullet.bullet, stop});
    }
    return ends;
}

// None where the source does not end as the page does, as in a link.
std::optional<Edit> turn_end(const model::Bullet& bullet, bool stop, const Sources& sources) {
    const std::string text = bullet.text.plain();
    const model::Span& last = bullet.text.spans.back();
    if (last.link || last.text.size() != last.place.length) return std::nullopt;
    Place place = bullet.text.place(text.size() - 1, 1);
    const std::string_view typed = source_at(sources, place);
    if (!stop) return typed == "." ? std::optional(Edit{place, ""}) : std::nullopt;
    if (typed.empty() || typed.back() != text.back()) return std::nullopt;
    place.column += place.length;
    place.length = 0;
    return Edit{place, "."};
}

Finding& report_ends(const std::vector<Place>& odd, std::size_t rest, bool keep_stop,
                     std::vector<Finding>& findings) {
    const std::string lines = lines_listed(odd);
    if (keep_stop) {
        const std::string others = counted(rest, "other has one", "others have one");
        return odd.size() == 1
                   ? report<messages::one_lacks_stop>(findings, odd.front(), lines, others)
                   : report<messages::some_lack_stop>(findings, odd.front(), lines, others);
    }
    const std::string others = counted(rest, "other does not", "others do not");
    return odd.size() == 1 ? report<messages::one_has_stop>(findings, odd.front(), lines, others)
                           : report<messages::some_have_stop>(findings, odd.front(), lines, others);
}

// --- spaces

void close_gap(Place place, std::size_t begin, std::size_t end, const char* with,
               std::vector<Edit>& mend) {
    place.column += static_cast<std::uint32_t>(begin);
    place.length = static_cast<std::uint32_t>(end - begin);
    mend.push_back({place, with});
}

// Blanks [begin, end) before a sign that closes: `word ,` but not ` .NET` or ` ...`.
bool stands_before_sign(std::string_view line, std::size_t end) {
    constexpr std::string_view closing = ",;:.!?)";
    if (end >= line.size() || closing.find(line[end]) == std::string_view::npos) return false;
    const bool of_list =
        line[end] == ',' && end + 1 < line.size() && is_small_letter(line[end + 1]);
    return of_list || end + 1 == line.size() || is_blank(line[end + 1]); // plans ,cards
}

struct SpacingFaults {
    std::size_t doubled = 0, with_tab = 0, before_sign = 0;
    std::vector<Edit> mend;
};

// A backslash makes the blank after it stay; a sign after tags would stand where none may.
bool binds_blank(char c) {
    return c == '\\' || c == '}';
}

void look_at_spaces(std::string_view line, const Place& place, SpacingFaults& faults) {
    std::size_t at = 0;
    while (at < line.size()) {
        std::size_t end = at;
        while (end < line.size() && is_blank(line[end]))
            ++end;
        const bool inner = end > at && at > 0 && end < line.size();
        const bool before_sign = inner && stands_before_sign(line, end);
        if (before_sign && !binds_blank(line[at - 1])) {
            ++faults.before_sign;
            close_gap(place, at, end, "", faults.mend);
        } else if (inner && !before_sign && line[at - 1] != '\\' && end - at > 1) {
            const bool tab = line.substr(at, end - at).find('\t') != std::string_view::npos;
            ++(tab ? faults.with_tab : faults.doubled);
            close_gap(place, at, end, " ", faults.mend);
        }
        at = std::max(end, at + 1);
    }
}

std::string spacing_text(const SpacingFaults& faults) {
    std::string text;
    const auto add = [&](std::size_t count, const Message& one, const Message& several) {
        if (count > 0)
            text.append(text.empty() ? "" : ", and ").append((count == 1 ? one : several).text);
    };
    add(faults.doubled, messages::doubled_space, messages::doubled_spaces);
    add(faults.with_tab, messages::gap_with_tab, messages::gaps_with_tabs);
    add(faults.before_sign, messages::space_before_sign, messages::spaces_before_signs);
    return text;
}

}

bool is_wording(const TextInResume& part) {
    return part.bullet || (part.field && has(part.field->name, trade::Trait::writes));
}

void bullet_ends(const ProofContext& context, std::vector<Finding>& findings) {
    const std::vector<BulletEnd> ends = ends_of_bullets(context.bullets);
    const auto stops = static_cast<std::size_t>(std::ranges::count(ends, true, &BulletEnd::stop));
    if (stops == 0 || stops == ends.size()) return;
    const bool keep_stop = stops * 2 > ends.size();
    std::vector<Place> odd;
    std::vector<Edit> mend;
    for (const BulletEnd& end : ends) {
        if (end.stop == keep_stop) continue;
        odd.push_back(end.bullet->place);
        if (auto edit = turn_end(*end.bullet, keep_stop, context.sources))
            mend.push_back(std::move(*edit));
    }
    report_ends(odd, ends.size() - odd.size(), keep_stop, findings).safe_mend = std::move(mend);
}

void spacing(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        SpacingFaults faults;
        const std::vector<Place> lines = source_lines(part.text);
        for (const Place& line : lines)
            look_at_spaces(source_at(context.sources, line), line, faults);
        if (faults.mend.empty()) continue;
        const Place first = faults.mend.front().place;
        report<messages::spacing>(findings, first, spacing_text(faults)).safe_mend =
            std::move(faults.mend);
    }
}

void dashes(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (!is_wording(part)) continue;
        const std::string& text = part.plain;
        std::vector<Edit> mend;
        for (std::size_t at = text.find(" - "); at != std::string::npos;
             at = text.find(" - ", at + 1)) {
            const Place place = part.text.place(at + 1, 1);
            if (source_at(context.sources, place) == "-") mend.push_back({place, "--"});
        }
        if (mend.empty()) continue;
        const Place first = mend.front().place;
        report<messages::hyphen_for_dash>(findings, first).safe_mend = std::move(mend);
    }
}

namespace {

constexpr std::array consistency_table{
    Check{"bullet-ends", Weight::should, "consistency",
          "All bullets end with a full stop, or none does; abbreviations and bullets of several "
          "sentences aside.",
          "A page that is of two minds about its full stops looks unread.", "common practice",
          "- Counted 212 quadrats. above - Trained 4 volunteers",
          "- Counted 212 quadrats above - Trained 4 volunteers", bullet_ends},
    Check{"capitals", Weight::should, "consistency",
          "Titles of sections have their capitals in one way, and so have roles.",
          "Two ways of writing one kind of thing look like two hands.", "common practice",
          "section: Relevant Experience, section: Additional experience",
          "section: Relevant Experience, section: Additional Experience", capitals},
    Check{"place-forms", Weight::should, "consistency",
          "Places in the US are all city and state, the state always short or always in full.",
          "A portal reads a city alone as part of the employer's name.", "common practice",
          "place: Anacortes beside place: Port Ellery, WA",
          "place: Anacortes, WA beside place: Port Ellery, WA", place_forms},
    Check{"number-forms", Weight::consider, "consistency",
          "Numbers from 1,000 on have their comma everywhere or nowhere, and like things are "
          "counted in figures everywhere or in words everywhere.",
          "Figures are what readers look for; in one form they are found.", "common practice",
          "1200 samples beside 3,400 samples", "1,200 samples beside 3,400 samples", number_forms},
    Check{"serial-comma", Weight::consider, "consistency",
          "Lists have a comma before their last 'and' everywhere or nowhere.",
          "Either way is right; both on one page are not.", "common practice",
          "salinity, pH, and oxygen beside salinity, pH and oxygen",
          "salinity, pH, and oxygen everywhere", serial_comma},
    Check{"spelling-region", Weight::should, "consistency",
          "Words that the US and Britain spell apart are spelled in one way.",
          "A spelling checker at the other end marks half of them.", "common practice",
          "organised beside analyzed", "organized beside analyzed", spelling_region},
    Check{"term-forms", Weight::consider, "consistency",
          "A term is written in one way: with its hyphen or without, with the same capitals.",
          "A portal that looks for one form misses the other.", "common practice",
          "e-mail beside email, Javascript beside JavaScript", "email everywhere", term_forms},
    Check{"unit-forms", Weight::should, "consistency",
          "One unit and one notation for one kind of thing: degrees, weights, lengths, percent, "
          "hours of the clock; and a temperature has its unit.",
          "A reader who has to convert stops reading.", "common practice",
          "- Chilled dough to 38°F beside - Held butter at 13°C",
          "- Chilled dough to 38°F beside - Held butter at 55°F", unit_forms},
    Check{"dash", Weight::consider, "consistency",
          "A dash between words is typed as two hyphens, not as one between spaces.",
          "A hyphen is too short for the pause that it stands for.", "common practice",
          "- Led crew of 6 - the largest that season", "- Led crew of 6 -- the largest that season",
          dashes},
    Check{"spacing", Weight::must, "consistency",
          "One space between words, and none before a comma, full stop or the like.",
          "It is a slip that shows at once, and portals cut words at it.", "common practice",
          "- Counted  212 quadrats , mapped 9 sites", "- Counted 212 quadrats, mapped 9 sites",
          spacing},
    Check{"doubled-word", Weight::must, "consistency", "No word stands twice in a row.",
          "It is a slip that every reader sees but the writer.", "common practice",
          "- Mapped the the eelgrass edge", "- Mapped the eelgrass edge", doubled_words},
};

}

std::span<const Check> consistency_checks() {
    return consistency_table;
}

}
