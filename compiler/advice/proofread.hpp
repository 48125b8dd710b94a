// One résumé read, set and proofread: all that is known of it at once.
#pragma once

#include "compiler/advice/offices.hpp"
#include "compiler/advice/proof.hpp"
#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/english/language.hpp"
#include "compiler/stages/typeset.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace quoin::advice {

// What proofreading needs beside the résumé; one for all inputs of a call.
struct ProofTools {
    std::filesystem::path data; // data_folder()
    fonts::Fonts& fonts;
    const english::Language& language;
    model::Date read_on;        // SOURCE_DATE_EPOCH, else the clock's day
    Offices* offices = nullptr; // whose rules are followed; null: none
};

struct Proofread {
    std::string input; // as named, or "standard input"
    Sources sources;
    std::optional<std::uint32_t> file;
    Diagnostics diagnostics;                // by place
    std::optional<model::Resume> resume;    // as selected; none after an error
    std::optional<stages::Typeset> typeset; // none after an error in theme or fonts
    TextsRead texts;                        // of the résumé
    std::vector<WordedBullet> bullets;      // of the résumé
    Proof proof;
    const office::Office* office = nullptr; // whose rules it is read by; of the tools
};

// Of what has its sources and its file, and has read nothing of it yet.
void proofread(Proofread& one, const stages::Choices& choices, const ProofTools& tools);

// What is wrong, how to mend it, and by whose rule if that is an office's.
std::string sentence_of(const Finding& finding);

}
