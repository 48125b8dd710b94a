// The verbs that make_verbs.py writes at build time from WordNet and the two lists beside it.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

namespace quoin {

struct VerbEntry {
    std::string_view base;
    bool noun = false;            // it is a noun too: lead, design
    std::uint16_t noun_count = 0; // how often WordNet's tagged texts have it as either
    std::uint16_t verb_count = 0;
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

}
