// A long run followed on a terminal, and ended by the reader's interrupt with what is done kept.
#pragma once

#include <atomic>
#include <chrono>
#include <cstddef>
#include <string>
#include <string_view>

namespace quoin::commands {

// "  [######..........]  3412 of 10000, 25 s left: spring/brandt.resume", no wider than `columns`.
std::string progress_line(std::size_t done, std::size_t all, double seconds, std::string_view what,
                          std::size_t columns);

// On standard error, one line that is written over and gone at the end; quiet where that is no
// terminal, and on a run that is short.
class ProgressLine {
public:
    ProgressLine();
    ~ProgressLine();
    ProgressLine(const ProgressLine&) = delete;
    ProgressLine& operator=(const ProgressLine&) = delete;

    void show(std::size_t done, std::size_t all, const std::string& what);
    void clear(); // for something else to be said

private:
    using Clock = std::chrono::steady_clock;

    Clock::time_point start_ = Clock::now(), shown_ = start_;
    bool is_terminal_ = false, stands_ = false;
};

// While it lives, SIGINT and SIGTERM are taken down, and stop nothing by themselves.
class Interrupt {
public:
    Interrupt();
    ~Interrupt();
    Interrupt(const Interrupt&) = delete;
    Interrupt& operator=(const Interrupt&) = delete;

    static const std::atomic<bool>& flag();
    static void pass_on(); // ends this program by the signal that came, as its starter expects
};

}
