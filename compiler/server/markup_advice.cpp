#include "compiler/server/markup_advice.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/interview/questions.hpp"

#include <fstream>
#include <map>

namespace quoin::server {

namespace {

using Rows = std::map<std::string, std::string, std::less<>>;

constexpr std::string_view row_indent = "  `", more_indent = "      ";

// The rows of the reference's tables, by each of the words in the first column.
Rows rows_of(const std::filesystem::path& page) {
    Rows rows;
    std::vector<std::string> current;
    std::ifstream in(page);
    for (std::string line; std::getline(in, line);) {
        if (line.starts_with(row_indent)) {
            current.clear();
            for (std::size_t at = line.find('`'); at != line.npos; at = line.find('`', at)) {
                const std::size_t end = line.find('`', ++at);
                if (end == line.npos) break;
                current.push_back(line.substr(at, end - at));
                at = end + 1;
            }
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

const Rows& markup_rows(const std::filesystem::path& data) {
    static const Rows rows = rows_of(data / "reference" / "markup.txt");
    return rows;
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
    const auto row = markup_rows(data).find(label);
    if (row != markup_rows(data).end()) advice.goes_in = row->second;
    return advice;
}

}
