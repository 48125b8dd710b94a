#include "compiler/commands/progress.hpp"

#include "compiler/base/utf8.hpp"

#include <fmt/format.h>

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <csignal>
#include <cstdio>

namespace quoin::commands {

namespace {

std::atomic<bool> interrupted = false;
std::atomic<int> interrupting = 0;
static_assert(std::atomic<bool>::is_always_lock_free && std::atomic<int>::is_always_lock_free,
              "a signal handler may not wait (signal-safety(7))");

constexpr std::array caught{SIGINT, SIGTERM};
std::array<struct sigaction, caught.size()> handlers_before; // whose handlers take part files away

void take_down(int signal) {
    interrupting = signal;
    interrupted = true;
}

std::size_t terminal_width() {
    winsize size{};
    constexpr std::size_t usual = 80;
    if (ioctl(STDERR_FILENO, TIOCGWINSZ, &size) != 0 || size.ws_col == 0) return usual;
    return size.ws_col;
}

std::string time_words(double seconds) {
    constexpr double minute = 60;
    if (seconds < minute) return fmt::format("{:.0f} s", std::ceil(seconds));
    return fmt::format("{:.0f} min", std::ceil(seconds / minute));
}

std::string cut_to(std::string_view text, std::size_t columns) {
    std::string cut;
    std::size_t filled = 0;
    while (!text.empty()) {
        const Character next = take_character(text);
        filled += static_cast<std::size_t>(std::max(terminal_columns(next.code), 0));
        if (filled > columns) break;
        cut += next.code < U' ' ? "?" : next.bytes;
    }
    return cut;
}

}

std::string progress_line(std::size_t done, std::size_t all, double seconds, std::string_view what,
                          std::size_t columns) {
    constexpr std::size_t cells = 20;
    const std::size_t full = all == 0 ? cells : cells * done / all;
    const double left =
        done == 0 ? 0 : seconds * static_cast<double>(all - done) / static_cast<double>(done);
    const std::string line = fmt::format("[{:#<{}}{:.<{}}] {} of {}, {} left: {}", "", full, "",
                                         cells - full, done, all, time_words(left), what);
    return cut_to(line, columns);
}

ProgressLine::ProgressLine() : is_terminal_(isatty(STDERR_FILENO) == 1) {}

ProgressLine::~ProgressLine() {
    clear();
}

void ProgressLine::clear() {
    if (stands_) fmt::print(stderr, "\r\x1b[K");
    stands_ = false;
}

void ProgressLine::show(std::size_t done, std::size_t all, const std::string& what) {
    constexpr auto at_first = std::chrono::milliseconds(400),
                   again = std::chrono::milliseconds(100);
    const auto now = Clock::now();
    if (!is_terminal_ || now - start_ < at_first || now - shown_ < again) return;
    shown_ = now;
    stands_ = true;
    const std::chrono::duration<double> passed = now - start_;
    fmt::print(stderr, "\r{}\x1b[K",
               progress_line(done, all, passed.count(), what, terminal_width() - 1));
    std::fflush(stderr);
}

Interrupt::Interrupt() {
    struct sigaction action {};
    action.sa_handler = take_down;
    action.sa_flags = static_cast<int>(SA_RESETHAND); // a second one ends it at once
    for (std::size_t i = 0; i < caught.size(); ++i)
        sigaction(caught[i], &action, &handlers_before[i]);
}

Interrupt::~Interrupt() {
    for (std::size_t i = 0; i < caught.size(); ++i)
        sigaction(caught[i], &handlers_before[i], nullptr);
}

const std::atomic<bool>& Interrupt::flag() {
    return interrupted;
}

void Interrupt::pass_on() {
    std::signal(interrupting, SIG_DFL);
    std::raise(interrupting);
}

}
