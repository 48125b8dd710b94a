// The steps of reading a bullet. Each looks at the sentence and says only what is sure.
#pragma once

#include "compiler/english/language.hpp"
#include "compiler/english/sentence.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace quoin::english {

enum class VerbTense {
    none, // no verb, or nobody can tell
    past,
    present,
    either,  // cut, set
    neither, // a gerund or an infinitive in a finite verb's stead
};

struct OpeningReading {
    BulletReading::Opening kind = BulletReading::Opening::unsure;
    std::size_t first = 0, last = 0; // the verb or the phrase, in tokens
    std::size_t verb = 0;            // the token whose tense counts
    VerbTense tense = VerbTense::none;
    bool passive = false;
    bool sentence = false; // it has a subject of its own
};

OpeningReading read_opening(const Sentence& sentence);

// A phrase that says one was near the work, at `first`: its last token and its verb's tense.
struct WeakPhrase {
    std::size_t first = 0, last = 0;
    VerbTense tense = VerbTense::none;
};
std::optional<WeakPhrase> weak_phrase(const Sentence& sentence, std::size_t first);

// A noun or a verb, where the word may be either (Lead guitarist, Lead a band).
enum class Homograph { verb, noun, unsure };
Homograph read_homograph(const Sentence& sentence, std::size_t i);
// A verb or a noun, where the word ends in -ing and opens the bullet (Debugging code, Debugging
// of).
Homograph read_gerund(const Sentence& sentence, std::size_t i);

void judge_tense(const Sentence& sentence, const OpeningReading& opening, BulletReading& reading);
std::vector<Extent> find_first_person(const Sentence& sentence);
std::vector<Extent> find_passives(const Sentence& sentence, const OpeningReading& opening);
// The token of `be` or `get` in a passive whose subject begins at `first`: Logs are kept.
std::optional<std::size_t> passive_of_subject(const Sentence& sentence, std::size_t first);
bool has_figure(const Sentence& sentence);

}
