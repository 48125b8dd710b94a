// Inflection by rule, by WordNet's exceptions, and by the list of irregular verbs.
#include "compiler/language/verb_forms.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace quoin {
namespace {

template<typename Row>
const Row* find(std::span<const Row> table, std::string_view Row::*column, std::string_view key) {
    const auto found = std::ranges::lower_bound(table, key, {}, column);
    return found != table.end() && (*found).*column == key ? &*found : nullptr;
}

const VerbEntry* entry(std::string_view base) {
    return find(verb_entries(), &VerbEntry::base, base);
}

bool is_vowel(char c) {
    return std::string_view("aeiou").find(c) != std::string_view::npos;
}

// Words of one syllable that end in consonant, vowel, consonant double the last: plan, planned.
bool doubles_last(std::string_view base) {
    if (base.size() < 3) return false;
    const char a = base[base.size() - 3], b = base[base.size() - 2], c = base.back();
    const bool pattern = !is_vowel(a) && is_vowel(b) && !is_vowel(c) &&
                         std::string_view("wxy").find(c) == std::string_view::npos;
    return pattern && std::ranges::count_if(base, is_vowel) == 1;
}

// The exception of a verb with the given ending, if WordNet lists one: admitted, of admit.
std::optional<std::string> listed(std::string_view base, std::string_view ending) {
    for (const std::string& form : {std::string(base) + base.back() + std::string(ending),
                                    std::string(base) + "k" + std::string(ending)}) {
        const VerbException* row = find(verb_exceptions(), &VerbException::form, form);
        if (row != nullptr && row->base == base) return form;
    }
    return std::nullopt;
}

std::string with_ending(std::string_view base, std::string_view ending) {
    if (const auto form = listed(base, ending)) return *form;
    std::string stem(base);
    if (doubles_last(base)) return stem + base.back() + std::string(ending);
    const bool ee = base.ends_with("ee") || base.ends_with("oe") || base.ends_with("ye") ||
                    base.ends_with("ie");
    if (base.ends_with('e') && !(ee && ending == "ing")) stem.pop_back();
    const bool y = base.ends_with('y') && base.size() > 1 && !is_vowel(base[base.size() - 2]);
    if (y && ending == "ed") stem.back() = 'i';
    return stem + std::string(ending);
}

struct Stem {
    std::string text;
    bool possible = false;
};

// Bases that a regular form could be of, the likeliest first: tagging tage, tag+g, tagg.
std::array<Stem, 4> stems(std::string_view word, std::size_t ending) {
    const std::string stem(word.substr(0, word.size() - ending));
    std::array<Stem, 4> result;
    if (stem.size() < 2) return result;
    result[0] = {stem, true};
    result[1] = {stem + 'e', true};
    const bool twice = stem.size() > 2 && stem.back() == stem[stem.size() - 2];
    if (twice) result[2] = {stem.substr(0, stem.size() - 1), true};
    if (stem.back() == 'i') result[3] = {stem.substr(0, stem.size() - 1) + 'y', true};
    return result;
}

const VerbEntry* base_with(std::string_view word, std::string_view ending) {
    for (const Stem& stem : stems(word, ending.size())) {
        const VerbEntry* verb = stem.possible ? entry(stem.text) : nullptr;
        if (verb != nullptr && with_ending(verb->base, ending) == word) return verb;
    }
    // a second spelling, as British doubled letters: labelled, of label
    for (const Stem& stem : stems(word, ending.size()))
        if (const VerbEntry* verb = stem.possible ? entry(stem.text) : nullptr) return verb;
    return nullptr;
}

const VerbEntry* base_of_third(std::string_view word) {
    for (const std::string_view ending : {"s", "es"}) {
        if (!word.ends_with(ending) || word.size() < ending.size() + 2) continue;
        const VerbEntry* verb = entry(word.substr(0, word.size() - ending.size()));
        if (verb != nullptr && third_person(verb->base) == word) return verb;
    }
    if (!word.ends_with("ies")) return nullptr;
    const VerbEntry* verb = entry(std::string(word.substr(0, word.size() - 3)) + 'y');
    return verb;
}

const IrregularVerb* irregular(std::string_view base) {
    return find(irregular_verbs(), &IrregularVerb::base, base);
}

void add_exception(VerbForms& forms, const VerbException& row) {
    forms.verb = entry(row.base);
    if (forms.none()) return;
    const IrregularVerb* known = irregular(row.base);
    if (row.form.ends_with("ing"))
        forms.gerund = true;
    else if (row.form.ends_with('s') && row.form != "was")
        forms.third = true;
    else {
        const bool regular = known == nullptr || row.form.ends_with("ed");
        forms.past = regular || row.form != known->participle;
        forms.participle = regular || row.form == known->participle;
    }
}

// A base that is the past of another verb, too, is nearly always that past (found, ground, fell);
// but one lays pavers, and saws boards.
void add_irregular(VerbForms& forms, const IrregularForm& row) {
    if (row.form == "lay") return;
    const IrregularVerb* known = irregular(row.base);
    if (row.form != row.base) {
        forms.verb = entry(row.base);
        forms.base = row.form == "saw";
    }
    forms.past = row.form == known->past;
    forms.participle = row.form == known->participle;
}

void add_regular(VerbForms& forms, std::string_view word) {
    if (word.ends_with("ed")) {
        const VerbEntry* verb = base_with(word, "ed");
        if (verb == nullptr) return;
        forms.verb = verb;
        forms.past = forms.participle = true;
    } else if (word.ends_with("ing")) {
        const VerbEntry* verb = base_with(word, "ing");
        if (verb == nullptr && word.ends_with("ying")) // dying, of die
            verb = entry(std::string(word.substr(0, word.size() - 4)) + "ie");
        if (verb == nullptr) return;
        forms.verb = verb;
        forms.gerund = true;
    } else if (const VerbEntry* verb = base_of_third(word)) {
        forms.verb = verb;
        forms.third = true;
    }
}

VerbForms simple_forms(std::string_view word) {
    VerbForms forms;
    if (word.size() < 2) return forms;
    forms.verb = entry(word);
    forms.base = forms.verb != nullptr;
    if (const auto* row = find(irregular_forms(), &IrregularForm::form, word))
        add_irregular(forms, *row);
    if (!forms.none()) return forms;
    if (const auto* row = find(verb_exceptions(), &VerbException::form, word))
        add_exception(forms, *row);
    if (forms.none()) add_regular(forms, word);
    return forms;
}

constexpr std::string_view closed_prefixes[] = {"co",   "counter", "cross", "de",    "fore",
                                                "hand", "inter",   "mis",   "out",   "over",
                                                "pre",  "re",      "sub",   "under", "up"};

// First parts that a verb's base may have before a hyphen: fact-check, hand-deliver.
constexpr std::string_view hyphen_prefixes[] = {
    "cross", "co",     "de",   "double", "dry",   "e",     "fact",  "field", "hand",   "hot",
    "mis",   "over",   "peer", "pre",    "price", "proof", "re",    "self",  "soft",   "spot",
    "stage", "stress", "team", "test",   "under", "user",  "video", "voice", "window", "quality"};

// Last parts that make adjectives of a form of a verb: detail-oriented.
constexpr std::string_view adjective_ends[] = {"based",     "certified", "driven",    "focused",
                                               "motivated", "oriented",  "proven",    "qualified",
                                               "related",   "seasoned",  "sponsored", "winning"};

template<std::size_t Size>
bool holds(const std::string_view (&list)[Size], std::string_view word) {
    return std::ranges::find(list, word) != std::end(list);
}

VerbForms hyphened_forms(std::string_view word, std::size_t hyphen) {
    const std::string_view first = word.substr(0, hyphen), last = word.substr(hyphen + 1);
    if (holds(adjective_ends, last)) return {};
    VerbForms forms = simple_forms(last);
    if (!holds(hyphen_prefixes, first)) forms.base = forms.third = false;
    // a hyphened participle before a noun is an adjective; one that is a past, too, may be either
    if (!forms.present() && !forms.past && !forms.gerund) return {};
    forms.prefix = word.substr(0, hyphen + 1);
    return forms;
}

VerbForms prefixed_forms(std::string_view word) {
    for (const std::string_view prefix : closed_prefixes) {
        if (!word.starts_with(prefix) || word.size() < prefix.size() + 4) continue;
        VerbForms forms = simple_forms(word.substr(prefix.size()));
        // bases would take in nouns and adjectives: upright, subway
        forms.base = forms.third = false;
        if (!forms.past && !forms.gerund) continue;
        forms.prefix = prefix;
        return forms;
    }
    return {};
}

}

