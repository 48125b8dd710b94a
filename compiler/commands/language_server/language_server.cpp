#include "compiler/commands/language_server/language_server.hpp"

#include "compiler/base/file_watch.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/proof/proof_report.hpp"
#include "compiler/commands/set/source_date.hpp"
#include "compiler/commands/tailor/for_posting.hpp"
#include "compiler/server/server.hpp"
#include "compiler/stages/pdf/pdf.hpp"

#include <poll.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <variant>

namespace quoin::commands {

namespace {

constexpr int at_once = 0, for_ever = -1; // that is waited

// To the editor; nothing more once it has hung up.
class Line {
public:
    bool is_open() const { return is_open_; }

    void write(std::string_view bytes) {
        while (is_open_ && !bytes.empty()) {
            const ssize_t count = ::write(STDOUT_FILENO, bytes.data(), bytes.size());
            if (count < 0 && errno == EINTR) continue;
            is_open_ = count > 0;
            if (is_open_) bytes.remove_prefix(static_cast<std::size_t>(count));
        }
    }
    // What has come; empty at the end.
    std::string_view read() {
        ssize_t count = 0;
        do
            count = ::read(STDIN_FILENO, buffer_.data(), buffer_.size());
        while (count < 0 && errno == EINTR);
        is_open_ = is_open_ && count > 0;
        return {buffer_.data(), static_cast<std::size_t>(count > 0 ? count : 0)};
    }

private:
    bool is_open_ = true;
    std::array<char, 65536> buffer_{};
};

server::PostingPage page_of(const stages::Typeset& typeset,
                            const std::optional<std::int64_t>& epoch) {
    const auto* fit = std::get_if<fit::Fit>(&typeset.fit);
    if (fit == nullptr) return {{}, fill<messages::kept_is_too_long>()};
    const auto time = document_time(epoch, typeset.resume.settings);
    return {pdf::write_pdf(typeset.composition, make_pages(typeset, *fit), time), {}};
}

server::PostingPage page_for_posting(const session::Session& session,
                                     const std::filesystem::path& resume,
                                     const std::filesystem::path& posting,
                                     const stages::Choices& choices) {
    const session::Means& means = session.means();
    Sources sources;
    Diagnostics diagnostics;
    session.hold_documents(sources);
    const auto file = sources.read(resume, diagnostics);
    const auto found = file ? for_posting(sources, *file, posting.string(),
                                          {choices, means.data, means.fonts}, diagnostics)
                            : nullptr;
    if (!found) return {{}, format(diagnostics.all().front(), sources)};
    return page_of(found->tailored.typeset, means.epoch);
}

server::PageMakers pages_of(const session::Session& session) {
    const session::Means& means = session.means();
    return {.marked =
                [&](const advice::Proofread& read) {
                    const auto time = document_time(means.epoch, read.typeset->resume.settings);
                    return marked_proof(
                        read, {means.data, means.fonts, means.language, means.read_on}, time);
                },
            .for_posting =
                [&](const auto& resume, const auto& posting, const auto& choices) {
                    return page_for_posting(session, resume, posting, choices);
                }};
}

// All that has come is taken before one more thing is done.
void serve(server::Server& server, session::Session& session, Line& line) {
    FileWatch watch;
    bool idle = false;
    while (!server.ended() && line.is_open()) {
        std::array<pollfd, 2> waited{{{STDIN_FILENO, POLLIN, 0}, {watch.descriptor(), POLLIN, 0}}};
        if (::poll(waited.data(), waited.size(), idle ? for_ever : at_once) < 0 && errno != EINTR)
            return;
        // not before what is watched is what was read last
        if (idle && waited[1].revents != 0 && !watch.changes().empty()) server.disk_changed();
        if (waited[0].revents != 0) {
            server.take(line.read());
            idle = false;
            continue;
        }
        idle = !server.step();
        if (!idle || !watch.watch(session.files_read())) continue;
        server.disk_changed();
        idle = false;
    }
}

}

ExitCode run_language_server(const LanguageServerRequest& request) {
    std::optional<std::int64_t> epoch;
    if (!read_epoch(epoch)) return wrong_use("language-server", fill<messages::epoch>());
    const std::filesystem::path data = data_folder();
    const auto fonts = open_fonts(data);
    if (!fonts) return ExitCode::errors;
    ::signal(SIGPIPE, SIG_IGN); // an editor that hangs up is told by write

    const english::Language language(data);
    session::Session session({data, *fonts, language, reading_day(epoch), request.office, epoch});
    Line line;
    server::Server server(
        session, version(), [&](std::string_view bytes) { line.write(bytes); }, pages_of(session));
    serve(server, session, line);
    return server.ended() == 0 ? ExitCode::done : ExitCode::errors;
}

}
