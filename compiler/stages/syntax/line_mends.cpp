#include "compiler/stages/syntax/line_mends.hpp"

#include "compiler/base/utf8.hpp"

#include <algorithm>

namespace quoin::syntax {

namespace {

Place part_of(const Place& line, std::size_t offset, std::size_t length) { // offset from 0
    return {line.file, line.line, static_cast<std::uint32_t>(offset + 1),
            static_cast<std::uint32_t>(length)};
}

bool blank_at(std::string_view line, std::size_t offset) {
    return offset < line.size() && (line[offset] == ' ' || line[offset] == '\t');
}

// All up to `after` made a dash with a space after it.
Edits make_dash(std::string_view line, const Place& found, std::size_t after) {
    return {{part_of(found, 0, after), blank_at(line, after) ? "-" : "- "}};
}

}

Edits mend_foreign_bullet(std::string_view line, const Place& found) {
    return make_dash(line, found, found.column - 1 + found.length);
}

Edits mend_indented_bullet(std::string_view line, const Place& found) {
    const std::size_t sign = found.column - 1;
    if (line.substr(sign).starts_with("--")) return mend_indentation(line, found);
    return make_dash(line, found, sign + first_character(line.substr(sign)).length);
}

Edits mend_bullet_without_space(std::string_view line, const Place& found) {
    return {{part_of(found, line.find_first_not_of('-', found.column - 1), 0), " "}};
}

Edits mend_colon(std::string_view line, const Place& found) {
    const std::size_t end = found.column - 1 + found.length;
    std::size_t sign = end - 1;
    while (sign > 0 && continues_character(line[sign]))
        --sign;
    const std::size_t label = line.find_last_not_of(" \t", sign - 1) + 1;
    return {{part_of(found, label, end - label), ":"}};
}

Edits mend_marked_label(std::string_view line, const Place& found) {
    const std::size_t start = found.column - 1, end = start + found.length;
    const std::size_t first = line.find_first_not_of(around_label, start);
    const std::size_t last = line.find_last_not_of(around_label, end - 1) + 1;
    return {{part_of(found, start, first - start), ""}, {part_of(found, last, end - last), ":"}};
}

Edits mend_indentation(std::string_view, const Place& found) {
    return {{part_of(found, 0, found.column - 1), ""}};
}

Edits mend_line_of_dashes(std::string_view line, const Place& found) {
    return {{part_of(found, 0, line.size()), ""}};
}

Edits take_out_line(std::string_view line, const Place& found) {
    return {{part_of(found, 0, line.size() + 1), ""}};
}

Edits mend_foreign_comment(std::string_view line, const Place& found) {
    const std::size_t after = found.column - 1 + found.length;
    Edits mend{{part_of(found, 0, after), "#"}};
    for (const std::string_view closing : {"*/", "-->"}) {
        if (!line.substr(after).ends_with(closing)) continue;
        const std::size_t text = line.find_last_not_of(' ', line.size() - closing.size() - 1);
        const std::size_t end = std::max(after, text + 1);
        mend.push_back({part_of(found, end, line.size() - end), ""});
    }
    return mend;
}

}
