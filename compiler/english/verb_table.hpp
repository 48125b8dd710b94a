// The verbs and nouns that make_verbs.py writes at build time from WordNet and the two lists beside
// it.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

namespace quoin::english {

struct VerbEntry {
    std::string_view base;
    bool noun = false;            // it is a noun too: lead, design
    bool adjective = false;       // it is an adjective too: open, clean
    bool transitive = false;      // it takes an object: not peer, weekend
    std::uint16_t noun_count = 0; // how often WordNet's tagged texts have it as each
    std::uint16_t verb_count = 0;
    std::uint16_t adjective_count = 0;
};

struct VerbException { // a form that no rule of spelling makes
    std::string_view form;
    std::string_view base;
};

struct IrregularVerb {
    std::string_view base;
    std::string_view past;
    std::string_view participle;
};

struct IrregularForm { // past or participle
    std::string_view form;
    std::string_view base;
};

// Each in the order of its first column.
std::span<const VerbEntry> verb_entries();
std::span<const VerbException> verb_exceptions();
std::span<const IrregularVerb> irregular_verbs();
std::span<const IrregularForm> irregular_forms();

// Words in the order of the alphabet, each ended by a line feed.
std::string_view person_nouns();     // barber, soprano
std::string_view deed_nouns();       // what is done, known or said: review, physics
std::string_view named_compounds();  // two words that name a deed, a branch or a tool: sheet metal
std::string_view verbs_of_nouns();   // after a tab, what is done: inspection, inspect
std::string_view derived_words();    // after a tab, those of its family: statistics, statistical
std::string_view adjectives_in_ed(); // baked, used
std::string_view noun_compounds();   // whose first word may be a verb: peer review, purchase order

}
