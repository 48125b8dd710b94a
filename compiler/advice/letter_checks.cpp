// Checks of letters: how bullets begin, names in Latin, and verbs that agree with their subjects.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/consistency.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace quoin::advice {

namespace {

// --- small letters at the beginning

// pH, iPad and ls are written so; a link or a figure has no capital.
bool opens_small(const WordedBullet& bullet, const english::Language& language) {
    const auto& words = bullet.part.words;
    if (words.empty() || words.front().offset != 0) return false;
    const std::string_view word = words.front().word;
    const bool plain = std::ranges::all_of(
        word, [](char c) { return is_small_letter(c) || c == '-' || c == '\''; });
    return plain && word.size() > 1 &&
           (language.base_of(word).has_value() || language.spelled_right(word));
}

bool opens_large(const WordedBullet& bullet) {
    return !bullet.text.empty() && is_capital_letter(bullet.text.front());
}

void small_opening(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::ptrdiff_t times = 3; // as many with capitals
    const auto large = std::ranges::count_if(context.bullets, opens_large);
    std::vector<const WordedBullet*> small;
    for (const WordedBullet& bullet : context.bullets)
        if (opens_small(bullet, context.language)) small.push_back(&bullet);
    if (std::ssize(small) * times > large) return;
    const std::string others = counted(static_cast<std::size_t>(large), "bullet", "bullets");
    for (const WordedBullet* bullet : small) {
        const english::Extent word{0, bullet->part.words.front().word.size()};
        const std::string typed(bullet->words(word));
        Finding& finding = report<messages::small_opening>(findings, bullet->place(word),
                                                           in_quotes(typed), others);
        if (source_at(context.sources, finding.place) == typed)
            finding.safe_mend = {{finding.place, capitalised(typed)}};
    }
}

// --- capitals within a line

bool is_small_noun(std::string_view word) {
    return is_capitalised(word) && word.size() > 1 && is_small_letter(word[1]) &&
           is_one_of(lower_case(word), List::small_nouns);
}

// `Served Customers at the counter`, where no name goes on: not Trailer Park, nor Ellery Workers.
std::optional<english::Extent> stray_capital_in(const TextInResume& part) {
    const std::string& text = part.plain;
    const auto& words = part.words;
    for (std::size_t i = 1; i < words.size(); ++i) {
        if (!is_small_noun(words[i].word)) continue;
        const std::size_t end = words[i].offset + words[i].word.size();
        const auto apart = [&](std::size_t k) { // no blank alone stands between
            return words[k].offset + words[k].word.size() + 1 != words[k + 1].offset;
        };
        const auto names = [&](std::size_t k) {
            return (is_capitalised(words[k].word) && !is_small_noun(words[k].word)) ||
                   words[k].word == "of" || words[k].word == "for";
        };
        const bool first = i == 1 || (i > 0 && text[words[i].offset - 2] == '.');
        const bool before = i > 0 && !apart(i - 1) && !first && names(i - 1);
        const bool after =
            i + 1 < words.size() && !apart(i) && names(i + 1) && is_capitalised(words[i + 1].word);
        const bool the = i + 2 < words.size() && words[i + 2].word == "the"; // of the Month
        const std::size_t last = i + (the ? 3 : 2);
        const bool of_name = last < words.size() && !apart(i) && is_capitalised(words[last].word);
        const bool quoted = end < text.size() && (text[end] == '"' || text[end] == '\'');
        const bool sentence = i > 0 && words[i].offset > 1 && text[words[i].offset - 2] == '.';
        if (!before && !after && !of_name && !quoted && !sentence)
            return english::Extent{words[i].offset, words[i].word.size()};
    }
    return std::nullopt;
}

// `Assisted Two Licensed Mechanics With Annual Inspections`: all of it as a title has them, with
// words that are no part of any name.
bool is_in_title_capitals(const WordedBullet& bullet, const english::Language& language) {
    constexpr std::size_t least = 4, many = 6;
    bool named = true; // all may be names: Coastal Weekly and Harbor News
    std::size_t large = 0, small = 0, plain = 0;
    const auto& words = bullet.part.words;
    for (std::size_t i = 1; i < words.size(); ++i) {
        const std::string_view word = words[i].word, lower = bullet.part.small(words[i]);
        const bool minor =
            is_one_of(lower, List::minor_words) || is_one_of(lower, List::number_words);
        if (minor && is_capitalised(word)) named = false;
        if (has_digit(word) || minor) continue;
        const bool capital = is_capitalised(word) && word.size() > 1 && is_small_letter(word[1]);
        ++(capital ? large : small);
        if (capital && language.in_use(lower)) ++plain;
    }
    return plain >= (named ? many : least) && plain > 3 * small && 4 * plain >= 3 * large;
}

void stray_capital(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : context.bullets)
        if (is_in_title_capitals(bullet, context.language))
            report<messages::title_capitals>(findings, bullet.place({0, bullet.text.size()}));
    for (const TextInResume& part : context.texts) {
        const bool item = part.field && part.field->name == trade::FieldName::group &&
                          &part.text != &part.field->label;
        if (!part.bullet && !item) continue;
        const std::string& text = part.plain;
        const bool titled = item && is_capitalised(text);
        if (const auto word = titled ? std::nullopt : stray_capital_in(part))
            report<messages::stray_capital>(findings, part.text.place(word->offset, word->length),
                                            in_quotes(text.substr(word->offset, word->length)));
    }
}

