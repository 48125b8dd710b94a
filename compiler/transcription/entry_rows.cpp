// Entries by what divides them: bullets above, white above, a second date.
#include "compiler/transcription/entry_rows.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/transcription/entry_fields.hpp"
#include "compiler/transcription/evidence.hpp"
#include "compiler/transcription/mended_rows.hpp"
#include "compiler/transcription/old_dates.hpp"

#include <algorithm>
#include <utility>

namespace quoin::transcription {

namespace {

constexpr double set_in = 5;       // pt: as far as an item stands from the margin at least
constexpr double more_white = 0.4; // of the height, beyond what lines have between them
constexpr std::size_t most_heads = 4;

struct RowFacts {
    bool dated = false; // has a date of its own, or nothing else
    bool only_dates = false;
    bool in_name = false;        // its date is in parentheses, or in a phrase
    bool in_parentheses = false; // a span at its end
    double left = 0;             // of what is no date
};

// With a stop, and too long for a name: what dates it has are of what it tells.
bool is_sentence(const OldRow& row) {
    constexpr std::size_t least = 8; // words
    const auto small = static_cast<std::size_t>(std::ranges::count_if(
        row.words, [](const OldWord& word) { return is_small_letter(word.text.front()); }));
    return row.words.size() >= least && row.words.back().text.ends_with('.') &&
           9 * row.words.size() < 20 * small && std::ranges::none_of(row.words, &OldWord::apart);
}

RowFacts facts_of(const OldRow& row, bool prose_counts, const portal::PageLanguages& languages) {
    RowFacts facts;
    facts.left = row.left;
    if (!prose_counts && is_sentence(row)) return facts;
    std::size_t covered = 0;
    for (const DatesOnLine& dates : dates_on(row.words, languages)) {
        if (dates.aside) continue;
        if (dates.begin == covered) covered = dates.end;
        const bool leads = dates.begin == 0 && dates.end < row.words.size();
        if (leads) facts.left = row.words[dates.end].left;
        const bool soft = dates.in_parentheses || dates.glued;
        facts.in_name = soft && (facts.in_name || !facts.dated);
        facts.dated = facts.dated || !soft || dates.end == row.words.size();
        facts.in_parentheses =
            dates.in_parentheses && dates.range && dates.end == row.words.size() && dates.begin > 0;
    }
    facts.only_dates = covered == row.words.size();
    return facts;
}

// Names have a capital in each word that counts.
bool reads_as_phrase(const OldRow& row) {
    const auto small = static_cast<std::size_t>(std::ranges::count_if(
        row.words, [](const OldWord& word) { return is_small_letter(word.text.front()); }));
    return is_capital_letter(row.words.front().text.front()) && 2 * small > row.words.size() &&
           std::ranges::none_of(row.words, &OldWord::apart);
}

bool is_list_of_lines(trade::Holds holds) {
    return holds == trade::Holds::honors || holds == trade::Holds::credentials ||
           holds == trade::Holds::publications;
}

class EntryParter {
public:
    EntryParter(const std::vector<OldRow>& rows, trade::Holds holds,
                const portal::PageLanguages& languages)
        : rows_(is_list_of_lines(holds) ? rows : mended_rows(rows, languages)), holds_(holds),
          languages_(languages) {
        std::vector<double> gaps;
        for (const OldRow& row : rows_) {
            facts_.push_back(facts_of(row, is_list_of_lines(holds), languages));
            if (!row.running && !row.begins_column && facts_.size() > 1) gaps.push_back(row.gap);
            has_marks_ = has_marks_ || row.item;
            if (!row.running && !row.item) margin_ = std::min(margin_, facts_.back().left);
        }
        std::ranges::sort(gaps);
        usual_gap_ = gaps.empty() ? 0 : gaps[gaps.size() / 4];
        if (holds == trade::Holds::experience) find_positions();
    }

