// Inflection by rule, by WordNet's exceptions, and by the list of irregular verbs.
#include "compiler/english/verb_forms.hpp"

#include "compiler/base/kept.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

namespace quoin::english {
namespace {

template<typename Row>
const Row* find(std::span<const Row> table, std::string_view Row::*column, std::string_view key) {
    const auto found = std::ranges::lower_bound(table, key, {}, column);
    return found != table.end() && (*found).*column == key ? &*found : nullptr;
}

const VerbEntry* entry(std::string_view base) {
    return find(verb_entries(), &VerbEntry::base, base);
}

// Words of one syllable that end in consonant, vowel, consonant double the last: plan, planned.
bool doubles_last(std::string_view base) {
    if (base.size() < 3) return false;
    const char a = base[base.size() - 3], b = base[base.size() - 2], c = base.back();
    const bool pattern = !is_vowel(a) && is_vowel(b) && !is_vowel(c) &&
                         std::string_view("wxy").find(c) == std::string_view::npos;
    const bool y = base.substr(1).find('y') != base.npos; // hyphen has two syllables
    return pattern && !y && std::ranges::count_if(base, is_vowel) == 1;
}

// In the US an unstressed last l stays single, though WordNet lists the other spelling: labeled.
bool stays_single(std::string_view base) {
    if (base == "benefit" || base == "bias" || base == "covet") return true;
    return base.ends_with('l') && std::ranges::count_if(base, is_vowel) > 1 &&
           !is_one_of(base, List::stressed_on_l);
}

// The exception of a verb with the given ending, if WordNet lists one: admitted, of admit.
std::optional<std::string> listed_form(std::string_view base, std::string_view ending) {
    if (stays_single(base)) return std::nullopt;
    for (const std::string& form : {std::string(base) + base.back() + std::string(ending),
                                    std::string(base) + "k" + std::string(ending)}) {
        const VerbException* row = find(verb_exceptions(), &VerbException::form, form);
        if (row != nullptr && row->base == base) return form;
    }
    return std::nullopt;
}

// Where the last part of a verb begins: co-plan, resubmit, wiretap. 0: it has but one.
std::size_t last_part_begin(std::string_view base) {
    if (const std::size_t hyphen = base.rfind('-'); hyphen != base.npos) return hyphen + 1;
    for (std::size_t length = 2; length < base.size(); ++length)
        if (is_one_of(base.substr(0, length), List::first_parts) && entry(base.substr(length)))
            return length;
    return 0;
}

std::string with_ending(std::string_view base, std::string_view ending) {
    if (const auto form = listed_form(base, ending)) return *form;
    std::string stem(base);
    if (const std::size_t last = last_part_begin(base); last > 0 && last < base.size())
        return stem.substr(0, last) + with_ending(base.substr(last), ending);
    if (doubles_last(base)) return stem + base.back() + std::string(ending);
    const bool ee = base.ends_with("ee") || base.ends_with("oe") || base.ends_with("ye") ||
                    base.ends_with("ie");
    if (base.ends_with('e') && !(ee && ending == "ing")) stem.pop_back();
    const bool y = base.ends_with('y') && base.size() > 1 && !is_vowel(base[base.size() - 2]);
    if (y && ending == "ed") stem.back() = 'i';
    return stem + std::string(ending);
}

const IrregularVerb* irregular(std::string_view base) {
    return find(irregular_verbs(), &IrregularVerb::base, base);
}

// Compounds of an irregular verb, if WordNet lists their form or a hyphen shows them:
// misunderstood, sight-read; but relayed.
std::optional<std::string> irregular_past(std::string_view base) {
    if (const IrregularVerb* known = irregular(base)) return std::string(known->past);
    for (std::size_t k = 1; k + 1 < base.size(); ++k) {
        const IrregularVerb* last = irregular(base.substr(k));
        if (last == nullptr) continue;
        const std::string form = std::string(base.substr(0, k)) + std::string(last->past);
        const VerbException* row = find(verb_exceptions(), &VerbException::form, form);
        if (base[k - 1] == '-' || (row != nullptr && row->base == base)) return form;
    }
    return std::nullopt;
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

int uses(const VerbEntry& verb) {
    return 2 * verb.verb_count + verb.noun_count;
}

// The commoner of two verbs that make the form: routed, of route, not of rout.
const VerbEntry* base_with(std::string_view word, std::string_view ending) {
    const VerbEntry* best = nullptr;
    const VerbEntry* misspelled = nullptr; // as British doubled letters: labelled, of label
    for (const Stem& stem : stems(word, ending.size())) {
        const VerbEntry* verb = stem.possible ? entry(stem.text) : nullptr;
        if (verb == nullptr) continue;
        if (misspelled == nullptr) misspelled = verb;
        const bool makes = with_ending(verb->base, ending) == word &&
                           (ending != "ed" || !irregular_past(verb->base));
        if (makes && (best == nullptr || uses(*verb) > uses(*best))) best = verb;
    }
    return best != nullptr ? best : misspelled;
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
// but one lays pavers, rents boats, and saws boards.
void add_irregular(VerbForms& forms, const IrregularForm& row) {
    if (row.form == "lay" || row.form == "rent") return;
    const IrregularVerb* known = irregular(row.base);
    if (row.form != row.base) {
        forms.base_of_other = forms.base;
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

VerbForms read_simple_forms(std::string_view word) {
    VerbForms forms;
    if (word.size() < 2) return forms;
    forms.verb = entry(word);
    forms.base = forms.verb != nullptr;
    if (const auto* row = find(irregular_forms(), &IrregularForm::form, word))
        add_irregular(forms, *row);
    if (!forms.none()) {
        if (const std::size_t hyphen = word.rfind('-'); hyphen != word.npos) // sight-read
            forms.past = forms.participle = forms.past || irregular_past(word) == word;
        return forms;
    }
    if (const auto* row = find(verb_exceptions(), &VerbException::form, word))
        add_exception(forms, *row);
    VerbForms regular;
    add_regular(regular, word); // installed, of install; WordNet has it of instal
    const bool commoner =
        forms.none() || (!regular.none() && uses(*regular.verb) > uses(*forms.verb));
    return commoner ? regular : forms;
}

VerbForms simple_forms(std::string_view word) {
    thread_local KeptByWord<VerbForms> kept;
    return kept.of(word, read_simple_forms);
}

VerbForms hyphened_forms(std::string_view word, std::size_t hyphen, const Lexicon& lexicon) {
    const std::string_view first = word.substr(0, hyphen), last = word.substr(hyphen + 1);
    if (lexicon.has(last, List::adjective_ends)) return {};
    VerbForms forms = simple_forms(last);
    // a noun before the hyphen makes an adjective of a gerund: Ship-tracking dashboard
    const bool reads = forms.either_tense(); // shelf-read, sand-cast
    if (!lexicon.has(first, List::hyphen_prefixes) && !reads)
        forms.base = forms.third = forms.gerund = false;
    // a hyphened participle before a noun is an adjective; one that is a past, too, may be either
    if (!forms.present() && !forms.past && !forms.gerund) return {};
    if (const VerbEntry* whole =
            entry(std::string(word.substr(0, hyphen + 1)).append(forms.verb->base)))
        forms.verb = whole; // co-lead has an entry of its own
    else
        forms.prefix = word.substr(0, hyphen + 1);
    return forms;
}

VerbForms prefixed_forms(std::string_view word, const Lexicon& lexicon) {
    for (std::size_t length = 2; length + 4 <= word.size(); ++length) {
        const std::string_view prefix = word.substr(0, length);
        if (!lexicon.has(prefix, List::closed_prefixes)) continue;
        VerbForms forms = simple_forms(word.substr(length));
        // bases would take in nouns and adjectives: upright, subway
        forms.base = forms.third = false;
        if (!forms.past && !forms.gerund) continue;
        forms.prefix = prefix;
        return forms;
    }
    return {};
}

}

bool is_vowel(char letter) {
    return std::string_view("aeiou").find(letter) != std::string_view::npos;
}

VerbForms verb_forms(std::string_view word, const Lexicon& lexicon) {
    if (word.size() > longest_english) return {};
    if (word.ends_with("'d")) { // QA'd
        VerbForms forms{entry(word.substr(0, word.size() - 2))};
        forms.past = forms.participle = forms.verb != nullptr;
        return forms;
    }
    if (VerbForms forms = simple_forms(word); !forms.none()) return forms;
    if (const std::size_t hyphen = word.rfind('-'); hyphen != word.npos)
        return hyphened_forms(word, hyphen, lexicon);
    return prefixed_forms(word, lexicon);
}

std::string past_form(std::string_view base) {
    const auto known = irregular_past(base);
    return known ? *known : with_ending(base, "ed");
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
    if (base.ends_with("ie")) { // tying, untying; but birdieing
        const std::string form = std::string(base.substr(0, base.size() - 2)) + "ying";
        const bool short_ie = std::ranges::count_if(base, is_vowel) == 2;
        if (short_ie || find(verb_exceptions(), &VerbException::form, std::string_view(form)))
            return form;
    }
    return with_ending(base, "ing");
}

bool mostly_noun(const VerbEntry& verb) {
    return verb.noun && verb.noun_count >= 3 * verb.verb_count + 3;
}

bool mostly_verb(const VerbEntry& verb) {
    return !verb.noun || verb.verb_count >= 3 * verb.noun_count + 3;
}

}
