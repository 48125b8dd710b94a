// A file that is open as long as its descriptor lives.
#pragma once

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <utility>

namespace quoin {

class Descriptor { // a negative number: none
public:
    explicit Descriptor(int number = -1) : number_(number) {}
    Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
    Descriptor& operator=(Descriptor&& other) noexcept {
        std::swap(number_, other.number_);
        return *this;
    }
    ~Descriptor() { close(); }

    int number() const { return number_; }
    // Whether all went well; some file systems tell only here that the disk is full.
    bool close() { return number_ < 0 || ::close(std::exchange(number_, -1)) == 0; }

private:
    int number_;
};

// As open(2), begun again where a signal came between.
inline int open_calmly(const char* path, int flags, mode_t mode = 0) {
    int number = -1;
    do
        number = ::open(path, flags, mode);
    while (number < 0 && errno == EINTR);
    return number;
}

}
