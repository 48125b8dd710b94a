#include "compiler/commands/set/watch.hpp"

#include "compiler/base/file_watch.hpp"
#include "compiler/commands/printing.hpp"

#include <algorithm>
#include <cerrno>
#include <poll.h>
#include <vector>

namespace quoin::commands {

namespace {

constexpr int for_ever_watched = -1, until_quiet = 40; // ms: an editor saves in several steps

// True once something is to be read; false after so long a time without it.
bool waits_for(const FileWatch& watch, int milliseconds) {
    pollfd waited{watch.descriptor(), POLLIN, 0};
    int ready = 0;
    do
        ready = ::poll(&waited, 1, milliseconds);
    while (ready < 0 && errno == EINTR);
    return ready > 0;
}

std::set<std::filesystem::path> next_changes(FileWatch& watch) {
    std::set<std::filesystem::path> changed;
    while (changed.empty()) {
        waits_for(watch, for_ever_watched);
        do
            changed.merge(watch.changes());
        while (waits_for(watch, until_quiet));
    }
    return changed;
}

bool tell(const SetOutcome& outcome) {
    print_messages(outcome.messages);
    return print_report("set", outcome.state + '\n' + outcome.explanation);
}

}

bool watch_and_set(std::size_t inputs, const std::function<SetOutcome(std::size_t)>& set_one) {
    FileWatch watch;
    std::vector<std::set<std::filesystem::path>> read(inputs);
    std::set<std::filesystem::path> changed, watched;
    for (bool first = true;; first = false) {
        for (std::size_t input = 0; input < inputs; ++input) {
            const auto is_read = [&](const auto& path) { return read[input].contains(path); };
            if (!first && std::ranges::none_of(changed, is_read)) continue;
            SetOutcome outcome = set_one(input);
            if (!tell(outcome)) return false;
            read[input] = std::move(outcome.read);
        }
        watched.clear();
        for (const auto& files : read)
            watched.insert(files.begin(), files.end());
        watch.watch(watched);
        changed = next_changes(watch);
    }
}

}
