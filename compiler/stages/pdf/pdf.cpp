// The document: catalog, pages, links, notes, bookmarks.
#include "compiler/stages/pdf/pdf.hpp"

#include "compiler/stages/pdf/font_book.hpp"
#include "compiler/stages/pdf/metadata.hpp"
#include "compiler/stages/pdf/note_annotations.hpp"
#include "compiler/stages/pdf/objects.hpp"
#include "compiler/stages/pdf/output_intent.hpp"
#include "compiler/stages/pdf/page_content.hpp"
#include "compiler/stages/pdf/structure_tree.hpp"

#include <stdexcept>
#include <vector>

namespace quoin::pdf {

namespace {

class DocumentWriter {
public:
    DocumentWriter(const composition::Composition& composition, const pages::Pages& pages,
                   std::span<const pages::Note> notes);

    std::string write(std::optional<std::int64_t> time);

private:
    PdfArray write_links(std::size_t number);
    NoteObjects objects_for(const pages::Note& note, std::size_t page);
    PdfArray write_notes(std::size_t number);
    void write_page(std::size_t number, PdfReference parent, PdfReference resources);
    PdfReference write_pages();
    PdfDictionary bookmark(const composition::Outline& outline, std::size_t page,
                           const pages::PlacedRun& heading) const;
    std::vector<PdfDictionary> bookmarks() const;
    PdfReference write_outlines(); // none if there is nothing to mark

