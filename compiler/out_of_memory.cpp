// Memory that cannot be had ends the program, with one message and no part file left. Libraries
// take an allocation that fails for a table that is not there, or for text that is empty, and say
// nothing: a page would lose its ligatures, or its words, and no caller could tell. So whoever of
// the process allocates comes through here, and what comes back is never null.
#include "compiler/base/part_file.hpp"

#include <dlfcn.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>
#include <cstddef>
#include <string_view>

namespace {

// What would be called if these functions were not here: a preloaded allocator, or the C library's.
template<typename Function>
Function* next(Function*& found, const char* name) {
    if (found == nullptr) found = reinterpret_cast<Function*>(::dlsym(RTLD_NEXT, name));
    return found;
}

[[noreturn]] void end_without_memory() {
    constexpr std::string_view text = "quoin: out of memory\n";
    static std::atomic_flag told;
    while (told.test_and_set()) // another thread is at it
        ::pause();
    quoin::take_parts_away();
    quoin::write_all(STDERR_FILENO, text);
    ::_exit(1);
}

void* some(void* memory, std::size_t size) {
    if (memory == nullptr && size != 0) end_without_memory();
    return memory;
}

}

extern "C" {

void* malloc(std::size_t size) noexcept {
    static void* (*found)(std::size_t) = nullptr;
    return some(next(found, "malloc")(size), size);
}

void* calloc(std::size_t count, std::size_t size) noexcept {
    static void* (*found)(std::size_t, std::size_t) = nullptr;
    return some(next(found, "calloc")(count, size), count * size);
}

void* realloc(void* memory, std::size_t size) noexcept {
    static void* (*found)(void*, std::size_t) = nullptr;
    return some(next(found, "realloc")(memory, size), size);
}

void* aligned_alloc(std::size_t alignment, std::size_t size) noexcept {
    static void* (*found)(std::size_t, std::size_t) = nullptr;
    return some(next(found, "aligned_alloc")(alignment, size), size);
}

int posix_memalign(void** memory, std::size_t alignment, std::size_t size) noexcept {
    static int (*found)(void**, std::size_t, std::size_t) = nullptr;
    const int error = next(found, "posix_memalign")(memory, alignment, size);
    if (error == ENOMEM) end_without_memory();
    return error;
}
}
