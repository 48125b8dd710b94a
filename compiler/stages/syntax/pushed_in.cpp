#include "compiler/stages/syntax/pushed_in.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/stages/syntax/line_words.hpp"
#include "compiler/trade/section_titles.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <string_view>

namespace quoin::syntax {

namespace {

constexpr std::string_view blanks = " \t";
constexpr std::size_t longest_indent = 8; // of what belongs to an item of a list

bool has_label(std::string_view text) {
    const std::size_t colon = text.find(':');
    return colon != text.npos && is_label_or_guess(folded_label(text.substr(0, colon)));
}

// `- text` and `role: Tutor` begin a line wherever they stand.
bool opens_line(std::string_view text) {
    return text.starts_with("- ") || text.starts_with("-- ") || text.starts_with("* ") ||
           has_label(text);
}

bool is_capitals(std::string_view title) {
    return std::ranges::none_of(title, is_small_letter);
}

class PullingOut {
public:
    explicit PullingOut(const SourceFile& source) : source_(source) {}

    PulledOut run() {
        pulled_.shifts.push_back(0);
        std::string_view text = source_.text;
        while (!text.empty()) {
            const std::size_t end = std::min(text.find('\n'), text.size());
            line(text.substr(0, end), text.substr(std::min(end + 1, text.size())));
            if (end < text.size()) pulled_.text += '\n';
            text.remove_prefix(std::min(end + 1, text.size()));
        }
        return std::move(pulled_);
    }

private:
    void line(std::string_view whole, std::string_view below) {
        if (opens_item(whole, below)) return item(whole);
        const std::size_t column = std::min(whole.find_first_not_of(blanks), whole.size());
        const bool pushed = column > 0 && column < whole.size() && is_line(whole, column);
        const std::size_t shift = pushed ? column : 0;
        if (pushed) pushed_in(column);
        pulled_.shifts.push_back(static_cast<std::uint32_t>(shift));
        pulled_.text += whole.substr(shift);
        if (whole.starts_with('#') && !trade::is_section_title(bare_title(whole))) return;
        follow(whole, column);
    }

    // `- school: Ellery State College` with `  place: Port Ellery, WA` below it, as other formats
    // have entries.
    static bool opens_item(std::string_view whole, std::string_view below) {
        const std::string_view next = below.substr(0, below.find('\n'));
        const std::size_t column = next.find_first_not_of(blanks);
        const bool item = whole.starts_with("- ") || whole.starts_with("-\t");
        return item && has_label(whole.substr(behind_sign(whole))) && column != next.npos &&
               column > 0 && has_label(next.substr(column));
    }

    static std::size_t behind_sign(std::string_view item) {
        return std::min(item.find_first_not_of(blanks, 1), item.size());
    }

    void item(std::string_view whole) {
        const auto number = static_cast<std::uint32_t>(pulled_.shifts.size());
        pulled_.blocks.emplace_back(number, number);
        pulled_.shifts.push_back(static_cast<std::uint32_t>(behind_sign(whole)));
        pulled_.text += whole.substr(behind_sign(whole));
        depth_ = longest_indent;
        below_title_ = may_begin_ = false;
    }

    // What may stand below this line.
    void follow(std::string_view whole, std::size_t column) {
        const std::string_view words = trimmed(whole);
        const bool apart = may_begin_;
        if (column > 0 && !words.empty()) {
            may_begin_ = false;
            return;
        }
        depth_ = 0;
        below_title_ = is_section_line(words) || trade::is_section_title(bare_title(words));
        may_begin_ = words.empty() || is_title_alone(words, apart);
        if (below_title_ && may_begin_) enter(bare_title(words));
        if (is_section_line(words)) enter(words.substr(words.find(':') + 1));
    }

    static bool is_section_line(std::string_view words) {
        return lower_case(words.substr(0, words.find(':'))) == "section";
    }

    void enter(std::string_view title) {
        const auto holds = trade::usual_holds(std::string(title));
        in_heading_ = false;
        in_groups_ = holds && trade::has_groups(*holds);
    }

    // A title that nothing goes on with: `EDUCATION`, `Education:`, `# Education`. The label of a
    // group may look so.
    bool is_title_alone(std::string_view words, bool apart) const {
        const std::string_view title = bare_title(words);
        if (title.empty() || !trade::is_section_title(title)) return false;
        if (!words.ends_with(':')) return apart || words.starts_with('#') || is_capitals(title);
        return in_heading_ || (apart && is_capitals(title) && !in_groups_);
    }

    bool is_line(std::string_view whole, std::size_t column) const {
        const std::string_view text = whole.substr(column);
        if (depth_ > 0) return column <= depth_ || opens_line(text);
        return may_begin_ || (below_title_ && has_label(text));
    }

    void pushed_in(std::size_t column) {
        const auto number = static_cast<std::uint32_t>(pulled_.shifts.size());
        if (depth_ == 0) pulled_.blocks.emplace_back(number, number);
        pulled_.blocks.back().second = number;
        depth_ = column;
    }

    const SourceFile& source_;
    PulledOut pulled_;
    std::size_t depth_ = 0;    // of the line above, in a block that is pushed in
    bool may_begin_ = true;    // a line that is indented, for there is none above
    bool below_title_ = false; // where a label opens one
    bool in_heading_ = true, in_groups_ = false;
};

}

PulledOut pull_out(const SourceFile& source) {
    return PullingOut(source).run();
}

}
