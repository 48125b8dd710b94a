// The steps of a path by the grammar of themes.
#include "compiler/stages/theme/icons.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/numbers.hpp"
#include "compiler/stages/theme/messages.hpp"
#include "compiler/stages/theme/read_by_grammar.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <vector>

namespace quoin::theme {

namespace {

namespace rules = grammar::theme;

constexpr double side_of_square = 100;

struct PathState {
    Path path;
    std::vector<double> at; // of the step that is being read
    bool beyond = false;    // a place outside the square

    void end_step(PathStep::Kind kind) {
        PathStep step{kind, {}};
        std::copy_n(at.begin(), std::min(at.size(), step.at.size()), step.at.begin());
        path.push_back(step);
        at.clear();
    }
};

template<typename Rule>
struct PathAction : tao::pegtl::nothing<Rule> {};
template<>
struct PathAction<rules::coordinate> {
    template<typename Input>
    static void apply(const Input& in, PathState& state) {
        const double value = number_from<double>(in.string_view()).value_or(0);
        state.beyond = state.beyond || value > side_of_square;
        state.at.push_back(value);
    }
};
template<PathStep::Kind Kind>
struct EndStep {
    static void apply0(PathState& state) { state.end_step(Kind); }
};
template<>
struct PathAction<rules::move_to> : EndStep<PathStep::Kind::move> {};
template<>
struct PathAction<rules::line_to> : EndStep<PathStep::Kind::line> {};
template<>
struct PathAction<rules::curve_to> : EndStep<PathStep::Kind::curve> {};
template<>
struct PathAction<rules::close_path> : EndStep<PathStep::Kind::close> {};

void check_pieces(const std::vector<PatternPiece>& pieces, const Theme& theme, Place place,
                  Diagnostics& diagnostics) {
    for (const PatternPiece& piece : pieces) {
        check_pieces(piece.group, theme, place, diagnostics);
        if (piece.kind != PatternPiece::Kind::icon || theme.icons.contains(piece.literal)) continue;
        std::vector<std::string_view> known;
        for (const auto& [name, path] : theme.icons)
            known.push_back(name);
        diagnostics.error(place, fill<messages::no_icon>(piece.literal, fmt::join(known, ", "),
                                                         piece.literal,
                                                         did_you_mean(piece.literal, known)));
    }
}

}

std::optional<std::string> read_icon_name(const ThemeLine& line, Diagnostics& diagnostics) {
    std::string name = line.value.joined();
    const bool fits = std::ranges::all_of(
        name, [](char letter) { return is_small_letter(letter) || letter == '-'; });
    if (fits) return name;
    diagnostics.error(line.place, fill<messages::icon_name>(name));
    return std::nullopt;
}

void read_icon_line(const ThemeLine& line, Path& path, Diagnostics& diagnostics) {
    if (line.label != "path") {
        constexpr std::string_view known[] = {"path"};
        diagnostics.error(line.label_place, fill<messages::no_icon_setting>(
                                                line.label, did_you_mean(line.label, known)));
        return;
    }
    PathState state;
    if (!read_by_grammar<rules::path, PathAction>(line.value, state, diagnostics)) return;
    if (state.beyond)
        diagnostics.error(line.place, fill<messages::path_beyond>(side_of_square, side_of_square));
    path.insert(path.end(), state.path.begin(), state.path.end());
}

IconWidth width_of(const Path& path) {
    constexpr int steps = 16; // along a curve
    IconWidth width{side_of_square, 0};
    double from = 0;
    for (const PathStep& step : path) {
        if (step.kind == PathStep::Kind::close) continue;
        const bool curve = step.kind == PathStep::Kind::curve;
        for (int i = curve ? 1 : steps; i <= steps; ++i) {
            const double t = static_cast<double>(i) / steps, u = 1 - t;
            const double at = curve ? u * u * u * from + 3 * u * u * t * step.at[0] +
                                          3 * u * t * t * step.at[2] + t * t * t * step.at[4]
                                    : step.at[0];
            width.left = std::min(width.left, at);
            width.right = std::max(width.right, at);
        }
        from = curve ? step.at[4] : step.at[0];
    }
    return width;
}

void check_icons(const Theme& theme, Diagnostics& diagnostics) {
    for (const PatternLine& line : theme.heading.lines)
        check_pieces(line.pieces, theme, line.place, diagnostics);
    for (const auto& [holds, form] : theme.forms)
        for (const PatternLine& line : form.lines)
            check_pieces(line.pieces, theme, line.place, diagnostics);
}

}
