// Fuzz target: parts of word processors' files and plain text, to lines and from there to a source.
// Whatever stands in them, the source can be read, and every word of the lines is in it.
#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/stages/model/build.hpp"
#include "compiler/transcription/draft_source.hpp"
#include "compiler/transcription/kept_words.hpp"
#include "compiler/transcription/read_old.hpp"
#include "compiler/transcription/transcribe.hpp"

#include <cstdint>
#include <cstdlib>
#include <string>
#include <variant>

namespace {

using namespace quoin;
using namespace quoin::transcription;

const std::filesystem::path words_folder =
    std::filesystem::path(QUOIN_DATA_FOLDER) / "themes" / "words";

OldOrFault lines_of(char kind, std::string_view text) {
    switch (kind % 3) {
    case 0:
        return lines_of_docx({{"word/document.xml", std::string(text)}});
    case 1:
        return lines_of_odt({{"content.xml", std::string(text)}});
    default:
        return read_old_bytes(text, {{}, [](std::string_view) { return false; }, {}});
    }
}

void require_readable(const std::string& source) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("draft", source, diagnostics);
    if (!file || !model::build_resume(sources, *file, words_folder, diagnostics)) std::abort();
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size < 2) return 0;
    const std::string text(data + 1, data + size);
    if (text.starts_with("PK") || text.find("%PDF-") != std::string::npos) return 0;
    const auto old = lines_of(static_cast<char>(data[0] & 0x7F), text);
    const auto* document = std::get_if<OldDocument>(&old);
    if (!document || document->lines.empty()) return 0;
    const portal::PageLanguages languages;
    const auto made =
        transcribe(*document, {languages, [](std::string_view) { return false; }, words_folder});
    require_readable(made.source);
    return 0;
}
