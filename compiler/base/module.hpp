// Modules: libraries that one verb alone needs, kept out of the program so that no start of another
// pays for them. Each is linked into a shared object of its own, `lib/quoin/NAME.so`, which is
// opened at its first use.
#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

namespace quoin {

// The module cannot be opened: what of quoin is missing, and where it was looked for.
class ModuleFault : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

// The function that a module exports, `extern "C"` and by the name `quoin_NAME`. The module lies in
// `../lib/quoin` beside the folder of the running program, the same in a build tree and an
// installed one, and stays open until the program ends. Throws ModuleFault.
void* module_entry(std::string_view name);

// What that function makes: an object of an abstract class that the program and the module both
// know by its header, made by `new`.
template<typename Interface>
Interface* make_by_module(std::string_view name) {
    return reinterpret_cast<Interface* (*)()>(module_entry(name))();
}

}
