#include "compiler/transcription/entry_fields.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/portal/found.hpp"
#include "compiler/trade/vocabulary.hpp"
#include "compiler/transcription/messages.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::transcription {

namespace {

struct KindLabels { // what the title, the organisation and the rest go under
    trade::Holds holds;
    std::string_view title, org, other;
};

constexpr std::array kind_labels{
    KindLabels{trade::Holds::experience, "role", "employer", "note"},
    KindLabels{trade::Holds::projects, "project", "with", {}},
    KindLabels{trade::Holds::activities, "role", "activity", {}},
    KindLabels{trade::Holds::honors, "award", "by", {}},
    KindLabels{trade::Holds::credentials, "credential", "issuer", {}},
    KindLabels{trade::Holds::publications, "publication", "venue", {}},
    KindLabels{trade::Holds::other, "title", "detail", {}},
};

const KindLabels& labels_for(trade::Holds holds) {
    const auto* found = std::ranges::find(kind_labels, holds, &KindLabels::holds);
    return found == kind_labels.end() ? kind_labels.back() : *found;
}

bool has_place(trade::Holds holds) {
    return trade::find_word("place")->kinds.has(holds);
}

void tell_written(const DatesOnLine& dates, DraftEntry& entry) {
    if (dates.written.find(dates.value) == std::string::npos && !dates.written.empty())
        entry.remarks.push_back(fill<messages::other_dates>(dates.written));
}

// `exp. 2/2025` after `expires:`
std::string without_word(std::string_view dates) {
    const std::size_t space = dates.find(' ');
    const bool expected = lower_case(dates).starts_with("exp") && space != dates.npos;
    return std::string(expected ? dates.substr(space + 1) : dates);
}

void add_expiry(const HeadPieces& pieces, DraftEntry& entry) {
    for (const DatesOnLine& dates : pieces.dates)
        if (dates.expires && !entry.find("expires")) {
            entry.add("expires", without_word(dates.value));
            tell_written(dates, entry);
        }
}

// Names are joined again as they stood: a title of these kinds has commas and dashes of its own.
std::string whole_title(const HeadPieces& pieces, std::size_t from, std::size_t to) {
    std::string text;
    for (std::size_t i = from; i < to; ++i)
        text += (text.empty()                    ? ""
                 : pieces.names[i].joint.empty() ? ", "
                                                 : pieces.names[i].joint) +
                pieces.names[i].text;
    return text;
}

// `No. NA-204471`, `NC00000117`
bool is_number_of_card(std::string_view text) {
    constexpr std::ptrdiff_t fewest = 5; // figures where no word tells
    const std::string lower = lower_case(text);
    const bool told = lower.starts_with("no. ") || lower.starts_with('#') ||
                      lower.starts_with("number ") || lower.starts_with("license ") ||
                      lower.starts_with("lic. ") || lower.starts_with("id ");
    return told ? has_digit(lower)
                : text.find(' ') == text.npos && std::ranges::count_if(text, is_figure) >= fewest;
}

// `State Board of Health, No. NA-204471`: what follows who gives it, or its name, is a number.
void drop_number(std::string& text, TitleAndOrg& names) {
    const auto parts = comma_parts(text);
    if (parts.size() < 2 || !is_number_of_card(parts.back())) return;
    names.others.emplace_back(parts.back());
    const auto cut = static_cast<std::size_t>(parts.back().data() - text.data());
    text = trimmed(std::string_view(text).substr(0, cut), " ,");
}

// `Storekeeper, Second Class`, below its employer: a comma parts no other one off.
TitleAndOrg whole_position(const HeadPieces& pieces, const HeadHabits& habits) {
    const TitleAndOrg parted = title_and_org(pieces, habits);
    if (leans_to_role(parted.org) < -0.5) return parted;
    TitleAndOrg whole;
    whole.title = whole_title(pieces, 0, pieces.names.size());
    return whole;
}

TitleAndOrg lone_employer(const HeadPieces& pieces) {
    TitleAndOrg names;
    names.org = whole_title(pieces, 0, pieces.names.size());
    return names;
}

// An award, a card, a paper: its name first, then who gives it.
TitleAndOrg named_first(const HeadPieces& pieces) {
    TitleAndOrg result;
    const std::size_t names = pieces.names.size();
    if (names == 0) return result;
    std::size_t org = names;
    if (names > 1 && pieces.names[0].row != pieces.names[1].row &&
        (names_school(pieces.names[0].text) || leans_to_role(pieces.names[0].text) < -1) &&
        !names_school(pieces.names[1].text) && leans_to_role(pieces.names[1].text) > -1 &&
        !names_credential(pieces.names[0].text)) { // the giver stands above
        result.org = pieces.names[0].text;
        result.title = whole_title(pieces, 1, names);
        result.sure = false;
        return result;
    }
    for (std::size_t i = names; i-- > 1;)
        if (leans_to_role(pieces.names[i].text) < -1) org = i;
    if (org == names && names > 1 &&
        (pieces.names[0].strong != pieces.names[1].strong ||
         pieces.names[0].slanted != pieces.names[1].slanted ||
         pieces.names[0].font != pieces.names[1].font || pieces.names[1].row > 0))
        org = 1;
    std::size_t end = std::min(org + 1, names);
    while (end < names && (pieces.names[end].joint == ", " || pieces.names[end].joint == " "))
        ++end;
    result.title = whole_title(pieces, 0, org);
    result.org = whole_title(pieces, org, end);
    for (std::size_t i = end; i < names; ++i)
        result.others.push_back(pieces.names[i].text);
    if (!result.org.empty()) return result;
    drop_number(result.title, result);
    const auto parts = comma_parts(result.title);
    for (std::size_t i = parts.size(); i-- > 1;) {
        if (leans_to_role(parts[i]) > -1 && !parts[i].starts_with("State of ")) continue;
        const auto cut = static_cast<std::size_t>(parts[i].data() - result.title.data());
        result.org = result.title.substr(cut);
        result.title = std::string(trimmed(std::string_view(result.title).substr(0, cut), " ,"));
        break;
    }
    return result;
}

// Between quotes the title, before it who wrote it, after it where it came out.
bool take_quoted(const std::string& text, DraftEntry& entry) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 2> quotes = {
        {{"\u201C", "\u201D"}, {"\"", "\""}}};
    for (const auto& [open, close] : quotes) {
        const std::size_t begin = text.find(open);
        if (begin == std::string::npos) continue;
        const std::size_t end = text.find(close, begin + open.size());
        if (end == std::string::npos) continue;
        const std::string_view before = trimmed(std::string_view(text).substr(0, begin));
        if (!before.empty() && is_letter_or_figure(before.back())) continue; // `Review of “…”`
        const std::string_view all = text;
        entry.add("author", std::string(trimmed(all.substr(0, begin), " ,.:;")));
        entry.add("publication", std::string(all.substr(begin, end + close.size() - begin)));
        entry.add("venue", venue_of(trimmed(all.substr(end + close.size()), " ,.:;\u00B7")));
        return true;
    }
    return false;
}

