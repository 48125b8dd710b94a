#include "compiler/transcription/section_draft.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/stages/model/dates.hpp"
#include "compiler/transcription/messages.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>
#include <variant>

namespace quoin::transcription {

namespace {

using trade::Holds;

// `References available upon request`, which no section holds.
bool offers_references(const std::string& text) {
    const std::string lower = lower_case(text);
    return lower.starts_with("references") && text.size() < 60 &&
           (has_phrase(lower, "request") || has_phrase(lower, "available"));
}

// `Dates   Position   Employer`: what stands above the columns of a table.
bool heads_table(const OldRow& row) {
    constexpr std::array<std::string_view, 22> words = {
        "date",         "dates",  "year",     "years",   "period",   "position",
        "title",        "role",   "employer", "company", "location", "city",
        "organization", "duties", "degree",   "school",  "college",  "program",
        "institution",  "award",  "name",     "place"};
    return row.words.size() > 1 && std::ranges::all_of(row.words, [&](const OldWord& word) {
               return is_one_of(lower_case(word.text), words);
           });
}

struct RowCounts {
    std::size_t dated = 0, running = 0, items = 0, role = 0, school = 0, cards = 0;
};

RowCounts count_rows(const std::vector<OldRow>& rows, const portal::PageLanguages& languages) {
    RowCounts counts;
    for (const OldRow& row : rows) {
        const std::string text = row.text();
        counts.items += row.item;
        counts.running += is_running_text(row) && !row.item;
        if (row.item) continue;
        counts.dated += !dates_on(row.words, languages).empty();
        counts.role += std::ranges::any_of(pieces_of(text, "|"), [](std::string_view piece) {
            return leans_to_role(trimmed(piece)) > 1.5;
        });
        counts.school += names_degree(text);
        counts.cards += names_credential(text);
    }
    return counts;
}

// Of a title that does not tell.
Holds guessed_holds(const std::vector<OldRow>& rows, const portal::PageLanguages& languages) {
    const RowCounts counts = count_rows(rows, languages);
    if (counts.cards > 0 && 2 * counts.cards >= counts.dated && counts.items == 0)
        return Holds::credentials;
    if (counts.school > 0 && counts.school >= counts.role && counts.dated > 0)
        return Holds::education;
    if (counts.dated > 0 && counts.role > 0) return Holds::experience;
    if (counts.dated > 0) return counts.items > 0 ? Holds::activities : Holds::other;
    return counts.running > 0 && counts.running >= counts.items ? Holds::prose : Holds::skills;
}

// A title of skills above running text, such as `Research interests`.
bool is_prose_after_all(const std::vector<OldRow>& rows) {
    return !rows.empty() && rows.size() < 4 && std::ranges::all_of(rows, [](const OldRow& row) {
        return is_running_text(row) && !row.item && row.words.back().text.ends_with('.');
    });
}

std::vector<DraftEntry> prose_entries(const std::vector<OldRow>& rows) {
    DraftEntry entry;
    for (const OldRow& row : rows) {
        entry.old.push_back(row.text());
        entry.add("text", row.text());
    }
    return {entry};
}

std::optional<model::DateRange> dates_of(DraftEntry& entry) {
    const DraftField* field = entry.find("dates");
    if (!field) return std::nullopt;
    auto read = model::read_dates(field->value);
    auto* dates = std::get_if<model::DateRange>(&read);
    return dates ? std::optional(*dates) : std::nullopt;
}

// One ends where the other starts.
bool follow_each_other(DraftEntry& later, DraftEntry& earlier) {
    const auto after = dates_of(later), before = dates_of(earlier);
    if (!after || !before || !after->start || !before->start || !before->end) return false;
    const int gap = model::months(*after->start).first - model::months(*before->end).last;
    return gap >= -1 && gap <= 1;
}

// A position without an employer below one that has one is at the same, where its dates go on from
// there, or where employers stand on a row above positions and this has none.
void mark_further(std::vector<DraftEntry>& entries, const std::vector<RowsOfEntry>& rows) {
    std::optional<std::size_t> first; // that has an employer
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (entries[i].find("employer") || !entries[i].find("role") || !first) {
            first = entries[i].find("employer") ? std::optional(i) : std::nullopt;
            continue;
        }
        const auto &above = rows[*first].heads, &heads = rows[i].heads;
        const bool lacks_row = !heads.empty() && heads.size() < above.size() &&
                               !above.front().looks_like(heads.front());
        entries[i].further =
            rows[i].position || lacks_row ||
            (!entries[i].find("place") && follow_each_other(entries[i - 1], entries[i]));
    }
}

// An employer with the time of all positions, above the first of them, is of that entry.
void join_employers(std::vector<DraftEntry>& entries, std::vector<RowsOfEntry>& rows) {
    for (std::size_t i = 0; i + 1 < entries.size();) {
        DraftEntry &above = entries[i], &below = entries[i + 1];
        const DraftField* employer = above.find("employer");
        if (!employer || above.find("role") || !above.bullets.empty() || !below.find("role") ||
            below.find("employer")) {
            ++i;
            continue;
        }
        auto role = std::ranges::find(below.fields, std::string("role"), &DraftField::label);
        role = below.fields.insert(role + 1, *employer);
        if (const DraftField* place = above.find("place"); place && !below.find("place"))
            below.fields.insert(role + 1, *place);
        below.guesses = {"role", "employer"};
        below.heads = above.heads + "; " + below.heads;
        below.old.insert(below.old.begin(), above.old.begin(), above.old.end());
        auto& heads = rows[i + 1].heads;
        heads.insert(heads.begin(), rows[i].heads.begin(), rows[i].heads.end());
        entries.erase(entries.begin() + static_cast<std::ptrdiff_t>(i));
        rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(i));
    }
}

