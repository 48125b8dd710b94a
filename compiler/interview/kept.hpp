// What is kept between two answers, as text that can be read: the question that is next, and the
// answers under their sections.
#pragma once

#include "compiler/base/source.hpp"
#include "compiler/interview/plan.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace quoin::interview {

constexpr std::string_view kept_version = "quoin begin, version 1"; // the first line

struct Kept {
    Draft draft;
    Spot next;

    bool operator==(const Kept&) const = default;
};

std::string kept_text(const Kept& kept);

// None if it is of another version or damaged, which is reported at its line.
std::optional<Kept> read_kept(const Sources& sources, std::uint32_t file, Diagnostics& diagnostics);

}
