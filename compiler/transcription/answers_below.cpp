#include "compiler/transcription/answers_below.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/transcription/form_captions.hpp"

#include <algorithm>
#include <utility>

namespace quoin::transcription {

namespace {

std::string said_by(const OldLine& line) {
    return lower_case(trimmed(joined_words(line.words, 0, line.words.size()), " *:"));
}

bool is_question(const OldLine& line) {
    constexpr std::size_t fewest = 4; // words
    return line.words.size() >= fewest && said_by(line).ends_with('?');
}

bool is_caption(const OldLine& line) {
    const std::string said = said_by(line);
    return caption_named(said) || is_one_of(said, captions_of_asides) ||
           is_one_of(said, captions_of_further) || is_question(line);
}

// Position 2: which of several answers stand below.
bool is_counter(const OldLine& line) {
    return line.words.size() == 2 && all_figures(line.words[1].text) &&
           caption_named(lower_case(line.words[0].text));
}

// Many a caption, alone on its line and above what is none, and one of them asks for the name.
bool has_answers_below(const std::vector<OldLine>& lines) {
    constexpr std::size_t fewest = 6;
    std::size_t answered = 0;
    bool named = false;
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
        if (!is_caption(lines[i]) || is_caption(lines[i + 1])) continue;
        const FormCaption* caption = caption_named(said_by(lines[i]));
        ++answered;
        named = named || (caption && (caption->label == "last" || caption->label == "name"));
    }
    return named && answered >= fewest && 3 * answered > lines.size();
}

class AnswersBeside {
public:
    explicit AnswersBeside(const std::vector<OldLine>& lines) : lines_(lines) {}

    std::vector<OldLine> run() {
        for (std::size_t i = 0; i < lines_.size();)
            i = take(i);
        return std::move(beside_);
    }

private:
    std::size_t take(std::size_t i) {
        const OldLine& line = lines_[i];
        if (!is_caption(line)) {
            beside_.push_back(line);
            beside_.back().running = line.running || is_counter(line);
            return i + 1;
        }
        const std::string said = said_by(line);
        const bool answered =
            i + 1 < lines_.size() && !is_caption(lines_[i + 1]) && !is_counter(lines_[i + 1]);
        if (!answered) return leave_open(line, said), i + 1;
        if (said == "i currently work here") goes_on_ = said_by(lines_[i + 1]) == "yes";
        if (is_one_of(said, captions_of_further))
            add_to_last(lines_[i + 1]);
        else
            add(line, lines_[i + 1].words, is_one_of(said, captions_of_asides));
        return i + 2;
    }

    // To, of what still goes on.
    void leave_open(const OldLine& line, const std::string& said) {
        if (said == "to" && std::exchange(goes_on_, false)) return add(line, {{"present"}}, false);
        beside_.push_back(line);
    }

    void add(OldLine line, std::vector<OldWord> answer, bool aside) {
        while (line.words.size() > 1 && line.words.back().text == "*")
            line.words.pop_back();
        std::string& last = line.words.back().text;
        if (!last.ends_with(':') && !last.ends_with('?')) last += ':';
        line.running = line.running || aside;
        if (!aside) last_ = beside_.size();
        line.heading = false;
        for (OldWord& word : parted(std::move(answer))) {
            word.apart = false;
            line.words.push_back(std::move(word));
        }
        beside_.push_back(std::move(line));
    }

    // `Linux x  Python x`, where each may be crossed off: Linux, Python.
    static std::vector<OldWord> parted(std::vector<OldWord> words) {
        std::vector<OldWord> kept;
        const auto crossed = std::ranges::count(words, "x", &OldWord::text);
        for (OldWord& word : words)
            if (crossed < 2 || kept.empty() || word.text != "x")
                kept.push_back(std::move(word));
            else
                kept.back().text += &word == &words.back() ? "" : ",";
        return kept;
    }

    // 11/2025, Intermediate: of the certificate or the language above.
    void add_to_last(const OldLine& answer) {
        if (last_ >= beside_.size()) return beside_.push_back(answer);
        std::vector<OldWord>& words = beside_[last_].words;
        words.back().text += ',';
        for (OldWord word : answer.words) {
            word.apart = false;
            words.push_back(std::move(word));
        }
    }

    const std::vector<OldLine>& lines_;
    std::vector<OldLine> beside_;
    std::size_t last_ = std::string::npos; // of them that asks for a fact
    bool goes_on_ = false;                 // the work of which the form asks
};

}

std::vector<OldLine> answers_beside(const std::vector<OldLine>& lines) {
    return has_answers_below(lines) ? AnswersBeside(lines).run() : lines;
}

}
