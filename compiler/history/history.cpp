#include "compiler/history/history.hpp"

#include "compiler/base/module.hpp"
#include "compiler/history/messages.hpp"

#include <system_error>
#include <utility>

namespace quoin::history {

namespace {

Opener& opener() {
    static const std::unique_ptr<Opener> made(make_by_module<Opener>("history"));
    return *made;
}

std::string wording(const Fault& fault) {
    switch (fault.problem) {
    case Problem::no_repository:
        return fill<messages::no_repository>();
    case Problem::bare:
        return fill<messages::bare>();
    case Problem::no_commits:
        return fill<messages::no_commits>();
    case Problem::unreadable:
        return fill<messages::unreadable_history>(fault.detail);
    case Problem::unknown_revision:
        return fill<messages::unknown_revision>(in_quotes(fault.detail));
    case Problem::not_in_revision:
        return fill<messages::not_in_revision>(in_quotes(fault.detail));
    case Problem::submodule:
        return fill<messages::is_submodule>();
    case Problem::not_text:
        return fill<messages::not_text>(in_quotes(fault.detail));
    case Problem::too_much:
        return fill<messages::too_much>();
    case Problem::cut_off:
        return fill<messages::cut_off_before>(in_quotes(fault.detail));
    }
    return fault.detail;
}

}

Outcome<std::unique_ptr<Repository>> open_repository(const std::filesystem::path& of) {
    std::error_code fault;
    const auto real = std::filesystem::canonical(of, fault);
    if (fault) return Fault{Problem::unreadable, of.string(), fault.message()};
    const bool folder = std::filesystem::is_directory(real, fault);
    OpenedRepository opened = opener().open(folder ? real.string() : real.parent_path().string());
    if (auto* refused = std::get_if<Fault>(&opened)) {
        refused->path = of.string();
        return std::move(*refused);
    }
    return std::unique_ptr<Repository>(std::get<Repository*>(opened));
}

std::string path_within(const Repository& repository, const std::filesystem::path& file) {
    std::error_code fault;
    const std::string real = std::filesystem::canonical(file, fault).string();
    const std::string root = repository.root();
    return !fault && real.starts_with(root) ? real.substr(root.size()) : std::string{};
}

std::string said(const Fault& fault) {
    return fault.path + ": " + wording(fault);
}

std::string said_of_cut_off() {
    return fill<messages::cut_off>();
}

}
