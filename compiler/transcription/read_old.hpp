// An old document of any kind that can be read, to lines.
#pragma once

#include "compiler/portal/scan.hpp"
#include "compiler/transcription/old_text.hpp"
#include "compiler/transcription/package.hpp"
#include "compiler/transcription/page_rows.hpp"

#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <variant>

namespace quoin::transcription {

// Or why it cannot be read, and how to mend that.
using OldOrFault = std::variant<OldDocument, std::string>;

struct OldReaders {
    std::filesystem::path font_configuration; // as portal::scan_pdf has it
    IsTitle is_title;
    std::function<const PackageOpener&()> packages; // asked for .docx and .odt alone
};

// By what the bytes begin with, not by the file's name.
OldOrFault read_old(const std::filesystem::path& file, const OldReaders& readers);
OldOrFault read_old_bytes(std::string_view bytes, const OldReaders& readers);

OldDocument lines_of_pdf(const portal::StyledReading& reading, const IsTitle& is_title);
OldDocument lines_of_text(std::string_view text, const IsTitle& is_title); // UTF-8, LF
OldOrFault lines_of_docx(const PackageParts& parts);
OldOrFault lines_of_odt(const PackageParts& parts);

constexpr std::size_t most_lines = 5000; // of a document; a résumé has a hundred

}
