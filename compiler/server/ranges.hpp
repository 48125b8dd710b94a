// Places of a state as ranges in its files, as the editor counts them.
#pragma once

#include "compiler/base/source_map.hpp"
#include "compiler/session/session.hpp"

#include <cstdint>
#include <map>
#include <optional>

namespace quoin::server {

class Ranges {
public:
    Ranges(const session::State& state, session::Units units) : state_(state), units_(units) {}

    // Of a whole line, its text; of a file as a whole, the name that the résumé opens with, else
    // the first line.
    session::Range of(const Place& place);
    // The place of an edit; none if the bytes have none of their own.
    std::optional<session::Range> of_edit(const Place& place);

private:
    struct File {
        SourceMap map;
        session::TextLines lines;
    };

    File& file(std::uint32_t index);
    session::Range whole_line(std::uint32_t index, std::uint32_t line);

    const session::State& state_;
    session::Units units_;
    std::map<std::uint32_t, File> files_;
};

}
