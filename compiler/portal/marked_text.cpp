// Content streams (ISO 32000-1, section 7.8.2) taken apart into operands and operators, of which
// those of text and of marked content (table 320) are looked at.
#include "compiler/portal/marked_text.hpp"

#include "compiler/base/lists.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

namespace quoin::portal {

namespace {

constexpr std::string_view content_blanks = std::string_view("\0\t\n\f\r ", 6);
constexpr std::string_view ends_of_tokens = std::string_view("\0\t\n\f\r ()<>[]{}/%", 16);

// The next name, number, operator or sign of two; strings and comments are passed over.
class Tokens {
public:
    explicit Tokens(std::string_view content) : rest_(content) {}

    std::optional<std::string_view> next() {
        for (;;) {
            rest_.remove_prefix(std::min(rest_.find_first_not_of(content_blanks), rest_.size()));
            if (rest_.empty()) return std::nullopt;
            if (rest_.front() == '(')
                pass_string();
            else if (rest_.front() == '%')
                pass_to("\r\n");
            else if (rest_.front() == '<' && !rest_.starts_with("<<"))
                pass_to(">");
            else
                return take();
        }
    }

private:
    std::string_view take() {
        const bool is_sign =
            rest_.front() != '/' && ends_of_tokens.find(rest_.front()) != ends_of_tokens.npos;
        std::size_t end = std::min(rest_.find_first_of(ends_of_tokens, 1), rest_.size());
        if (is_sign) end = rest_.starts_with("<<") ? 2 : 1;
        const std::string_view token = rest_.substr(0, end);
        rest_.remove_prefix(end);
        return token;
    }

    void pass_to(std::string_view ends) {
        const std::size_t end = rest_.find_first_of(ends);
        rest_.remove_prefix(end == rest_.npos ? rest_.size() : end + 1);
    }

    // Parentheses within it are balanced or escaped (section 7.3.4.2).
    void pass_string() {
        std::size_t depth = 0, at = 0;
        for (; at < rest_.size(); ++at) {
            if (rest_[at] == '\\')
                ++at;
            else if (rest_[at] == '(')
                ++depth;
            else if (rest_[at] == ')' && --depth == 0)
                break;
        }
        rest_.remove_prefix(std::min(at + 1, rest_.size()));
    }

    std::string_view rest_;
};

bool is_operator(std::string_view token) {
    constexpr std::string_view of_operands = "/+-.0123456789<>[]{})";
    constexpr std::array<std::string_view, 3> values = {"true", "false", "null"};
    return of_operands.find(token.front()) == of_operands.npos && !is_one_of(token, values);
}

class Marks {
public:
    // False where text is not marked, or may not be.
    bool take(std::string_view token) {
        constexpr std::array<std::string_view, 4> showing = {"Tj", "TJ", "'", "\""};
        if (!is_operator(token)) {
            operands_.push_back(token);
            return true;
        }
        const bool sure = token != "BI" && (token != "EMC" || !open_.empty());
        if (is_one_of(token, showing) && !is_marked()) return false;
        if (token == "BMC" || token == "BDC") open_.push_back(opens_marked());
        if (token == "EMC" && sure) open_.pop_back();
        operands_.clear();
        return sure;
    }
    bool all_closed() const { return open_.empty(); }

private:
    bool is_marked() const { return !open_.empty() && open_.back(); }
    bool opens_marked() const {
        if (!operands_.empty() && operands_.front() == "/Artifact") return false;
        return is_marked() || is_one_of("/MCID", operands_);
    }

    std::vector<std::string_view> operands_;
    std::vector<bool>
        open_; // for each sequence begun and not ended, whether it is of the structure
};

}

bool all_text_is_marked(std::string_view content) {
    Tokens tokens(content);
    Marks marks;
    while (const auto token = tokens.next())
        if (!marks.take(*token)) return false;
    return marks.all_closed();
}

}
