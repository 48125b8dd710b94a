// Rows by their captions: what asks for a person, for work and for schooling, each to its section.
#include "compiler/transcription/form_page.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/transcription/form_captions.hpp"
#include "compiler/transcription/messages.hpp"

#include <utility>

namespace quoin::transcription {

namespace {

using trade::Holds;

constexpr std::size_t most_words_of_caption = 4;

std::size_t words_of_caption(const OldRow& row) {
    for (std::size_t i = 0; i < std::min(row.words.size(), most_words_of_caption) && !row.item; ++i)
        if (row.words[i].text.ends_with(':')) return i + 1;
    return 0;
}

const FormCaption* caption_of(const OldRow& row) {
    const std::size_t words = words_of_caption(row);
    if (words == 0 || words == row.words.size()) return nullptr;
    return caption_named(lower_case(trimmed(joined_words(row.words, 0, words), " :*")));
}

OldRow value_of(OldRow row) {
    row.words.erase(row.words.begin(),
                    row.words.begin() + static_cast<std::ptrdiff_t>(words_of_caption(row)));
    row.words.front().apart = false;
    return row;
}

// `Are you willing to travel? Yes`
bool asks(const OldRow& row) {
    constexpr std::size_t fewest = 4; // words
    for (std::size_t i = fewest - 1; i < row.words.size() && !row.item; ++i)
        if (row.words[i].text.ends_with('?')) return true;
    return false;
}

std::vector<OldRow> all_rows(const PageParts& page) {
    std::vector<OldRow> rows = page.heading;
    for (const OldSection& section : page.sections)
        rows.insert(rows.end(), section.rows.begin(), section.rows.end());
    return rows;
}

// Most of its rows have a caption that is known, and one of them asks for the name.
bool is_form(const std::vector<OldRow>& rows) {
    constexpr std::size_t fewest = 6;
    std::size_t known = 0, plain = 0;
    bool named = false;
    for (const OldRow& row : rows) {
        const FormCaption* caption = caption_of(row);
        plain += !row.item;
        known += caption != nullptr;
        named = named || (caption && (caption->label == "last" || caption->label == "name"));
    }
    return named && known >= fewest && 2 * known > plain;
}

// `First Aid, exp. 05/2027; Open Water Diver`: a date goes with what stands before it.
std::vector<OldRow> parted_items(const OldRow& row, const portal::PageLanguages& languages) {
    const char sign = row.text().find(';') != std::string::npos ? ';' : ',';
    std::vector<OldRow> items;
    std::vector<OldWord> open;
    const auto close = [&] {
        const auto dates = dates_on(open, languages);
        const bool dated = !dates.empty() && dates.front().begin == 0 && !items.empty();
        OldRow& item = dated ? items.back() : items.emplace_back();
        item.words.insert(item.words.end(), open.begin(), open.end());
        open.clear();
    };
    for (const OldWord& word : row.words) {
        open.push_back(word);
        if (word.text.ends_with(sign)) close();
    }
    if (!open.empty()) close();
    return items;
}

class FormPage {
public:
    explicit FormPage(const PageFacts& facts) : facts_(facts) {}

    void take(const OldRow& row) {
        const FormCaption* caption = caption_of(row);
        if (caption && caption->part != FormPart::any && caption->part != part_)
            begin(caption->part);
        if (row.running || asks(row) || (!caption && words_of_caption(row) > 0))
            leave(row);
        else if (part_ == FormPart::person)
            take_person(row, caption);
        else
            rows_.push_back(row);
    }

    Draft draft() {
        begin(FormPart::any);
        draft_.heading.fields.insert(draft_.heading.fields.begin(), {"name", name()});
        add_address();
        return std::move(draft_);
    }

private:
    // Of a page's own person: fields that make up one of the markup's.
    void take_person(const OldRow& row, const FormCaption* caption) {
        draft_.heading.old.push_back(row.text());
        if (!caption) return;
        const std::string value = value_of(row).text();
        if (caption->label == "first" || caption->label == "middle")
            given_.append(given_.empty() ? "" : " ").append(value);
        else if (caption->label == "last" || caption->label == "name")
            (caption->label == "last" ? family_ : whole_) = value;
        else if (caption->label == "street")
            street_ = value;
        else if (caption->label == "place")
            town_ = value;
        else if (caption->label == "state" || caption->label == "zip")
            state_.append(state_.empty() ? "" : " ").append(value);
        else
            draft_.heading.add(caption->label, value);
    }

    std::string name() const {
        if (!whole_.empty()) return whole_;
        return given_.empty() ? family_ : given_ + " " + family_;
    }

    void add_address() {
        std::string address;
        for (const std::string& part : {street_, town_, state_})
            if (!part.empty()) address.append(address.empty() ? "" : ", ").append(part);
        draft_.heading.add("address", std::move(address));
    }

    // What no résumé says.
    void leave(const OldRow& row) {
        if (part_ == FormPart::person || rows_.empty())
            draft_.heading.old.push_back(row.text());
        else
            left_.push_back(fill<messages::also_says>(row.text()));
    }

    void begin(FormPart part) {
        if (!rows_.empty()) add_section();
        part_ = part;
    }

    void add_section() {
        static constexpr std::array<std::pair<std::string_view, Holds>, 5> sections = {
            {{"Experience", Holds::experience},
             {"Education", Holds::education},
             {"Skills", Holds::skills},
             {"Languages", Holds::languages},
             {"Certifications", Holds::credentials}}};
        const auto& [title, holds] = sections[static_cast<std::size_t>(part_) - 1];
        DraftSection section{std::string(title), holds, {}, false, std::exchange(left_, {})};
        section.entries = entries_of(std::exchange(rows_, {}), section);
        draft_.sections.push_back(std::move(section));
    }

    std::vector<DraftEntry> entries_of(std::vector<OldRow> rows, const DraftSection& section) {
        if (part_ == FormPart::work || part_ == FormPart::study)
            return entries_by_captions(rows, section.holds, facts_);
        for (OldRow& row : rows)
            if (caption_of(row)) row = value_of(std::move(row));
        if (part_ != FormPart::credentials) return skill_entries(rows, section.title);
        std::vector<DraftEntry> entries;
        for (const OldRow& row : rows)
            for (const OldRow& item : parted_items(row, facts_.languages))
                entries.push_back(entry_of({{item}, {}, {}}, section.holds, facts_));
        return entries;
    }

    const PageFacts& facts_;
    Draft draft_;
    FormPart part_ = FormPart::person;
    std::vector<OldRow> rows_; // of the part that is open
    std::vector<std::string> left_;
    std::string given_, family_, whole_, street_, town_, state_;
};

}

std::optional<Draft> draft_of_form(const PageParts& page, const PageFacts& facts) {
    const std::vector<OldRow> rows = all_rows(page);
    if (!is_form(rows)) return std::nullopt;
    FormPage form(facts);
    for (const OldRow& row : rows)
        form.take(row);
    Draft draft = form.draft();
    draft.heading.old.insert(draft.heading.old.end(), page.aside.begin(), page.aside.end());
    for (const OldSection& section : page.sections)
        if (section.title.words > 0) draft.heading.old.push_back(section.title.text);
    return draft;
}

}
