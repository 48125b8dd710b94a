// fork and exec, for posix_spawn cannot set resource limits. Between the two only calls that are
// safe after a fork of a program with threads (signal-safety(7)).
#include "compiler/portal/limited_process.hpp"

#include "compiler/base/descriptor.hpp"
#include "compiler/base/programs.hpp"

#include <fcntl.h>
#include <poll.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <csignal>
#include <memory>
#include <system_error>
#include <utility>

namespace quoin::portal {

namespace {

using Clock = std::chrono::steady_clock;

constexpr std::size_t at_once = 2;
constexpr std::size_t most_messages = 4096;
constexpr int exec_failed = 127, setup_failed = 126; // as shells say it

[[noreturn]] void refuse(const char* what) {
    throw std::system_error(errno, std::generic_category(), what);
}

struct Pipe {
    Descriptor read, write;

    Pipe() {
        int ends[2];
        if (::pipe2(ends, O_CLOEXEC) != 0) refuse("cannot make a pipe");
        read = Descriptor(ends[0]);
        write = Descriptor(ends[1]);
        ::fcntl(ends[0], F_SETFL, O_NONBLOCK);
    }
};

struct Call { // made before the fork, for after it nothing may be allocated
    std::string program;
    std::vector<std::string> words;
    std::vector<std::string> settings; // its environment
    std::vector<char*> argv, environment;
    int nothing = -1; // /dev/null
    const ToolLimits& limits;
};

// As exec takes them: ended by a null. They point into `words`.
std::vector<char*> pointers_to(std::vector<std::string>& words) {
    std::vector<char*> pointers;
    for (std::string& word : words)
        pointers.push_back(word.data());
    pointers.push_back(nullptr);
    return pointers;
}

// Never above what the user has set already: that only root may do.
void limit(int resource, rlim_t soft, rlim_t hard) {
    rlimit set{};
    ::getrlimit(static_cast<__rlimit_resource>(resource), &set);
    const rlimit both{std::min(soft, set.rlim_max), std::min(hard, set.rlim_max)};
    if (::setrlimit(static_cast<__rlimit_resource>(resource), &both) != 0) ::_exit(setup_failed);
}

void limit(int resource, rlim_t most) {
    limit(resource, most, most);
}

void reset_signals() {
    sigset_t none;
    ::sigemptyset(&none);
    ::sigprocmask(SIG_SETMASK, &none, nullptr);
    ::signal(SIGPIPE, SIG_DFL);
    // A library may want to keep something between runs, as fontconfig its cache: that fails, and
    // is no reason to be killed.
    ::signal(SIGXFSZ, SIG_IGN);
}

[[noreturn]] void become(const Call& call, int output, int messages) {
    constexpr rlim_t most_files = 64;

    ::setpgid(0, 0);
    ::prctl(PR_SET_PDEATHSIG, SIGKILL);
    reset_signals();
    if (::dup2(call.nothing, STDIN_FILENO) < 0 || ::dup2(output, STDOUT_FILENO) < 0 ||
        ::dup2(messages, STDERR_FILENO) < 0 || ::chdir("/") != 0)
        ::_exit(setup_failed);
    ::close_range(STDERR_FILENO + 1, ~0U, 0); // what others left open to be inherited
    limit(RLIMIT_AS, call.limits.memory);
    // a second between, for at the hard limit the kernel kills without saying why
    limit(RLIMIT_CPU, call.limits.cpu_seconds, call.limits.cpu_seconds + 1);
    limit(RLIMIT_FSIZE, 0);
    limit(RLIMIT_CORE, 0);
    limit(RLIMIT_NOFILE, most_files);
    ::execve(call.program.c_str(), call.argv.data(), call.environment.data());
    ::_exit(exec_failed);
}

class Running {
public:
    Running(const Tool& tool, std::string program, const ToolLimits& limits, ToolResult& result)
        : limits_(limits), result_(result), deadline_(Clock::now() + limits.patience) {
        Descriptor nothing(open_calmly("/dev/null", O_RDONLY | O_CLOEXEC));
        Call call{std::move(program), tool.arguments, tool.environment, {}, {},
                  nothing.number(),   limits};
        call.words.insert(call.words.begin(), tool.name);
        call.settings.insert(call.settings.end(), {"LC_ALL=C.UTF-8", "PATH=/usr/bin:/bin"});
        call.argv = pointers_to(call.words);
        call.environment = pointers_to(call.settings);

        Pipe output, messages;
        process_ = ::fork();
        if (process_ < 0) refuse("cannot start a process");
        if (process_ == 0) become(call, output.write.number(), messages.write.number());
        watch();
        output_ = std::move(output.read);
        messages_ = std::move(messages.read);
    }
    ~Running() {
        if (process_ > 0) kill_group(); // only when an exception passes
    }
    Running(const Running&) = delete;
    Running& operator=(const Running&) = delete;