class SectionDrafter {
public:
    SectionDrafter(const PageFacts& facts) : facts_(facts) {}

    std::vector<DraftSection> draft(OldSection old) {
        DraftSection section;
        section.title = trimmed(old.title.text, " :");
        take_aside(old.rows, section);
        section.guessed = !old.title.holds;
        section.holds = old.title.holds.value_or(guessed_holds(old.rows, facts_.languages));
        if (trade_groups(section.holds) && is_prose_after_all(old.rows))
            section.holds = Holds::prose;
        if (section.holds == Holds::prose)
            section.entries = prose_entries(old.rows);
        else if (trade_groups(section.holds))
            section.entries = skill_entries(old.rows, section.title);
        else
            add_rows(old.rows, section);
        std::erase_if(section.entries, [](const DraftEntry& entry) { return entry.old.empty(); });
        std::vector<DraftSection> sections = {std::move(section)};
        if (!schools_.empty()) {
            sections.push_back({"Education", Holds::education, {}, true, {}});
            add_entries(std::move(schools_), facts_, sections.back());
        }
        return sections;
    }

private:
    static bool trade_groups(Holds holds) {
        return holds == Holds::skills || holds == Holds::languages;
    }

    void add_rows(const std::vector<OldRow>& rows, DraftSection& section) {
        if (section.holds == Holds::experience || section.holds == Holds::education) {
            section.entries = captioned_entries(rows, section.holds, facts_);
            if (!section.entries.empty()) return;
        }
        auto parts = entries_in(rows, section.holds, facts_.languages);
        if (section.holds == Holds::experience) take_schools(parts);
        add_entries(std::move(parts), facts_, section);
    }

    void take_schools(std::vector<RowsOfEntry>& parts) {
        const auto schools =
            std::stable_partition(parts.begin(), parts.end(),
                                  [](const RowsOfEntry& part) { return !names_schooling(part); });
        if (schools == parts.begin()) return; // all of them: the title says otherwise
        std::move(schools, parts.end(), std::back_inserter(schools_));
        parts.erase(schools, parts.end());
    }

    const PageFacts& facts_;
    std::vector<RowsOfEntry> schools_; // among work
};

}

void take_aside(std::vector<OldRow>& rows, DraftSection& section) {
    std::erase_if(rows, [&](const OldRow& row) {
        const std::string text = row.text();
        if (row.running) section.after.push_back(fill<messages::page_says>(text));
        const bool offers = !row.running && (offers_references(text) || heads_table(row));
        if (offers) section.after.push_back(fill<messages::also_says>(text));
        return row.running || offers;
    });
}

void add_entries(std::vector<RowsOfEntry> parts, const PageFacts& facts, DraftSection& section) {
    for (const RowsOfEntry& part : parts)
        section.entries.push_back(section.holds == Holds::education
                                      ? education_entry(part, facts)
                                      : entry_of(part, section.holds, facts));
    if (section.holds != Holds::experience) return;
    join_employers(section.entries, parts);
    mark_further(section.entries, parts);
}

std::vector<DraftSection> draft_section(OldSection old, const PageFacts& facts) {
    return SectionDrafter(facts).draft(std::move(old));
}

}
