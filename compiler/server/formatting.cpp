// A document laid out anew, whole, and bullets as they are typed.
#include "compiler/base/ascii.hpp"
#include "compiler/server/edits.hpp"
#include "compiler/server/laid_out.hpp"

namespace quoin::server {

namespace {

Answer format_document(Desk& desk, const Json& params) {
    const Addressed one = addressed_text(desk, params);
    if (!one.document) return one.refusal;
    if (!is_resume(one)) return Json::array();
    const EditBook book =
        EditBook(desk).rewrite(one.path, one.document->text, laid_out(one.document->text));
    return book.empty() ? Json::array() : book.json()["changes"][desk.uri_of(one.path)];
}

bool is_bullet_sign(std::string_view word) {
    return word == "*" || word == "\u2022" || word == "\u2013" || word == "\u2014";
}

Json replaced(std::uint32_t line, std::uint32_t end, std::string text) {
    return Json::array({{{"range", to_json(session::Range{{line, 0}, {line, end}})},
                         {"newText", std::move(text)}}});
}

// Behind a bullet the next one opens; behind an empty one the list ends.
Json opened_line(const session::TextLines& lines, session::Position at, session::Units units) {
    const std::string_view above = lines.line(at.line - 1);
    if (!above.starts_with('-') || !lines.line(at.line).empty()) return Json::array();
    const std::string_view dashes = above.substr(0, above.find_first_not_of('-'));
    if (!trimmed(above, "- \t").empty()) return replaced(at.line, 0, std::string(dashes) + ' ');
    return replaced(at.line - 1, session::units_in(above, units), "");
}

Answer format_typed(Desk& desk, const Json& params) {
    const Addressed one = addressed_text(desk, params);
    if (!one.document) return one.refusal;
    const session::Position at = position_from(params.at("position"));
    const session::TextLines lines(one.document->text);
    if (at.line >= lines.count()) return Json::array();
    if (params.at("ch") == "\n")
        return at.line == 0 ? Json::array() : opened_line(lines, at, desk.units);
    const std::string_view line = lines.line(at.line);
    const std::string_view sign = trimmed(line.substr(0, line.find(' ')));
    const bool just_typed = line.size() == sign.size() + 1 && is_bullet_sign(sign);
    return just_typed ? replaced(at.line, session::units_in(line, desk.units), "- ")
                      : Json::array();
}

constexpr Method methods_of_formatting[] = {{"textDocument/formatting", format_document},
                                            {"textDocument/onTypeFormatting", format_typed}};

void announce_formatting(Json& capabilities) {
    capabilities["documentFormattingProvider"] = true;
    capabilities["documentOnTypeFormattingProvider"] = {{"firstTriggerCharacter", "\n"},
                                                        {"moreTriggerCharacter", {" "}}};
}

}

Feature formatting_feature() {
    return {methods_of_formatting, announce_formatting};
}

}
