// What is known of one draft: what a proof of it found, and how it fits its pages.
#pragma once

#include "compiler/trade/weights.hpp"

#include <array>
#include <chrono>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::caseload {

using Day = std::chrono::sys_days;

std::string iso(Day day); // 2026-11-29
std::optional<Day> day_of(std::string_view iso);

using Counts = std::array<std::size_t, 3>; // by trade::Weight

struct Remark { // a finding
    std::string check{};
    trade::Weight weight{};
    std::uint32_t line = 0;
    std::string text{};    // what is wrong, and how to mend it
    std::string quoted{};  // the line of the source, or its beginning
    bool personal = false; // of the contact block or of what is nobody's business: never quoted

    bool operator==(const Remark&) const = default;
};

struct ReadFile {
    std::filesystem::path path{};
    std::string digest{}; // digest_of() the bytes that were read

    bool operator==(const ReadFile&) const = default;
};

struct Appraisal {
    std::string name{};
    std::string stage{};
    std::string fault{}; // why it cannot be read; empty: it can
    std::uint32_t fault_line = 0;
    std::size_t pages = 0, allowed = 0;
    double size = 0;                   // pt, of the text
    bool fits = false;                 // the pages that are allowed
    std::string good{};                // what is good already, parted by `;`
    std::string advice{};              // of the office: its closing line
    std::optional<int> stale_months{}; // of the office: when a draft is too old
    std::vector<Remark> remarks{};     // by place
    std::vector<ReadFile> read{};      // the files that it hangs on, itself the first

    bool readable() const { return fault.empty(); }
    bool ready() const; // to be read, fits, and nothing that must be mended
    Counts counts() const;
    bool operator==(const Appraisal&) const = default;
};

// Of the draft at `path`; of earlier ones, of `text` as if that were there. Asked from several
// threads at once.
using Appraise = std::function<Appraisal(const std::filesystem::path& path,
                                         const std::optional<std::string>& text)>;

// As the cache keeps it, but for `read`. None if it is nothing that was kept so.
std::string to_bytes(const Appraisal& appraisal);
std::optional<Appraisal> appraisal_from(std::string_view bytes);

}
