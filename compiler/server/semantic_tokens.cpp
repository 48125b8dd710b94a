// What each piece of a document is, told for colours: labels, bullets, comments, dates, tags.
#include "compiler/server/spot.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>

namespace quoin::server {

namespace {

enum class TokenType { property, keyword, string, number, comment, decorator, heading };
// As the protocol names them; a heading has none of its own.
constexpr std::array token_names{"property", "keyword",   "string", "number",
                                 "comment",  "decorator", "class"};

struct Token {
    std::uint32_t line = 0;            // from 0
    std::size_t begin = 0, length = 0; // bytes of the line
    TokenType type{};
};

class Tokens {
public:
    explicit Tokens(const session::Document& document)
        : own_(own_tree(document)), lines_(document.text) {
        for (const syntax::Block& block : own_.tree.heading)
            add(block);
        for (const syntax::SectionTree& section : own_.tree.sections) {
            add(section.opening);
            for (const syntax::Block& block : section.blocks)
                add(block);
        }
        add_comments();
        std::ranges::sort(all_, {},
                          [](const Token& token) { return std::pair(token.line, token.begin); });
    }

    // "relative to the previous token": five numbers each.
    Json data(session::Units units) const {
        Json data = Json::array();
        std::uint32_t line = 0, character = 0;
        for (const Token& token : all_) {
            const std::string_view text = lines_.line(token.line);
            const std::uint32_t begin = session::units_in(text.substr(0, token.begin), units);
            const std::uint32_t length =
                session::units_in(text.substr(token.begin, token.length), units);
            if (token.line != line) character = 0;
            for (const std::uint32_t number :
                 {token.line - line, begin - character, length,
                  static_cast<std::uint32_t>(token.type), std::uint32_t{0}})
                data.push_back(number);
            line = token.line;
            character = begin;
        }
        return data;
    }

private:
    void add(const Place& place, TokenType type) {
        if (place.line == 0 || place.column == 0 || place.length == 0) return;
        const std::string_view text = lines_.line(place.line - 1);
        if (text != own_.sources.file(0).line(place.line)) return; // not as it was typed
        all_.push_back({place.line - 1, place.column - 1, place.length, type});
    }

    void add(const syntax::Block& block) {
        for (const syntax::Node& node : block)
            add(node);
    }

    void add(const syntax::Node& node) {
        if (node.kind == syntax::Node::Kind::bullet)
            add({0, node.place.line, 1, static_cast<std::uint32_t>(node.level)},
                TokenType::keyword);
        if (node.kind != syntax::Node::Kind::field) return add_tags(node);
        const trade::Word* word = trade::find_word(node.label.text);
        const bool section = node.label.text == "section";
        add(node.label.place,
            section || (word && word->is_setting()) ? TokenType::keyword : TokenType::property);
        const bool dates = word && word->value == trade::ValueKind::dates;
        for (const syntax::Slice& slice : node.value.slices)
            if (section)
                add(slice.place, TokenType::heading);
            else if (dates)
                add(slice.place, TokenType::number);
            else if (word && word->is_setting())
                add(slice.place, TokenType::string);
        add_tags(node);
    }

    void add_tags(const syntax::Node& node) {
        for (const syntax::TagMark& tag : node.tags)
            add(tag.place, TokenType::decorator);
    }

    void add_comments() {
        for (std::uint32_t line = 0; line < lines_.count(); ++line)
            if (const std::string_view text = lines_.line(line); text.starts_with('#'))
                all_.push_back({line, 0, text.size(), TokenType::comment});
    }

    OwnTree own_;
    session::TextLines lines_;
    std::vector<Token> all_;
};

Answer semantic_tokens(Desk& desk, const Json& params) {
    const Addressed one = addressed_text(desk, params);
    if (!one.document) return one.refusal;
    return Json{{"data", Tokens(*one.document).data(desk.units)}};
}

constexpr Method methods_of_tokens[] = {{"textDocument/semanticTokens/full", semantic_tokens}};

void announce_tokens(Json& capabilities) {
    capabilities["semanticTokensProvider"] = {
        {"legend", {{"tokenTypes", token_names}, {"tokenModifiers", Json::array()}}},
        {"full", true}};
}

}

Feature semantic_tokens_feature() {
    return {methods_of_tokens, announce_tokens};
}

}
