// Redlines of the sample résumés: with themselves, and after random edits. QUOIN_FULL to any value
// for the long run.
#include "compiler/redlining/redline.hpp"

#include "compiler/stages/model/build.hpp"
#include "tests/source_lines.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <map>
#include <random>
#include <set>
#include <string>
#include <vector>

namespace {

using namespace quoin::redlining;
using quoin::Diagnostics;
using quoin::Place;
using quoin::Sources;
namespace fs = std::filesystem;
namespace model = quoin::model;

struct Read {
    Sources sources;
    Diagnostics diagnostics;
    std::optional<model::Resume> resume;
};

std::unique_ptr<Read> read(const fs::path& path, const std::string& text) {
    auto one = std::make_unique<Read>();
    one->sources.hold(path, text);
    const auto file = one->sources.read(path, one->diagnostics);
    if (file)
        one->resume = model::build_resume(
            one->sources, *file, fs::path(QUOIN_DATA_FOLDER) / "themes/words", one->diagnostics);
    return one;
}

std::string text_of(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines)
        text += line + '\n';
    return text;
}

std::vector<fs::path> samples() {
    std::vector<fs::path> all;
    for (const char* folder : {"samples", "samples/everything"})
        for (const auto& entry : fs::directory_iterator(fs::path(QUOIN_SOURCE_FOLDER) / folder))
            if (entry.path().extension() == ".resume") all.push_back(entry.path());
    std::sort(all.begin(), all.end());
    return all;
}

std::string shown(const Change& change) {
    std::string text = fmt::format("{} {}", name_of(change.kind), name_of(change.what));
    if (change.kind == Kind::changed) text += fmt::format(" {}", name_of(change.nature));
    return text;
}

std::string shown(const std::vector<Change>& changes) {
    std::string all;
    for (const Change& change : changes)
        all += fmt::format("{} [{} | {}] {}: '{}' -> '{}'\n", shown(change), change.section,
                           change.entry, change.label, change.before, change.after);
    return all;
}

std::vector<Change> redline_of(const model::Resume& before, const model::Resume& after) {
    return redline(align(before, after));
}

const std::string small_resume = "name: Ottoline Brandt\n"
                                 "phone: (360) 555-0142\n"
                                 "\n"
                                 "section: Experience\n"
                                 "\n"
                                 "role: Field Survey Intern\n"
                                 "employer: Salish Tidal Trust\n"
                                 "dates: Jun 2026 - Aug 2026\n"
                                 "- Counted 212 eelgrass quadrats at 9 sites\n"
                                 "- Trained 4 volunteers in GPS\n"
                                 "- Drew maps of the flats for the county\n"
                                 "\n"
                                 "role: Desk Assistant\n"
                                 "employer: Ellery State Library\n"
                                 "dates: Sep 2025 - May 2026\n"
                                 "- Answered questions at the desk\n"
                                 "\n"
                                 "section: Skills\n"
                                 "\n"
                                 "Laboratory: pH meter, titration, analytical balance\n";

std::string replaced(std::string text, const std::string& what, const std::string& by) {
    const std::size_t at = text.find(what);
    REQUIRE(at != text.npos);
    return text.replace(at, what.size(), by);
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

std::multiset<std::string> kinds_of(const std::vector<Change>& changes) {
    std::multiset<std::string> kinds;
    for (const Change& change : changes)
        kinds.insert(shown(change));
    return kinds;
}

std::multiset<std::string> wordings(const std::vector<Change>& changes, Kind kind) {
    std::multiset<std::string> all;
    for (const Change& change : changes)
        if (change.kind == kind) all.insert(kind == Kind::added ? change.after : change.before);
    return all;
}

}

TEST_CASE("redline: a résumé with itself says nothing") {
    for (const fs::path& path : samples()) {
        CAPTURE(path.string());
        const auto text = text_of(quoin::test::lines_in(path));
        const auto a = read(path, text), b = read(path, text);
        REQUIRE(a->resume);
        CHECK(shown(redline_of(*a->resume, *b->resume)) == "");
    }
}