    std::array<pollfd, 3> polled() const {
        return {pollfd{output_.number(), POLLIN, 0}, pollfd{messages_.number(), POLLIN, 0},
                pollfd{handle_.number(), POLLIN, 0}};
    }
    Clock::time_point deadline() const { return deadline_; }

    // Takes what has come; true once the tool is over.
    bool step(bool ended) {
        drain(messages_, result_.messages, most_messages);
        const bool fits = drain(output_, result_.output, limits_.output);
        if (!fits || Clock::now() >= deadline_) {
            result_.end = fits ? ToolEnd::too_long : ToolEnd::too_large;
            kill_group();
            return true;
        }
        if (!ended) return false;
        finish();
        return true;
    }

private:
    // False if there is more than `most`; what is more is read and dropped. In rounds, so that a
    // tool that never stops writing does not keep us from the clock.
    static bool drain(Descriptor& from, std::string& to, std::size_t most) {
        constexpr int rounds = 16;
        std::array<char, 65536> piece;
        bool fits = true;
        for (int round = 0; round < rounds && from.number() >= 0; ++round) {
            const ssize_t count = ::read(from.number(), piece.data(), piece.size());
            if (count < 0 && errno == EINTR) continue;
            if (count < 0 && errno == EAGAIN) break;
            if (count <= 0) {
                from.close();
                break;
            }
            const auto come = static_cast<std::size_t>(count);
            const std::size_t taken = std::min(come, most - std::min(most, to.size()));
            to.append(piece.data(), taken);
            fits = fits && taken == come;
        }
        return fits;
    }

    int reap() {
        int status = 0;
        while (::waitpid(process_, &status, 0) < 0 && errno == EINTR) {
        }
        process_ = -1;
        return status;
    }

    void kill_group() {
        ::kill(-process_, SIGKILL);
        ::kill(process_, SIGKILL); // if it has no group yet
        reap();
    }

    void watch() {
        ::setpgid(process_, process_); // here too: whichever of the two comes first
        // by its number, for glibc 2.36 declares it as C does not link from C++
        handle_ = Descriptor(static_cast<int>(::syscall(SYS_pidfd_open, process_, 0)));
        if (handle_.number() < 0) {
            kill_group();
            refuse("cannot watch a process");
        }
    }

    void finish() {
        ::kill(-process_, SIGKILL); // what it may have left behind, while the group's number holds
        const int status = reap();
        const bool exited = WIFEXITED(status);
        result_.code = exited ? WEXITSTATUS(status) : WTERMSIG(status);
        result_.end = end_by(exited);
    }

    ToolEnd end_by(bool exited) const {
        if (exited && result_.code == exec_failed) return ToolEnd::missing;
        if (exited && result_.code == setup_failed) return ToolEnd::unlimited;
        if (!exited && result_.code == SIGXCPU) return ToolEnd::too_long;
        if (result_.code != 0 && ran_out_of_memory()) return ToolEnd::no_memory;
        return exited ? ToolEnd::done : ToolEnd::broken;
    }

    // Poppler's own words, and those of the C++ library; the system has no signal for it.
    bool ran_out_of_memory() const {
        return result_.messages.find("Out of memory") != std::string::npos ||
               result_.messages.find("bad_alloc") != std::string::npos;
    }

    const ToolLimits& limits_;
    ToolResult& result_;
    Clock::time_point deadline_;
    pid_t process_ = -1;
    Descriptor handle_, output_, messages_;
};

void wait_for_any(std::vector<std::unique_ptr<Running>>& running) {
    std::vector<pollfd> polled;
    Clock::time_point soonest = Clock::time_point::max();
    for (const auto& tool : running) {
        const auto of_tool = tool->polled();
        polled.insert(polled.end(), of_tool.begin(), of_tool.end());
        soonest = std::min(soonest, tool->deadline());
    }
    const auto left = std::chrono::ceil<std::chrono::milliseconds>(soonest - Clock::now()).count();
    ::poll(polled.data(), polled.size(), static_cast<int>(std::max<long long>(left, 0)));
    std::size_t at = 0;
    std::erase_if(running, [&](const std::unique_ptr<Running>& tool) {
        const bool ended = (polled[at + 2].revents & POLLIN) != 0;
        at += 3;
        return tool->step(ended);
    });
}

bool is_well(const ToolResult& result) {
    return result.end == ToolEnd::done || result.end == ToolEnd::not_run;
}

}

std::vector<ToolResult> run_limited(std::span<const Tool> tools, const ToolLimits& limits) {
    std::vector<ToolResult> results(tools.size());
    std::vector<std::unique_ptr<Running>> running;
    std::size_t next = 0;
    while (next < tools.size() || !running.empty()) {
        if (next == tools.size() || running.size() == at_once) {
            wait_for_any(running);
            if (!std::ranges::all_of(results, is_well)) next = tools.size();
            continue;
        }
        std::string program = find_program(tools[next].name);
        if (program.empty())
            results[next].end = ToolEnd::missing;
        else
            running.push_back(
                std::make_unique<Running>(tools[next], std::move(program), limits, results[next]));
        ++next;
    }
    return results;
}

}
