// What a long run says of itself, on a line that a terminal holds.
#include "compiler/commands/progress.hpp"

#include <doctest/doctest.h>

namespace quoin::commands {

TEST_CASE("progress: the line of a long run says how far it is, how long yet, and what it is at") {
    struct Case {
        std::size_t done, all;
        double seconds;
        std::string_view what;
        std::size_t columns;
        std::string_view line;
    };
    for (const Case& c :
         {Case{0, 10, 0, "a", 80, "[....................] 0 of 10, 0 s left: a"},
          Case{5, 10, 5, "a/b.resume", 80, "[##########..........] 5 of 10, 5 s left: a/b.resume"},
          Case{10, 10, 9, "a", 80, "[####################] 10 of 10, 0 s left: a"},
          Case{1, 1000, 1, "a", 80, "[....................] 1 of 1000, 17 min left: a"},
          Case{5, 10, 5, "r\u00E9sum\u00E9\x1B[2J", 47,
               "[##########..........] 5 of 10, 5 s left: r\u00E9sum"},
          Case{5, 10, 5, "\x1B[2J", 80, "[##########..........] 5 of 10, 5 s left: ?[2J"}})
        CHECK(progress_line(c.done, c.all, c.seconds, c.what, c.columns) == c.line);
}

}