// --- names in Latin

bool ends_in_one_of(std::string_view word, std::string_view endings) {
    return std::ranges::any_of(pieces_of(endings, " "), [&](std::string_view ending) {
        return word.size() > ending.size() + 2 && word.ends_with(ending);
    });
}

bool is_plain_word(std::string_view word) {
    return word.size() > 3 && std::ranges::all_of(word.substr(1), is_small_letter);
}

// `Zostera`, `Z.`: what begins such a name.
bool may_be_genus(std::string_view text, const WordAt& word, const english::Language& language) {
    if (!is_capital_letter(word.word.front())) return false;
    if (word.word.size() == 1) return text.substr(word.offset + 1).starts_with(". ");
    return is_plain_word(word.word) &&
           ends_in_one_of(word.word, "a us um is es on ys ops ax ix ium ella") &&
           !language.spelled_right(word.word) && !language.spelled_right(lower_case(word.word));
}

// A word of Latin, and none of English but for those that are names of species too.
bool may_be_epithet(std::string_view word, bool shortened, const english::Language& language) {
    if (!is_small_letter(word.front()) || !is_plain_word(word)) return false;
    const bool latin = ends_in_one_of(word, "us a um is ii i ae ensis ens ans oides alis anus");
    const bool named = is_one_of(word, List::species_words);
    return named || (latin && (!language.spelled_right(word) || (!shortened && word.size() > 5)));
}

std::optional<english::Extent> species_in(std::string_view text,
                                          const english::Language& language) {
    const auto words = words_in(text);
    for (std::size_t i = 0; i + 1 < words.size(); ++i) {
        const bool named = i > 0 && (words[i - 1].word == "the" || words[i - 1].word == "a");
        if (named) continue; // the Cascadia regatta
        const bool shortened = words[i].word.size() == 1;
        // the dictionary is asked of what looks like Latin alone
        if (!is_capital_letter(words[i].word.front()) ||
            !may_be_epithet(words[i + 1].word, shortened, language) ||
            !may_be_genus(text, words[i], language))
            continue;
        const std::size_t end = words[i + 1].offset + words[i + 1].word.size();
        return english::Extent{words[i].offset, end - words[i].offset};
    }
    return std::nullopt;
}

void species_italics(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (!is_wording(part)) continue;
        std::size_t begin = 0;
        for (const model::Span& span : part.text.spans) {
            const std::size_t at = begin;
            begin += span.text.size();
            if (span.marks.emphasis || span.link) continue;
            const auto species = species_in(span.text, context.language);
            if (!species) continue;
            report<messages::species_upright>(
                findings, part.text.place(at + species->offset, species->length),
                in_quotes(span.text.substr(species->offset, species->length)));
            break;
        }
    }
}

// --- verb and subject

// `the 1990's`
void decades(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : context.bullets) {
        const std::string text = straight_apostrophes(bullet.text);
        const std::size_t at = text.find("0's");
        if (at == text.npos || at < 3) continue;
        const std::string_view decade = std::string_view(text).substr(at - 3, 4);
        if (!decade.starts_with("19") && !decade.starts_with("20")) continue;
        const english::Extent year{at - 3, 4};
        report<messages::plural_with_apostrophe>(findings, bullet.place(year), in_quotes(decade))
            .suggestion = fill<messages::write_instead>(std::string(decade) + 's');
    }
}

// `Deans List`, `Drivers License`
void lists_of_honors(const ProofContext& context, std::vector<Finding>& findings) {
    struct Owned {
        std::string_view owner, thing;
    };
    constexpr std::array all{Owned{"Dean", " List"},       Owned{"President", " List"},
                             Owned{"Chancellor", " List"}, Owned{"Provost", " List"},
                             Owned{"Driver", " License"},  Owned{"Registrar", " Office"},
                             Owned{"Bursar", " Office"}};
    for (const TextInResume& part : context.texts)
        for (const WordAt& word : part.words) {
            if (!is_capitalised(word.word) || !word.word.ends_with('s')) continue;
            const std::string_view owner = word.word.substr(0, word.word.size() - 1);
            const auto* owned = std::ranges::find(all, owner, &Owned::owner);
            const std::string_view rest =
                std::string_view(part.plain).substr(word.offset + word.word.size());
            if (owned == all.end() ||
                !(rest.starts_with(owned->thing) || rest.starts_with(lower_case(owned->thing))))
                continue;
            report<messages::no_apostrophe>(
                findings, part.text.place(word.offset, word.word.size()), in_quotes(word.word))
                .suggestion = fill<messages::write_instead>(std::string(owner) + "'s" +
                                                            std::string(owned->thing));
        }
}

