// Titles by their words; where those tell nothing, by their looks: as the known ones look and as
// nothing else does.
#include "compiler/transcription/titles.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/portal/found.hpp"
#include "compiler/portal/letters.hpp"
#include "compiler/trade/section_titles.hpp"
#include "compiler/trade/vocabulary.hpp"
#include "compiler/transcription/evidence.hpp"
#include "compiler/transcription/list_marks.hpp"
#include "compiler/transcription/lists.hpp"
#include "compiler/transcription/old_dates.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>
#include <set>
#include <tuple>

namespace quoin::transcription {

namespace {

constexpr std::size_t most_title_words = 7;

std::string_view bare_title(std::string_view text) {
    return trimmed(text, " :.-_|[]<>=*#~");
}

struct TitleMeaning {
    std::optional<trade::Holds> holds;
    Below below = Below::entries;
    bool by_form = false;
};

std::optional<TitleMeaning> listed_meaning(const std::string& lower) {
    const auto said = said_of(lower, lines_of(List::old_titles));
    if (!said) return std::nullopt;
    if (*said == "courses") return TitleMeaning{trade::Holds::skills, Below::courses};
    if (*said == "references") return TitleMeaning{trade::Holds::prose, Below::references};
    if (*said == "contact") return TitleMeaning{std::nullopt, Below::contact};
    return TitleMeaning{trade::named<trade::Holds>(*said), Below::entries};
}

// `Coaching & Training Experience` is experience, whatever its first phrase says.
std::optional<trade::Holds> holds_by_words(std::string_view title) {
    const auto holds = trade::usual_holds(title);
    const std::string lower = lower_case(title);
    const bool works = lower.ends_with("experience") || lower.ends_with("employment") ||
                       lower.ends_with("experiences");
    return works && holds != trade::Holds::activities && holds != trade::Holds::projects
               ? trade::Holds::experience
               : holds;
}

// `Salon Experience`: whatever stands before such a word, in capitals each.
bool ends_as_title(std::string_view text) {
    constexpr std::size_t most = 5; // words
    constexpr std::array<std::string_view, 14> last_words = {
        "experience", "employment",    "skills",      "education",     "certifications",
        "awards",     "honors",        "activities",  "publications",  "references",
        "licenses",   "presentations", "memberships", "qualifications"};
    constexpr std::array<std::string_view, 5> small = {"and", "of", "in", "the", "&"};
    const auto words = pieces_of(text, " ");
    if (words.size() < 2 || words.size() > most) return false;
    return is_one_of(lower_case(words.back()), last_words) &&
           std::ranges::all_of(words, [&](std::string_view word) {
               return is_one_of(word, small) || (!word.empty() && is_capital_letter(word.front()) &&
                                                 word.find_first_of(",.:;()") == word.npos);
           });
}

std::optional<TitleMeaning> known_meaning(std::string_view text,
                                          const portal::PageLanguages& languages) {
    const std::string_view bare = bare_title(text);
    if (bare.empty() || bare.size() > 60) return std::nullopt;
    if (const auto listed = listed_meaning(straight_apostrophes(portal::in_small_letters(bare))))
        return listed;
    if (const auto local = languages.title(bare)) return TitleMeaning{*local, Below::entries};
    const bool known = portal::is_usual_title(bare) || trade::is_section_title(bare);
    if (!known && !ends_as_title(bare)) return std::nullopt;
    return TitleMeaning{holds_by_words(bare), Below::entries, !known};
}

bool in_capitals(const std::string& text) {
    const portal::LetterCount count = portal::count_letters(text);
    return count.letters > 2 && count.capitals == count.letters;
}

// What of a line's looks titles share.
using TitleLook = std::tuple<long, bool, bool, std::size_t, bool>;
TitleLook look_of(const OldLine& line, bool capitals) {
    const OldWord& first = line.words.front();
    return {std::lround(first.size * 2), first.strong, first.slanted, first.font, capitals};
}

bool may_be_title(const OldLine& line, std::size_t words) {
    return !line.running && !line.listed && words <= most_title_words &&
           !is_list_mark(line.words.front().text);
}

// The words before the first wide gap: a title in the margin has its section's first line beside
// it.
std::size_t words_before_gap(const OldLine& line) {
    std::size_t count = 1;
    while (count < line.words.size() && !line.words[count].apart)
        ++count;
    return count;
}

// `SKILLS: welding, rigging`: the words up to the colon, where they are a title in capitals or
// heavier than what follows.
std::size_t words_before_colon(const OldLine& line) {
    for (std::size_t i = 0; i + 1 < line.words.size() && i < most_title_words; ++i) {
        if (!line.words[i].text.ends_with(':')) continue;
        const bool heavier = line.words[0].strong && !line.words[i + 1].strong;
        return heavier || in_capitals(joined_words(line.words, 0, i + 1)) ? i + 1 : 0;
    }
    return 0;
}

class TitleFinder {
public:
    TitleFinder(const std::vector<OldLine>& lines, const portal::PageLanguages& languages)
        : lines_(lines), languages_(languages) {
        for (const OldLine& line : lines)
            ++looks_[look_of(line, in_capitals(line.text()))];
    }

