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
        faults.push_back(
            {"no-text", trade::Weight::must, 0,
             fmt::format("there is no text, only {}",
                         evidence.images == 1 ? "a picture"
                                              : fmt::format("{} pictures", evidence.images)),
             "A portal reads text; from a picture of it, it gets nothing.",
             "Export the PDF from the program the résumé was written in; do not "
             "scan or photograph a printed page."});
    else
        faults.push_back({"no-text", trade::Weight::must, 0, "there is no text to read",
                          "The letters may be drawn as shapes, or the page is empty; a portal "
                          "gets nothing.",
                          "Export the PDF again as text, without turning text into outlines."});
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
    faults.push_back(
        {"font-without-unicode", trade::Weight::must, 0,
         fmt::format("{} {} does not say which letters its shapes are",
                     names.size() == 1 ? "the font" : "of the fonts, each of", list_of(names)),
         "Text in it looks right and is copied as nonsense or not at all.",
         "Export the PDF with another program or another font; check by copying a "
         "line out of a viewer."});
}

void check_locks(const Evidence& evidence, ScanFaults& faults) {
    if (evidence.facts.copying_forbidden)
        faults.push_back({"copying-forbidden", trade::Weight::must, 0,
                          "the PDF forbids copying its text",
                          "A portal that keeps to that gets nothing from it.",
                          "Save it without restrictions or a permissions password."});
    else if (evidence.facts.encrypted)
        faults.push_back({"encrypted", trade::Weight::should, 0, "the PDF is encrypted",
                          "Some portals turn away every encrypted file, even one that opens "
                          "without a password.",
                          "Save it without security settings."});
}

void check_accessibility(const Evidence& evidence, ScanFaults& faults) {
    if (evidence.facts.title.empty())
        faults.push_back({"no-title", trade::Weight::should, 0, "the document has no title",
                          "Viewers and screen readers announce the file's name in its place.",
                          "Give it one in the document's properties, such as your name and "
                          "'résumé'."});
    // in an encrypted file names can be read and strings not: the name is enough
    if (!evidence.names.language && evidence.names.all_could_be_read)
        faults.push_back({"no-language", trade::Weight::should, 0, "the document names no language",
                          "A screen reader may read it aloud by the rules of another language.",
                          "Set the document's language, and export again."});
    if (!evidence.facts.tagged)
        faults.push_back({"not-tagged", trade::Weight::should, 0,
                          "the PDF is not tagged: nothing says what is a heading or a list",
                          "Screen readers and some portals must guess the order and the "
                          "sections.",
                          "Export as a tagged PDF (often called accessible, or PDF/UA)."});
}

void note(std::string check, std::string text, std::string why, std::string mend,
          ScanFaults& faults) {
    faults.push_back({std::move(check), trade::Weight::consider, 0, std::move(text), std::move(why),
                      std::move(mend)});
}

void check_extras(const Evidence& evidence, ScanFaults& faults) {
    constexpr int usual_pages = 2;
    const int pages = evidence.facts.pages;
    if (pages > usual_pages)
        note("pages",
             fmt::format("it has {} pages{}", pages,
                         pages > most_pages_read
                             ? fmt::format(", of which the first {} were read", most_pages_read)
                             : ""),
             "A résumé usually has one page, or two for long experience.",
             "See whether the employer asks for this length.", faults);
    if (evidence.names.attachments)
        note("attachments", "there are files attached inside the PDF",
             "Portals drop them, and mail filters may hold the file back.",
             "Take them out, unless the posting asks for them.", faults);
    if (evidence.facts.script || evidence.names.script)
        note("script", "the PDF holds a script", "Mail filters and portals may turn it away.",
             "Export it again without scripts.", faults);
    if (evidence.facts.form)
        note("form", "the PDF holds a form", "What is typed into form fields is often not read.",
             "Print the filled form to a new PDF, so that its text is part of the page.", faults);
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