TEST_CASE("redline: one change, a case a line") {
    struct Case {
        const char* what;
        const char* by;
        const char* shown;
    };
    const Case cases[] = {
        {"0142", "0143",
         "changed contact figures [ | ] phone: '(360) 555-0142' -> '(360) 555-0143'\n"},
        {"phone: (360) 555-0142\n", "", "removed contact [ | ] phone: '(360) 555-0142' -> ''\n"},
        {"\n\nsection: Exp", "\npages: 2\n\nsection: Exp",
         "changed setting value [ | ] pages: '1' -> '2'\n"},
        {"section: Experience", "section: Field Work",
         "changed section label [Field Work | ] : 'Experience' -> 'Field Work'\n"},
        {"Intern", "Assistant",
         "changed field wording [Experience | Field Survey Assistant, Salish Tidal Trust] role: "
         "'Field Survey Intern' -> 'Field Survey Assistant'\n"},
        {"Aug 2026", "Sep 2026",
         "changed field dates [Experience | Field Survey Intern, Salish Tidal Trust] dates: "
         "'Jun 2026 – Aug 2026' -> "
         "'Jun 2026 – Sep 2026'\n"},
        {"Jun 2026 - Aug 2026", "06/2026 to August 2026", ""},
        {"212", "240",
         "changed bullet figures [Experience | Field Survey Intern, Salish Tidal Trust] : 'Counted "
         "212 eelgrass quadrats at 9 sites' -> 'Counted 240 eelgrass quadrats at 9 sites'\n"},
        {"Counted 212", "Counted *212*",
         "changed bullet marks [Experience | Field Survey Intern, Salish Tidal Trust] : 'Counted "
         "212 eelgrass quadrats at 9 sites' -> 'Counted 212 eelgrass quadrats at 9 sites'\n"},
        {"in GPS\n", "in GPS {lab}\n",
         "changed bullet tags [Experience | Field Survey Intern, Salish Tidal Trust] : '' -> "
         "'{lab}'\n"},
        {"titration, ", "", "removed item [Skills | ] Laboratory: 'titration' -> ''\n"},
        {"pH meter, titration", "titration, pH meter",
         "changed field order [Skills | ] Laboratory: 'pH meter; titration; analytical balance' -> "
         "'titration; pH meter; analytical balance'\n"},
        {"Laboratory", "Bench", "changed field label [Skills | ] Bench: 'Laboratory' -> 'Bench'\n"},
        {"in GPS\n- Drew", "in GPS\n-- Drew",
         "changed bullet level [Experience | Field Survey Intern, Salish Tidal Trust] : '1' -> "
         "'2'\n"},
    };
    const auto before = read("draft.resume", small_resume);
    for (const Case& each : cases) {
        CAPTURE(each.what);
        const auto after = read("draft.resume", replaced(small_resume, each.what, each.by));
        REQUIRE(after->resume);
        CHECK(shown(redline_of(*before->resume, *after->resume)) == each.shown);
    }
}

TEST_CASE("redline: a bullet under another entry was moved there") {
    const std::string bullet = "- Trained 4 volunteers in GPS\n";
    const auto before = read("draft.resume", small_resume);
    const auto after = read("draft.resume", replaced(replaced(small_resume, bullet, ""),
                                                     "- Answered", bullet + "- Answered"));
    CHECK(shown(redline_of(*before->resume, *after->resume)) ==
          "moved bullet [Experience | Desk Assistant, Ellery State Library] : 'Field Survey "
          "Intern, Salish Tidal Trust' -> 'Trained 4 volunteers in GPS'\n");
}

TEST_CASE("redline: each of many random edits is told exactly once, and back again") {
    const std::size_t wanted = std::getenv("QUOIN_FULL") != nullptr ? 10'000 : 600;
    std::mt19937 random(16);
    const std::vector<fs::path> all = samples();
    std::size_t made = 0;
    std::set<std::string> seen;
    for (std::size_t trial = 0; made < wanted; ++trial) {
        const fs::path& path = all[trial % all.size()];
        CAPTURE(path.string());
        CAPTURE(trial);
        const auto lines = quoin::test::lines_in(path);
        const auto before = read(path, text_of(lines));
        REQUIRE(before->resume);
        Editor editor(*before->resume, lines, random);
        for (int tries = 0; tries < 8; ++tries)
            editor.edit();
        const auto after = read(path, editor.text());
        REQUIRE(after->resume);
        const auto there = redline_of(*before->resume, *after->resume);
        const auto back = redline_of(*after->resume, *before->resume);
        CAPTURE(shown(there));
        REQUIRE(kinds_of(there) == editor.expected);
        REQUIRE(wordings(there, Kind::added) == wordings(back, Kind::removed));
        REQUIRE(wordings(there, Kind::removed) == wordings(back, Kind::added));
        REQUIRE(there.size() == back.size());
        made += editor.expected.size();
        seen.insert(editor.expected.begin(), editor.expected.end());
    }
    CHECK(seen.size() == 11); // every kind was tried
}