    const composition::Composition& composition_;
    const pages::Pages& pages_;
    const std::span<const pages::Note> notes_;
    PdfFile file_;
    std::vector<PdfReference> page_objects_;
    FontBook fonts_;
    StructureTree structure_;
    NoteWriter note_writer_;
};

std::vector<PdfReference> reserve_all(std::size_t count, PdfFile& file) {
    std::vector<PdfReference> objects(count);
    for (PdfReference& object : objects)
        object = file.reserve();
    return objects;
}

DocumentWriter::DocumentWriter(const composition::Composition& composition,
                               const pages::Pages& pages, std::span<const pages::Note> notes)
    : composition_(composition), pages_(pages), notes_(notes),
      page_objects_(reserve_all(pages.pages.size(), file_)), fonts_(composition, pages, file_),
      structure_(composition, page_objects_, file_), note_writer_(file_) {}

PdfArray DocumentWriter::write_links(std::size_t number) {
    PdfArray annotations;
    for (const LinkArea& area : link_areas(composition_, pages_.pages[number])) {
        const composition::Element& link = composition_.elements[area.element];
        const PdfReference object = file_.reserve();
        const int key = structure_.annotate(area.element, number, object);
        file_.set(object,
                  {{"Type", PdfName{"Annot"}},
                   {"Subtype", PdfName{"Link"}},
                   {"Rect", PdfArray{PdfReal{area.left}, PdfReal{area.bottom}, PdfReal{area.right},
                                     PdfReal{area.top}}},
                   {"Border", PdfArray{0, 0, 0}},
                   {"F", print_flag},
                   {"Contents", PdfText{link.contents}},
                   {"StructParent", key},
                   {"A", PdfDictionary{{"S", PdfName{"URI"}}, {"URI", PdfBytes{link.uri}}}}});
        annotations.push_back(object);
    }
    return annotations;
}

NoteObjects DocumentWriter::objects_for(const pages::Note& note, std::size_t page) {
    NoteObjects objects{file_.reserve(), {}, 0, 0};
    if (!note.words.empty()) {
        objects.words = file_.reserve();
        objects.words_key = structure_.annotate_apart(note.element, page, objects.words);
    }
    objects.flag_key = structure_.annotate_apart(note.element, page, objects.flag);
    return objects;
}

// The words of a note before its flag, so that it is read where it stands.
PdfArray DocumentWriter::write_notes(std::size_t number) {
    PdfArray annotations;
    const pages::Page& content = pages_.pages[number];
    if (content.runs.empty()) return annotations; // and nothing to note
    const pages::PlacedRun& first = content.runs.front();
    const fonts::Face& face = *paragraph_of(composition_, first).runs.at(first.run).face;
    const PdfReference page = page_objects_[number];
    for (const pages::Note& note : notes_) {
        if (note.page != number) continue;
        const NoteObjects objects = objects_for(note, number);
        if (!note.words.empty()) annotations.push_back(objects.words);
        annotations.push_back(objects.flag);
        if (!note.words.empty()) note_writer_.write_words(note, objects, page);
        note_writer_.write_flag(note, objects, page, face);
    }
    return annotations;
}

// PDF/A-2, 6.2.2: each page has its resources itself.
void DocumentWriter::write_page(std::size_t number, PdfReference parent, PdfReference resources) {
    const std::string content =
        page_content(composition_, pages_.pages[number], number, fonts_, structure_);
    PdfDictionary page{
        {"Type", PdfName{"Page"}},
        {"Parent", parent},
        {"MediaBox", PdfArray{0, 0, PdfReal{pages_.width, 3}, PdfReal{pages_.height, 3}}},
        {"Resources", resources},
        {"Contents", file_.add_stream({}, content)},
        {"StructParents", static_cast<std::int64_t>(number)},
        {"Tabs", PdfName{"S"}}};
    PdfArray annotations = write_links(number);
    for (const PdfValue& note : write_notes(number))
        annotations.push_back(note);
    if (!annotations.empty()) page.push_back({"Annots", annotations});
    file_.set(page_objects_[number], page);
}

PdfReference DocumentWriter::write_pages() {
    const PdfReference tree = file_.reserve();
    const PdfReference resources = file_.add(fonts_.resources());
    PdfArray kids;
    for (std::size_t number = 0; number < page_objects_.size(); ++number) {
        write_page(number, tree, resources);
        kids.push_back(page_objects_[number]);
    }
    const auto count = static_cast<std::int64_t>(kids.size());
    file_.set(tree, {{"Type", PdfName{"Pages"}}, {"Kids", kids}, {"Count", count}});
    return tree;
}

// Of each paragraph, by its index: where its first run stands; null if it is on no page.
struct Landing {
    std::size_t page = 0;
    const pages::PlacedRun* run = nullptr;
};

std::vector<Landing> landings(const composition::Composition& composition,
                              const pages::Pages& pages) {
    std::vector<Landing> found(composition.paragraphs.size());
    for (std::size_t number = 0; number < pages.pages.size(); ++number)
        for (const pages::PlacedRun& placed : pages.pages[number].runs)
            if (!is_artifact(placed) && found.at(placed.paragraph).run == nullptr)
                found[placed.paragraph] = {number, &placed};
    return found;
}

PdfDictionary DocumentWriter::bookmark(const composition::Outline& outline, std::size_t page,
                                       const pages::PlacedRun& heading) const {
    const composition::Run& run = composition_.paragraphs[outline.paragraph].runs.at(heading.run);
    const double top = heading.y + static_cast<double>(run.face->ascent()) /
                                       run.face->units_per_em() * heading.size;
    PdfDictionary item{{"Title", PdfText{outline.title}},
                       {"Dest", PdfArray{page_objects_[page], PdfName{"XYZ"}, 0, PdfReal{top}, 0}}};
    const PdfReference element =
        structure_.element(composition_.paragraphs[outline.paragraph].element);
    if (element.number != 0) item.push_back({"SE", element});
    return item;
}

std::vector<PdfDictionary> DocumentWriter::bookmarks() const {
    std::vector<PdfDictionary> items;
    const std::vector<Landing> places = landings(composition_, pages_);
    for (const composition::Outline& outline : composition_.outlines) {
        const Landing& place = places.at(outline.paragraph);
        if (place.run != nullptr) items.push_back(bookmark(outline, place.page, *place.run));
    }
    return items;
}

PdfReference DocumentWriter::write_outlines() {
    std::vector<PdfDictionary> items = bookmarks();
    if (items.empty()) return {};
    const PdfReference root = file_.reserve();
    const std::vector<PdfReference> objects = reserve_all(items.size(), file_);
    for (std::size_t i = 0; i < items.size(); ++i) {
        items[i].push_back({"Parent", root});
        if (i > 0) items[i].push_back({"Prev", objects[i - 1]});
        if (i + 1 < items.size()) items[i].push_back({"Next", objects[i + 1]});
        file_.set(objects[i], items[i]);
    }
    file_.set(root, {{"Type", PdfName{"Outlines"}},
                     {"First", objects.front()},
                     {"Last", objects.back()},
                     {"Count", static_cast<std::int64_t>(objects.size())}});
    return root;
}

std::string DocumentWriter::write(std::optional<std::int64_t> time) {
    const Metadata metadata{composition_.title, composition_.author, composition_.language, time};
    const PdfReference xmp = // readable by programs that know no PDF
        file_.add_stream({{"Type", PdfName{"Metadata"}}, {"Subtype", PdfName{"XML"}}},
                         xmp_packet(metadata), PdfFilter::none);
    PdfDictionary catalog{{"Type", PdfName{"Catalog"}},
                          {"Pages", write_pages()},
                          {"StructTreeRoot", structure_.write()},
                          {"MarkInfo", PdfDictionary{{"Marked", true}}},
                          {"Lang", PdfText{composition_.language}},
                          {"ViewerPreferences", PdfDictionary{{"DisplayDocTitle", true}}},
                          {"Metadata", xmp},
                          {"OutputIntents", PdfArray{output_intent(file_)}}};
    if (const PdfReference outlines = write_outlines(); outlines.number != 0)
        catalog.push_back({"Outlines", outlines});
    return file_.write(file_.add(catalog), file_.add(info_dictionary(metadata)));
}

}

std::string write_pdf(const composition::Composition& composition, const pages::Pages& pages,
                      std::optional<std::int64_t> time, std::span<const pages::Note> notes) {
    if (pages.pages.empty()) throw std::runtime_error("there is no page to write");
    if (composition.elements.empty()) throw std::runtime_error("there is no structure to write");
    return DocumentWriter(composition, pages, notes).write(time);
}

}
