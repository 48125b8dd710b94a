// A slip, the one message that it gets, and what `quoin mend` makes of it.
#pragma once

#include "compiler/base/write_file.hpp"
#include "compiler/commands/mend/mend.hpp"
#include "tests/advice/proofread.hpp"
#include "tests/fixtures/read_resume.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <initializer_list>
#include <iterator>
#include <string>
#include <unistd.h>

namespace quoin::commands {

namespace fs = std::filesystem;
using fixtures::read_below_name;

inline const std::string name_line = "name: Ottoline Brandt\n";

// The source as `quoin mend` leaves it, without the line of the name.
inline std::string mended(const std::string& lines) {
    const fs::path path =
        fs::temp_directory_path() / ("quoin newcomer " + std::to_string(::getpid()) + ".resume");
    REQUIRE_FALSE(write_file(path.string(), name_line + lines));
    const MendTools tools{fixtures::language(), fixtures::read_on};
    mend_input(path.string(), tools, false);
    std::ifstream in(path);
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    fs::remove(path);
    return text.substr(std::min(name_line.size(), text.size()));
}

struct Slip {
    std::string typed, message, right;
};

inline void check_slips(std::initializer_list<Slip> slips) {
    for (const Slip& slip : slips) {
        CAPTURE(slip.typed);
        CHECK(read_below_name(slip.typed).messages() == "draft.resume:" + slip.message);
        CHECK(mended(slip.typed) == slip.right);
        CHECK(read_below_name(slip.right).messages().empty());
    }
}

}
