// Spellings of the US and of Britain: which a word has, and which a résumé keeps to.
#include "compiler/advice/consistency.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <unordered_map>
#include <vector>

namespace quoin::advice {

namespace {

using Turn = std::array<std::string_view, 2>; // British and US

constexpr std::array endings{
    Turn{"ise", "ize"},     Turn{"ised", "ized"},       Turn{"ises", "izes"},
    Turn{"ising", "izing"}, Turn{"isation", "ization"}, Turn{"isations", "izations"},
    Turn{"iser", "izer"},   Turn{"isers", "izers"},     Turn{"isational", "izational"},
    Turn{"yse", "yze"},     Turn{"ysed", "yzed"},       Turn{"yses", "yzes"},
    Turn{"ysing", "yzing"}, Turn{"our", "or"},          Turn{"ours", "ors"},
    Turn{"oured", "ored"},  Turn{"ouring", "oring"},    Turn{"re", "er"},
    Turn{"res", "ers"},     Turn{"tred", "tered"},      Turn{"lment", "llment"},
    Turn{"lful", "llful"},  Turn{"ence", "ense"},       Turn{"ences", "enses"},
    Turn{"mme", "m"},       Turn{"mmes", "ms"},
};
// What dictionaries of US English have as a variant.
constexpr std::array us_variants{
    Turn{"lled", "led"},          Turn{"lling", "ling"},
    Turn{"ller", "ler"},          Turn{"llers", "lers"},
    Turn{"llor", "lor"},          Turn{"llors", "lors"},
    Turn{"ogue", "og"},           Turn{"ogues", "ogs"},
    Turn{"ogued", "oged"},        Turn{"oguing", "oging"},
    Turn{"dgement", "dgment"},    Turn{"dgements", "dgments"},
    Turn{"theatre", "theater"},   Turn{"theatres", "theaters"},
    Turn{"programme", "program"}, Turn{"programmes", "programs"},
    Turn{"grey", "gray"},         Turn{"ageing", "aging"},
};

std::string with_turn(std::string_view word, std::size_t at, const Turn& turn) {
    std::string one(word);
    return one.replace(at, turn[0].size(), turn[1]);
}

template<typename Turns>
std::string turned(std::string_view word, const Turns& turns, const english::Language& language) {
    for (const Turn& turn : turns)
        if (word.ends_with(turn[0])) {
            std::string one = with_turn(word, word.size() - turn[0].size(), turn);
            if (language.spelled_right(one)) return one;
        }
    return {};
}

bool is_variant(std::string_view british) {
    return std::ranges::any_of(us_variants,
                               [&](const Turn& turn) { return british.ends_with(turn[0]); });
}

enum class Country { neither, britain, us };

struct Spelt { // of a word in small letters
    Country in = Country::neither;
    std::string other; // its spelling in the other country
    bool variant = false;
};

struct Regional : Spelt {
    std::string text; // as it is written
    Place place;
};

struct RegionalWords {
    std::vector<Regional> british, american;
};

// `labelled`, of label, though US dictionaries have it too; not `refilled`, of refill.
bool is_doubled_l(const std::string& lower, const english::Language& language) {
    if (!lower.ends_with("lled") && !lower.ends_with("lling")) return false;
    const auto base = language.base_of(lower);
    return base && base->ends_with('l') && !base->ends_with("ll") &&
           !turned(lower, us_variants, language).empty();
}

Spelt spelt_in(const std::string& lower, const english::Language& language) {
    using enum Country;
    if (lower == "cancelled" || lower == "cancelling") return {}; // either, by US dictionaries
    if (const auto american = said_of(lower, lines_of(List::british_spellings)))
        return {britain, std::string(*american), is_variant(lower)};
    if (const auto british = said_of(lower, lines_of(List::us_spellings)))
        return {us, std::string(*british), is_variant(*british)};
    if (is_doubled_l(lower, language)) return {britain, turned(lower, us_variants, language), true};
    if (language.spelled_right(lower)) return {};
    const std::string american = american_spelling(lower, language);
    return {american.empty() ? neither : britain, american, is_variant(lower)};
}

// Of a compound, by the first of its words that is of one country: colour-coded.
Spelt spelt_with_parts(const std::string& lower, const english::Language& language) {
    for (std::size_t begin = 0; lower.find('-') != lower.npos && begin < lower.size();) {
        const std::size_t end = std::min(lower.find('-', begin), lower.size());
        Spelt part = spelt_in(lower.substr(begin, end - begin), language);
        if (part.in != Country::neither) {
            part.other = lower.substr(0, begin) + part.other + lower.substr(end);
            return part;
        }
        begin = end + 1;
    }
    return spelt_in(lower, language);
}

RegionalWords regional_words(const ProofContext& context) {
    RegionalWords found;
    std::unordered_map<std::string, Spelt> spelt; // each word is looked up once
    for (const TextInResume& part : context.texts) {
        if (!is_wording(part)) continue;
        for (std::size_t i = 0; const WordAt& word : part.words) {
            // within a sentence a capital makes it a name
            const bool opens = i++ == 0;
            if (!opens && is_capitalised(word.word)) continue;
            const auto [at, is_new] = spelt.try_emplace(std::string(part.small(word)));
            if (is_new) at->second = spelt_with_parts(at->first, context.language);
            const Spelt& one = at->second;
            if (one.in == Country::neither) continue;
            (one.in == Country::us ? found.american : found.british)
                .push_back(
                    {one, std::string(word.word), part.text.place(word.offset, word.word.size())});
        }
    }
    return found;
}

std::string cased_like(std::string word, std::string_view model) {
    return is_capitalised(model) ? capitalised(std::move(word)) : word;
}

bool is_sure(const Regional& word) {
    return !word.variant;
}

}

std::string american_spelling(std::string_view british, const english::Language& language) {
    constexpr std::size_t shortest = 5; // not mise, of mise en place
    if (british.size() < shortest) return {};
    std::vector<std::string> stems{std::string(british)};
    for (const Turn& turn : {Turn{"ae", "e"}, Turn{"oe", "e"}, Turn{"oul", "ol"}})
        if (const std::size_t at = british.find(turn[0]); at != std::string_view::npos)
            stems.push_back(with_turn(british, at, turn)); // anaesthetised has two
    for (const std::string& stem : stems) {
        if (stem != british && language.spelled_right(stem)) return stem;
        if (std::string one = turned(stem, endings, language); !one.empty()) return one;
        if (std::string one = turned(stem, us_variants, language); !one.empty()) return one;
    }
    return {};
}

// Doubled letters of verbs, which no US page has: labelled, travelling.
bool is_told_in_us(const Regional& word) {
    const std::string lower = lower_case(word.text);
    return lower.ends_with("lled") || lower.ends_with("lling");
}

// A variant is told beside what surely is British, or beside a variant of the other country's; of
// doubled letters, beside anything of the US.
void spelling_region(const ProofContext& context, std::vector<Finding>& findings) {
    const RegionalWords found = regional_words(context);
    const bool in_britain = *context.resume.settings.language == "en-GB";
    const auto& odd = in_britain ? found.american : found.british;
    const auto& usual = in_britain ? found.british : found.american;
    const auto first_sure = std::ranges::find_if(odd, is_sure);
    if (usual.empty()) {
        if (in_britain || first_sure == odd.end()) return;
        report<messages::british_alone>(findings, first_sure->place, in_quotes(first_sure->text))
            .suggestion = fill<messages::write_or_set_language>(
            in_quotes(cased_like(first_sure->other, first_sure->text)));
        return;
    }
    const bool of_variants = std::ranges::any_of(usual, &Regional::variant);
    for (const Regional& word : odd) {
        if (word.variant && first_sure == odd.end() && !of_variants && !is_told_in_us(word))
            continue;
        const std::string text = in_quotes(word.text), other = in_quotes(usual.front().text);
        Finding& finding =
            in_britain ? report<messages::us_beside_british>(findings, word.place, text, other)
                       : report<messages::british_beside_us>(findings, word.place, text, other);
        finding.suggestion = in_quotes(cased_like(word.other, word.text));
    }
}

}
