#include "compiler/postings/fields_of_study.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/postings/lists.hpp"

#include <algorithm>
#include <string>

namespace quoin::postings {

namespace {

// A degree, finished or nearly so, in horticulture: what stands between names nothing of its own.
std::size_t begin_after(std::string_view lower, std::string_view study) {
    constexpr std::size_t longest_between = 64;
    const std::size_t at = find_phrase(lower, study);
    if (at == lower.npos) return lower.size();
    const std::string_view after = lower.substr(at + study.size());
    const std::size_t in = find_phrase(after.substr(0, longest_between), "in");
    if (in == after.npos) return lower.size();
    const std::string_view between = after.substr(0, in);
    for (const std::string_view other : {"experience", "years", "skill", "work", "with", "and"})
        if (has_phrase(between, other)) return lower.size();
    return between.find_first_of(";.:") == between.npos ? at + study.size() + in + 2 : lower.size();
}

std::size_t end_of_fields(std::string_view lower, std::size_t begin) {
    std::size_t end = lower.size();
    for (const std::string_view over : listed(lines_of(List::after_fields)))
        if (const std::size_t at = find_phrase(lower.substr(begin), over); at != lower.npos)
            end = std::min(end, begin + at);
    return std::min(end, lower.find(';', begin));
}

}

FieldsNamed fields_named_in(std::string_view sentence, bool asked) {
    const std::string lower = lower_case(sentence);
    std::size_t begin = lower.size();
    for (const std::string_view phrase : listed(lines_of(List::before_fields)))
        if (const std::size_t at = find_phrase(lower, phrase); at != lower.npos)
            begin = std::min(begin, at + phrase.size());
    if (asked)
        for (const std::string_view study : listed(lines_of(List::words_of_study)))
            begin = std::min(begin, begin_after(lower, study));
    return {begin, end_of_fields(lower, begin)};
}

}
