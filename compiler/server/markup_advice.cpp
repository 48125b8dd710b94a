#include "compiler/server/markup_advice.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/interview/questions.hpp"

#include <fstream>
#include <map>

namespace quoin::server {

namespace {

using Rows = std::map<std::string, std::string, std::less<>>;

constexpr std::string_view row_indent = "  `", more_indent = "      ";

std::vector<std::string> quoted_words(const std::string& line) {
    std::vector<std::string> words;
    for (std::size_t at = line.find('`'); at != line.npos; at = line.find('`', at)) {
        const std::size_t end = line.find('`', ++at);
        if (end == line.npos) break;
        words.push_back(line.substr(at, end - at));
        at = end + 1;
    }
    return words;
}

// The rows of the reference's tables, by each of the words in the first column.
Rows rows_of(const std::filesystem::path& page) {
    Rows rows;
    std::vector<std::string> current;
    std::ifstream in(page);
    for (std::string line; std::getline(in, line);) {
        if (line.starts_with(row_indent)) {
            current = quoted_words(line);
        } else if (line.starts_with(more_indent)) {
            for (const std::string& word : current)
                if (std::string& row = rows[word]; true)
                    row += (row.empty() ? "" : "\n") + line.substr(more_indent.size());
        } else {
            current.clear();
        }
    }
    return rows;
}

const Rows& reference_rows(session::Written written, const std::filesystem::path& data) {
    static const Rows rows[] = {rows_of(data / "reference" / "markup.txt"),
                                rows_of(data / "reference" / "themes.txt"),
                                rows_of(data / "reference" / "office.txt")};
    return rows[static_cast<std::size_t>(written)];
}

}

LabelAdvice advice_on(std::string_view label, std::optional<trade::Holds> holds,
                      const std::filesystem::path& data) {
    const interview::PlannedSection section{
        .name = "Heading", .title = {}, .holds = holds, .labels = {}};
    const interview::Question question = interview::question_at(section, label, "any");
    const bool is_own = !question.goes_in.empty();
    LabelAdvice advice{std::string(question.goes_in), question.example, question.why()};
    if (is_own) return advice;
    advice.goes_in = reference_on(label, session::Written::resume, data);
    return advice;
}

std::string reference_on(std::string_view label, session::Written written,
                         const std::filesystem::path& data) {
    const Rows& rows = reference_rows(written, data);
    const auto row = rows.find(label);
    return row == rows.end() ? std::string{} : row->second;
}

}
