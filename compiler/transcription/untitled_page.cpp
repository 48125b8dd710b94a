#include "compiler/transcription/untitled_page.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/transcription/section_draft.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::transcription {

namespace {

using trade::Holds;

// `SolidWorks, MIG welding, French (some)`: short names that commas or semicolons part.
bool lists_skills(const OldRow& row, const portal::PageLanguages& languages) {
    constexpr std::size_t fewest = 4, most_words = 3;
    const std::string text = row.text();
    if (row.item || names_school(text) || names_degree(text) || text.ends_with('.')) return false;
    if (!dates_on(row.words, languages).empty()) return false;
    const auto parts = comma_parts(text);
    return parts.size() >= fewest && std::ranges::all_of(parts, [](std::string_view part) {
               return word_count(part.substr(0, part.find('('))) <= most_words &&
                      leans_to_role(part) < 2;
           });
}

// `Formula Team, Suspension Lead`: of what students do beside their studies.
bool names_club(const RowsOfEntry& entry) {
    constexpr std::array<std::string_view, 7> clubs = {
        "team", "club", "society", "sorority", "fraternity", "council", "chapter"};
    return std::ranges::any_of(entry.heads, [&](const OldRow& row) {
        const std::string text = row.text();
        return std::ranges::any_of(comma_parts(text), [&](std::string_view part) {
            return is_one_of(lower_case(part.substr(part.rfind(' ') + 1)), clubs);
        });
    });
}

struct Kind {
    Holds holds;
    std::string_view title;
};

constexpr std::array kinds{Kind{Holds::experience, "Experience"},
                           Kind{Holds::education, "Education"},
                           Kind{Holds::activities, "Activities"}, Kind{Holds::skills, "Skills"},
                           Kind{Holds::credentials, "Certifications"}};

class UntitledPage {
public:
    explicit UntitledPage(const PageFacts& facts) : facts_(facts) {}

    // Lists and cards stand by themselves; the rest makes up entries.
    std::vector<DraftSection> draft(std::vector<OldRow> rows) {
        DraftSection aside;
        take_aside(rows, aside);
        std::vector<OldRow> lists, cards, rest;
        for (std::size_t i = 0; i < rows.size(); ++i)
            (stands_as_list(rows, i)          ? lists
             : stands_as_card(rows[i], lists) ? cards
                                              : rest)
                .push_back(std::move(rows[i]));
        for (RowsOfEntry& entry : entries_in(rest, Holds::experience, facts_.languages))
            entries_of(kind_of(entry)).push_back(std::move(entry));
        for (auto& [holds, entries] : parts_)
            add_entries(std::move(entries), facts_, section(holds));
        if (!lists.empty()) section(Holds::skills).entries = skill_entries(lists, "Skills");
        if (!cards.empty())
            add_entries(entries_in(cards, Holds::credentials, facts_.languages), facts_,
                        section(Holds::credentials));
        if (!sections_.empty()) sections_.back().after = std::move(aside.after);
        return std::move(sections_);
    }

private:
    // Below what was done, or below white.
    bool stands_as_list(const std::vector<OldRow>& rows, std::size_t at) const {
        return (at == 0 || rows[at - 1].item || rows[at - 1].words.empty() || rows[at].gap > 0.5) &&
               lists_skills(rows[at], facts_.languages);
    }

    static bool stands_as_card(const OldRow& row, const std::vector<OldRow>& lists) {
        return !row.item && !lists.empty() && names_credential(row.text());
    }

    static Holds kind_of(const RowsOfEntry& entry) {
        if (names_schooling(entry)) return Holds::education;
        return names_club(entry) ? Holds::activities : Holds::experience;
    }

    std::vector<RowsOfEntry>& entries_of(Holds holds) {
        for (auto& [kind, entries] : parts_)
            if (kind == holds) return entries;
        return parts_.emplace_back(holds, std::vector<RowsOfEntry>()).second;
    }

    DraftSection& section(Holds holds) {
        const auto* kind = std::ranges::find(kinds, holds, &Kind::holds);
        sections_.push_back({std::string(kind->title), holds, {}, true, {}});
        return sections_.back();
    }

    const PageFacts& facts_;
    std::vector<std::pair<Holds, std::vector<RowsOfEntry>>> parts_;
    std::vector<DraftSection> sections_;
};

}

std::vector<DraftSection> draft_untitled(const OldSection& old, const PageFacts& facts) {
    auto parted = UntitledPage(facts).draft(old.rows);
    if (parted.size() > 1) return parted;
    return draft_section(old, facts);
}

}
