// Modules: opened from lib/quoin beside the folder of the running program.
#include "compiler/base/module.hpp"

#include <doctest/doctest.h>

#include <string>

namespace module_test {

namespace {

std::string fault_of(std::string_view name) {
    try {
        quoin::module_entry(name);
    } catch (const quoin::ModuleFault& fault) {
        return fault.what();
    }
    return {};
}

}

TEST_CASE("module: one that is there is opened, and is the same each time") {
    CHECK(quoin::module_entry("history") != nullptr);
    CHECK(quoin::module_entry("history") == quoin::module_entry("history"));
}

TEST_CASE("module: one that is missing is told by its name and where it was looked for") {
    const std::string fault = fault_of("nowhere");
    CAPTURE(fault);
    CHECK(fault.starts_with("quoin's module 'nowhere', which this needs, cannot be opened; install "
                            "quoin anew and whole: "));
    CHECK(fault.find("/lib/quoin/nowhere.so: ") != fault.npos);
}

} // namespace module_test
