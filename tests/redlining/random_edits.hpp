// Drafts of the sample résumés, and random edits of them that say what each is.
#pragma once

#include "compiler/redlining/word_changes.hpp"
#include "compiler/stages/model/build.hpp"
#include "tests/source_lines.hpp"

#include <algorithm>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <random>
#include <set>
#include <string>
#include <vector>

namespace quoin::redlining::test {

namespace fs = std::filesystem;

struct Read {
    Sources sources;
    Diagnostics diagnostics;
    std::optional<model::Resume> resume;
};

inline std::unique_ptr<Read> read(const fs::path& path, const std::string& text) {
    auto one = std::make_unique<Read>();
    one->sources.hold(path, text);
    const auto file = one->sources.read(path, one->diagnostics);
    if (file)
        one->resume = model::build_resume(
            one->sources, *file, fs::path(QUOIN_DATA_FOLDER) / "themes/words", one->diagnostics);
    return one;
}

inline std::string text_of(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines)
        text += line + '\n';
    return text;
}

inline std::vector<fs::path> samples() {
    std::vector<fs::path> all;
    for (const char* folder : {"samples", "samples/everything"})
        for (const auto& entry : fs::directory_iterator(fs::path(QUOIN_SOURCE_FOLDER) / folder))
            if (entry.path().extension() == ".resume") all.push_back(entry.path());
    std::sort(all.begin(), all.end());
    return all;
}

// Puts off edits of lines until all are made, so that numbers stay good. Lines count from 1.
class Edits {
public:
    explicit Edits(std::vector<std::string> lines) : lines_(std::move(lines)) {
        for (const std::string& line : lines_)
            after_.push_back({line});
    }
    const std::string& line(std::size_t number) const { return lines_[number - 1]; }
    std::size_t size() const { return lines_.size(); }
    // Behind the last line of what begins at `number` and is folded.
    std::size_t end_of_folded(std::size_t number) const {
        std::size_t end = number + 1;
        while (end <= size() && (line(end).starts_with(' ') || line(end).starts_with('\t')))
            ++end;
        return end;
    }
    std::size_t end_of_block(std::size_t number) const {
        std::size_t end = number;
        while (end <= size() && !line(end).empty())
            ++end;
        return end;
    }
    std::vector<std::string> taken(std::size_t begin, std::size_t end) {
        std::vector<std::string> block;
        for (std::size_t number = begin; number < end; ++number) {
            block.push_back(line(number));
            after_[number - 1].clear();
        }
        return block;
    }
    void put_before(std::size_t number, const std::vector<std::string>& block) {
        auto& at = after_[number - 1];
        at.insert(at.begin(), block.begin(), block.end());
    }
    void replace(std::size_t number, std::string by) { after_[number - 1] = {std::move(by)}; }
    std::string text() const {
        std::string all;
        for (const auto& block : after_)
            all += text_of(block);
        return all;
    }

private:
    std::vector<std::string> lines_;
    std::vector<std::vector<std::string>> after_;
};

// Makes random edits of one sample, each in an entry of its own, and says what each is.
class Editor {
public:
    Editor(const model::Resume& resume, std::vector<std::string> lines, std::mt19937& random)
        : resume_(resume), edits_(std::move(lines)), random_(random) {}

    void edit() {
        const model::Section& section = resume_.sections[drawn(resume_.sections.size())];
        if (section.entries.empty()) return;
        const std::size_t number = drawn(section.entries.size());
        const model::Entry& entry = section.entries[number];
        if (entry.place.file != 0 || !entry.further.empty() || done_.contains(&entry)) return;
        done_.insert(&entry);
        const bool made = drawn(3) == 0 ? edit_whole(section, number) : edit_within(entry);
        if (!made) done_.erase(&entry);
    }

    std::multiset<std::string> expected;
    std::string text() const { return edits_.text(); }

private:
    std::size_t drawn(std::size_t below) { return random_() % below; }
    std::string new_word() { return "q" + std::to_string(100 + drawn(900)) + "xylem"; }
    std::string letters() { // a word with no figure in it
        std::string word = "z";
        for (int i = 0; i < 7; ++i)
            word += static_cast<char>('a' + drawn(26));
        return word;
    }

    bool edit_within(const model::Entry& entry) {
        switch (drawn(6)) {
        case 0:
            return add_bullet(entry);
        case 1:
            return remove_bullet(entry);
        case 2:
            return move_bullet(entry);
        case 3:
            return change_word(entry);
        case 4:
            return change_date(entry);
        default:
            return change_skill(entry);
        }
    }

    bool edit_whole(const model::Section& section, std::size_t number) {
        const model::Entry& entry = section.entries[number];
        const bool named = !entry.fields.empty() && section.holds != quoin::trade::Holds::skills &&
                           section.holds != quoin::trade::Holds::languages &&
                           section.holds != quoin::trade::Holds::prose;
        if (!named) return false;
        switch (drawn(3)) {
        case 0:
            return move_entry(section, number);
        case 1: {
            const std::size_t begin = entry.place.line;
            edits_.taken(begin, edits_.end_of_block(begin));
            expected.insert("removed entry");
            return true;
        }
        default:
            return add_entry(section, entry);
        }
    }