    // Dates on rows of their own stand above each entry or within its head: which way is right the
    // whole section tells, as that which leaves least without its dates.
    std::vector<RowsOfEntry> part() {
        auto within = part_with(false);
        if (std::ranges::none_of(facts_, &RowFacts::only_dates)) return within;
        auto above = part_with(true);
        const std::size_t lost_within = unpaired(within), lost_above = unpaired(above);
        const bool lead =
            lost_above == lost_within ? stand_nearer_below() : lost_above < lost_within;
        auto& better = lead ? above : within;
        if (lost_above == lost_within && !pair_alike(above, within))
            for (RowsOfEntry& entry : better)
                entry.dates_guessed = names_in(entry) < std::ssize(entry.heads);
        return std::move(better);
    }

private:
    // `Cook, First Class (2019–2022)` more than once, each above what was done: dates of its own.
    void find_positions() {
        std::vector<std::size_t> positions;
        for (std::size_t i = 0; i + 1 < rows_.size(); ++i)
            if (facts_[i].in_parentheses && !rows_[i].item && rows_[i + 1].item)
                positions.push_back(i);
        if (positions.size() < 2) return;
        for (const std::size_t i : positions)
            facts_[i].in_name = false;
    }

    std::vector<RowsOfEntry> part_with(bool dates_lead) {
        dates_lead_ = dates_lead;
        dated_at_ = none;
        entries_.clear();
        for (std::size_t i = 0; i < rows_.size(); ++i)
            take(i);
        return std::move(entries_);
    }

    // Entries without dates, dates without an entry, and dates beside others.
    std::size_t unpaired(const std::vector<RowsOfEntry>& entries) const {
        std::size_t count = 0;
        for (const RowsOfEntry& entry : entries) {
            std::size_t dated = 0, lone = 0;
            for (const OldRow& row : entry.heads) {
                const RowFacts facts = facts_of(row, false, languages_);
                dated += facts.dated;
                lone += facts.only_dates;
            }
            count += dated == 0;
            count += lone > 1 ? lone - 1 : 0;
            count += lone == entry.heads.size() && !entry.heads.empty();
        }
        return count;
    }

    static bool pair_alike(const std::vector<RowsOfEntry>& some,
                           const std::vector<RowsOfEntry>& others) {
        return std::ranges::equal(
            some, others, {}, [](const RowsOfEntry& entry) { return entry.heads.size(); },
            [](const RowsOfEntry& entry) { return entry.heads.size(); });
    }

    // Most have more white above them than below.
    bool stand_nearer_below() const {
        int below = 0;
        for (std::size_t i = 0; i < rows_.size(); ++i) {
            if (!facts_[i].only_dates) continue;
            const bool first = i == 0, last = i + 1 == rows_.size();
            const double above = first ? 1 : rows_[i].gap, under = last ? 1 : rows_[i + 1].gap;
            below += (above > under + more_white) - (under > above + more_white);
        }
        return below > 0;
    }

    RowsOfEntry& current() {
        if (entries_.empty()) entries_.emplace_back();
        return entries_.back();
    }

    void take(std::size_t at) {
        const OldRow& row = rows_[at];
        if (row.running) {
            current().running.push_back(row);
        } else if (is_item(at)) {
            if (is_list_of_lines(holds_) && (entries_.empty() || !has_open_head()))
                start(row);
            else
                current().items.push_back(row);
        } else if (starts_entry(at)) {
            is_position(at) ? start_position(at) : start(row);
            note_dates(at);
        } else {
            current().heads.push_back(row);
            note_dates(at);
        }
    }

    // A list of awards may be one of bullets, each an entry.
    bool has_open_head() const {
        return !entries_.back().heads.empty() && !entries_.back().heads.front().item;
    }

    void start(const OldRow& row) {
        entries_.emplace_back();
        entries_.back().heads.push_back(row);
        dated_at_ = none;
    }

    bool is_position(std::size_t at) const {
        return facts_[at].in_parentheses && !facts_[at].in_name;
    }

    std::ptrdiff_t names_in(const RowsOfEntry& entry) const {
        return std::ranges::count_if(entry.heads, [&](const OldRow& row) {
            return !facts_of(row, false, languages_).only_dates;
        });
    }

    // One name, which is no work, with its dates beside it or on the next row.
    bool may_employ(const RowsOfEntry& entry) const {
        constexpr double role = 1.5;
        if (entry.heads.empty()) return false;
        const OldRow& row = entry.heads.front();
        return entry.items.empty() && names_in(entry) == 1 && leans_to_role(row.text()) < role &&
               !facts_of(row, false, languages_).in_parentheses;
    }

