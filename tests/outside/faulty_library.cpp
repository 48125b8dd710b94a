// Stands before the C library (LD_PRELOAD) and lets calls fail as a bad day would, for
// check_faults.py. FAULT_AT=N: the N-th allocation gets nothing. FAULT_SHORT=1: a read or a write
// does half of what is asked. FAULT_COUNT=FILE: how many allocations there were is written there.
#include <dlfcn.h>
#include <fcntl.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>
#include <charconv>
#include <cstdlib>
#include <cstring>

extern "C" {
void* __libc_malloc(std::size_t size);
void* __libc_calloc(std::size_t count, std::size_t size);
void* __libc_realloc(void* memory, std::size_t size);
void* __libc_memalign(std::size_t alignment, std::size_t size);
}

namespace {

std::atomic<unsigned long> allocations;

unsigned long number_of(const char* name) {
    const char* text = std::getenv(name);
    unsigned long number = 0;
    if (text != nullptr) std::from_chars(text, text + std::strlen(text), number);
    return number;
}

bool fails() {
    static const unsigned long at = number_of("FAULT_AT");
    if (++allocations != at) return false;
    errno = ENOMEM;
    return true;
}

std::size_t shortened(std::size_t size) {
    static const bool is_short = number_of("FAULT_SHORT") == 1;
    return is_short && size > 1 ? size / 2 : size;
}

[[gnu::destructor]] void tell_count() {
    const char* file = std::getenv("FAULT_COUNT");
    if (file == nullptr) return;
    char digits[32];
    const auto end = std::to_chars(digits, digits + sizeof(digits), allocations.load()).ptr;
    const int open = ::open(file, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
    if (::write(open, digits, static_cast<std::size_t>(end - digits)) < 0) std::abort();
    ::close(open);
}

}

extern "C" {

void* malloc(std::size_t size) {
    return fails() ? nullptr : __libc_malloc(size);
}

void* calloc(std::size_t count, std::size_t size) {
    return fails() ? nullptr : __libc_calloc(count, size);
}

void* realloc(void* memory, std::size_t size) {
    return fails() ? nullptr : __libc_realloc(memory, size);
}

void* aligned_alloc(std::size_t alignment, std::size_t size) {
    return fails() ? nullptr : __libc_memalign(alignment, size);
}

int posix_memalign(void** memory, std::size_t alignment, std::size_t size) {
    if (fails()) return ENOMEM;
    *memory = __libc_memalign(alignment, size);
    return *memory != nullptr ? 0 : ENOMEM;
}

ssize_t read(int file, void* bytes, std::size_t size) {
    static const auto next =
        reinterpret_cast<ssize_t (*)(int, void*, std::size_t)>(::dlsym(RTLD_NEXT, "read"));
    return next(file, bytes, shortened(size));
}

ssize_t write(int file, const void* bytes, std::size_t size) {
    static const auto next =
        reinterpret_cast<ssize_t (*)(int, const void*, std::size_t)>(::dlsym(RTLD_NEXT, "write"));
    return next(file, bytes, shortened(size));
}
}
