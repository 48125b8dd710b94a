#include "compiler/postings/headings.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/said_phrases.hpp"

#include <algorithm>

namespace quoin::postings {

namespace {

Part part_named(std::string_view name) {
    if (name == "out") return {true, true, Standing::elsewhere, true};
    if (name == "preferred") return {true, false, Standing::preferred, true};
    return {true, false, name == "duties" ? Standing::duties : Standing::required, true};
}

}

Part part_named_whole(std::string_view lower) {
    const auto whole = said_of(trimmed(lower, " :.!?*#=_-+~"), lines_of(List::whole_headings));
    return whole ? part_named(*whole) : Part{};
}

Part part_headed(std::string_view heading) {
    const std::string lower = comparable(heading);
    if (const Part whole = part_named_whole(lower); whole.known) return whole;
    if (says_any(lower, List::heading_first_asked)) return part_named("required");
    if (says_any(lower, List::heading_not_read)) return part_named("out");
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
