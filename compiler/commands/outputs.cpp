#include "compiler/commands/outputs.hpp"

#include "compiler/base/write_file.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/session/source_names.hpp"

#include <fmt/format.h>
#include <sys/stat.h>

#include <algorithm>
#include <filesystem>
#include <set>
#include <system_error>

namespace quoin::commands {

namespace {

std::string with_suffix(const std::string& input, const char* suffix) {
    return std::filesystem::path(input).replace_extension(suffix).string();
}

// `given` is a file for one input and a folder for several.
std::string output_place(const std::string& given, const std::string& input, const char* suffix,
                         bool several) {
    if (given.empty() || !several) return given;
    return (std::filesystem::path(given) /
            with_suffix(std::filesystem::path(input).filename().string(), suffix))
        .string();
}

// What tells a file from all others, under whichever of its names: a hard link, a way round.
std::string identity_of(const std::string& target) {
    struct stat there {};
    if (::stat(target.c_str(), &there) == 0)
        return fmt::format("{}:{}", there.st_dev, there.st_ino);
    std::error_code fault;
    const std::filesystem::path whole =
        std::filesystem::weakly_canonical(std::filesystem::absolute(target, fault), fault);
    return fault ? std::filesystem::path(target).lexically_normal().string() : whole.string();
}

bool is_named(const std::string& target) {
    return !target.empty() && target != "-";
}

std::optional<std::string> check_folders(const SetRequest& request) {
    for (const auto& [option, given] : {std::pair("-o", &request.output),
                                        {"--plain", &request.plain},
                                        {"--deps", &request.deps}}) {
        std::error_code fault;
        if (!given->empty() && !std::filesystem::is_directory(*given, fault))
            return fill<messages::output_no_folder>(*given, option);
    }
    return std::nullopt;
}

// The inputs by their names and, as far as they are there, by what they are: each is looked up
// once, not once for every output.
class InputFiles {
public:
    explicit InputFiles(const std::vector<std::string>& inputs) {
        for (const std::string& input : inputs) {
            if (input == "-") continue;
            names_.insert(input);
            if (is_there(input)) identities_.insert(identity_of(input));
        }
    }

    bool hold(const std::string& target) const {
        return names_.contains(target) ||
               (is_there(target) && identities_.contains(identity_of(target)));
    }

private:
    // No device: a terminal is read and written to at once.
    static bool is_there(const std::string& file) {
        std::error_code fault;
        const std::filesystem::file_status status = std::filesystem::status(file, fault);
        return std::filesystem::exists(status) && !std::filesystem::is_other(status);
    }

    std::set<std::string> names_, identities_;
};

// What is read and would be written over: an input, or the posting.
std::optional<std::string> check_spared(const SetRequest& request, const InputFiles& inputs,
                                        const Outputs& one, const std::string& target) {
    const bool spoils_input = inputs.hold(target);
    if (spoils_input && request.output.empty() && target == one.pdf)
        return fill<messages::source_is_pdf>(target);
    if (spoils_input || (is_named(request.posting) && is_same_file(request.posting, target)))
        return fill<messages::source_overwritten>(target);
    return std::nullopt;
}

std::optional<std::string> check_targets(const SetRequest& request,
                                         const std::vector<Outputs>& outputs) {
    std::set<std::string> taken;
    const InputFiles inputs(request.inputs);
    for (const Outputs& one : outputs) {
        if (!one.deps.empty() && !is_named(one.pdf) && !is_named(one.plain))
            return fill<messages::deps_without_file>();
        for (const std::string& target : {one.pdf, one.plain, one.deps}) {
            if (target.empty()) continue;
            if (is_replaceable(target) && !taken.insert(identity_of(target)).second)
                return fill<messages::one_target_for_two>(target);
            if (auto fault = check_spared(request, inputs, one, target)) return fault;
        }
    }
    return std::nullopt;
}

Outputs outputs_of(const SetRequest& request, const std::string& input, bool several) {
    Outputs one{output_place(request.output, input, ".pdf", several),
                output_place(request.plain, input, ".txt", several),
                output_place(request.deps, input, ".d", several)};
    if (request.output.empty() && request.plain.empty())
        one.pdf = input == "-" ? "-" : with_suffix(input, ".pdf");
    return one;
}

}

bool is_same_file(const std::string& a, const std::string& b) {
    std::error_code fault;
    return a == b || (std::filesystem::equivalent(a, b, fault) && !fault);
}

bool would_write_over(const std::string& output, const Sources& sources) {
    if (!is_replaceable(output)) return false;
    for (std::uint32_t file = 0; file < sources.size(); ++file) {
        const std::filesystem::path& path = sources.file(file).path;
        if (!path.empty() && is_same_file(path.string(), output)) return true;
    }
    return false;
}

bool would_spoil(const std::string& output, const Sources& sources) {
    return session::is_source(output) || would_write_over(output, sources);
}

bool write_beside(const Sources& sources, const std::string& output, const std::string& bytes,
                  std::string_view verb) {
    const auto fault = would_spoil(output, sources) ? fill<messages::source_overwritten>(output)
                                                    : write_file(output, bytes);
    if (fault) tell_of(verb, *fault);
    return !fault;
}

std::optional<std::string> plan_outputs(const SetRequest& request, std::vector<Outputs>& outputs) {
    const bool several = request.inputs.size() > 1;
    if (several && std::ranges::count(request.inputs, "-") > 0)
        return fill<messages::dash_not_alone>();
    if (request.posting == "-" && (several || request.inputs.front() == "-"))
        return fill<messages::dash_twice>();
    if (several)
        if (auto fault = check_folders(request)) return fault;
    for (const std::string& input : request.inputs)
        outputs.push_back(outputs_of(request, input, several));
    return check_targets(request, outputs);
}

}
