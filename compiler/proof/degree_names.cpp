// The usual names of degrees in the US, and the slips that are made in them (common practice).
#include "compiler/proof/degree_names.hpp"

#include "compiler/proof/walk.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

namespace quoin {

namespace {

using Verdict = DegreeReading::Verdict;

struct Rank {
    std::string_view written; // lower case
    std::string_view rank;
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

// What degrees are of, the longer before the shorter that it begins with.
constexpr std::array<std::string_view, 34> kinds{"Applied Science",
                                                 "Applied Arts",
                                                 "Business Administration",
                                                 "Public Administration",
                                                 "Health Administration",
                                                 "Public Health",
                                                 "Public Policy",
                                                 "Social Work",
                                                 "Fine Arts",
                                                 "General Studies",
                                                 "Music Education",
                                                 "Nursing Practice",
                                                 "Library Science",
                                                 "Landscape Architecture",
                                                 "Physical Therapy",
                                                 "Occupational Therapy",
                                                 "Juridical Science",
                                                 "Architecture",
                                                 "Divinity",
                                                 "Education",
                                                 "Engineering",
                                                 "Jurisprudence",
                                                 "Laws",
                                                 "Medicine",
                                                 "Music",
                                                 "Nursing",
                                                 "Pharmacy",
                                                 "Philosophy",
                                                 "Psychology",
                                                 "Technology",
                                                 "Theology",
                                                 "Accountancy",
                                                 "Science",
                                                 "Arts"};

struct Variant {
    std::string_view written, usual; // lower case
};
constexpr std::array variants{
    Variant{"sciences", "science"}, Variant{"art", "arts"}, Variant{"fine art", "fine arts"},
    Variant{"applied sciences", "applied science"}, Variant{"applied art", "applied arts"}};

constexpr std::array<std::string_view, 62> abbreviations{
    "aa",   "aas",  "as",   "adn", "ab",     "ba",  "baas", "barch", "bas",  "bba", "bcom",
    "bds",  "bed",  "beng", "bfa", "bgs",    "bm",  "bmus", "bs",    "bsba", "bsc", "bse",
    "bsed", "bsee", "bsme", "bsn", "bsw",    "ged", "jd",   "llb",   "llm",  "ma",  "march",
    "mat",  "mba",  "mdiv", "med", "meng",   "mfa", "mha",  "mls",   "mlis", "mm",  "mpa",
    "mph",  "mpp",  "ms",   "msc", "mse",    "msn", "msw",  "dds",   "dma",  "dnp", "dpt",
    "dvm",  "edd",  "md",   "od",  "pharmd", "phd", "psyd"};

// With one of these it is not a degree, and its name is the school's own.
constexpr std::array<std::string_view, 20> no_degree{
    "certificate", "certification", "credential", "diploma", "semester", "abroad",    "exchange",
    "program",     "programme",     "coursework", "courses", "transfer", "minor",     "training",
    "bootcamp",    "study",         "year",       "licence", "license",  "fellowship"};

// Names of fields that hold one of these words, or end in -ology or -ics, are fields for sure.
constexpr std::array<std::string_view, 34> fields{
    "accounting", "administration", "anthropology",  "arts",           "biochemistry", "botany",
    "business",   "chemistry",      "communication", "communications", "computing",    "dance",
    "design",     "engineering",    "english",       "finance",        "geography",    "history",
    "humanities", "journalism",     "literature",    "management",     "marketing",    "music",
    "nursing",    "philosophy",     "photography",   "psychology",     "science",      "sciences",
    "spanish",    "studies",        "theatre",       "theater"};

bool in(std::string_view word, const auto& list) {
    return std::ranges::find(list, word) != list.end();
}

std::string straight_apostrophes(std::string_view text) {
    std::string result(text);
    for (std::size_t at = result.find("\u2019"); at != std::string::npos;
         at = result.find("\u2019", at))
        result.replace(at, 3, "'");
    return result;
}

std::vector<std::string> spaced(std::string_view text) {
    std::vector<std::string> words;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        if (end > at) words.emplace_back(text.substr(at, end - at));
        at = end + 1;
    }
    return words;
}

std::string joined(const std::vector<std::string>& words, std::size_t from) {
    std::string text;
    for (std::size_t i = from; i < words.size(); ++i)
        text += (text.empty() ? "" : " ") + words[i];
    return text;
}

bool is_minor_word(std::string_view word) {
    constexpr std::array<std::string_view, 8> minor{"and", "of",   "in", "the",
                                                    "for", "with", "to", "&"};
    return in(word, minor);
}

// A name all in lower case gets its capitals; one that has some keeps what it has.
std::string with_capitals(std::string text) {
    if (std::ranges::any_of(text, [](char c) { return c >= 'A' && c <= 'Z'; })) return text;
    std::vector<std::string> words = spaced(text);
    for (std::string& word : words)
        if (!is_minor_word(word) && word[0] >= 'a' && word[0] <= 'z')
            word[0] = static_cast<char>(word[0] - 32);
    return joined(words, 0);
}

struct Kind { // what the degree is of, and how many words it takes
    std::string name;
    std::size_t words = 0;
    bool right = true;
};

std::optional<Kind> kind_at(const std::vector<std::string>& words, std::size_t from) {
    for (std::size_t count = std::min<std::size_t>(2, words.size() - from); count > 0; --count) {
        std::string text;
        for (std::size_t i = from; i < from + count; ++i)
            text += (i > from ? " " : "") + lower_case(words[i]);
        while (text.ends_with(','))
            text.pop_back();
        const auto variant = std::ranges::find(variants, text, &Variant::written);
        if (variant != variants.end()) text = variant->usual;
        for (const std::string_view kind : kinds)
            if (lower_case(kind) == text)
                return Kind{std::string(kind), count, variant == variants.end()};
    }
    return std::nullopt;
}

bool is_preposition(std::string_view word) {
    return word == "of" || word == "in";
}

DegreeReading malformed(std::string usual, std::string fault) {
    return {Verdict::malformed, std::move(usual), std::move(fault), true};
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
        rest.text = " in " + with_capitals(joined(words, from));
        return rest;
    }
    if (from >= words.size()) return rest;
    const bool has_in = lower_case(words[from]) == "in";
    const std::string tail = with_capitals(joined(words, has_in ? from + 1 : from));
    rest.text = (after_comma ? ", " : has_in ? " in " : " ") + tail;
    return rest;
}

bool is_lower(std::string_view word) {
    return !word.empty() && word[0] >= 'a' && word[0] <= 'z';
}

DegreeReading read_named(const std::vector<std::string>& words, const Rank& rank) {
    const bool rank_right = lower_case(rank.rank) == rank.written;
    std::size_t at = 1;
    const std::string preposition = at < words.size() ? lower_case(words[at]) : "";
    if (is_preposition(preposition)) ++at;
    if (at >= words.size()) return {Verdict::type_missing, {}, {}, true};
    if (lower_case(words[at]) == "degree") {
        const bool nursing = rank_right && rank.rank == "Associate" &&
                             lower_case(joined(words, at + 1)).starts_with("in nursing");
        return {nursing ? Verdict::well_formed : Verdict::type_missing, {}, {}, true};
    }
    const auto kind = kind_at(words, at);
    if (!kind) {
        if (preposition == "of" && !rank_right)
            return malformed(std::string(rank.rank) + " of " + with_capitals(joined(words, at)),
                             "'" + words[0] + "'");
        return {rank_right ? Verdict::well_formed : Verdict::type_missing, {}, {}, true};
    }
    const bool comma = words[at + kind->words - 1].ends_with(',');
    const Rest rest = rest_of(words, at + kind->words, comma);
    const std::string usual = std::string(rank.rank) + " of " + kind->name + rest.text;
    if (!rank_right) return malformed(usual, "'" + words[0] + "'");
    // "Associate in Arts" is what some colleges call theirs
    if (preposition == "in" && rank.rank != "Associate")
        return malformed(usual, "'in' where 'of' belongs");
    if (preposition.empty() || !is_preposition(preposition))
        return malformed(usual, "'of' left out");
    if (!kind->right) return malformed(usual, "'" + joined({words[at + kind->words - 1]}, 0) + "'");
    if (rest.after_of) return malformed(usual, "'of' where 'in' belongs");
    if (is_lower(words[0])) return malformed(usual, "small letters where a title has capitals");
    return {};
}

DegreeReading read_short(const std::vector<std::string>& words, std::string_view letters) {
    const std::string rest = lower_case(joined(words, 1));
    if (letters != "bs" && letters != "bsc") return {};
    if (rest == "in arts" || rest == "in art" || rest == "in liberal arts")
        return {Verdict::malformed,
                rest == "in liberal arts" ? "Bachelor of Arts in Liberal Arts" : "Bachelor of Arts",
                "a degree of science in arts", false};
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
        return in(word, fields) || word.ends_with("ology") ||
               (word.ends_with("ics") && word.size() > 5);
    });
}

bool is_degree_word(std::string_view word) {
    return word == "degree" || word == "major";
}

}

DegreeReading read_degree(std::string_view name) {
    const std::string plain = straight_apostrophes(name);
    const std::vector<std::string> words = spaced(plain);
    if (words.empty()) return {};
    const std::string first = lower_case(words[0]);
    const auto rank = std::ranges::find(ranks, first, &Rank::written);
    if (rank != ranks.end()) return read_named(words, *rank);
    const std::string lower = lower_case(plain);
    if (lower.starts_with("juris doctorate"))
        return malformed("Juris Doctor" + plain.substr(15), "'Doctorate'");
    if (in(without_points(words[0]), abbreviations))
        return read_short(words, without_points(words[0]));
    for (const WordAt& word : words_in(lower))
        if (in(word.word, no_degree)) return {};
    const bool undergraduate = words.size() > 1 && (first == "undergraduate" || first == "college");
    if (is_degree_word(first) || (undergraduate && is_degree_word(lower_case(words[1]))))
        return {Verdict::type_missing, {}, {}, true};
    if (names_field(words) && lower.find('(') == std::string::npos)
        return {Verdict::type_missing, {}, {}, true};
    return {};
}

}