void report_number(const english::NumberSlip& slip, const model::Text& text,
                   std::vector<Finding>& findings) {
    using Kind = english::NumberSlip::Kind;
    const Place place = text.place(slip.extent.offset, slip.extent.length);
    const std::string words =
        in_quotes(text.plain().substr(slip.extent.offset, slip.extent.length));
    Finding& finding =
        slip.kind == Kind::one_of_several
            ? report<messages::one_of_several>(findings, place, words, in_quotes(slip.number))
        : slip.kind == Kind::several_of_one
            ? report<messages::several_of_one>(findings, place, words, in_quotes(slip.number))
        : slip.kind == Kind::before_measured
            ? report<messages::before_measured>(findings, place, words)
        : slip.kind == Kind::no_apostrophe
            ? report<messages::no_apostrophe>(findings, place, words)
            : report<messages::plural_with_apostrophe>(findings, place, words);
    finding.suggestion = fill<messages::write_instead>(slip.meant);
}

void agreement(const ProofContext& context, std::vector<Finding>& findings) {
    lists_of_honors(context, findings);
    decades(context, findings);
    const auto tell = [&](const model::Text& text, const english::BulletReading& reading,
                          bool ended) {
        const std::string plain = text.plain();
        for (const english::NumberSlip& slip : reading.number_slips)
            report_number(slip, text, findings);
        for (const english::Disagreement& one : reading.disagreements) {
            if (one.joined && ended) continue; // their tense is wrong before their person
            const auto words = [&](english::Extent extent) {
                return plain.substr(extent.offset, extent.length);
            };
            if (one.meant.find('\'') != std::string::npos) {
                report<messages::no_apostrophe>(findings,
                                                text.place(one.verb.offset, one.verb.length),
                                                in_quotes(words(one.verb)))
                    .suggestion = fill<messages::write_instead>(one.meant);
                continue;
            }
            report<messages::disagreement>(findings, text.place(one.verb.offset, one.verb.length),
                                           in_quotes(words(one.subject)),
                                           in_quotes(words(one.verb)))
                .suggestion = fill<messages::write_instead>(one.meant);
        }
    };
    for (const WordedBullet& bullet : context.bullets)
        tell(bullet.bullet->text, bullet.reading,
             when_done(*bullet.position.entry, context) == WhenDone::ended);
    for (const TextInResume& part : context.texts)
        if (part.field && has(part.field->name, trade::Trait::writes) && !part.in_heading)
            tell(part.text, context.language.read_bullet(part.sentence), false);
}

constexpr std::array letter_table{
    Check{"small-opening", Weight::should, "consistency",
          "Bullets begin with a capital, where nearly all do.",
          "A small letter among capitals is a line that was typed in haste.", "common practice",
          "- stocked 480 part numbers", "- Stocked 480 part numbers", small_opening},
    Check{"proper-names", Weight::must, "consistency",
          "Places, employers and schools have their capitals, and so have languages, nations, days "
          "and months.",
          "A name in small letters is a slip that no portal mends.",
          "common practice, as guides to usage have it", "place: kestrel bay, WA",
          "place: Kestrel Bay, WA", proper_names},
    Check{"stray-capital", Weight::should, "consistency", "Within a line only names have capitals.",
          "A capital that means nothing looks like haste, and slows the eye.",
          "common practice, as guides to usage have it", "- Served Customers at the counter",
          "- Served customers at the counter", stray_capital},
    Check{"species-italics", Weight::consider, "consistency",
          "The Latin names of species stand in italics.",
          "Who reads such names for a living sees at once whether the writer does.",
          "International Code of Zoological Nomenclature, Appendix B6; common practice",
          "- Counted Zostera marina at 9 sites", "- Counted /Zostera marina/ at 9 sites",
          species_italics},
    Check{"agreement", Weight::must, "wording",
          "Verbs agree in number with their subjects, where both stand side by side, and those who "
          "own something have their apostrophe.",
          "It is a slip of grammar, and no spelling checker finds it.", "common practice",
          "- Flagged 3 claims that was paid twice", "- Flagged 3 claims that were paid twice",
          agreement},
};

}

std::span<const Check> letter_checks() {
    return letter_table;
}

}
