// The usual names of degrees in the US, and the slips that are made in them (common practice).
#include "compiler/advice/degree_names.hpp"

#include "compiler/advice/lists.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

namespace quoin::advice {

namespace {

using DegreeVerdict = DegreeReading::Verdict;

struct Rank {
    std::string_view written; // lower case
    std::string_view rank;

    bool is_right() const { return lower_case(rank) == written; }
    // Only an apostrophe or an `s` too many, and not another word.
    bool is_plural() const {
        const std::string_view end = written.substr(std::min(rank.size(), written.size()));
        return written.starts_with(lower_case(rank)) && (end == "s" || end == "'s" || end == "s'");
    }
};

// The first of each rank is right.
constexpr std::array ranks{Rank{"bachelor", "Bachelor"},     Rank{"bachelors", "Bachelor"},
                           Rank{"bachelor's", "Bachelor"},   Rank{"bachelors'", "Bachelor"},
                           Rank{"batchelor", "Bachelor"},    Rank{"batchelors", "Bachelor"},
                           Rank{"batchelor's", "Bachelor"},  Rank{"bachelour", "Bachelor"},
                           Rank{"master", "Master"},         Rank{"masters", "Master"},
                           Rank{"master's", "Master"},       Rank{"masters'", "Master"},
                           Rank{"associate", "Associate"},   Rank{"associates", "Associate"},
                           Rank{"associate's", "Associate"}, Rank{"associates'", "Associate"},
                           Rank{"doctor", "Doctor"},         Rank{"doctors", "Doctor"},
                           Rank{"doctor's", "Doctor"},       Rank{"doctorate", "Doctor"}};

// Kinds that are a degree of their own after "Bachelors in"; the others are fields as well.
constexpr std::array<std::string_view, 5> kinds_alone{"Science", "Arts", "Applied Science",
                                                      "Applied Arts", "Fine Arts"};

struct Variant {
    std::string_view written, usual; // lower case
    bool sure = false;               // `usual` is the only degree that can be meant
};
constexpr std::array kind_variants{Variant{"sciences", "science", true},
                                   Variant{"applied sciences", "applied science", true},
                                   Variant{"art", "arts"}, Variant{"fine art", "fine arts"},
                                   Variant{"applied art", "applied arts"}};

// Beginnings of such words: post-baccalaureate, pre-nursing, non-degree.
constexpr std::array<std::string_view, 4> no_degree_yet{"post-", "postbac", "pre-", "non-"};

std::string words_from(const std::vector<std::string>& words, std::size_t from) {
    std::string text;
    for (std::size_t i = from; i < words.size(); ++i)
        text += (text.empty() ? "" : " ") + words[i];
    return text;
}

bool is_minor_word(std::string_view word) {
    constexpr std::array<std::string_view, 8> minor{"and", "of",   "in", "the",
                                                    "for", "with", "to", "&"};
    return is_one_of(word, minor);
}

// A name all in lower case gets its capitals; one that has some keeps what it has.
std::string with_capitals(std::string text) {
    if (std::ranges::any_of(text, is_capital_letter)) return text;
    std::vector<std::string> words = parted(text, " ");
    for (std::string& word : words)
        if (!is_minor_word(word)) word = capitalised(std::move(word));
    return words_from(words, 0);
}

struct DegreeKind { // what the degree is of, and how many words it takes
    std::string name;
    std::size_t words = 0;
    bool right = true;
    bool sure = true; // if it is not right: what is meant
};

std::optional<DegreeKind> kind_at(const std::vector<std::string>& words, std::size_t from) {
    for (std::size_t count = std::min<std::size_t>(2, words.size() - from); count > 0; --count) {
        std::string text;
        for (std::size_t i = from; i < from + count; ++i)
            text += (i > from ? " " : "") + lower_case(words[i]);
        while (text.ends_with(','))
            text.pop_back();
        const auto variant = std::ranges::find(kind_variants, text, &Variant::written);
        const bool right = variant == kind_variants.end();
        if (!right) text = variant->usual;
        if (const auto kind = said_of(text, lines_of(List::degree_kinds)))
            return DegreeKind{std::string(*kind), count, right, right || variant->sure};
    }
    return std::nullopt;
}

bool is_preposition(std::string_view word) {
    return word == "of" || word == "in";
}

DegreeReading malformed(std::string usual, std::string fault, bool form_alone) {
    return {DegreeVerdict::malformed, std::move(usual), std::move(fault), form_alone};
}

DegreeReading type_missing() {
    return {DegreeVerdict::type_missing, {}, {}, true};
}

// `rest` is what follows "Bachelor of Science": "in Biology", ", Biology", "(BSN)", nothing.
struct Rest {
    std::string text;
    bool after_of = false; // "of Biology"
};

Rest rest_of(const std::vector<std::string>& words, std::size_t from, bool after_comma) {
    Rest rest;
    if (from < words.size() && lower_case(words[from]) == "of") {
        rest.after_of = true;
        ++from;
        rest.text = " in " + with_capitals(words_from(words, from));
        return rest;
    }
    if (from >= words.size()) return rest;
    const bool has_in = lower_case(words[from]) == "in";
    const std::string tail = with_capitals(words_from(words, has_in ? from + 1 : from));
    rest.text = (after_comma ? ", " : has_in ? " in " : " ") + tail;
    return rest;
}

// A degree by rank, preposition, kind and rest: "Bachelor", "of", "Science", " in Biology".
struct NamedDegree {
    const Rank& rank;
    std::string written; // the rank as it stands
    std::string preposition;
    DegreeKind kind;
    Rest rest;

