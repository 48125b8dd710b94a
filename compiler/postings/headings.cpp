#include "compiler/postings/headings.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/said_phrases.hpp"

#include <algorithm>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

namespace quoin::postings {

namespace {

Part part_named(std::string_view name) {
    if (name == "out") return {true, true, Standing::elsewhere, true};
    if (name == "preferred") return {true, false, Standing::preferred, true};
    return {true, false, name == "duties" ? Standing::duties : Standing::required, true};
}

// Whose voice a heading has is no matter: what the applicant asks of herself is said of her.
std::string_view as_said_of_her(std::string_view word) {
    constexpr std::pair<std::string_view, std::string_view> rows[] = {
        {"i", "you"},       {"my", "your"},     {"me", "you"},     {"i'd", "you'd"},
        {"i'll", "you'll"}, {"i've", "you've"}, {"i'm", "you're"}, {"am", "are"}};
    const auto at =
        std::ranges::find(rows, word, &std::pair<std::string_view, std::string_view>::first);
    return at == std::end(rows) ? word : at->second;
}

bool turns_question(std::string_view word) {
    constexpr std::string_view helpers[] = {"do",    "did",    "can",   "will", "would", "must",
                                            "could", "should", "shall", "may",  "are"};
    return is_one_of(word, helpers);
}

// What an employer does about its applicants, in the third person: `what the farm asks`.
std::string_view asked_of_an_employer(std::string_view word) {
    constexpr std::string_view verbs[] = {"asks", "wants", "requires", "offers", "expects", "seeks",
                                          "pays", "gives", "provides", "likes",  "prefers"};
    return is_one_of(word, verbs) ? word.substr(0, word.size() - 1) : std::string_view{};
}

bool opens_for_nothing(std::string_view word) {
    constexpr std::string_view fillers[] = {"so",   "and", "but",  "ok",
                                            "okay", "now", "well", "then"};
    return is_one_of(word, fillers);
}

using Words = std::vector<std::string_view>;

// What does the employer want? as `what we want`: `the` and a noun before such a verb.
Words in_our_voice(const Words& words) {
    Words said;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool noun = words[i] == "the" && i + 2 < words.size();
        const std::string_view verb = noun ? asked_of_an_employer(words[i + 2]) : "";
        if (!verb.empty()) {
            said.insert(said.end(), {"we", verb});
            i += 2;
        } else if (noun && i + 3 < words.size() && words[i + 2] == "would") {
            said.push_back("we");
            ++i;
        } else {
            said.push_back(as_said_of_her(words[i]));
        }
    }
    return said;
}

// Do you need: you need; what will you do: what you will do.
Words as_statement(const Words& words) {
    Words said;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool turned = i > 0 && i + 1 < words.size() && turns_question(words[i]) &&
                            (words[i + 1] == "you" || words[i + 1] == "we");
        if (!turned) {
            said.push_back(words[i]);
            continue;
        }
        said.push_back(words[i + 1]);
        if (words[i] != "do" && words[i] != "did") said.push_back(words[i]);
        ++i;
    }
    return said;
}

// To do this job you need; not: what you don't need.
bool ends_asking(std::string_view lower) {
    for (const std::string_view denial : {"don't", "not", "won't", "no", "why"})
        if (has_phrase(lower, denial)) return false;
    return lower.ends_with(" need") || lower.ends_with(" needs") || lower.ends_with(" must have") ||
           lower.ends_with(" should have") || lower.ends_with(" if you");
}

// On a typical shift you; in the Otter Room you would; not: what's in it for you.
bool begins_telling(std::string_view lower) {
    constexpr std::string_view openings[] = {"on ",     "in ",   "each ", "every ", "under ",
                                             "during ", "most ", "some ", "at ",    "with "};
    constexpr std::string_view ends[] = {" you", " you will", " you would", " you'll", " you'd"};
    return std::ranges::any_of(openings,
                               [&](auto opening) { return lower.starts_with(opening); }) &&
           std::ranges::any_of(ends, [&](auto end) { return lower.ends_with(end); });
}

// About the firm, about Halyard; not: about the job, about you.
bool is_about_employer(std::string_view lower) {
    return lower.starts_with("about ") && !says_any(lower, List::heading_duties) &&
           !says_any(lower, List::heading_required);
}

}

std::string heading_words(std::string_view heading) {
    const std::string lower = comparable(heading);
    Words typed = pieces_of(trimmed(lower, " :.!?"), " ");
    if (typed.size() > 1 && opens_for_nothing(typed.front())) typed.erase(typed.begin());
    std::string text;
    for (const std::string_view word : as_statement(in_our_voice(typed)))
        text.append(text.empty() ? "" : " ").append(word);
    return text;
}

Part part_named_whole(std::string_view lower) {
    const auto whole = said_of(trimmed(lower, " :.!?*#=_-+~"), lines_of(List::whole_headings));
    Part part = whole ? part_named(*whole) : Part{};
    part.whole = part.known;
    return part;
}

Part part_headed(std::string_view heading) {
    const std::string lower = heading_words(heading);
    if (const Part whole = part_named_whole(lower); whole.known) return whole;
    if (says_any(lower, List::heading_first_asked) || ends_asking(lower))
        return part_named("required");
    const bool meeting = says_any(lower, List::said_of_meeting);
    const bool may_be = lower.starts_with("would ") || lower.starts_with("might ");
    if (!meeting && (may_be || supposes(lower))) return part_named("preferred");
    if (says_any(lower, List::heading_first_done)) return part_named("duties");
    if (meeting || says_any(lower, List::heading_not_read) || is_about_employer(lower))
        return part_named("out");
    if (begins_telling(lower)) return part_named("duties");
    if (says_any(lower, List::heading_preferred)) return part_named("preferred");
    if (says_any(lower, List::heading_surely_required)) return part_named("required");
    Part part;
    if (says_any(lower, List::heading_duties))
        part = part_named("duties");
    else if (says_any(lower, List::heading_required))
        part = part_named("required");
    part.sure = false;
    return part;
}

}
