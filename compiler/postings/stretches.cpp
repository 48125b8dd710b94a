#include "compiler/postings/stretches.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/postings/headings.hpp"
#include "compiler/postings/lists.hpp"

#include <algorithm>
#include <iterator>
#include <string>
#include <utility>

namespace quoin::postings {

namespace {

constexpr std::size_t longest_opening = 200;
constexpr std::size_t longest_name = 48; // bytes before the colon of `Requirements: …`
constexpr std::string_view after_labels = " :-\u2013\u2014.";

bool ends_abbreviation(std::string_view before) {
    constexpr std::string_view short_forms[] = {
        "e.g",    "i.e", "etc", "dr", "drs", "prof", "rev", "capt", "attn",
        "mr",     "mrs", "ms",  "st", "vs",  "inc",  "co",  "no",   "dept",
        "approx", "lb",  "lbs", "hr", "hrs", "min",  "yr",  "yrs"};
    const std::size_t blank = before.find_last_of(" (");
    const std::string last = lower_case(blank == before.npos ? before : before.substr(blank + 1));
    bool initials = !last.empty(); // U.S
    for (std::size_t i = 0; i < last.size(); ++i)
        initials = initials && (i % 2 == 0 ? is_ascii_letter(last[i]) : last[i] == '.');
    return initials || last.ends_with(".m") ||
           std::ranges::find(short_forms, last) != std::end(short_forms);
}

// Before a stop, where a sentence may stand too: `Must-haves. `, `What you do. `, `To apply. `;
// not: Reports to the mate.
bool stands_as_label(std::string_view label, const Part& part) {
    const std::string lower = lower_case(label);
    constexpr std::string_view openings[] = {"what ", "must",    "nice",
                                             "bonus", "require", "qualific"};
    return part.whole || (part.not_read && !lower.starts_with("report")) ||
           std::ranges::any_of(openings, [&](std::string_view o) { return lower.starts_with(o); });
}

// Of what it begins with that names a part; 0: of none.
std::size_t label_length(std::string_view text) {
    std::size_t first = text.npos;
    bool sure = true;
    for (const std::string_view sign : {": ", ". ", " - ", " \u2013 ", " \u2014 ", "\u2014"}) {
        const std::size_t end = text.substr(0, longest_name + sign.size()).find(sign);
        if (end >= first) continue;
        first = end;
        sure = sign != ". ";
    }
    if (first == text.npos || first == 0) return 0;
    constexpr std::size_t most_words_of_label = 4;
    const std::string_view label = text.substr(0, first);
    const Part part = part_headed(label);
    const bool few = word_count(label) <= most_words_of_label;
    return part.known && few && (sure || stands_as_label(label, part)) ? first : 0;
}

class Cutter {
public:
    explicit Cutter(std::span<const Line> lines) : lines_(lines) {}

    std::vector<Stretch> cut() {
        for (std::size_t i = 0; i < lines_.size(); ++i)
            add(i);
        return std::move(stretches_);
    }

private:
    void add(std::size_t i) {
        const Line& line = lines_[i];
        if (is_labelled_title(line.text)) {
            add_title(i);
        } else if (line.heading || leads_in(i)) {
            add_heading(i);
        } else if (const std::size_t label = line.item ? 0 : label_length(line.text); label > 0) {
            add_labelled(i, label);
        } else if (!line.item && (!headed_ || (line.parted && items_))) { // a list is over
            add_prose(i);
        } else {
            if (stretches_.empty() || (!headed_ && !items_)) open(false);
            for (const std::string_view sentence : sentences_of(line.text))
                stretches_.back().pieces.push_back({sentence, i, false});
            items_ = items_ || line.item;
        }
    }

    bool leads_in(std::size_t i) const { // to the items below
        const std::string_view text = lines_[i].text;
        if (lines_[i].item || text.size() > longest_opening || i + 1 >= lines_.size()) return false;
        const bool trails_off = text.ends_with("\u2026") || text.ends_with("...");
        return text.ends_with(':') ||
               (trails_off && lines_[i + 1].item && sentences_of(text).size() == 1);
    }

