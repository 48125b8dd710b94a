#include "compiler/portal/markup.hpp"

#include "compiler/base/numbers.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace quoin::portal {

namespace {

constexpr std::string_view white_space = " \t\r\n";
constexpr std::size_t longest_entity = 10;

struct Entity {
    std::string_view written, stands_for;
};

constexpr std::array<Entity, 5> entities = {
    {{"&amp;", "&"}, {"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}, {"&apos;", "'"}}};

std::string utf8_of(unsigned long code) {
    const auto byte = [](unsigned long bits) { return static_cast<char>(bits); };
    if (code < 0x80) return {byte(code)};
    if (code < 0x800) return {byte(0xC0 | code >> 6), byte(0x80 | (code & 0x3F))};
    if (code < 0x10000)
        return {byte(0xE0 | code >> 12), byte(0x80 | (code >> 6 & 0x3F)),
                byte(0x80 | (code & 0x3F))};
    return {byte(0xF0 | code >> 18), byte(0x80 | (code >> 12 & 0x3F)),
            byte(0x80 | (code >> 6 & 0x3F)), byte(0x80 | (code & 0x3F))};
}

// `&#160;`, `&#xA0;`
std::optional<std::string> numbered(std::string_view entity) {
    if (!entity.starts_with("&#") || !entity.ends_with(';')) return std::nullopt;
    std::string_view figures = entity.substr(2, entity.size() - 3);
    const bool hex = figures.starts_with('x');
    if (hex) figures.remove_prefix(1);
    const auto code = number_from<unsigned long>(figures, hex ? 16 : 10);
    return code && *code <= 0x10FFFF ? std::optional(utf8_of(*code)) : std::nullopt;
}

std::string without_entities(std::string_view written) {
    std::string text;
    while (!written.empty()) {
        const std::size_t sign = std::min(written.find('&'), written.size());
        text += written.substr(0, sign);
        written.remove_prefix(sign);
        if (written.empty()) break;
        const std::size_t end = written.substr(0, longest_entity).find(';');
        const std::string_view entity =
            written.substr(0, end == std::string_view::npos ? 1 : end + 1);
        const auto* named = std::ranges::find(entities, entity, &Entity::written);
        const auto number = numbered(entity);
        text += named != entities.end() ? named->stands_for : number ? *number : entity;
        written.remove_prefix(entity.size());
    }
    return text;
}

bool is_control(char32_t code) {
    return code < 0x20 || (code >= 0x7F && code < 0xA0);
}

}

std::optional<MarkupTag> TagReader::next() {
    const std::size_t begin = left_.find('<');
    if (begin == std::string_view::npos) return std::nullopt;
    const std::size_t end = left_.find('>', begin);
    if (end == std::string_view::npos) return std::nullopt;
    const std::string_view inside = left_.substr(begin + 1, end - begin - 1);
    left_.remove_prefix(end + 1);
    const std::size_t name = std::min(inside.find_first_of(white_space), inside.size());
    return MarkupTag{inside.substr(0, name), inside.substr(name), left_.substr(0, left_.find('<'))};
}

std::optional<std::string_view> attribute_of(const MarkupTag& tag, std::string_view name) {
    const std::string_view all = tag.attributes;
    for (std::size_t at = all.find(name); at != std::string_view::npos;
         at = all.find(name, at + 1)) {
        const std::size_t value = at + name.size() + 2;
        if (at == 0 || white_space.find(all[at - 1]) == std::string_view::npos ||
            !all.substr(at + name.size()).starts_with("=\""))
            continue;
        const std::size_t end = all.find('"', value);
        if (end == std::string_view::npos) return std::nullopt;
        return all.substr(value, end - value);
    }
    return std::nullopt;
}

double number_in(const MarkupTag& tag, std::string_view name) {
    constexpr double most = 1e6; // pt; pages end at 14400
    const std::string_view written = attribute_of(tag, name).value_or("");
    double number = 0;
    const auto read = std::from_chars(written.data(), written.data() + written.size(), number);
    if (read.ec != std::errc() || !std::isfinite(number)) return 0;
    return std::clamp(number, -most, most);
}

std::string clean_text(std::string_view written, bool escaped) {
    const std::string resolved = escaped ? without_entities(written) : std::string(written);
    std::string text;
    for (std::string_view left = resolved; !left.empty();) {
        const Character character = take_character(left);
        const bool good = character.well_formed && !is_control(character.code);
        text += good ? character.bytes : replacement_character;
    }
    return text;
}

}