void add_names(const TitleAndOrg& names, trade::Holds holds, DraftEntry& entry) {
    const KindLabels& labels = labels_for(holds);
    if (holds == trade::Holds::activities && names.org.empty()) {
        entry.add("activity", names.title);
    } else if (holds == trade::Holds::activities) {
        entry.add(labels.org, names.org);
        entry.add(labels.title, names.title);
    } else {
        entry.add(labels.title, names.title);
        entry.add(labels.org, names.org);
    }
    if (names.sure) return;
    for (const std::string_view label : {labels.title, labels.org})
        if (entry.find(label)) entry.guesses.emplace_back(label);
}

void add_others(const TitleAndOrg& names, trade::Holds holds, DraftEntry& entry) {
    const std::string_view label = labels_for(holds).other;
    if (label.empty() || names.others.empty()) return;
    entry.add(label, joined(names.others, "; "));
}

// `Marine Ecology Capstone`, `CS 240`
bool names_course(std::string_view text) {
    const std::string lower = lower_case(text);
    for (const std::string_view word :
         {"course", "capstone", "class", "seminar", "studio", "thesis"})
        if (lower.find(word) != std::string::npos) return true;
    return has_digit(text) && text.size() < 40;
}

// An address among what is left.
void add_links(const TitleAndOrg& names, DraftEntry& entry) {
    for (const std::string& other : names.others)
        for (const std::string& link : portal::find_links(other))
            entry.add("link", link);
}