    // A minor heading that says nothing known is a topic of the part that it stands in.
    void add_heading(std::size_t i) {
        const Line& line = lines_[i];
        const Part part = part_headed(line.text);
        const bool known = part.known;
        const bool likely_topic = !known || (part.not_read && !part.whole);
        const bool topic = line.minor && likely_topic && in_major_;
        if (!topic) {
            open(true);
            stretches_.back().title = is_title(i, known);
            any_heading_ = true;
            headed_ = !stretches_.back().title;
            if (!line.minor) in_major_ = known;
        }
        stretches_.back().pieces.push_back({line.text, i, true});
    }

    // The first heading, but for one that names a part below the first line.
    bool is_title(std::size_t i, bool known) const {
        const bool below_item = i + 1 < lines_.size() && lines_[i + 1].item;
        const bool about = lower_case(lines_[i].text).starts_with("about ");
        return !any_heading_ && ((i == 0 && !about) || !known) && !below_item &&
               !lines_[i].text.ends_with(':');
    }

    // `Job title: Speech-Language Pathology Assistant`
    bool is_labelled_title(std::string_view text) const {
        const std::size_t colon = text.find(": ");
        return !headed_ && colon != text.npos &&
               is_one_of(lower_case(text.substr(0, colon)), List::labels_of_titles);
    }

    void add_title(std::size_t i) {
        open(true);
        stretches_.back().title = true;
        const std::string_view text = lines_[i].text;
        stretches_.back().pieces.push_back({trimmed(text.substr(text.find(':') + 1)), i, true});
        headed_ = false;
    }

    // `Requirements: …` says what its own line is.
    void add_labelled(std::size_t i, std::size_t label) {
        open(true);
        const std::string_view text = lines_[i].text;
        stretches_.back().pieces.push_back({text.substr(0, label), i, true});
        for (const std::string_view sentence :
             sentences_of(trimmed(text.substr(label), after_labels)))
            stretches_.back().pieces.push_back({sentence, i, false});
        headed_ = false;
    }

    void add_prose(std::size_t i) {
        bool goes_on = !lines_[i].parted;
        bool clause = false; // of the sentence before
        for (const std::string_view sentence : sentences_of(lines_[i].text)) {
            if (!clause) {
                open(false);
                stretches_.back().goes_on = std::exchange(goes_on, true);
            }
            stretches_.back().pieces.push_back({sentence, i, false});
            clause = sentence.ends_with(';');
        }
        headed_ = false;
    }

    void open(bool headed) {
        stretches_.push_back({{}, headed, false, false});
        items_ = false;
    }

    std::span<const Line> lines_;
    std::vector<Stretch> stretches_;
    bool headed_ = false;
    bool any_heading_ = false;
    bool items_ = false;
    bool in_major_ = false; // of a heading that is known
};

}

std::vector<std::string_view> sentences_of(std::string_view text) {
    std::vector<std::string_view> sentences;
    std::size_t begin = 0;
    const auto close = [&](std::size_t end) {
        const std::string_view sentence = trimmed(text.substr(begin, end - begin));
        if (!sentence.empty()) sentences.push_back(sentence);
        begin = end;
    };
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        const bool before_blank = i + 1 < text.size() && text[i + 1] == ' ';
        const bool stop =
            c == '!' || c == '?' || (c == '.' && !ends_abbreviation(text.substr(begin, i - begin)));
        if (before_blank && (c == ';' || stop)) close(i + 1);
        if (text.substr(i).starts_with("\u2026 ")) close(i + 3);
    }
    close(text.size());
    return sentences;
}

std::vector<Stretch> stretches_of(std::span<const Line> lines) {
    return Cutter(lines).cut();
}

}
