#include "compiler/commands/marked_targets.hpp"

#include "compiler/commands/messages.hpp"

#include <algorithm>
#include <filesystem>
#include <system_error>

namespace quoin::commands {

namespace {

namespace fs = std::filesystem;

bool is_folder(const std::string& path) {
    std::error_code none;
    return fs::is_directory(path, none);
}

std::string marked_target(const MarkedRequest& request, const std::string& input) {
    if (!is_folder(request.marked)) return request.marked;
    const fs::path named = input == "-" ? fs::path("standard-input") : fs::path(input).filename();
    return (fs::path(request.marked) / fs::path(named).replace_extension(request.suffix)).string();
}

bool is_source(const MarkedRequest& request, const std::string& target) {
    return std::ranges::any_of(request.inputs, [&](const std::string& input) {
        std::error_code none; // a file that is not there is not the source
        return fs::equivalent(target, input, none) && !none;
    });
}

}

std::optional<std::string> plan_marked(const MarkedRequest& request,
                                       std::vector<std::string>& targets) {
    if (request.marked.empty()) return std::nullopt;
    if (request.marked == "-" && (request.prints_more || request.inputs.size() > 1))
        return fill<messages::marked_and_more>();
    if (request.inputs.size() > 1 && !is_folder(request.marked))
        return fill<messages::output_no_folder>(request.marked, "--marked");
    for (const std::string& input : request.inputs) {
        const std::string target = marked_target(request, input);
        if (is_source(request, target)) return fill<messages::marked_over_source>();
        if (std::ranges::find(targets, target) != targets.end())
            return fill<messages::one_target_for_two>(target);
        targets.push_back(target);
    }
    return std::nullopt;
}

}
