// Skills: a label and its items on a line, a label above its items, or items alone.
#include "compiler/transcription/entry_fields.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::transcription {

namespace {

constexpr std::size_t most_words_of_label = 5, longest_label = 60;

// As grammar/lines.hpp has the labels of groups.
bool may_be_label(std::string_view text) {
    constexpr std::string_view signs = " -&/+.'()#,";
    return !text.empty() && text.size() <= longest_label && !is_figure(text.front()) &&
           std::ranges::all_of(text, [&](char c) {
               return is_letter_or_figure(c) || static_cast<unsigned char>(c) >= 0x80 ||
                      signs.find(c) != signs.npos;
           });
}

struct SkillRow {
    std::string label;              // empty: none
    std::vector<std::string> items; // none: it is a label for what stands below
};

bool parts_items(const OldWord& word) {
    constexpr std::array<std::string_view, 6> signs = {"*",      "|",      "\u2022",
                                                       "\u00B7", "\u2219", "\u25AA"};
    return is_one_of(word.text, signs);
}

std::vector<std::string> pieces_apart(const std::vector<OldWord>& words, std::size_t begin) {
    std::vector<std::string> pieces;
    bool open = false;
    for (std::size_t i = begin; i < words.size(); ++i) {
        if (parts_items(words[i])) {
            open = false;
            continue;
        }
        if (!open || words[i].apart) pieces.emplace_back();
        open = true;
        pieces.back().append(pieces.back().empty() ? "" : " ").append(words[i].text);
    }
    return pieces;
}

// Words of the label: up to a colon, or set heavier than the rest, or apart from it.
std::size_t label_end(const OldRow& row) {
    const std::vector<OldWord>& words = row.words;
    const std::size_t most = std::min(words.size(), most_words_of_label);
    for (std::size_t i = 0; i < most; ++i)
        if (words[i].text.ends_with(':')) return i + 1;
    if (!words.front().strong || row.item) return 0;
    std::size_t end = 1;
    while (end < words.size() && words[end].strong)
        ++end;
    return end <= most_words_of_label && end < words.size() ? end : 0;
}

SkillRow read_skills(const OldRow& row) {
    SkillRow result;
    const std::size_t end = label_end(row);
    std::string label = joined_words(row.words, 0, end);
    label = std::string(trimmed(label, " :-"));
    if (end == 0 || !may_be_label(label)) {
        result.items = pieces_apart(row.words, 0);
        return result;
    }
    result.label = std::move(label);
    if (end < row.words.size()) result.items = pieces_apart(row.words, end);
    if (!result.items.empty())
        for (const std::string_view sign : {"\u2013 ", "\u2014 ", "- ", "| "})
            if (result.items.front().starts_with(sign)) result.items.front().erase(0, sign.size());
    return result;
}

std::string joined_items(const std::vector<std::string>& items) {
    std::string text;
    for (const std::string& item : items)
        text.append(text.empty() ? "" : text.ends_with(',') ? " " : ", ").append(item);
    return text;
}

class SkillReader {
public:
    explicit SkillReader(const std::string& title) : title_(trimmed(title, " :")) {}

    void take(const OldRow& row) {
        entry_.old.push_back(row.text());
        const SkillRow skills = read_skills(row);
        if (!skills.label.empty()) {
            open_ = skills.label;
            below_ = skills.items.empty();
            if (!below_) add(open_, joined_items(skills.items));
        } else if (below_ && !open_.empty()) {
            add(open_, joined_items(skills.items));
        } else {
            for (const std::string& item : skills.items)
                bare_.push_back(item);
        }
    }

    DraftEntry result() {
        if (entry_.fields.empty())
            for (std::string& item : bare_)
                entry_.fields.push_back({"", std::move(item)});
        else if (!bare_.empty())
            add(may_be_label(title_) ? title_ : "Other", joined_items(bare_));
        return std::move(entry_);
    }

private:
    void add(const std::string& label, const std::string& items) {
        if (DraftField* group = entry_.find(label))
            group->value += (group->value.ends_with(',') ? " " : ", ") + items;
        else
            entry_.add(label, items);
    }

    std::string title_;
    DraftEntry entry_;
    std::string open_; // the label above
    bool below_ = false;
    std::vector<std::string> bare_;
};

}

std::vector<DraftEntry> skill_entries(const std::vector<OldRow>& rows, const std::string& title) {
    SkillReader reader(title);
    for (const OldRow& row : rows)
        reader.take(row);
    return {reader.result()};
}

}
