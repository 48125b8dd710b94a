// A file in the making: beside its target under a name of its own, until it is whole.
#pragma once

#include "compiler/base/descriptor.hpp"

#include <filesystem>
#include <string>

namespace quoin {

// Held by a lock (flock(2)) for as long as it is being written, so that another process sees whose
// it is: one that nobody holds was left by a process that was killed, and the next that writes the
// same target takes it away. It goes with its owner, unless it was put in place.
class PartFile {
public:
    explicit PartFile(const std::filesystem::path& target);
    PartFile(PartFile&&) noexcept;
    PartFile& operator=(PartFile&&) = delete;
    ~PartFile();

    int number() const { return file_.number(); } // below 0: error() says why
    int error() const { return error_; }

    // Each is 0, or the error number.
    int write_safely(std::string_view bytes); // all of it, and down to the disk
    // As its target, which it replaces; the target that was there is kept in the part file's place,
    // where the file system can, for as long as this is there.
    int put_in_place(bool keeps_old = false);
    void put_back(); // what was kept; where nothing was there, there is nothing again

private:
    int open(const std::filesystem::path& name);
    bool keep_old();

    std::filesystem::path target_;
    std::string name_; // empty: nothing to take away
    Descriptor file_;
    Descriptor old_; // the target that was there, held by a lock like a part file
    bool is_new_ = false;
    int error_ = 0;
    int slot_ = -1; // where a handler of signals finds the name
};

// 0, or the error number.
int write_all(int descriptor, std::string_view bytes);

// All of this process's, for good: it is about to end. A handler of signals may do it.
void take_parts_away();

// From now on a process that is told to stop (SIGINT, SIGTERM, SIGHUP, SIGPIPE) takes its part
// files away first. A signal that is ignored stays so.
void take_parts_away_when_stopped();

}
