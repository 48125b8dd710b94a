#include "compiler/base/module.hpp"

#include "compiler/base/messages.hpp"

#include <dlfcn.h>

#include <filesystem>
#include <system_error>

namespace quoin {

namespace {

std::filesystem::path module_file(std::string_view name) {
    std::error_code fault;
    const auto program = std::filesystem::read_symlink("/proc/self/exe", fault);
    return program.parent_path().parent_path() / "lib" / "quoin" / (std::string(name) + ".so");
}

[[noreturn]] void refuse_module(std::string_view name) {
    const char* why = dlerror();
    throw ModuleFault(fill<messages::module_missing>(name, why == nullptr ? "" : why));
}

}

void* module_entry(std::string_view name) {
    void* module = dlopen(module_file(name).c_str(), RTLD_NOW | RTLD_LOCAL);
    if (module == nullptr) refuse_module(name);
    void* entry = dlsym(module, ("quoin_" + std::string(name)).c_str());
    if (entry == nullptr) refuse_module(name);
    return entry;
}

}
