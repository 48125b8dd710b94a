// Tables of the closed classes, sorted when first asked for; the rest goes by endings.
#include "compiler/english/word_classes.hpp"

#include "compiler/base/lists.hpp"

#include <algorithm>
#include <span>
#include <string>
#include <unordered_map>

namespace quoin::english {
namespace {

namespace w = word_class;

struct ClassWords {
    std::uint32_t classes;
    std::string_view list; // parted by spaces
};

constexpr ClassWords closed_classes[] = {
    {w::determiner,
     "a an the this these those each every all both some any no another several many "
     "few more most other various such enough countless numerous"},
    {w::possessive, "my our your his her its their whose one's"},
    {w::preposition,
     "about above across after against along alongside amid among amongst around as at before "
     "behind below beneath beside besides between beyond by despite during except for from in "
     "inside into like near of off on onto out outside over past per since through throughout to "
     "toward towards under underneath until up upon via with within without aboard atop amidst"},
    {w::conjunction, "and but or nor yet & plus then"},
    {w::relative,
     "that which who whom whose where when while because if although though whereas how "
     "why what whether wherever whenever so than unless"},
    {w::pronoun, "i me we us you he him she they them it itself themselves himself herself myself "
                 "ourselves everyone everything someone anyone others each who"},
    {w::be, "be been being am is are was were wasn't weren't isn't aren't"},
    {w::past_be, "was were wasn't weren't"},
    {w::present_be, "am is are isn't aren't"},
    {w::have, "have has had having haven't hasn't hadn't"},
    {w::modal, "can could may might must shall should will would cannot can't couldn't won't"},
    {w::adverb,
     "then also always often never twice soon later together well still just even again already "
     "sometimes ahead almost always quite very too now currently first finally largely "
     "mainly primarily solely jointly personally half-time full-time part-time online "
     "onsite overnight abroad remotely closely only"},
    {w::particle, "out up down off over back away aloud through along in on around forward"},
    {w::number,
     "two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen "
     "sixteen seventeen eighteen nineteen twenty thirty forty fifty sixty seventy eighty "
     "ninety hundred hundreds thousand thousands million millions billion billions dozen "
     "dozens zero"},
    {w::negation, "not never"},
};

std::span<const std::string_view> not_adverbs() {
    static constexpr std::string_view list[] = {
        "anomaly",   "assembly", "biweekly", "butterfly", "bully",         "costly",
        "daily",     "early",    "elderly",  "family",    "fly",           "friendly",
        "hourly",    "jelly",    "likely",   "lively",    "lovely",        "melancholy",
        "monopoly",  "monthly",  "multiply", "orderly",   "quarterly",     "rally",
        "scholarly", "supply",   "tally",    "timely",    "user-friendly", "weekly",
        "yearly",    "july",     "italy",    "belly",     "ally",          "apply",
        "reply",     "comply",   "rely",     "imply",     "fully-fledged", "bubbly",
        "homily",    "doily",    "only"};
    return list;
}

using ClassTable = std::unordered_map<std::string_view, std::uint32_t>;

ClassTable make_table() {
    ClassTable table;
    for (const ClassWords& words : closed_classes) {
        for (std::size_t at = 0; at < words.list.size();) {
            const std::size_t end = std::min(words.list.find(' ', at), words.list.size());
            table[words.list.substr(at, end - at)] |= words.classes;
            at = end + 1;
        }
    }
    return table;
}

}

std::uint32_t word_classes(std::string_view word) {
    static const ClassTable table = make_table();
    const auto found = table.find(word);
    if (found != table.end()) return found->second;
    const bool in_ly = word.size() > 4 && word.ends_with("ly") && !is_one_of(word, not_adverbs());
    return in_ly ? w::adverb : 0;
}

}
