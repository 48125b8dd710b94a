// Pairs of spellings: common practice, written down from memory.
#include "compiler/english/sound_spellings.hpp"

#include "compiler/english/slips.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <utility>

namespace quoin::english {
namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 150> typed_and_meant{{
    {"ain", "en"},     {"ph", "f"},         {"f", "ph"},        {"tion", "sion"},
    {"sion", "tion"},  {"tian", "cian"},    {"tion", "cian"},   {"tion", "ssion"},
    {"ssion", "tion"}, {"cian", "tion"},    {"cion", "tion"},   {"shion", "tion"},
    {"tian", "tion"},  {"shun", "tion"},    {"tial", "cial"},   {"cial", "tial"},
    {"shal", "cial"},  {"tious", "cious"},  {"cious", "tious"}, {"k", "c"},
    {"c", "k"},        {"k", "ch"},         {"c", "ch"},        {"ch", "c"},
    {"ch", "k"},       {"ch", "sh"},        {"sh", "ch"},       {"s", "c"},
    {"c", "s"},        {"s", "sc"},         {"sc", "s"},        {"sc", "c"},
    {"kw", "qu"},      {"q", "qu"},         {"qu", "cqu"},      {"cs", "x"},
    {"ks", "x"},       {"cks", "x"},        {"gs", "x"},        {"x", "xc"},
    {"x", "xh"},       {"xs", "xc"},        {"x", "cc"},        {"cc", "x"},
    {"j", "g"},        {"g", "j"},          {"j", "dg"},        {"dg", "g"},
    {"g", "dg"},       {"f", "gh"},         {"ff", "gh"},       {"ite", "ight"},
    {"it", "ight"},    {"i", "igh"},        {"ow", "ou"},       {"ou", "ow"},
    {"aw", "au"},      {"au", "aw"},        {"er", "ure"},      {"ur", "ure"},
    {"u", "oo"},       {"oo", "u"},         {"ou", "oo"},       {"oo", "ou"},
    {"ee", "ea"},      {"ea", "ee"},        {"ee", "ie"},       {"ea", "ie"},
    {"ie", "ei"},      {"ei", "ie"},        {"ie", "ea"},       {"e", "ie"},
    {"a", "ai"},       {"ay", "ai"},        {"ai", "ay"},       {"ey", "ay"},
    {"e", "ea"},       {"ea", "e"},         {"us", "ous"},      {"ous", "us"},
    {"el", "le"},      {"le", "el"},        {"al", "le"},       {"le", "al"},
    {"k", "ck"},       {"c", "ck"},         {"ck", "k"},        {"ck", "c"},
    {"ch", "tch"},     {"tch", "ch"},       {"g", "gu"},        {"gu", "g"},
    {"m", "mn"},       {"m", "mb"},         {"t", "pt"},        {"w", "wh"},
    {"wh", "w"},       {"n", "gn"},         {"n", "kn"},        {"r", "wr"},
    {"r", "rh"},       {"t", "th"},         {"th", "t"},        {"x", "xs"},
    {"ley", "ly"},     {"aly", "ally"},     {"icly", "ically"}, {"izm", "ism"},
    {"u", "eu"},       {"o", "eau"},        {"s", "ps"},        {"z", "s"},
    {"s", "z"},        {"nn", "n"},         {"ss", "s"},        {"sy", "cy"},
    {"cy", "sy"},      {"ance", "ence"},    {"ence", "ance"},   {"able", "ible"},
    {"ible", "able"},  {"us", "uce"},       {"ees", "ies"},     {"ys", "ies"},
    {"yed", "ied"},    {"ie", "y"},         {"eing", "ing"},    {"ing", "eing"},
    {"e", "ee"},       {"ee", "e"},         {"o", "oa"},        {"oa", "o"},
    {"u", "ou"},       {"or", "our"},       {"n", "ng"},        {"n", "nd"},
    {"s", "st"},       {"t", "ct"},         {"c", "ct"},        {"tur", "ture"},
    {"cher", "ture"},  {"d", "ed"},         {"ed", "d"},        {"xc", "x"},
    {"ain", "an"},     {"an", "ain"},       {"ory", "orary"},   {"ery", "erary"},
    {"bly", "bably"},  {"culy", "cularly"},
}};

// A spelling whose letters the word has not all is not looked for: most are none of its.
constexpr auto letters_of_typed = [] {
    std::array<std::uint32_t, typed_and_meant.size()> letters{};
    for (std::size_t i = 0; i < letters.size(); ++i)
        letters[i] = letter_set(typed_and_meant[i].first);
    return letters;
}();

}

void each_by_sound(std::string_view typed, const std::function<void(const std::string&)>& each) {
    const std::uint32_t letters = letter_set(typed);
    for (std::size_t i = 0; i < typed_and_meant.size(); ++i) {
        if ((letters_of_typed[i] & ~letters) != 0) continue;
        const auto& [wrong, right] = typed_and_meant[i];
        for (std::size_t at = typed.find(wrong); at != std::string_view::npos;
             at = typed.find(wrong, at + 1)) {
            std::string meant(typed.substr(0, at));
            meant += right;
            meant += typed.substr(at + wrong.size());
            if (meant != typed) each(meant);
        }
    }
}

}
