// A form's build, a caption before each value: `Employer: …`, `Position: …`, `Dates: …`.
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/transcription/entry_fields.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::transcription {

namespace {

struct FormCaption {
    std::string_view words, label; // `-`: a bullet
};

constexpr std::array form_captions{
    FormCaption{"employer", "employer"},
    FormCaption{"company", "employer"},
    FormCaption{"organization", "employer"},
    FormCaption{"agency", "employer"},
    FormCaption{"position", "role"},
    FormCaption{"position title", "role"},
    FormCaption{"title", "role"},
    FormCaption{"job title", "role"},
    FormCaption{"role", "role"},
    FormCaption{"school", "school"},
    FormCaption{"institution", "school"},
    FormCaption{"college", "school"},
    FormCaption{"degree", "degree"},
    FormCaption{"program", "degree"},
    FormCaption{"location", "place"},
    FormCaption{"place", "place"},
    FormCaption{"city", "place"},
    FormCaption{"dates", "dates"},
    FormCaption{"date", "dates"},
    FormCaption{"dates employed", "dates"},
    FormCaption{"dates of employment", "dates"},
    FormCaption{"dates attended", "dates"},
    FormCaption{"period", "dates"},
    FormCaption{"year", "dates"},
    FormCaption{"graduated", "dates"},
    FormCaption{"graduation date", "dates"},
    FormCaption{"duties", "-"},
    FormCaption{"responsibilities", "-"},
    FormCaption{"job duties", "-"},
    FormCaption{"description", "-"},
    FormCaption{"accomplishments", "-"},
};

struct FormCell {
    std::string_view label; // empty: no caption
    std::vector<OldWord> words;

    std::string text() const { return joined_words(words, 0, words.size()); }
};

FormCell cell_of(std::vector<OldWord> words) {
    constexpr std::size_t most = 3; // words of a caption
    for (std::size_t i = 0; i + 1 < words.size() && i < most; ++i) {
        if (!words[i].text.ends_with(':')) continue;
        const std::string said = lower_case(joined_words(words, 0, i + 1));
        const auto* found = std::ranges::find(
            form_captions, std::string_view(said).substr(0, said.size() - 1), &FormCaption::words);
        if (found == form_captions.end()) break;
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
        for (const FormCell& cell : cells_of(row)) {
            if (entries_.empty() || begins_entry(cell.label)) entries_.emplace_back();
            take_cell(cell);
        }
        entries_.back().old.push_back(row.text());
    }

    std::vector<DraftEntry> entries() { return std::move(entries_); }

private:
    bool begins_entry(std::string_view label) {
        return label != "-" && !label.empty() && label != "place" && label != "dates" &&
               entries_.back().find(label);
    }

    void take_cell(const FormCell& cell) {
        DraftEntry& entry = entries_.back();
        if (cell.label.empty() || cell.label == "-")
            return entry.bullets.push_back({cell.text(), 1});
        if (cell.label != "dates") return entry.add(cell.label, cell.text());
        const auto dates = dates_on(cell.words, languages_);
        if (dates.empty()) return;
        const bool graduates = school_ && !dates.front().range;
        entry.add(graduates ? "graduation" : "dates", dates.front().value);
    }

    bool school_;
    const portal::PageLanguages& languages_;
    std::vector<DraftEntry> entries_;
};

}

std::vector<DraftEntry> captioned_entries(const std::vector<OldRow>& rows, trade::Holds holds,
                                          const PageFacts& facts) {
    std::size_t captions = 0;
    for (const OldRow& row : rows)
        if (!row.item)
            captions += static_cast<std::size_t>(std::ranges::count_if(
                cells_of(row), [](const FormCell& cell) { return !cell.label.empty(); }));
    if (captions < 2 || 3 * captions < rows.size()) return {};
    FormReader reader(holds == trade::Holds::education, facts.languages);
    for (const OldRow& row : rows)
        reader.take(row);
    return reader.entries();
}

}
