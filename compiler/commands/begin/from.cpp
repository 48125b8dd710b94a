#include "compiler/commands/begin/from.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/data_places.hpp"
#include "compiler/base/module.hpp"
#include "compiler/base/printable.hpp"
#include "compiler/base/write_file.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/english/word_list.hpp"
#include "compiler/transcription/read_old.hpp"
#include "compiler/transcription/transcribe.hpp"

#include <fmt/format.h>

#include <exception>
#include <memory>

namespace quoin::commands {

namespace {

using transcription::PackageOpener;

// The module is opened for a word processor's file alone.
const PackageOpener& package_opener() {
    static const std::unique_ptr<PackageOpener> opener(make_by_module<PackageOpener>("package"));
    return *opener;
}

transcription::OldOrFault read(const std::string& old, const portal::PageLanguages& languages) {
    try {
        return transcription::read_old(
            old, {.font_configuration = font_configuration(data_folder()),
                  .is_title =
                      [&](std::string_view text) {
                          return transcription::is_known_title(text, languages);
                      },
                  .packages = package_opener});
    } catch (const std::exception& fault) { // of the system: no process, no memory, no module
        return fill<messages::not_transcribed>(fault.what());
    }
}

// What a reader is to know of the draft before she opens it.
std::string told(const std::string& old, const std::string& output,
                 const transcription::Transcription& made) {
    using advice::counted;
    const std::string from = fill<messages::transcribed>(
        output, old, counted(made.sections, "section", "sections"),
        counted(made.entries, "entry", "entries"), counted(made.bullets, "bullet", "bullets"));
    return made.guesses == 0
               ? from
               : from + fill<messages::guesses_marked>(counted(made.guesses, "guess", "guesses"));
}

}

ExitCode begin_from(const std::string& old, const std::string& output) {
    const auto words_folder = page_words_in(data_folder());
    const auto languages = portal::page_languages(words_folder);
    const auto document = read(old, languages);
    if (const auto* fault = std::get_if<std::string>(&document)) {
        print_messages(fmt::format("{}: error: {}\n", printable_name(old), *fault));
        return ExitCode::errors;
    }
    const english::WordList words(word_list_in(data_folder()));
    const auto is_word = [&](std::string_view word) {
        return words.class_of(word) != english::WordList::is_none;
    };
    const auto made = transcription::transcribe(std::get<transcription::OldDocument>(document),
                                                {languages, is_word, words_folder});
    const auto fault = write_file(output, made.source);
    if (fault || output != "-") tell_of("begin", fault ? *fault : told(old, output, made));
    return fault ? ExitCode::errors : ExitCode::done;
}

}