    // With the next, if neither is in another file, of several positions, or edited.
    bool move_entry(const model::Section& section, std::size_t number) {
        if (number + 1 >= section.entries.size() || moved_in_.contains(&section)) return false;
        const model::Entry& next = section.entries[number + 1];
        if (next.place.file != 0 || !next.further.empty() || done_.contains(&next)) return false;
        const std::size_t begin = section.entries[number].place.line;
        const std::size_t end = edits_.end_of_block(begin);
        if (edits_.end_of_block(next.place.line) > edits_.size()) return false;
        auto block = edits_.taken(begin, end);
        block.insert(block.begin(), "");
        edits_.put_before(edits_.end_of_block(next.place.line), block);
        done_.insert(&next);
        moved_in_.insert(&section);
        expected.insert("moved entry");
        return true;
    }

    bool add_entry(const model::Section& section, const model::Entry& entry) {
        if (section.holds != quoin::trade::Holds::experience) return false;
        edits_.put_before(entry.place.line,
                          {"role: " + letters() + ' ' + letters(), "employer: " + letters(),
                           "dates: 2011", "- " + letters() + ' ' + letters(), ""});
        expected.insert("added entry");
        return true;
    }

    bool add_bullet(const model::Entry& entry) {
        if (entry.bullets.empty()) return false;
        std::string bullet = "-";
        for (int i = 0; i < 6; ++i)
            bullet += ' ' + letters();
        edits_.put_before(entry.bullets.front().place.line, {bullet});
        expected.insert("added bullet");
        return true;
    }

    bool remove_bullet(const model::Entry& entry) {
        if (entry.bullets.empty()) return false;
        const model::Bullet& bullet = entry.bullets[drawn(entry.bullets.size())];
        if (bullet.level != 1 || has_second_level(entry)) return false;
        edits_.taken(bullet.place.line, edits_.end_of_folded(bullet.place.line));
        expected.insert("removed bullet");
        return true;
    }

    static bool has_second_level(const model::Entry& entry) {
        return std::any_of(entry.bullets.begin(), entry.bullets.end(),
                           [](const model::Bullet& bullet) { return bullet.level != 1; });
    }

    bool move_bullet(const model::Entry& entry) {
        if (entry.bullets.size() < 2 || has_second_level(entry)) return false;
        const std::size_t last = entry.bullets.back().place.line;
        edits_.put_before(entry.bullets.front().place.line,
                          edits_.taken(last, edits_.end_of_folded(last)));
        expected.insert("moved bullet");
        return true;
    }

    // The first word of the line that may be, a figure or another.
    bool change_word(const model::Entry& entry) {
        if (entry.bullets.empty()) return false;
        const model::Bullet& bullet = entry.bullets[drawn(entry.bullets.size())];
        const std::string& line = edits_.line(bullet.place.line);
        const auto words = words_of(line);
        if (words.size() < 7) return false;
        for (std::size_t i = 2; i + 1 < words.size(); ++i) {
            const std::string word(words[i].text);
            const bool figures = word.find_first_not_of("0123456789") == word.npos;
            const bool letters_alone =
                word.size() > 2 &&
                std::all_of(word.begin(), word.end(), [](char c) { return c >= 'a' && c <= 'z'; });
            if (!(figures || letters_alone)) continue;
            std::string by = figures ? std::to_string(7000 + drawn(900)) : letters();
            edits_.replace(bullet.place.line,
                           line.substr(0, words[i].begin) + by + line.substr(words[i].end));
            expected.insert(figures ? "changed bullet figures" : "changed bullet wording");
            return true;
        }
        return false;
    }

    bool change_date(const model::Entry& entry) {
        const model::Field* dates = entry.find(quoin::trade::FieldName::dates);
        if (dates == nullptr || dates->place.file != 0) return false;
        edits_.replace(dates->place.line, "dates: Feb 2013 - Mar 2014");
        expected.insert("changed field dates");
        return true;
    }

    bool change_skill(const model::Entry& entry) {
        const model::Field& field = entry.fields.back();
        const auto* items = std::get_if<std::vector<model::Text>>(&field.value);
        if (items == nullptr || items->size() < 2 || !field.tags.empty()) return false;
        const std::size_t begin = field.label_place.line, end = edits_.end_of_folded(begin);
        const bool add = drawn(2) == 0;
        std::string line = edits_.line(begin).substr(0, edits_.line(begin).find(':')) + ": ";
        for (std::size_t i = add ? 0 : 1; i < items->size(); ++i)
            line += (*items)[i].plain() + "; ";
        line += add ? letters() : "";
        edits_.taken(begin, end);
        edits_.put_before(begin, {line});
        expected.insert(add ? "added item" : "removed item");
        return true;
    }

    const model::Resume& resume_;
    Edits edits_;
    std::mt19937& random_;
    std::set<const model::Entry*> done_;
    std::set<const model::Section*> moved_in_;
};

}
