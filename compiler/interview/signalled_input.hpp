// Standard input with the signals that come while it is awaited: those that end the run are noted
// and not obeyed, so that it can leave in its own way. Nothing but the system is needed here, for
// the module needs it too.
#pragma once

#include <csignal>
#include <fcntl.h>
#include <poll.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstddef>

namespace quoin::interview {

class SignalledInput {
public:
    enum class Came { input, end, resize, resumption };

    // They are blocked but while input is awaited, so that none is missed.
    SignalledInput() {
        noted = {};
        sigset_t blocked;
        sigemptyset(&blocked);
        struct sigaction noting {};
        noting.sa_handler = note;
        for (std::size_t i = 0; i < signals.size(); ++i) {
            sigaddset(&blocked, signals.at(i));
            ::sigaction(signals.at(i), nullptr, &before_.at(i));
            if (before_.at(i).sa_handler != SIG_IGN) ::sigaction(signals.at(i), &noting, nullptr);
        }
        ::sigprocmask(SIG_BLOCK, &blocked, &mask_);
        if (own_ >= 0) descriptor_ = own_;
    }
    ~SignalledInput() {
        for (std::size_t i = 0; i < signals.size(); ++i)
            ::sigaction(signals.at(i), &before_.at(i), nullptr);
        ::sigprocmask(SIG_SETMASK, &mask_, nullptr);
        if (own_ >= 0) ::close(own_);
    }
    SignalledInput(const SignalledInput&) = delete;
    SignalledInput& operator=(const SignalledInput&) = delete;

    // With `input`, how many bytes there were; none at its end.
    Came read(char* bytes, std::size_t most, std::size_t& count) const {
        for (pollfd awaited{descriptor_, POLLIN, 0};;) {
            const bool is_there = ::ppoll(&awaited, 1, nullptr, &mask_) >= 0;
            for (std::size_t i = 0; i < signals.size(); ++i) {
                if (noted.at(i) == 0) continue;
                noted.at(i) = i < ending ? 1 : 0; // an end stays one
                return i < ending ? Came::end : i == ending ? Came::resize : Came::resumption;
            }
            if (!is_there && errno == EINTR) continue;
            const ssize_t got = ::read(descriptor_, bytes, most);
            if (got < 0 && (errno == EAGAIN || errno == EINTR)) continue;
            count = got < 0 ? 0 : static_cast<std::size_t>(got);
            return Came::input;
        }
    }

private:
    static constexpr std::array<int, 5> signals{SIGINT, SIGTERM, SIGHUP, SIGWINCH, SIGCONT};
    static constexpr std::size_t ending = 3; // those before end the run

    static void note(int signal) {
        for (std::size_t i = 0; i < signals.size(); ++i)
            if (signals[i] == signal) noted[i] = 1;
    }

    inline static std::array<volatile std::sig_atomic_t, signals.size()> noted{};
    // Control-C clears what a terminal holds, between the wait and the reading too, which must not
    // wait again then: it is opened anew, for what is read without waiting is shared with others.
    int own_ = ::isatty(STDIN_FILENO) == 1
                   ? ::open("/proc/self/fd/0", O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC)
                   : -1;
    int descriptor_ = STDIN_FILENO;
    std::array<struct sigaction, signals.size()> before_{};
    sigset_t mask_{};
};

}
