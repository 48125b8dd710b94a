// Text to glyphs: signs that the face should not see are exchanged, each script is shaped by its
// own rules, and every glyph is told which bytes of the text it stands for.

#include "compiler/stages/fonts/shape.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/stages/fonts/word_features.hpp"
#include "compiler/stages/fonts/word_shapes.hpp"

#include <hb.h>

#include <algorithm>
#include <array>
#include <memory>
#include <span>

namespace quoin::fonts {
namespace {

using Buffer = std::unique_ptr<hb_buffer_t, decltype(&hb_buffer_destroy)>;

struct InputCharacter { // as it is shaped, with the bytes it came from
    hb_codepoint_t code = 0;
    std::uint32_t begin = 0;
    std::uint32_t end = 0;
};

struct ScriptRun { // of characters in one script
    std::size_t begin = 0;
    std::size_t end = 0;
    hb_script_t script = HB_SCRIPT_COMMON;
};

constexpr hb_codepoint_t true_hyphen = 0x2010;

// Signs that say where a line may end, and show nothing.
constexpr std::array<hb_codepoint_t, 4> line_break_controls{0x00AD, 0x200B, 0x2060, 0xFEFF};

bool is_joiner(hb_codepoint_t code) {
    return code == 0x200C || code == 0x200D;
}

hb_codepoint_t exchanged(const Face& face, hb_codepoint_t code) {
    switch (code) {
    case 0x00A0: // no-break space
        return ' ';
    case true_hyphen:
    case 0x2011: // no-break hyphen
        return face.has_glyph(true_hyphen) ? true_hyphen : '-';
    default:
        return code;
    }
}

// HarfBuzz decodes the text, so that malformed UTF-8 comes out as U+FFFD and no worse.
std::vector<InputCharacter> decode_by_harfbuzz(hb_buffer_t* buffer, const Face& face,
                                               std::string_view text) {
    const auto size = static_cast<int>(text.size());
    hb_buffer_add_utf8(buffer, text.data(), size, 0, size);
    unsigned count = 0;
    const hb_glyph_info_t* decoded = hb_buffer_get_glyph_infos(buffer, &count);
    std::vector<InputCharacter> characters;
    characters.reserve(count);
    for (unsigned i = 0; i < count; ++i) {
        const hb_codepoint_t code = decoded[i].codepoint;
        const auto end = i + 1 < count ? decoded[i + 1].cluster : static_cast<unsigned>(size);
        if (std::ranges::find(line_break_controls, code) == line_break_controls.end())
            characters.push_back({exchanged(face, code), decoded[i].cluster, end});
    }
    return characters;
}

bool runs_right_to_left(hb_script_t script) {
    return hb_script_get_horizontal_direction(script) == HB_DIRECTION_RTL;
}

hb_script_t script_of(hb_codepoint_t code) {
    if (code < 0x80)
        return is_ascii_letter(static_cast<char>(code)) ? HB_SCRIPT_LATIN : HB_SCRIPT_COMMON;
    return hb_unicode_script(hb_unicode_funcs_get_default(), code);
}

// Spaces, figures and punctuation go with the script before them, or with the first one. Not so
// beside right-to-left letters: there they keep their own direction.
hb_script_t script_after(hb_script_t current, hb_codepoint_t code) {
    const hb_script_t own = script_of(code);
    if (own == HB_SCRIPT_INHERITED || own == HB_SCRIPT_UNKNOWN) return current;
    if (own == HB_SCRIPT_COMMON && !runs_right_to_left(current)) return current;
    return own;
}

std::vector<ScriptRun> itemise(std::span<const InputCharacter> characters) {
    std::vector<ScriptRun> runs;
    for (std::size_t i = 0; i < characters.size(); ++i) {
        const hb_script_t current = runs.empty() ? HB_SCRIPT_COMMON : runs.back().script;
        const hb_script_t script = script_after(current, characters[i].code);
        const bool first_letter = current == HB_SCRIPT_COMMON && !runs_right_to_left(script);
        if (runs.empty() || (script != current && !first_letter)) runs.push_back({i, i, script});
        runs.back().script = script;
        runs.back().end = i + 1;
    }
    return runs;
}

// Words and the spaces between them are shaped apart: a face that kerns against the space (Vollkorn
// does, `y` before it and `w` after) can leave so little that readers run two words together.
std::vector<ScriptRun> part_at_spaces(std::span<const ScriptRun> runs,
                                      std::span<const InputCharacter> characters) {
    std::vector<ScriptRun> parts;
    for (const ScriptRun& run : runs)
        for (std::size_t i = run.begin; i < run.end; ++i) {
            const bool goes_on =
                i > run.begin && (characters[i].code == ' ') == (characters[i - 1].code == ' ');
            if (!goes_on) parts.push_back({i, i, run.script});
            parts.back().end = i + 1;
        }
    return parts;
}

// A cluster's characters among its glyphs: one each while they last and the rest with the last
// glyph; with fewer characters than glyphs the first has them all.
void share_out(std::span<Glyph> glyphs, std::span<const InputCharacter> characters) {
    const bool each_has_one = characters.size() >= glyphs.size();
    for (std::size_t i = 0; i < glyphs.size(); ++i) {
        const std::size_t first = each_has_one ? i : 0;
        std::size_t last = each_has_one ? i + 1 : characters.size();
        if (each_has_one && i + 1 == glyphs.size()) last = characters.size();
        while (last > first + 1 && is_joiner(characters[last - 1].code))
            --last;
        glyphs[i].text_begin = characters[first].begin;
        glyphs[i].text_length = characters[last - 1].end - characters[first].begin;
        if (!each_has_one && i > 0) glyphs[i].text_length = 0;
    }
}

// Until then `text_begin` of each glyph is the index of its cluster's first character.
void give_text(std::span<Glyph> glyphs, std::span<const InputCharacter> characters,
               std::size_t run_end) {
    for (std::size_t i = 0; i < glyphs.size();) {
        const std::size_t first = glyphs[i].text_begin;
        std::size_t next = i;
        while (next < glyphs.size() && glyphs[next].text_begin == first)
            ++next;
        const std::size_t end = next < glyphs.size() ? glyphs[next].text_begin : run_end;
        share_out(glyphs.subspan(i, next - i), characters.subspan(first, end - first));
        i = next;
    }
}

// In the face's order, which of a right-to-left word is from left to right.
ShapedWord shaped_in(hb_buffer_t* buffer, std::size_t begin) {
    unsigned count = 0;
    const hb_glyph_info_t* infos = hb_buffer_get_glyph_infos(buffer, &count);
    const hb_glyph_position_t* positions = hb_buffer_get_glyph_positions(buffer, &count);
    ShapedWord word;
    word.reserve(count);
    for (unsigned i = 0; i < count; ++i)
        word.push_back({infos[i].codepoint, positions[i].x_advance, positions[i].x_offset,
                        positions[i].y_offset,
                        infos[i].cluster - static_cast<std::uint32_t>(begin)});
    return word;
}

void append_run(const ShapedWord& word, const ScriptRun& run,
                std::span<const InputCharacter> characters, std::vector<Glyph>& glyphs) {
    const std::size_t before = glyphs.size();
    const auto begin = static_cast<std::uint32_t>(run.begin);
    for (const ShapedGlyph& glyph : word)
        glyphs.push_back(
            {glyph.id, glyph.advance, glyph.x_offset, glyph.y_offset, glyph.cluster + begin, 0});
    const auto shaped = std::span(glyphs).subspan(before);
    if (runs_right_to_left(run.script)) std::ranges::reverse(shaped);
    give_text(shaped, characters, run.end);
}

// Figures alone are shaped as they would be among words.
hb_script_t shaping_script(const ScriptRun& run) {
    return run.script == HB_SCRIPT_COMMON ? HB_SCRIPT_LATIN : run.script;
}

// What a text is shaped with.
struct Shaping {
    const Face& face;
    std::span<const hb_codepoint_t> codes;
    const ShapingFeatures& features;
    hb_buffer_t* buffer;
    WordShapes& known;
};

ShapedWord shape_run(const Shaping& shaping, const ScriptRun& run,
                     std::span<const hb_feature_t> list) {
    // The face's OpenType tables alone: what else a HarfBuzz can shape by differs between builds.
    static constexpr std::array<const char*, 2> shapers{"ot", nullptr};
    hb_buffer_t* const buffer = shaping.buffer;
    const std::string& language = shaping.features.language;
    hb_buffer_reset(buffer);
    hb_buffer_set_cluster_level(buffer, HB_BUFFER_CLUSTER_LEVEL_MONOTONE_CHARACTERS);
    hb_buffer_set_flags(buffer, HB_BUFFER_FLAG_REMOVE_DEFAULT_IGNORABLES);
    hb_buffer_add_codepoints(buffer, shaping.codes.data(), static_cast<int>(shaping.codes.size()),
                             static_cast<unsigned>(run.begin),
                             static_cast<int>(run.end - run.begin));
    hb_buffer_set_script(buffer, shaping_script(run));
    hb_buffer_set_direction(buffer,
                            runs_right_to_left(run.script) ? HB_DIRECTION_RTL : HB_DIRECTION_LTR);
    hb_buffer_set_language(
        buffer, hb_language_from_string(language.data(), static_cast<int>(language.size())));
    hb_shape_full(shaping.face.hb_font(), buffer, list.data(), static_cast<unsigned>(list.size()),
                  shapers.data());
    return shaped_in(buffer, run.begin);
}

void append_bytes(std::string& key, std::span<const hb_codepoint_t> numbers) {
    key.append(reinterpret_cast<const char*>(numbers.data()), numbers.size_bytes());
}

// All that a word's shape hangs on. None where that is more: letters of other scripts look at those
// around them, and a feature may hold for a part of the word.
void write_key(const Shaping& shaping, const ScriptRun& run, std::span<const hb_feature_t> list,
               std::string& key) {
    key.clear();
    if (shaping_script(run) != HB_SCRIPT_LATIN) return;
    for (const hb_feature_t& feature : list) {
        if (feature.start != HB_FEATURE_GLOBAL_START || feature.end != HB_FEATURE_GLOBAL_END)
            return key.clear();
        append_bytes(key, std::array{feature.tag, feature.value});
    }
    append_bytes(key, shaping.codes.subspan(run.begin, run.end - run.begin));
    key += shaping.features.language;
}

// `key` is room to write in, the same for all words of a text.
std::shared_ptr<const ShapedWord> word_of(const Shaping& shaping, const ScriptRun& run,
                                          std::string& key) {
    const std::vector<hb_feature_t> list =
        word_features(shaping.codes, {run.begin, run.end}, shaping.features);
    write_key(shaping, run, list, key);
    if (!key.empty())
        if (auto known = shaping.known.find(key)) return known;
    auto word = std::make_shared<const ShapedWord>(shape_run(shaping, run, list));
    if (!key.empty()) shaping.known.keep(key, word);
    return word;
}

}

std::vector<Glyph> shape(const Face& face, std::string_view text, const ShapingFeatures& features) {
    std::vector<Glyph> glyphs;
    if (text.empty()) return glyphs;
    const Buffer buffer(hb_buffer_create(), hb_buffer_destroy);
    const std::vector<InputCharacter> characters = decode_by_harfbuzz(buffer.get(), face, text);
    std::vector<hb_codepoint_t> codes;
    codes.reserve(characters.size());
    for (const InputCharacter& character : characters)
        codes.push_back(character.code);
    glyphs.reserve(characters.size());
    const Shaping shaping{face, codes, features, buffer.get(), word_shapes_of(face)};
    std::string key;
    for (const ScriptRun& run : part_at_spaces(itemise(characters), characters))
        append_run(*word_of(shaping, run, key), run, characters, glyphs);
    return glyphs;
}

}