VerbForms verb_forms(std::string_view word) {
    if (word.ends_with("'d")) { // QA'd
        VerbForms forms{entry(word.substr(0, word.size() - 2))};
        forms.past = forms.participle = forms.verb != nullptr;
        return forms;
    }
    if (VerbForms forms = simple_forms(word); !forms.none()) return forms;
    if (const std::size_t hyphen = word.rfind('-'); hyphen != word.npos)
        return hyphened_forms(word, hyphen);
    return prefixed_forms(word);
}

std::string past_form(std::string_view base) {
    const IrregularVerb* known = irregular(base);
    return known != nullptr ? std::string(known->past) : with_ending(base, "ed");
}

std::string third_person(std::string_view base) {
    std::string form(base);
    if (base == "be") return "is";
    if (base == "have") return "has";
    const bool y = base.ends_with('y') && base.size() > 1 && !is_vowel(base[base.size() - 2]);
    if (y) return form.substr(0, form.size() - 1) + "ies";
    for (const std::string_view hiss : {"s", "x", "z", "ch", "sh", "o"})
        if (base.ends_with(hiss)) return form + "es";
    return form + "s";
}

std::string gerund_form(std::string_view base) {
    const bool short_ie = base.ends_with("ie") && std::ranges::count_if(base, is_vowel) == 2;
    if (short_ie) return std::string(base.substr(0, base.size() - 2)) + "ying";
    return with_ending(base, "ing");
}

bool mostly_noun(const VerbEntry& verb) {
    return verb.noun && verb.noun_count >= 3 * verb.verb_count + 3;
}

bool mostly_verb(const VerbEntry& verb) {
    return !verb.noun || verb.verb_count >= 3 * verb.noun_count + 3;
}

}