    // An employer with the time of all positions stands above the first of them.
    void start_position(std::size_t at) {
        RowsOfEntry* above = entries_.empty() ? nullptr : &entries_.back();
        const bool below_employer = above && (above->position || may_employ(*above));
        if (below_employer) above->employs = !above->position;
        start(rows_[at]);
        entries_.back().position = below_employer;
    }

    void note_dates(std::size_t at) {
        if (!facts_[at].dated || dated_at_ != none) return;
        dated_at_ = current().heads.size() - 1;
        date_in_name_ = facts_[at].in_name;
    }

    bool is_item(std::size_t at) const {
        const OldRow& row = rows_[at];
        if (row.item) return true;
        if (entries_.empty() || entries_.back().heads.empty()) return false;
        if (is_list_of_lines(holds_)) return false;
        const RowFacts& facts = facts_[at];
        if (holds_ == trade::Holds::education) {
            if (states_facts(row.text())) return true;
            if (opens_with_fact(row.text()) && !names_school(row.text())) return true;
            if (is_set_in_fact(at)) return true;
            if (!row.words.back().text.ends_with('.')) return false;
        }
        const bool below_items = !entries_.back().items.empty();
        const bool in = facts.left > margin_ + set_in && !facts.dated;
        if (in && !has_marks_ && !row.words.front().strong) return true;
        if (in && below_items && !is_apart(at)) return true;
        if (tells_what_was_done(at)) return true;
        return is_running_text(row) && !facts.dated && (!is_apart(at) || below_items);
    }

    // A phrase in small letters below a head that is whole, with no sign before it.
    bool tells_what_was_done(std::size_t at) const {
        constexpr std::size_t fewest = 5, fewest_below_others = 3,
                              fewest_without_white = 7; // words
        const OldRow& row = rows_[at];
        if (facts_[at].dated || row.words.front().strong || !reads_as_phrase(row)) return false;
        if (!entries_.back().items.empty())
            return !is_apart(at) && row.words.size() >= fewest_below_others;
        if (dated_at_ == none) return false;
        return row.words.size() >= (is_apart(at) ? fewest : fewest_without_white);
    }

    // Below a school, further in than it, and neither another nor a degree.
    bool is_set_in_fact(std::size_t at) const {
        const OldRow& row = rows_[at];
        const std::string text = row.text();
        return facts_[at].left > margin_ + set_in && !facts_[at].dated &&
               !row.words.front().strong && std::ranges::none_of(row.words, &OldWord::apart) &&
               !names_school(text) && !names_degree(text) &&
               row.left > entries_.back().heads.front().left + set_in;
    }

    // Each row names a school and what it awards, or a school stands below another with its degree.
    bool starts_school(std::size_t at) const {
        const std::string text = rows_[at].text();
        if (holds_ != trade::Holds::education || facts_[at].dated || !names_school(text))
            return false;
        bool school = false, degree = false;
        for (const OldRow& row : entries_.back().heads) {
            // `High School Diploma` names no school
            const std::string rest = replaced(lower_case(row.text()), "high school diploma", "");
            school = school || names_school(rest);
            degree = degree || names_degree(row.text());
        }
        return school && degree;
    }

    // Lines of one look without dates, each with what it is and what was done: `Club, treasurer`.
    bool starts_club(std::size_t at) const {
        if (holds_ != trade::Holds::activities || dated_at_ != none || facts_[at].dated)
            return false;
        const std::vector<OldRow>& heads = entries_.back().heads;
        return heads.size() == 1 && heads.front().looks_like(rows_[at]) &&
               comma_parts(heads.front().text()).size() > 1;
    }

    bool is_apart(std::size_t at) const {
        return rows_[at].gap > usual_gap_ + more_white && !rows_[at].begins_column;
    }

