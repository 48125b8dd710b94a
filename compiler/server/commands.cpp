// What an editor has carried out by name: the PDF set from the newest text, or the marked
// page, all safe mends made.
#include "compiler/base/lists.hpp"
#include "compiler/base/write_file.hpp"
#include "compiler/server/heading_lines.hpp"
#include "compiler/server/messages.hpp"
#include "compiler/server/uris.hpp"
#include "compiler/session/source_names.hpp"
#include "compiler/stages/model/document_time.hpp"
#include "compiler/stages/pdf/pdf.hpp"

#include <array>
#include <filesystem>
#include <variant>

namespace quoin::server {

namespace {

constexpr std::array command_names{set_command, mend_command, marked_command};

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
Answer written_beside(const Desk& desk, const session::State& state, std::string_view suffix,
                      const std::string& bytes) {
    std::filesystem::path target = state.read.sources.file(*state.read.file).path;
    target.replace_extension(suffix);
    if (session::is_source(target))
        return failed(fill<messages::no_page_over_source>(target.string()));
    if (const auto fault = write_file(target.string(), bytes)) return failed(*fault);
    return Json{{"uri", desk.uri_of(target)}};
}

// Why there is no page.
Answer no_page_of(const session::State& state) {
    const Diagnostics& told = state.read.typeset ? state.overflow : state.read.diagnostics;
    if (told.all().empty()) return failed(fill<messages::no_page>());
    return failed(format(told.all().front(), state.read.sources));
}

Answer set_pdf(Desk& desk, const session::State& state) {
    const auto& typeset = state.read.typeset;
    const auto* fit = typeset ? std::get_if<fit::Fit>(&typeset->fit) : nullptr;
    if (!fit) return no_page_of(state);
    const auto time = document_time(desk.session.means().epoch, typeset->resume.settings);
    return written_beside(desk, state, ".pdf",
                          pdf::write_pdf(typeset->composition, make_pages(*typeset, *fit), time));
}

// What is too long is set as a draft.
Answer show_marked_page(Desk& desk, const session::State& state) {
    if (!state.read.typeset || !desk.pages.marked) return no_page_of(state);
    Answer answer = written_beside(desk, state, ".marked.pdf", desk.pages.marked(state.read));
    if (const auto* written = std::get_if<Json>(&answer))
        desk.ask("window/showDocument", {{"uri", (*written)["uri"]}, {"external", true}});
    return answer;
}

Answer make_mends(Desk& desk, const session::State& state) {
    const EditBook book = all_safe_mends(desk, state);
    if (!book.empty()) desk.ask("workspace/applyEdit", {{"edit", book.json()}});
    return Json{};
}

// draft.for-intern.pdf of draft.resume, for intern.txt
Answer set_for_posting(Desk& desk, const session::State& state, const Json& argument) {
    const auto uri = argument.at("posting").get<std::string>();
    const auto posting = path_of_uri(uri);
    if (!posting || !posting->is_absolute() || !desk.pages.for_posting)
        return failed(fill<messages::bad_uri>(in_quotes(uri)));
    const std::filesystem::path& resume = state.read.sources.file(*state.read.file).path;
    const PostingPage page = desk.pages.for_posting(resume, *posting, choices_in(argument));
    if (!page.fault.empty()) return failed(page.fault);
    return written_beside(desk, state, ".for-" + posting->stem().string() + ".pdf", page.pdf);
}

// Of the document that is addressed, or of the one that takes it in.
Answer with_pages(Desk& desk, const Addressed& one, const Json& argument,
                  Answer (*make)(Desk&, const session::State&)) {
    const std::filesystem::path& root = one.state->read.sources.file(0).path;
    if (!root.is_absolute()) return failed(fill<messages::no_file_to_set>());
    const auto state = desk.session.read(root, choices_in(argument));
    if (make == set_pdf && argument.contains("posting") && state->read.file)
        return set_for_posting(desk, *state, argument);
    return make(desk, *state);
}

Answer execute_command(Desk& desk, const Json& params) {
    const auto command = params.at("command").get<std::string>();
    if (!is_one_of(command, command_names))
        return Refusal{ErrorCode::invalid_params,
                       fill<messages::unknown_command>(in_quotes(command))};
    const Json argument = params.at("arguments").at(0);
    const Addressed one = addressed(desk, {{"textDocument", argument}});
    if (!one.document) return one.refusal;
    const Progress progress(desk, params, "quoin");
    if (command == mend_command) return make_mends(desk, *one.state);
    return with_pages(desk, one, argument, command == set_command ? set_pdf : show_marked_page);
}

constexpr Method methods_of_commands[] = {{"workspace/executeCommand", execute_command}};

void announce_commands(Json& capabilities) {
    capabilities["executeCommandProvider"] = {{"commands", command_names},
                                              {"workDoneProgress", true}};
}

}

Feature commands_feature() {
    return {methods_of_commands, announce_commands};
}

}
