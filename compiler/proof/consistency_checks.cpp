// The table of the consistency checks, and those of signs and spaces, most of which can be mended.
#include "compiler/model/wording.hpp"
#include "compiler/proof/consistency.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin {

namespace {

bool is_blank(char c) {
    return c == ' ' || c == '\t';
}

// --- ends of bullets

constexpr std::array<std::string_view, 24> abbreviations{
    "inc", "co",  "corp", "ltd",  "etc", "jr",     "sr",  "no",  "dept", "st", "ave",  "dr",
    "mr",  "mrs", "ms",   "prof", "vs",  "approx", "est", "hrs", "min",  "mt", "univ", "govt"};

bool ends_in_abbreviation(std::string_view text) { // which ends in a full stop
    const std::size_t space = text.rfind(' ');
    std::string word = lower_case(text.substr(space == std::string_view::npos ? 0 : space + 1));
    word.pop_back();
    if (word.size() == 1 || word.find('.') != std::string::npos) return true;
    return std::ranges::find(abbreviations, word) != abbreviations.end();
}

// A bullet of several sentences needs its full stops.
bool has_inner_sentence_end(std::string_view text) {
    for (std::size_t at = text.find(". "); at != std::string_view::npos;
         at = text.find(". ", at + 1)) {
        const bool capital = at + 2 < text.size() && text[at + 2] >= 'A' && text[at + 2] <= 'Z';
        if (capital && !ends_in_abbreviation(text.substr(0, at + 1))) return true;
    }
    return false;
}

struct BulletEnd {
    const Bullet* bullet = nullptr;
    bool stop = false;
};

std::vector<BulletEnd> ends_of_bullets(const Resume& resume) {
    std::vector<BulletEnd> ends;
    visit_bullets(resume, [&](const Position&, const Bullet& bullet) {
        const std::string text = bullet.text.plain();
        if (text.empty() || has_inner_sentence_end(text)) return;
        const char last = text.back();
        if (last == '.' && ends_in_abbreviation(text)) return;
        if (last == '!' || last == '?' || last == ':' || last == ';' || last == ',') return;
        ends.push_back({&bullet, last == '.'});
    });
    return ends;
}

// None where the source does not end as the page does, as in a link.
std::optional<Edit> turn_end(const Bullet& bullet, bool stop, const Sources& sources) {
    const std::string text = bullet.text.plain();
    const Span& last = bullet.text.spans.back();
    if (last.link || last.text.size() != last.place.length) return std::nullopt;
    Place place = bullet.text.place(text.size() - 1, 1);
    const std::string_view typed = source_at(sources, place);
    if (!stop) return typed == "." ? std::optional(Edit{place, ""}) : std::nullopt;
    if (typed.empty() || typed.back() != text.back()) return std::nullopt;
    place.column += place.length;
    place.length = 0;
    return Edit{place, "."};
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
    constexpr std::string_view closing = ",;:.!?";
    if (end >= line.size() || closing.find(line[end]) == std::string_view::npos) return false;
    return end + 1 == line.size() || is_blank(line[end + 1]);
}

struct SpacingFaults {
    bool doubled = false, before_sign = false;
    std::vector<Edit> mend;
};

void look_at_spaces(std::string_view line, const Place& place, SpacingFaults& faults) {
    std::size_t at = 0;
    while (at < line.size()) {
        std::size_t end = at;
        while (end < line.size() && is_blank(line[end]))
            ++end;
        const bool inner = end > at && at > 0 && end < line.size();
        if (inner && line[at - 1] != '\\') {
            if (stands_before_sign(line, end)) {
                faults.before_sign = true;
                close_gap(place, at, end, "", faults.mend);
            } else if (end - at > 1) {
                faults.doubled = true;
                close_gap(place, at, end, " ", faults.mend);
            }
        }
        at = std::max(end, at + 1);
    }
}

// --- doubled words

// Words that never stand twice together in earnest.
constexpr std::array<std::string_view, 46> function_words{
    "the",  "a",     "an",    "and",   "or",   "of",  "to",  "in",   "on",   "at",
    "for",  "with",  "by",    "from",  "as",   "is",  "are", "was",  "were", "be",
    "this", "these", "those", "which", "who",  "we",  "my",  "our",  "your", "their",
    "his",  "her",   "its",   "has",   "have", "not", "but", "than", "then", "into",
    "over", "under", "per",   "while", "when", "it"};

bool only_blanks_between(std::string_view text, std::size_t begin, std::size_t end) {
    return begin < end && std::ranges::all_of(text.substr(begin, end - begin), is_blank);
}

// Long words in small letters: names such as Walla Walla are written with capitals.
bool is_surely_doubled(std::string_view word) {
    constexpr std::size_t long_enough = 5;
    if (std::ranges::find(function_words, lower_case(word)) != function_words.end()) return true;
    return word.size() >= long_enough &&
           std::ranges::all_of(word, [](char c) { return c >= 'a' && c <= 'z'; });
}

}