    std::vector<FoundTitle> find() {
        for (std::size_t i = 0; i < lines_.size(); ++i)
            take_known(i);
        drop_unlike();
        drop_groups();
        drop_stray();
        add_with_colon();
        add_alike();
        for (FoundTitle& title : found_)
            if (!title.holds && title.below == Below::entries && has_contact_below(title))
                title.below = Below::contact;
        return std::move(found_);
    }

private:
    void take_known(std::size_t at) {
        const OldLine& line = lines_[at];
        for (const std::size_t words :
             {line.words.size(), words_before_gap(line), words_before_colon(line)}) {
            if (words == 0 || !may_be_title(line, words)) continue;
            const std::string text = joined_words(line.words, 0, words);
            const auto meaning = known_meaning(text, languages_);
            // `Bachelor of Music Education        May 2022`
            const bool head =
                meaning && meaning->by_form && (words < line.words.size() || names_degree(text));
            if (meaning && !head) {
                found_.push_back(
                    {at, words, text, meaning->holds, meaning->below, meaning->by_form});
                return;
            }
        }
    }

    // `Reach me`, above an email or a telephone number.
    bool has_contact_below(const FoundTitle& title) const {
        constexpr std::size_t near = 3; // lines
        for (std::size_t i = title.line + 1; i < lines_.size() && i <= title.line + near; ++i) {
            const std::string text = lines_[i].text();
            if (lines_[i].words.size() < 4 &&
                (text.find('@') != std::string::npos || !portal::find_phones(text).empty()))
                return true;
        }
        return false;
    }

    TitleLook look_at(const FoundTitle& title) const {
        return look_of(lines_[title.line], in_capitals(title.text));
    }

    // What reads as a title by its form alone looks as one that is known.
    void drop_unlike() {
        std::set<TitleLook> looks;
        for (const FoundTitle& title : found_)
            if (!title.by_form) looks.insert(look_at(title));
        const bool none = looks.empty(); // then capitals and heavy letters tell
        std::erase_if(found_, [&](const FoundTitle& title) {
            const TitleLook look = look_at(title);
            if (none && (std::get<1>(look) || std::get<4>(look))) return false;
            return title.by_form && !looks.contains(look) && !lines_[title.line].heading;
        });
    }

    // `Languages: Korean` is a group of skills where titles stand on lines of their own.
    void drop_groups() {
        const auto has_line_beside = [&](const FoundTitle& title) {
            return title.words < lines_[title.line].words.size() && title.text.ends_with(':');
        };
        const auto beside =
            static_cast<std::size_t>(std::ranges::count_if(found_, has_line_beside));
        if (found_.size() - beside < 3 || found_.size() - beside <= beside) return;
        std::erase_if(found_, [&](const FoundTitle& title) {
            return has_line_beside(title) && !in_capitals(title.text);
        });
    }

    // Where most titles look alike, a known word that looks otherwise is a line like any other: a
    // group of skills called `Languages`, a firm called `Community`.
    void drop_stray() {
        std::map<TitleLook, std::size_t> counts;
        for (const FoundTitle& title : found_)
            ++counts[look_at(title)];
        std::size_t most = 0;
        TitleLook usual{};
        for (const auto& [look, count] : counts)
            if (count > most) std::tie(most, usual) = std::tuple(count, look);
        if (most < 2) return;
        std::set<double> usual_lefts;
        for (const FoundTitle& title : found_)
            if (look_at(title) == usual) usual_lefts.insert(lines_[title.line].left());
        std::erase_if(found_, [&](const FoundTitle& title) {
            const TitleLook look = look_at(title);
            const bool weaker = std::get<0>(look) < std::get<0>(usual) ||
                                (std::get<1>(usual) && !std::get<1>(look)) ||
                                (std::get<4>(usual) && !std::get<4>(look));
            const bool plain = title.below == Below::references ||
                               title.holds == trade::Holds::education ||
                               title.holds == trade::Holds::experience;
            return look != usual && weaker && !plain && !lines_[title.line].heading &&
                   !stands_in_other_column(title, usual_lefts);
        });
    }

    // A sidebar has titles of its own look: by themselves, in capitals or heavy letters, and none
    // of the usual ones is above or below.
    bool stands_in_other_column(const FoundTitle& title,
                                const std::set<double>& usual_lefts) const {
        constexpr double apart = 40; // pt
        const OldLine& line = lines_[title.line];
        const TitleLook look = look_at(title);
        if (title.words < line.words.size() || !(std::get<1>(look) || std::get<4>(look)))
            return false;
        const auto near = usual_lefts.lower_bound(line.left() - apart);
        return near == usual_lefts.end() || *near > line.left() + apart;
    }

