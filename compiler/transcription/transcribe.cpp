#include "compiler/transcription/transcribe.hpp"

#include "compiler/transcription/answers_below.hpp"
#include "compiler/transcription/draft_source.hpp"
#include "compiler/transcription/form_page.hpp"
#include "compiler/transcription/heading_block.hpp"
#include "compiler/transcription/kept_words.hpp"
#include "compiler/transcription/messages.hpp"
#include "compiler/transcription/section_draft.hpp"
#include "compiler/transcription/untitled_page.hpp"

#include <algorithm>
#include <utility>

namespace quoin::transcription {

namespace {

using trade::Holds;

// What an entry's fields and comments do not say is said in a comment.
void keep_words(DraftEntry& entry) {
    WordBag said;
    for (const DraftField& field : entry.fields) {
        said.add(field.label);
        said.add(field.value);
    }
    for (const DraftBullet& bullet : entry.bullets)
        said.add(bullet.text);
    if (!entry.guesses.empty()) said.add(entry.heads);
    for (const std::string& remark : entry.remarks)
        said.add(remark);
    std::string missing;
    for (const std::string& row : entry.old)
        if (const std::string words = said.take_out(row); !words.empty())
            missing.append(missing.empty() ? "" : "; ").append(words);
    if (!missing.empty()) entry.remarks.push_back(fill<messages::also_says>(missing));
}

void add_name(Draft& draft, const PageParts& page) {
    if (draft.heading.find("name")) return;
    std::string name = page.heading.empty() ? "" : page.heading.front().text();
    if (name.empty() && !page.sections.empty()) name = page.sections.front().title.text;
    draft.heading.fields.insert(draft.heading.fields.begin(), {"name", name});
    draft.heading.remarks.push_back(fill<messages::no_name_found>());
}

KnownTowns towns_of(const OldDocument& document) {
    KnownTowns towns;
    for (const OldLine& line : document.lines) {
        std::string text;
        for (const OldWord& word : line.words) {
            const bool parts = word.apart || word.text == "|" || word.text == "\u00B7" ||
                               word.text == "\u2022" || word.text == "\u2013";
            if (parts) towns.learn(std::exchange(text, {}));
            text.append(text.empty() ? "" : " ").append(word.text);
        }
        towns.learn(text);
    }
    return towns;
}

HeadHabits habits_of(const PageParts& page, const PageFacts& facts) {
    HeadHabits habits;
    for (const OldSection& section : page.sections) {
        const Holds holds = section.title.holds.value_or(Holds::other);
        const bool works = holds == Holds::experience || holds == Holds::activities;
        if (!works && holds != Holds::education) continue;
        for (const RowsOfEntry& entry : entries_in(section.rows, holds, facts.languages)) {
            const HeadPieces pieces = pieces_of_heads(entry.heads, facts.towns, facts.languages);
            habits.learn_places(pieces);
            if (works) habits.learn(pieces);
        }
    }
    return habits;
}

void add_heading(const PageParts& page, Draft& draft) {
    std::vector<OldRow> rows;
    std::optional<std::size_t> name_row;
    for (std::size_t i = 0; i < page.heading.size(); ++i) {
        if (i == page.name_row) name_row = rows.size();
        if (page.heading[i].running)
            draft.remarks.push_back(fill<messages::page_says>(page.heading[i].text()));
        else
            rows.push_back(page.heading[i]);
    }
    HeadingRead heading = read_heading(rows, name_row);
    draft.heading = std::move(heading.entry);
    std::ranges::copy(page.aside, std::back_inserter(draft.heading.old));
    if (heading.prose.empty()) return;
    DraftSection section{"Summary", Holds::prose, {}, true, {}};
    section.entries.emplace_back();
    for (std::string& text : heading.prose)
        section.entries.back().add("text", std::move(text));
    draft.sections.push_back(std::move(section));
}

Draft draft_of_page(const PageParts& page, const PageFacts& facts) {
    Draft draft;
    if (page.untitled) draft.remarks.push_back(fill<messages::no_titles>());
    add_heading(page, draft);
    add_name(draft, page);
    for (const OldSection& section : page.sections)
        std::ranges::move(page.untitled ? draft_untitled(section, facts)
                                        : draft_section(section, facts),
                          std::back_inserter(draft.sections));
    return draft;
}

std::size_t word_count_lost(const PageParts& page, std::string& source) {
    WordBag said;
    said.add(source);
    std::string missing;
    const auto look_at = [&](const std::string& text) {
        if (const std::string words = said.take_out(in_markup(text)); !words.empty())
            missing.append(missing.empty() ? "" : "; ").append(words);
    };
    for (const OldRow& row : page.heading)
        look_at(row.text());
    for (const OldSection& section : page.sections) {
        if (section.title.words > 0) look_at(section.title.text);
        for (const OldRow& row : section.rows)
            look_at(row.text());
    }
    if (missing.empty()) return 0;
    source += "\n# " + fill<messages::words_left>(missing) + "\n";
    return 1;
}

}

Transcription transcribe(const OldDocument& document, const TranscriptionTools& tools) {
    const PageParts page = parts_of(answers_beside(document.lines), tools.languages, tools.is_word);
    const KnownTowns towns = towns_of(document);
    PageFacts facts{towns, tools.languages, {}};
    facts.habits = habits_of(page, facts);
    auto form = draft_of_form(page, facts);
    Draft draft = form ? std::move(*form) : draft_of_page(page, facts);
    draft.remarks.insert(draft.remarks.begin(), document.remarks.begin(), document.remarks.end());
    keep_words(draft.heading);
    Transcription result;
    for (DraftSection& section : draft.sections) {
        ++result.sections;
        for (DraftEntry& entry : section.entries) {
            keep_words(entry);
            ++result.entries;
            result.bullets += entry.bullets.size();
            result.guesses += entry.guesses.size();
        }
    }
    result.source = source_that_reads(source_of(draft), tools.words.string());
    word_count_lost(page, result.source);
    return result;
}

}