bool is_wording(const TextInResume& part) {
    if (part.bullet) return true;
    if (!part.field) return false;
    switch (part.field->name) {
    case FieldName::headline:
    case FieldName::text:
    case FieldName::note:
    case FieldName::detail:
        return true;
    default:
        return false;
    }
}

void bullet_ends(const ProofContext& context, std::vector<Finding>& findings) {
    const std::vector<BulletEnd> ends = ends_of_bullets(context.resume);
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
    const std::string text =
        std::to_string(odd.size()) + " of " + std::to_string(ends.size()) + " bullets " +
        (keep_stop ? (odd.size() == 1 ? "lacks" : "lack")
                   : (odd.size() == 1 ? "ends with" : "end with")) +
        " a full stop, in " + (odd.size() == 1 ? "line " : "lines ") + lines_listed(odd);
    report(findings, odd.front(), text,
           keep_stop ? "end them all with one" : "end none of them with one", std::move(mend));
}

void spacing(const ProofContext& context, std::vector<Finding>& findings) {
    visit_texts(context.resume, [&](const TextInResume& part) {
        SpacingFaults faults;
        const std::vector<Place> lines = source_lines(part.text);
        for (const Place& line : lines)
            look_at_spaces(source_at(context.sources, line), line, faults);
        if (faults.mend.empty()) return;
        std::string text = "a doubled space";
        if (faults.before_sign)
            text = faults.doubled ? "doubled spaces, and one before a sign that closes"
                                  : "a space before a sign that closes";
        const Place first = faults.mend.front().place;
        report(findings, first, text, "one space between words, none before a comma or full stop",
               std::move(faults.mend));
    });
}

void doubled_words(const ProofContext& context, std::vector<Finding>& findings) {
    visit_texts(context.resume, [&](const TextInResume& part) {
        const std::string text = part.text.plain();
        const std::vector<WordAt> words = words_in(text);
        for (std::size_t i = 1; i < words.size(); ++i) {
            const WordAt &one = words[i - 1], &two = words[i];
            const std::size_t end = one.offset + one.word.size();
            if (lower_case(one.word) != lower_case(two.word) || !is_surely_doubled(two.word) ||
                !only_blanks_between(text, end, two.offset))
                continue;
            const std::size_t length = two.offset + two.word.size() - end;
            const Place place = part.text.place(end, length);
            std::vector<Edit> mend;
            if (source_at(context.sources, place) == text.substr(end, length))
                mend.push_back({place, ""});
            report(findings, part.text.place(one.offset, length + one.word.size()),
                   "'" + std::string(one.word) + ' ' + std::string(two.word) +
                       "' has one word twice",
                   "take one of them out", std::move(mend));
        }
    });
}

void dashes(const ProofContext& context, std::vector<Finding>& findings) {
    visit_texts(context.resume, [&](const TextInResume& part) {
        if (!is_wording(part)) return;
        const std::string text = part.text.plain();
        std::vector<Edit> mend;
        for (std::size_t at = text.find(" - "); at != std::string::npos;
             at = text.find(" - ", at + 1)) {
            const Place place = part.text.place(at + 1, 1);
            if (source_at(context.sources, place) == "-") mend.push_back({place, "--"});
        }
        if (mend.empty()) return;
        const Place first = mend.front().place;
        report(findings, first, "a hyphen stands where a dash belongs",
               "type two hyphens, '--', for a dash between words", std::move(mend));
    });
}

namespace {

constexpr std::array checks{
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
    return checks;
}

}