    std::string usual(std::string_view between) const {
        return std::string(rank.rank) + ' ' + std::string(between) + ' ' + kind.name + rest.text;
    }
};

// "Associate in Arts" is what some colleges call theirs, "Master in Public Policy" too.
DegreeReading read_with_in(const NamedDegree& named) {
    const std::string_view rank = named.rank.rank;
    if (rank == "Associate") {
        if (!named.rank.is_right())
            return malformed(named.usual("in"), in_quotes(named.written),
                             named.kind.right && named.rank.is_plural() && !named.rest.after_of);
        return {};
    }
    if (!named.rank.is_right()) {
        const bool is_field = rank == "Bachelor" && !is_one_of(named.kind.name, kinds_alone);
        if (is_field) return type_missing(); // "Bachelors in Nursing"
        return malformed(named.usual("of"), in_quotes(named.written), false);
    }
    if (rank == "Master") return {};
    return malformed(named.usual("of"), fill<messages::in_for_of>(), false);
}

DegreeReading judge(const NamedDegree& named, std::string_view kind_written) {
    if (named.preposition == "in") return read_with_in(named);
    const std::string usual = named.usual("of");
    const bool has_of = named.preposition == "of";
    const bool sure = has_of && named.kind.sure && !named.rest.after_of;
    if (!named.rank.is_right())
        return malformed(usual, in_quotes(named.written), sure && named.rank.is_plural());
    if (!has_of) return malformed(usual, fill<messages::of_left_out>(), false);
    if (!named.kind.right) return malformed(usual, in_quotes(kind_written), sure);
    if (named.rest.after_of) return malformed(usual, fill<messages::of_for_in>(), false);
    if (is_small_letter(named.written.front()))
        return malformed(usual, fill<messages::small_letters>(), true);
    return {};
}

// A name that begins with its rank.
DegreeReading read_named(const std::vector<std::string>& words, const Rank& rank) {
    std::size_t at = 1;
    const std::string preposition = at < words.size() ? lower_case(words[at]) : "";
    if (is_preposition(preposition)) ++at;
    if (at >= words.size()) return type_missing();
    if (lower_case(words[at]) == "degree") {
        const bool nursing = rank.is_right() && rank.rank == "Associate" &&
                             lower_case(words_from(words, at + 1)).starts_with("in nursing");
        return nursing ? DegreeReading{} : type_missing();
    }
    const auto kind = kind_at(words, at);
    if (!kind) {
        if (preposition == "of" && !rank.is_right())
            return malformed(std::string(rank.rank) + " of " + with_capitals(words_from(words, at)),
                             in_quotes(words[0]), rank.is_plural());
        return rank.is_right() ? DegreeReading{} : type_missing();
    }
    const std::string& last = words[at + kind->words - 1];
    const NamedDegree named{rank, words[0], preposition, *kind,
                            rest_of(words, at + kind->words, last.ends_with(','))};
    return judge(named, last);
}

bool names_field(const std::vector<std::string>& words);

// `BS Biology`; a comma may stand for `in`, and some degrees have their field in their name.
bool lacks_in(const std::vector<std::string>& words, std::string_view letters) {
    constexpr std::array<std::string_view, 9> of_any_field{"aa",  "aas", "as", "ba", "bs",
                                                           "bsc", "ma",  "ms", "msc"};
    if (words.size() < 2 || !is_one_of(letters, of_any_field) || words[0].ends_with(','))
        return false;
    const std::vector<std::string> rest(words.begin() + 1, words.end());
    return is_capitalised(rest[0]) && names_field(rest);
}

bool has_of_for_in(const std::vector<std::string>& words) { // BA of English
    return words.size() > 2 && lower_case(words[1]) == "of" && is_capitalised(words[2]);
}

DegreeReading read_short(const std::vector<std::string>& words, std::string_view letters) {
    if (lacks_in(words, letters))
        return malformed(words[0] + " in " + words_from(words, 1), fill<messages::in_left_out>(),
                         true);
    const std::string rest = lower_case(words_from(words, 1));
    if (has_of_for_in(words))
        return malformed(words[0] + " in " + words_from(words, 2), fill<messages::of_for_in>(),
                         false);
    if (letters != "bs" && letters != "bsc") return {};
    if (rest == "in arts" || rest == "in art" || rest == "in liberal arts")
        return {DegreeVerdict::malformed,
                rest == "in liberal arts" ? "Bachelor of Arts in Liberal Arts" : "Bachelor of Arts",
                fill<messages::science_in_arts>(), false};
    return {};
}

std::string without_points(std::string_view word) {
    std::string letters = lower_case(word);
    std::erase_if(letters, [](char c) { return c == '.' || c == ','; });
    return letters;
}

bool names_field(const std::vector<std::string>& words) {
    constexpr std::size_t most = 4;
    if (words.size() > most) return false;
    return std::ranges::any_of(words, [](const std::string& raw) {
        const std::string word = without_points(raw);
        return is_one_of(word, List::fields_of_study) || word.ends_with("ology") ||
               (word.ends_with("ics") && word.size() > 5);
    });
}

bool is_degree_word(std::string_view word) {
    return word == "degree" || word == "major";
}

const Rank* rank_of(std::string_view word) {
    const auto rank = std::ranges::find(ranks, lower_case(word), &Rank::written);
    return rank == ranks.end() ? nullptr : &*rank;
}

DegreeReading read_one(const std::vector<std::string>& words) {
    if (const Rank* rank = rank_of(words[0])) return read_named(words, *rank);
    const std::string plain = words_from(words, 0);
    const std::string lower = lower_case(plain);
    const std::string first = lower_case(words[0]);
    if (lower.starts_with("juris doctorate"))
        return malformed("Juris Doctor" + plain.substr(15), fill<messages::doctorate>(), false);
    if (is_one_of(without_points(words[0]), List::degree_abbreviations))
        return read_short(words, without_points(words[0]));
    const bool has_rank = std::ranges::any_of(words, [](auto& word) { return rank_of(word); });
    if (has_rank || is_no_degree(plain)) return {}; // "Honors Bachelor of Science"
    const bool undergraduate = words.size() > 1 && (first == "undergraduate" || first == "college");
    if (is_degree_word(first) || (undergraduate && is_degree_word(lower_case(words[1]))))
        return type_missing();
    if (names_field(words) && lower.find('(') == std::string::npos) return type_missing();
    return {};
}

// Whether a second degree begins with the word after this one.
bool parts_degrees(std::string_view word) {
    return word == "and" || word == "&" || word == "/" || word.ends_with(',') ||
           word.ends_with(';');
}

// "Bachelor of Science and Bachelor of Arts" as two; all words are in one of them.
std::vector<std::vector<std::string>> degrees_in(const std::vector<std::string>& words) {
    std::vector<std::vector<std::string>> degrees{{}};
    for (const std::string& word : words) {
        const bool begins =
            rank_of(word) && !degrees.back().empty() && parts_degrees(degrees.back().back());
        if (begins) degrees.emplace_back();
        degrees.back().push_back(word);
    }
    return degrees;
}

// What parts a degree from the next: " and", ",", ";". It is taken off.
std::string take_parting(std::vector<std::string>& degree) {
    std::string& last = degree.back();
    if (last.ends_with(',') || last.ends_with(';')) {
        std::string sign(1, last.back());
        last.pop_back();
        return sign;
    }
    const std::string parting = ' ' + last;
    degree.pop_back();
    return parting;
}

DegreeReading read_several(std::vector<std::vector<std::string>> degrees) {
    DegreeReading all;
    for (std::size_t i = 0; i < degrees.size(); ++i) {
        std::vector<std::string>& words = degrees[i];
        const std::string parting = i + 1 < degrees.size() ? take_parting(words) : "";
        const DegreeReading one = words.empty() ? DegreeReading{} : read_one(words);
        if (i > 0) all.usual += ' ';
        const bool wrong = one.verdict == DegreeVerdict::malformed;
        all.usual += (wrong ? one.usual : words_from(words, 0)) + parting;
        if (one.verdict == DegreeVerdict::type_missing && i == 0) return one;
        if (!wrong) continue;
        all.verdict = DegreeVerdict::malformed;
        if (all.fault.find(one.fault) == std::string::npos)
            all.fault += (all.fault.empty() ? "" : " and ") + one.fault;
        all.form_alone = all.form_alone && one.form_alone;
    }
    return all.verdict == DegreeVerdict::malformed ? all : DegreeReading{};
}

}

bool is_no_degree(std::string_view name) {
    const std::string lower = lower_case(straight_apostrophes(name));
    const std::vector<std::string> words = parted(lower, " ");
    if (words.empty() || is_one_of(without_points(words[0]), List::degree_abbreviations))
        return false;
    if (std::ranges::any_of(words, [](const std::string& word) { return rank_of(word); }))
        return false;
    return std::ranges::any_of(words_in(lower), [](const WordAt& word) {
        return is_one_of(word.word, List::no_degree) ||
               std::ranges::any_of(
                   no_degree_yet, [&](auto beginning) { return word.word.starts_with(beginning); });
    });
}

std::vector<std::string> usual_degrees() {
    std::vector<std::string> degrees;
    for (const std::string_view rank : {"Associate", "Bachelor", "Master", "Doctor"})
        each_listed(lines_of(List::degree_kinds), [&](std::string_view, std::string_view kind) {
            if (rank != "Associate" || is_one_of(kind, kinds_alone))
                degrees.push_back(fmt::format("{} of {}", rank, kind));
        });
    return degrees;
}

DegreeReading read_degree(std::string_view name) {
    const std::vector<std::string> words = parted(straight_apostrophes(name), " ");
    return words.empty() ? DegreeReading{} : read_several(degrees_in(words));
}

}
