// What is wrong with the file as a whole: no text, fonts without Unicode, locks, what is missing.
#include "compiler/portal/faults.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace quoin::portal {

namespace {

void check_text(const Evidence& evidence, ScanFaults& faults) {
    const std::size_t letters = letters_of(evidence.by_place);
    if (letters >= few_letters || (letters == 0 && evidence.facts.copying_forbidden)) return;
    if (evidence.images > 0)
        report<messages::only_pictures>(faults, evidence.images == 1
                                                    ? "a picture"
                                                    : fmt::format("{} pictures", evidence.images));
    else
        report<messages::no_text>(faults);
}

// With Identity codes a font's own numbers are all there is; a Type 3 font's glyph names mean
// nothing to anyone else (ISO 32000-1, section 9.10.2).
bool has_no_unicode(const FontFact& font) {
    if (font.unicode) return false;
    return font.encoding.starts_with("Identity") ||
           (font.type == "Type 3" && font.encoding == "Custom");
}

void check_fonts(const Evidence& evidence, ScanFaults& faults) {
    std::vector<std::string> names;
    for (const FontFact& font : evidence.fonts)
        if (has_no_unicode(font)) names.push_back(font.name);
    if (names.empty()) return;
    report<messages::font_without_unicode>(
        faults, names.size() == 1 ? "the font" : "of the fonts, each of", list_of(names));
}

void check_locks(const Evidence& evidence, ScanFaults& faults) {
    if (evidence.facts.copying_forbidden)
        report<messages::copying_forbidden>(faults);
    else if (evidence.facts.encrypted)
        report<messages::encrypted>(faults);
}

void check_accessibility(const Evidence& evidence, ScanFaults& faults) {
    if (evidence.facts.title.empty()) report<messages::no_title>(faults);
    // in an encrypted file names can be read and strings not: the name is enough
    if (!evidence.names.language && evidence.names.all_could_be_read)
        report<messages::no_language>(faults);
    if (!evidence.facts.tagged) report<messages::not_tagged>(faults);
}

void check_extras(const Evidence& evidence, ScanFaults& faults) {
    constexpr int usual_pages = 2;
    const int pages = evidence.facts.pages;
    if (pages > usual_pages)
        report<messages::many_pages>(
            faults, pages,
            pages > most_pages_read
                ? fmt::format(", of which the first {} were read", most_pages_read)
                : "");
    if (evidence.names.attachments) report<messages::attachments>(faults);
    if (evidence.facts.script || evidence.names.script) report<messages::script>(faults);
    if (evidence.facts.form) report<messages::form>(faults);
}

}

void check_file(const Evidence& evidence, ScanFaults& faults) {
    check_text(evidence, faults);
    check_fonts(evidence, faults);
    check_locks(evidence, faults);
    check_accessibility(evidence, faults);
    check_extras(evidence, faults);
}

}
