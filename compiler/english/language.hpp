// English as bullets have it: forms of verbs, how a bullet opens, spelling. Word data are compiled
// in or read from a dictionary when first asked for.
#pragma once

#include "compiler/english/lexicon.hpp"

#include <cstddef>
#include <filesystem>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::english {

class Sentence;
class Spelling;
class WordContexts;

struct Extent { // bytes into the text
    std::size_t offset = 0;
    std::size_t length = 0;

    bool operator==(const Extent&) const = default;
};

struct Disagreement { // of a verb with its subject, in number
    Extent subject, verb;
    std::string meant;   // the verb as it would agree
    bool joined = false; // with the verb that opens the bullet, not with a noun
};

// One where several are meant, or a sign that tells them apart wrongly.
struct NumberSlip {
    enum class Kind {
        one_of_several,         // 11 fishing vessel
        several_of_one,         // each students
        before_measured,        // a 30 pages report
        no_apostrophe,          // 6 years experience
        plural_with_apostrophe, // 40 PC's
    };
    Kind kind{};
    Extent extent;
    std::string meant;
    std::string number; // that it stands behind, of the first two
};

// What can be said of one bullet's words for sure; what cannot is left out.
struct BulletReading {
    enum class Opening {
        past_verb,    // Counted
        present_verb, // Count, Counts
        either_tense, // Cut, Set: a past that is its base
        gerund,       // Counting
        infinitive,   // To count
        weak,         // Responsible for, Helped
        auxiliary,    // was, am, have been
        person,       // I, We, My
        participle,   // Selected from 90 applicants: recognition, not passive
        no_verb,      // Research assistant to
        unsure,
    };
    Opening opening = Opening::unsure;
    Extent verb;                           // the opening verb or phrase
    std::vector<Extent> wrong_for_ended;   // verbs that would be wrong in an entry that has ended
    std::vector<Extent> wrong_for_current; // and in one that is going on
    std::vector<Extent> first_person;
    std::vector<Extent> passive;
    std::vector<Disagreement> disagreements;
    std::vector<NumberSlip> number_slips;
    bool has_figure = false; // a number, amount, share or count in words
    bool sentence = false;   // it has a subject of its own: The team won
    bool names_deed = false; // no verb, but a noun that has one, for what was done: Design of
    // For the object of a weak opening, in the past: "Responsible for training" has "Trained",
    // "Led".
    std::vector<std::string> stronger_verbs;
};

// A word that is right by itself and wrong where it stands: `manger` for `manager`.
struct WordSlip {
    Extent extent;
    std::string meant;
    bool certain = false;    // it may be mended unasked
    bool by_context = false; // likely by the words around it, and told by no row of the table
};

class Language {
public:
    // `data_folder` holds `dictionaries/`; it is not read before a spelling is asked for.
    explicit Language(const std::filesystem::path& data_folder, const Lexicon& lexicon = {});
    ~Language();
    Language(const Language&) = delete;
    Language& operator=(const Language&) = delete;

    // `titles` are pieces in italics, in order: the words of a title are not the writer's own.
    Sentence sentence(std::string_view text, std::span<const Extent> titles = {}) const;
    BulletReading read_bullet(const Sentence& sentence) const;
    BulletReading read_bullet(std::string_view text) const;
    std::vector<WordSlip> word_slips(const Sentence& sentence) const; // in its order
    // Past and present form of a verb in any form; none if it is not surely a verb.
    std::optional<std::string> past_of(std::string_view verb) const;
    std::optional<std::string> base_of(std::string_view verb) const;

    // Spelling, by Hunspell's en_US; the dictionary is loaded on the first call.
    bool spelled_right(std::string_view word) const;
    bool in_use(std::string_view word) const; // in small letters: in the dictionary, and not rare
    // The past of an irregular verb that was formed as regular ones are: taked, runned.
    std::optional<std::string> true_past_of(std::string_view word) const;
    // What a word is a slip for, best first; none if it is right, or if the odds that it is a slip
    // are less than usual by so much: it may as well be a word that no dictionary has.
    std::vector<std::string> spellings_near(std::string_view word, double surer_by = 0) const;

private:
    Lexicon lexicon_;
    std::unique_ptr<const Spelling> spelling_;
    std::unique_ptr<const WordContexts> contexts_;
};

}
