// The parts of a word processor's file, which is a ZIP package (ECMA-376 part 2, OpenDocument 1.3
// part 2). What opens it is a module of its own (package_module.cpp).
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>

namespace quoin::transcription {

using PackageParts = std::map<std::string, std::string, std::less<>>; // bytes by name

struct PackageLimits {
    std::size_t part = std::size_t{8} << 20;   // bytes of one, unpacked
    std::size_t whole = std::size_t{24} << 20; // of all that are taken
    std::size_t entries = 5000;
};

enum class PackageEnd { read, damaged, locked, too_large };

struct Package {
    PackageEnd end = PackageEnd::damaged;
    PackageParts parts;  // those that are wanted
    bool macros = false; // programs, which are left where they are
    bool pages = false;  // of a word processor that writes neither of the two kinds
};

// Made by the module `package`.
class PackageOpener {
public:
    virtual ~PackageOpener() = default;
    // Takes what holds text, and nothing that is packed once more.
    virtual Package open(std::string_view bytes, const PackageLimits& limits) const = 0;
};

}
