#include "compiler/postings/headings.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/english/verb_forms.hpp"
#include "compiler/postings/lists.hpp"

#include <algorithm>

namespace quoin::postings {

namespace {

bool says_any(std::string_view lower, List list) {
    return std::ranges::any_of(listed(lines_of(list)),
                               [&](std::string_view phrase) { return has_phrase(lower, phrase); });
}

Part part_named(std::string_view name) {
    if (name == "out") return {true, true, Standing::elsewhere};
    if (name == "preferred") return {true, false, Standing::preferred};
    return {true, false, name == "duties" ? Standing::duties : Standing::required};
}

// Prepare samples, Prepares samples, Preparing samples.
bool begins_with_deed(std::string_view item) {
    const std::string word = lower_case(item.substr(0, item.find_first_of(" ,;:/")));
    const english::VerbForms forms = english::verb_forms(word);
    if (forms.none() || item.find(' ') == item.npos) return false;
    return forms.gerund || (forms.present() && !english::mostly_noun(*forms.verb));
}

}

std::string comparable(std::string_view text) {
    std::string lower = lower_case(text);
    for (const std::string_view sign : {"\u2026", "\u2013", "\u2014", "\u2022"})
        lower = replaced(std::move(lower), sign, " ");
    return lower;
}

Part part_headed(std::string_view heading) {
    const std::string lower = comparable(heading);
    if (const auto whole = said_of(trimmed(lower, " :.!?*#=_-+~"), lines_of(List::whole_headings)))
        return part_named(*whole);
    if (says_any(lower, List::heading_first_asked)) return part_named("required");
    if (says_any(lower, List::heading_not_read)) return part_named("out");
    if (says_any(lower, List::heading_preferred)) return part_named("preferred");
    if (says_any(lower, List::heading_surely_required)) return part_named("required");
    if (says_any(lower, List::heading_duties)) return part_named("duties");
    if (says_any(lower, List::heading_required)) return part_named("required");
    return {};
}

std::optional<Part> part_of_items(std::span<const Line> lines) {
    std::size_t items = 0, deeds = 0, asks = 0, gifts = 0;
    for (; items < lines.size() && lines[items].item; ++items) {
        const std::string lower = comparable(lines[items].text);
        if (says_any(lower, List::items_given))
            ++gifts;
        else if (says_any(lower, List::lead_ins) || says_any(lower, List::items_asked))
            ++asks;
        else if (begins_with_deed(lines[items].text))
            ++deeds;
    }
    if (items < 2) return std::nullopt;
    if (gifts * 2 >= items && gifts > asks) return part_named("out");
    if (deeds * 2 >= items && deeds > asks) return part_named("duties");
    if (asks * 2 >= items || (asks > 0 && asks > deeds)) return part_named("required");
    return std::nullopt;
}

}
