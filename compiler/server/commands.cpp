// What an editor has carried out by name: the PDF set from the newest text, all safe mends made.
#include "compiler/base/write_file.hpp"
#include "compiler/server/heading_lines.hpp"
#include "compiler/server/messages.hpp"
#include "compiler/stages/model/document_time.hpp"
#include "compiler/stages/pdf/pdf.hpp"

#include <filesystem>
#include <variant>

namespace quoin::server {

namespace {

// From here to its end the editor may show that something is done.
class Progress {
public:
    Progress(Desk& desk, const Json& params, std::string_view title)
        : desk_(desk), token_(params.value("workDoneToken", Json{})) {
        tell({{"kind", "begin"}, {"title", title}});
    }
    ~Progress() { tell({{"kind", "end"}}); }
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;

private:
    void tell(Json value) {
        if (!token_.is_null())
            desk_.notify("$/progress", {{"token", token_}, {"value", std::move(value)}});
    }

    Desk& desk_;
    Json token_;
};

stages::Choices choices_in(const Json& argument) {
    stages::Choices choices;
    if (argument.contains("tags"))
        choices.tags = argument.at("tags").get<std::vector<std::string>>();
    if (argument.contains("theme")) choices.theme = argument.at("theme").get<std::string>();
    return choices;
}

Answer failed(std::string text) {
    return Refusal{ErrorCode::request_failed, std::move(text)};
}

// Beside the document that it is read within.
Answer set_pdf(Desk& desk, const Addressed& one, const Json& argument) {
    const std::filesystem::path& root = one.state->read.sources.file(0).path;
    if (!root.is_absolute()) return failed(fill<messages::no_file_to_set>());
    const auto state = desk.session.read(root, choices_in(argument));
    const auto& typeset = state->read.typeset;
    const auto* fit = typeset ? std::get_if<fit::Fit>(&typeset->fit) : nullptr;
    if (!fit) {
        const Diagnostics& told = typeset ? state->overflow : state->read.diagnostics;
        return failed(told.all().empty() ? fill<messages::no_page>()
                                         : format(told.all().front(), state->read.sources));
    }
    const auto time = document_time(desk.session.means().epoch, typeset->resume.settings);
    std::filesystem::path target = root;
    target.replace_extension(".pdf");
    const std::string bytes =
        pdf::write_pdf(typeset->composition, make_pages(*typeset, *fit), time);
    if (const auto fault = write_file(target.string(), bytes)) return failed(*fault);
    return Json{{"uri", desk.uri_of(target)}};
}

Answer execute_command(Desk& desk, const Json& params) {
    const auto command = params.at("command").get<std::string>();
    if (command != set_command && command != mend_command)
        return Refusal{ErrorCode::invalid_params,
                       fill<messages::unknown_command>(in_quotes(command))};
    const Json argument = params.at("arguments").at(0);
    const Addressed one = addressed(desk, {{"textDocument", argument}});
    if (!one.document) return one.refusal;
    const Progress progress(desk, params, command == set_command ? "Setting" : "Mending");
    if (command == set_command) return set_pdf(desk, one, argument);
    const EditBook book = all_safe_mends(desk, *one.state);
    if (!book.empty()) desk.ask("workspace/applyEdit", {{"edit", book.json()}});
    return Json{};
}

constexpr Method methods_of_commands[] = {{"workspace/executeCommand", execute_command}};

void announce_commands(Json& capabilities) {
    capabilities["executeCommandProvider"] = {{"commands", {set_command, mend_command}},
                                              {"workDoneProgress", true}};
}

}

Feature commands_feature() {
    return {methods_of_commands, announce_commands};
}

}
