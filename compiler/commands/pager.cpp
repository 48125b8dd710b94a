#include "compiler/commands/pager.hpp"

#include "compiler/base/programs.hpp"
#include "compiler/commands/printing.hpp"

#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <string>

namespace quoin::commands {

namespace {

constexpr int not_found = 127, not_run = 126; // of a shell, POSIX.1-2017 XCU 2.8.2

// Empty: none.
std::string pager_named() {
    const char* named = std::getenv("PAGER");
    const std::string pager = named == nullptr ? "less" : named;
    return pager == "cat" ? "" : pager;
}

// What ends a reader's page early, `q` or an interrupt, is the pager's affair while it runs.
class PagerSignals {
public:
    PagerSignals() : pipe_(std::signal(SIGPIPE, SIG_IGN)), keys_(std::signal(SIGINT, SIG_IGN)) {}
    ~PagerSignals() {
        std::signal(SIGPIPE, pipe_);
        std::signal(SIGINT, keys_);
    }
    PagerSignals(const PagerSignals&) = delete;
    PagerSignals& operator=(const PagerSignals&) = delete;

private:
    using Handler = void (*)(int);
    Handler pipe_, keys_;
};

// False if there is no such program. The shell that reads PAGER, which may have options, looks
// where quoin itself does: an empty PATH would be the working folder.
bool page(const std::string& pager, std::string_view text) {
    const std::string path = program_path();
    if (path.empty()) return false;
    ::setenv("PATH", path.c_str(), 1);
    ::setenv("LESS", "FRX", 0); // a text of one screen is shown and left
    std::FILE* reader = ::popen(pager.c_str(), "w");
    if (reader == nullptr) return false;
    const PagerSignals while_it_runs;
    std::fwrite(text.data(), 1, text.size(), reader);
    const int ended = ::pclose(reader);
    return !WIFEXITED(ended) || (WEXITSTATUS(ended) != not_found && WEXITSTATUS(ended) != not_run);
}

}

bool show_text(std::string_view verb, std::string_view text) {
    if (::isatty(STDOUT_FILENO) == 1)
        if (const std::string pager = pager_named(); !pager.empty() && page(pager, text))
            return true;
    return print_output(verb, text);
}

}