// `Cost Accounting, with team of 4`
void part_course(DraftEntry& entry) {
    DraftField* with = entry.find("with");
    if (!with) return;
    const std::string text = with->value;
    const std::size_t at = text.starts_with("with ") ? 0 : text.find(", with ");
    if (at != std::string::npos) {
        with->value = text.substr(text.find("with ", at) + 5);
        if (at > 0) entry.add("course", text.substr(0, at));
    } else if (names_course(text) || leans_to_role(text) == 0) {
        with->label = "course";
    }
}

void add_publication(const HeadPieces& pieces, DraftEntry& entry) {
    const std::string whole = whole_title(pieces, 0, pieces.names.size());
    if (take_quoted(whole, entry)) return;
    const TitleAndOrg names = named_first(pieces);
    entry.add("publication", names.title);
    entry.add("venue", names.org);
}

}

namespace {

// As the document has it, or by how far its sign stands in from that of the first.
int level_of(const OldRow& row, const RowsOfEntry& rows) {
    constexpr double deeper = 8, at_most = 60; // pt; what is further off stands in another column
    if (!row.item) return 1;
    const double in = row.mark_left - rows.items.front().mark_left;
    return rows.items.front().item && in > deeper && in < at_most ? 2 : std::min(row.level, 2);
}

}

DraftEntry begin_entry(const RowsOfEntry& rows) {
    DraftEntry entry;
    for (const OldRow& row : rows.heads)
        entry.old.push_back(row.text());
    for (const OldRow& row : rows.items) {
        entry.old.push_back(row.text());
        entry.bullets.push_back({row.text(), level_of(row, rows)});
    }
    if (!entry.bullets.empty()) entry.bullets.front().level = 1;
    return entry;
}

void add_dates(const HeadPieces& pieces, std::string_view label, DraftEntry& entry) {
    for (const DatesOnLine& dates : pieces.dates) {
        if (entry.find(label) || (dates.expires && entry.find("expires"))) continue;
        entry.add(label, dates.value);
        tell_written(dates, entry);
    }
}

DraftEntry entry_of(const RowsOfEntry& rows, trade::Holds holds, const PageFacts& facts) {
    DraftEntry entry = begin_entry(rows);
    HeadPieces pieces = pieces_of_heads(rows.heads, facts.towns, facts.languages);
    if (has_place(holds)) settle_places(pieces, facts.habits);
    entry.heads = pieces.text;
    TitleAndOrg names;
    if (holds == trade::Holds::publications) {
        if (add_citation(entry)) return entry;
        add_publication(pieces, entry);
    } else {
        const bool by_name = holds == trade::Holds::honors || holds == trade::Holds::credentials ||
                             holds == trade::Holds::other || holds == trade::Holds::projects;
        names = rows.employs    ? lone_employer(pieces)
                : by_name       ? named_first(pieces)
                : rows.position ? whole_position(pieces, facts.habits)
                                : title_and_org(pieces, facts.habits);
        drop_number(names.org, names);
        add_names(names, holds, entry);
    }
    if (holds == trade::Holds::projects) part_course(entry);
    if (trade::find_word("link")->kinds.has(holds)) add_links(names, entry);
    if (has_place(holds)) {
        if (!pieces.places.empty()) entry.add("place", pieces.places.front());
        if (pieces.place_guessed) entry.guesses.emplace_back("place");
        if (pieces.places.empty() && !names.town.empty()) {
            entry.add("place", names.town);
            entry.guesses.emplace_back("place");
        }
    }
    if (holds == trade::Holds::credentials) add_expiry(pieces, entry);
    add_dates(pieces, "dates", entry);
    if (rows.dates_guessed && entry.find("dates")) entry.guesses.emplace_back("dates");
    add_others(names, holds, entry);
    return entry;
}

}
