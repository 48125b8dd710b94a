// The structure tree (ISO 32000-1, section 14.7): which element each piece of content and each
// annotation belongs to.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/pdf/objects.hpp"

#include <cstdint>
#include <string_view>
#include <vector>

namespace quoin::pdf {

const char* structure_name(composition::StructureType type); // `H1`

class StructureTree {
public:
    // `pages` are the page objects; their /StructParents keys are their indices.
    StructureTree(const composition::Composition& composition,
                  const std::vector<PdfReference>& pages, PdfFile& file);

    // The next piece of content on a page, in reading order; gives its MCID.
    int mark(std::uint32_t element, std::size_t page);
    // The next annotation; gives its /StructParent key.
    int annotate(std::uint32_t element, std::size_t page, PdfReference annotation);
    // The same in an Annot element of its own, the last so far in `element`.
    int annotate_apart(std::uint32_t element, std::size_t page, PdfReference annotation);

    // None if the element has nothing on any page.
    PdfReference element(std::uint32_t element) const { return nodes_[element].object; }

    PdfReference write(); // gives the root; nothing more can be marked then

private:
    struct Child {
        enum class Kind { element, content, annotation } kind{};
        std::uint32_t number = 0; // element; MCID
        std::size_t page = 0;     // content, annotation
        PdfReference annotation;
    };
    struct Node {
        composition::StructureType type{};
        std::uint32_t parent = 0;
        // live as long as the composition
        std::string_view language, expansion, alternative;
        PdfReference object; // reserved when the element first has something to hold
        std::vector<Child> children;
    };

    void attach(std::uint32_t element);
    static void add_revision(PdfDictionary& value, const Node& node);
    PdfDictionary role_map() const;
    void write_element(std::uint32_t element, PdfReference root);
    PdfValue child_value(const Child& child, std::size_t page) const;
    std::size_t first_page(const Node& node) const;
    PdfArray elements_on(std::size_t page) const;
    PdfArray parent_tree() const;

    const std::vector<PdfReference>& pages_;
    PdfFile& file_;
    std::vector<Node> nodes_;              // of each element, then of the annotations' own
    std::vector<std::string_view> labels_; // of each element that is a list
    std::vector<std::vector<std::uint32_t>> contents_; // of each page, the element of each MCID
    std::vector<std::uint32_t> annotations_;           // the element of each
};

}