    // Where titles end in a colon, so does one that no list has: `Clinical Rotations:`, below
    // white.
    void add_with_colon() {
        constexpr double white = 0.5; // of the height
        const auto known = std::ranges::count_if(found_, [&](const FoundTitle& title) {
            return title.text.ends_with(':') && title.words == lines_[title.line].words.size();
        });
        if (known < 2) return;
        std::set<std::size_t> taken;
        for (const FoundTitle& title : found_)
            taken.insert(title.line);
        for (std::size_t i = *taken.begin(); i < lines_.size(); ++i) {
            const std::size_t words = lines_[i].words.size();
            const std::string text = lines_[i].text();
            if (!taken.contains(i) && text.ends_with(':') && lines_[i].gap > white &&
                may_be_title(lines_[i], words) && reads_as_title(text))
                found_.push_back(
                    {i, words, text, holds_by_words(bare_title(text)), Below::entries, true});
        }
        std::ranges::sort(found_, {}, &FoundTitle::line);
    }

    // Lines that look as two known titles or more, where few others do.
    void add_alike() {
        std::map<TitleLook, std::size_t> titles;
        std::vector<bool> is_title(lines_.size());
        bool beside = false; // titles have something beside them
        for (const FoundTitle& title : found_) {
            ++titles[look_at(title)];
            is_title[title.line] = true;
            beside = beside || title.words < lines_[title.line].words.size();
        }
        const std::size_t first = found_.empty() ? lines_.size() : found_.front().line;
        for (std::size_t i = 0; i < lines_.size(); ++i) {
            if (is_title[i]) continue;
            const OldLine& line = lines_[i];
            const std::size_t words = words_before_gap(line);
            const std::string text = joined_words(line.words, 0, words);
            const auto alike = titles.find(look_of(line, in_capitals(text)));
            const bool tells = trade::usual_holds(bare_title(text)).has_value();
            if (words < line.words.size() && (!beside || has_date_beside(line, words))) continue;
            const bool looks = alike != titles.end() && alike->second + tells > 1 &&
                               sets_off_titles(*alike, tells) && (i > first || tells) &&
                               stands_as_titles(line);
            if ((looks || line.heading) && may_be_title(line, words) && reads_as_title(text))
                found_.push_back(
                    {i, words, text, holds_by_words(bare_title(text)), Below::entries});
        }
        std::ranges::sort(found_, {}, &FoundTitle::line);
    }

    // Looks that two lines below each other have.
    const std::set<TitleLook>& stacked() {
        if (stacked_) return *stacked_;
        stacked_.emplace();
        std::optional<TitleLook> above;
        for (const OldLine& line : lines_) {
            const TitleLook look = look_of(line, in_capitals(line.text()));
            if (above == look) stacked_->insert(look);
            above = look;
        }
        return *stacked_;
    }

    // Few other lines look so; or many do, and each stands by itself in capitals.
    bool sets_off_titles(const std::pair<const TitleLook, std::size_t>& alike, bool tells) {
        constexpr std::size_t fewest = 3; // lines that look so
        const std::size_t known = alike.second + tells, all = looks_[alike.first];
        if (known > 1 && 2 * known >= all) return true;
        if (!std::get<4>(alike.first) || 4 * known < all || all < fewest) return false;
        return !stacked().contains(alike.first);
    }

    // `Tenant Help Line        2020–2022` is an entry's head.
    bool has_date_beside(const OldLine& line, std::size_t words) const {
        const std::vector<OldWord> rest(line.words.begin() + static_cast<std::ptrdiff_t>(words),
                                        line.words.end());
        const auto dates = dates_on(rest, languages_);
        return dates.size() == 1 && dates.front().begin == 0 && dates.front().end == rest.size();
    }

    // At the left edge that known titles stand at, or set in the middle as they are.
    bool stands_as_titles(const OldLine& line) const {
        constexpr double near = 3; // pt
        return std::ranges::any_of(found_, [&](const FoundTitle& title) {
            const OldLine& known = lines_[title.line];
            const double middles = known.left() + known.right() - line.left() - line.right();
            return std::abs(known.left() - line.left()) < near || std::abs(middles) < near;
        });
    }

    static bool reads_as_title(const std::string& text) {
        const portal::LetterCount count = portal::count_letters(text);
        return count.digits == 0 && count.letters * 10 >= count.characters * 7 &&
               text.find_first_of("@|;/,") == std::string::npos && !text.ends_with('.');
    }

    const std::vector<OldLine>& lines_;
    const portal::PageLanguages& languages_;
    std::map<TitleLook, std::size_t> looks_;
    std::optional<std::set<TitleLook>> stacked_;
    std::vector<FoundTitle> found_;
};

}

bool is_known_title(std::string_view text, const portal::PageLanguages& languages) {
    return word_count(text) <= most_title_words && known_meaning(text, languages).has_value();
}

std::vector<FoundTitle> find_titles(const std::vector<OldLine>& lines,
                                    const portal::PageLanguages& languages) {
    return TitleFinder(lines, languages).find();
}

}
