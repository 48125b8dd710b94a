// What poppler's tools say of a document as a whole.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::portal {

struct DocumentFacts { // from pdfinfo
    std::string title;
    int pages = 0;
    bool tagged = false;
    bool encrypted = false, copying_forbidden = false;
    bool form = false, script = false;
};

DocumentFacts read_facts(std::string_view pdfinfo);

struct FontFact { // a line of pdffonts
    std::string name, type, encoding;
    bool embedded = false, unicode = false;

    bool operator==(const FontFact&) const = default;
};

std::vector<FontFact> read_fonts(std::string_view pdffonts);

int count_images(std::string_view pdfimages);      // `pdfimages -list`: pictures, not their masks
std::string structure_text(std::string_view info); // `pdfinfo -struct-text`: the text in the tags

// What names of PDF objects the file's bytes hold, those in object streams too; what its pages
// mark.
struct RawNames {
    bool language = false;         // /Lang
    bool attachments = false;      // /EF
    bool script = false;           // /JavaScript; pdfinfo looks for it in fewer places
    bool all_could_be_read = true; // else a name not found may be there
    bool all_text_marked = false;  // as of the structure; false too where that is not sure
};

RawNames read_names(std::string_view pdf);

}