    bool starts_entry(std::size_t at) {
        if (entries_.empty() || entries_.back().heads.empty()) return true;
        const RowsOfEntry& entry = entries_.back();
        const RowFacts& facts = facts_[at];
        if (dates_lead_ && facts.only_dates) return true;
        if (dates_lead_ && awaits_name()) return false;
        if (!entry.items.empty()) return !facts.only_dates;
        if (is_list_of_lines(holds_)) return starts_line(at);
        if (starts_school(at) || starts_club(at)) return true;
        if (is_apart(at) && !facts.only_dates) return !awaits_more(at);
        const bool another = facts.dated && (!facts.in_name || date_in_name_);
        if (another && dated_at_ != none) return splits_at_dates(at);
        return entry.heads.size() >= most_heads && !facts.only_dates;
    }

    // Nothing but its dates has been read.
    bool awaits_name() const {
        const RowsOfEntry& entry = entries_.back();
        return entry.items.empty() && entry.heads.size() == 1 &&
               facts_of(entry.heads.front(), false, languages_).only_dates;
    }

    // Little is known of the entry yet, and this row has what is missing.
    bool awaits_more(std::size_t at) const {
        const RowsOfEntry& entry = entries_.back();
        const bool looks_otherwise = !entry.heads.front().looks_like(rows_[at]);
        return dated_at_ == none && facts_[at].dated && entry.heads.size() == 1 &&
               looks_otherwise && rows_[at].gap < usual_gap_ + 1;
    }

    bool starts_line(std::size_t at) const {
        const RowsOfEntry& entry = entries_.back();
        if (facts_[at].only_dates) return false;
        if (entry.heads.front().item) return true;
        const bool goes_on = facts_[at].left > margin_ + set_in ||
                             (dated_at_ == none && facts_[at].dated && entry.heads.size() == 1 &&
                              !entry.heads.front().looks_like(rows_[at]));
        return !goes_on || is_apart(at);
    }

    // Entries that nothing but their dates divide have those on the same row of each; what stands
    // above that row goes with it.
    bool splits_at_dates(std::size_t at) {
        std::vector<OldRow>& heads = entries_.back().heads;
        const std::size_t below = heads.size() - dated_at_ - 1;
        if (facts_[at].only_dates && below == 0) return false; // two dates of one entry
        const std::size_t above = std::min(dated_at_, below);
        if (above == 0) return true;
        RowsOfEntry next;
        next.heads.assign(heads.end() - static_cast<std::ptrdiff_t>(above), heads.end());
        heads.resize(heads.size() - above);
        entries_.push_back(std::move(next));
        dated_at_ = none;
        return false;
    }

    static constexpr std::size_t none = static_cast<std::size_t>(-1);

    std::vector<OldRow> rows_;
    trade::Holds holds_;
    std::vector<RowFacts> facts_;
    std::vector<RowsOfEntry> entries_;
    bool has_marks_ = false;
    bool dates_lead_ = false; // those on rows of their own stand above each entry
    const portal::PageLanguages& languages_;
    double margin_ = 1e6;
    double usual_gap_ = 0;
    std::size_t dated_at_ = none; // the row of the entry that is open
    bool date_in_name_ = false;
};

}

bool names_schooling(const RowsOfEntry& entry) {
    constexpr double role = 1.5;
    bool school = false, degree = false;
    for (const OldRow& row : entry.heads) {
        const std::string text = row.text();
        for (const std::string_view part : comma_parts(text)) {
            const bool awarded = part.find(" of ") != part.npos || part.find(" in ") != part.npos;
            if (!awarded && leans_to_role(part) > role) return false;
            school = school || names_school(part);
            degree = degree || names_degree(part);
        }
    }
    return entry.items.empty() && school && degree;
}

bool is_running_text(const OldRow& row) {
    constexpr std::size_t least = 4, surely = 13;
    const std::string_view last = row.words.back().text;
    const bool ends = last.ends_with('.') || last.ends_with(';') || last.ends_with('!');
    const bool apart = std::ranges::any_of(row.words, &OldWord::apart);
    return !apart && ((row.words.size() >= least && ends) || row.words.size() >= surely);
}

std::vector<RowsOfEntry> entries_in(const std::vector<OldRow>& rows, trade::Holds holds,
                                    const portal::PageLanguages& languages) {
    return EntryParter(rows, holds, languages).part();
}

}
