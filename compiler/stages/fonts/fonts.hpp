// Font files: which families there are, and one loaded face for each file used.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"

#include <bitset>
#include <filesystem>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

struct hb_face_t;
struct hb_font_t;

namespace quoin::fonts {

struct FaceStyle {
    bool bold = false;
    bool italic = false;

    auto operator<=>(const FaceStyle&) const = default;
};

// One font file, open for as long as the Fonts that gave it. Immutable, so threads share it.
class Face {
public:
    explicit Face(const std::filesystem::path& file); // throws std::runtime_error if it is no font
    ~Face();
    Face(const Face&) = delete;
    Face& operator=(const Face&) = delete;

    hb_face_t* hb_face() const { return face_; }
    hb_font_t* hb_font() const { return font_; } // scaled to font units
    int units_per_em() const { return units_per_em_; }
    bool is_cff() const { return is_cff_; }
    // In font units, above and below the baseline, both positive: the letter d's top, the letter
    // p's bottom, the capital H's top, the letter x's top.
    int ascent() const { return ascent_; }
    int descent() const { return descent_; }
    int cap_height() const { return cap_height_; }
    int x_height() const { return x_height_; }
    bool has_glyph(char32_t character) const {
        return character < ascii_.size() ? ascii_[character] : maps(character);
    }
    bool has_feature(const char* tag) const; // of OpenType's GSUB table, in any script: "smcp"
    const std::filesystem::path& file() const { return file_; }

private:
    bool maps(char32_t character) const; // by its table, which takes a search

    std::filesystem::path file_;
    std::bitset<128> ascii_; // the signs that it has, which are asked for over and over
    hb_face_t* face_ = nullptr;
    hb_font_t* font_ = nullptr;
    int units_per_em_ = 0;
    bool is_cff_ = false;
    int ascent_ = 0, descent_ = 0, cap_height_ = 0, x_height_ = 0;
};

struct Family {
    std::string name;
    std::string licence;                    // SPDX
    std::string package;                    // the Debian package that carries it
    std::map<FaceStyle, std::string> files; // relative to the font folder
};

// The families of `fonts/families`, and their faces, each loaded when first asked for.
class Fonts {
public:
    // `folder` holds `families` (labelled lines) and the font files it names.
    static std::unique_ptr<Fonts> open(Sources& sources, const std::filesystem::path& folder,
                                       Diagnostics& diagnostics);

    const Family* family(std::string_view name) const; // ASCII case ignored; null if unknown
    std::vector<std::string_view> names() const;
    // Null if the file is missing or is no font; `fault` then says which file and why.
    const Face* face(const Family& family, FaceStyle style, std::string& fault);

private:
    std::filesystem::path folder_;
    std::vector<Family> families_;
    std::map<std::string, std::unique_ptr<Face>> faces_;
    std::mutex mutex_; // guards faces_
};

}
