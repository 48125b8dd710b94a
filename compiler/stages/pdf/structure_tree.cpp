// Elements are joined to their parents when content first reaches them, so the tree is in reading
// order and holds no empty element.
#include "compiler/stages/pdf/structure_tree.hpp"

#include "compiler/base/ascii.hpp"

#include <algorithm>
#include <array>

namespace quoin::pdf {

namespace {

constexpr std::size_t no_page = static_cast<std::size_t>(-1);

// In the order of composition::StructureType.
constexpr std::array structure_names{"Document", "Sect", "H1",    "H2",  "H3",
                                     "P",        "L",    "LI",    "Lbl", "LBody",
                                     "Link",     "Span", "Annot", "Ins", "Del"};

// Table 347: what stands before the items. `None` is right for a dash: there is no name for it.
const char* list_numbering(std::string_view label) {
    if (label.starts_with("•")) return "Disc";
    if (label.starts_with("◦") || label.starts_with("○")) return "Circle";
    if (label.starts_with("▪") || label.starts_with("■")) return "Square";
    if (!label.empty() && is_figure(label.front())) return "Decimal";
    return "None";
}

PdfDictionary list_attributes(std::string_view label) {
    return {{"O", PdfName{"List"}}, {"ListNumbering", PdfName{list_numbering(label)}}};
}

bool is_revision(composition::StructureType type) {
    return type == composition::StructureType::inserted ||
           type == composition::StructureType::deleted;
}

// The text before the first item of each list, by the list's element.
std::vector<std::string_view> first_labels(const composition::Composition& composition) {
    const std::vector<composition::Element>& elements = composition.elements;
    std::vector<std::string_view> labels(elements.size());
    for (const composition::Paragraph& paragraph : composition.paragraphs) {
        if (paragraph.label_runs == 0 || paragraph.runs.empty()) continue;
        std::uint32_t list = paragraph.runs.front().element;
        while (list != 0 && elements.at(list).type != composition::StructureType::l)
            list = elements[list].parent;
        if (labels[list].empty()) labels[list] = paragraph.runs.front().text;
    }
    return labels;
}

}

const char* structure_name(composition::StructureType type) {
    return structure_names.at(static_cast<std::size_t>(type));
}

StructureTree::StructureTree(const composition::Composition& composition,
                             const std::vector<PdfReference>& pages, PdfFile& file)
    : pages_(pages), file_(file), labels_(first_labels(composition)), contents_(pages.size()) {
    for (const composition::Element& element : composition.elements)
        nodes_.push_back({element.type,
                          element.parent,
                          element.language,
                          element.expansion,
                          is_revision(element.type) ? element.contents : std::string_view{},
                          {},
                          {}});
}

void StructureTree::attach(std::uint32_t element) {
    Node& node = nodes_.at(element);
    if (node.object.number != 0) return;
    node.object = file_.reserve();
    if (element == 0) return;
    const std::uint32_t parent = node.parent;
    if (parent >= element) throw std::logic_error("a structure element before its parent");
    attach(parent);
    nodes_[parent].children.push_back({Child::Kind::element, element, 0, {}});
}

int StructureTree::mark(std::uint32_t element, std::size_t page) {
    attach(element);
    const std::size_t mcid = contents_[page].size();
    contents_[page].push_back(element);
    nodes_[element].children.push_back(
        {Child::Kind::content, static_cast<std::uint32_t>(mcid), page, {}});
    return static_cast<int>(mcid);
}

int StructureTree::annotate(std::uint32_t element, std::size_t page, PdfReference annotation) {
    attach(element);
    nodes_[element].children.push_back({Child::Kind::annotation, 0, page, annotation});
    annotations_.push_back(element);
    return static_cast<int>(pages_.size() + annotations_.size() - 1);
}

int StructureTree::annotate_apart(std::uint32_t element, std::size_t page,
                                  PdfReference annotation) {
    nodes_.push_back({composition::StructureType::annot, element, {}, {}, {}, {}, {}});
    return annotate(static_cast<std::uint32_t>(nodes_.size() - 1), page, annotation);
}

std::size_t StructureTree::first_page(const Node& node) const {
    for (const Child& child : node.children)
        if (child.kind != Child::Kind::element) return child.page;
    return no_page;
}

// Content on the element's own page is its MCID alone (table 323).
PdfValue StructureTree::child_value(const Child& child, std::size_t page) const {
    switch (child.kind) {
    case Child::Kind::element:
        return nodes_[child.number].object;
    case Child::Kind::content:
        if (child.page == page) return static_cast<std::int64_t>(child.number);
        return PdfDictionary{{"Type", PdfName{"MCR"}},
                             {"Pg", pages_[child.page]},
                             {"MCID", static_cast<std::int64_t>(child.number)}};
    case Child::Kind::annotation:
        break;
    }
    PdfDictionary reference{{"Type", PdfName{"OBJR"}}, {"Obj", child.annotation}};
    if (child.page != page) reference.push_back({"Pg", pages_[child.page]});
    return reference;
}

// What the line through or under the words says, for who does not see it: as a layout attribute
// (ISO 32000-1, table 345) and in words (14.9.3).
void StructureTree::add_revision(PdfDictionary& value, const Node& node) {
    const bool inserted = node.type == composition::StructureType::inserted;
    value.push_back({"Alt", PdfText{std::string(node.alternative)}});
    value.push_back({"A", PdfDictionary{{"O", PdfName{"Layout"}},
                                        {"TextDecorationType",
                                         PdfName{inserted ? "Underline" : "LineThrough"}}}});
}

// ISO 32000-1 has no types for them, so they are mapped to the nearest that it has (14.7.3; ISO
// 14289-1, 7.1, asks for it).
PdfDictionary StructureTree::role_map() const {
    PdfDictionary roles;
    for (const auto type :
         {composition::StructureType::inserted, composition::StructureType::deleted})
        if (std::ranges::find(nodes_, type, &Node::type) != nodes_.end())
            roles.push_back({structure_name(type), PdfName{"Span"}});
    return roles;
}

void StructureTree::write_element(std::uint32_t element, PdfReference root) {
    const Node& node = nodes_[element];
    const std::size_t page = first_page(node);
    PdfArray children;
    for (const Child& child : node.children)
        children.push_back(child_value(child, page));

    PdfDictionary value{{"S", PdfName{structure_name(node.type)}},
                        {"P", element == 0 ? root : nodes_[node.parent].object}};
    if (page != no_page) value.push_back({"Pg", pages_[page]});
    value.push_back({"K", children.size() == 1 ? children.front() : PdfValue(children)});
    if (!node.language.empty()) value.push_back({"Lang", PdfText{std::string(node.language)}});
    if (!node.expansion.empty()) value.push_back({"E", PdfText{std::string(node.expansion)}});
    if (node.type == composition::StructureType::l)
        value.push_back({"A", list_attributes(labels_[element])});
    if (is_revision(node.type)) add_revision(value, node);
    file_.set(node.object, value);
}

PdfArray StructureTree::elements_on(std::size_t page) const {
    PdfArray elements;
    for (const std::uint32_t element : contents_[page])
        elements.push_back(nodes_[element].object);
    return elements;
}

// A page's key has the elements of its content, by MCID; an annotation's has its element.
PdfArray StructureTree::parent_tree() const {
    PdfArray numbers;
    for (std::size_t page = 0; page < contents_.size(); ++page) {
        numbers.push_back(static_cast<std::int64_t>(page));
        numbers.push_back(elements_on(page));
    }
    for (std::size_t i = 0; i < annotations_.size(); ++i) {
        numbers.push_back(static_cast<std::int64_t>(pages_.size() + i));
        numbers.push_back(nodes_[annotations_[i]].object);
    }
    return numbers;
}

PdfReference StructureTree::write() {
    attach(0);
    const PdfReference root = file_.reserve();
    for (std::uint32_t element = 0; element < nodes_.size(); ++element)
        if (nodes_[element].object.number != 0) write_element(element, root);
    const PdfReference parents = file_.add({{"Nums", parent_tree()}});
    PdfDictionary value{
        {"Type", PdfName{"StructTreeRoot"}},
        {"K", nodes_[0].object},
        {"ParentTree", parents},
        {"ParentTreeNextKey", static_cast<std::int64_t>(pages_.size() + annotations_.size())}};
    if (const PdfDictionary roles = role_map(); !roles.empty()) value.push_back({"RoleMap", roles});
    file_.set(root, value);
    return root;
}

}
