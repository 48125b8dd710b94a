// A form's build, a caption before each value: `Employer: …`, `Position: …`, `Dates: …`.
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/transcription/entry_fields.hpp"
#include "compiler/transcription/form_captions.hpp"
#include "compiler/transcription/list_marks.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::transcription {

namespace {

struct FormCell {
    std::string_view label; // empty: no caption
    std::vector<OldWord> words;

    std::string text() const { return joined_words(words, 0, words.size()); }
};

FormCell cell_of(std::vector<OldWord> words) {
    constexpr std::size_t most = 4; // words of a caption
    for (std::size_t i = 0; i + 1 < words.size() && i < most; ++i) {
        if (!words[i].text.ends_with(':')) continue;
        const std::string said = lower_case(joined_words(words, 0, i + 1));
        const FormCaption* found = caption_named(std::string_view(said).substr(0, said.size() - 1));
        if (!found || found->part == FormPart::person || found->label == "items") break;
        words.erase(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(i + 1));
        words.front().apart = false;
        return {found->label, std::move(words)};
    }
    return {{}, std::move(words)};
}

// Parted by white, where each further one has a caption of its own.
std::vector<FormCell> cells_of(const OldRow& row) {
    std::vector<FormCell> cells;
    std::vector<OldWord> open;
    const auto close = [&] {
        FormCell cell = cell_of(std::exchange(open, {}));
        if (cell.label.empty() && !cells.empty())
            std::ranges::move(cell.words, std::back_inserter(cells.back().words));
        else
            cells.push_back(std::move(cell));
    };
    for (const OldWord& word : row.words) {
        if (word.apart && !open.empty() && !open.back().text.ends_with(':')) close();
        open.push_back(word);
    }
    close();
    return cells;
}

class FormReader {
public:
    FormReader(bool school, const portal::PageLanguages& languages)
        : school_(school), languages_(languages) {}

    void take(const OldRow& row) {
        goes_on_ = !row.item && is_small_letter(row.words.front().text.front()) &&
                   !entries_.empty() && !entries_.back().bullets.empty();
        for (const FormCell& cell : cells_of(row)) {
            if (entries_.empty() || begins_entry(cell.label)) begin_entry();
            take_cell(cell);
        }
        entries_.back().old.push_back(row.text());
    }

    std::vector<DraftEntry> entries() {
        close_dates();
        return std::move(entries_);
    }

private:
    void begin_entry() {
        close_dates();
        entries_.emplace_back();
    }

    bool begins_entry(std::string_view label) const {
        constexpr std::array<std::string_view, 6> further = {"-",     "place", "state",
                                                             "dates", "from",  "to"};
        const auto& fields = entries_.back().fields;
        return !label.empty() && !is_one_of(label, further) &&
               std::ranges::find(fields, label, &DraftField::label) != fields.end();
    }

    void take_cell(const FormCell& cell) {
        DraftEntry& entry = entries_.back();
        if (cell.label.empty() && goes_on_) return go_on(cell.text());
        if (cell.label.empty() || cell.label == "-") return add_bullets(cell.words);
        if (cell.label == "from") return void(from_ = cell.words);
        if (cell.label == "state") return add_state(cell.text());
        if (cell.label == "to") return add_span(cell.words);
        if (cell.label != "dates") return entry.add(cell.label, cell.text());
        add_dates(cell.words);
    }

    void go_on(const std::string& text) { entries_.back().bullets.back().text += " " + text; }

    // `- Guarded the pool. - Taught lessons.`: what was done, all on one row.
    void add_bullets(const std::vector<OldWord>& words) {
        const std::string sign = is_list_mark(words.front().text) ? words.front().text : "";
        std::vector<OldWord> open;
        const auto close = [&] {
            if (!open.empty())
                entries_.back().bullets.push_back({joined_words(open, 0, open.size()), 1});
            open.clear();
        };
        for (const OldWord& word : words)
            word.text == sign ? close() : open.push_back(word);
        close();
    }

    void add_state(const std::string& state) {
        DraftField* place = entries_.back().find("place");
        place ? void(place->value += ", " + state) : entries_.back().add("place", state);
    }

    void add_span(const std::vector<OldWord>& to) {
        std::vector<OldWord> words = std::exchange(from_, {});
        if (!words.empty()) words.push_back({"\u2013"});
        words.insert(words.end(), to.begin(), to.end());
        for (OldWord& word : words)
            word.apart = false;
        add_dates(words);
    }

    // `From: 2021` and no end: whether it goes on is not said.
    void close_dates() {
        if (from_.empty()) return;
        const bool adds = !entries_.back().find("dates");
        add_dates(std::exchange(from_, {}));
        if (adds) entries_.back().guesses.emplace_back("dates");
    }

    void add_dates(const std::vector<OldWord>& words) {
        const auto dates = dates_on(words, languages_);
        if (dates.empty()) return;
        const bool graduates = school_ && !dates.front().range;
        entries_.back().add(graduates ? "graduation" : "dates", dates.front().value);
    }

    bool school_;
    const portal::PageLanguages& languages_;
    std::vector<DraftEntry> entries_;
    std::vector<OldWord> from_;
    bool goes_on_ = false; // the row, with the bullet above
};

}

std::vector<DraftEntry> entries_by_captions(const std::vector<OldRow>& rows, trade::Holds holds,
                                            const PageFacts& facts) {
    FormReader reader(holds == trade::Holds::education, facts.languages);
    for (const OldRow& row : rows)
        reader.take(row);
    return reader.entries();
}

std::vector<DraftEntry> captioned_entries(const std::vector<OldRow>& rows, trade::Holds holds,
                                          const PageFacts& facts) {
    std::size_t captions = 0;
    for (const OldRow& row : rows)
        if (!row.item)
            captions += static_cast<std::size_t>(std::ranges::count_if(
                cells_of(row), [](const FormCell& cell) { return !cell.label.empty(); }));
    if (captions < 2 || 3 * captions < rows.size()) return {};
    return entries_by_captions(rows, holds, facts);
}

}
