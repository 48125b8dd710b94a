"""PDF/A-2a: clauses of ISO 19005-2:2011 (A) from 6.2 on; and what both standards build on: clauses of
ISO 32000-1:2008 (PDF) and the PDF Association's guide to structure types."""

import re

import pikepdf

from pdf_reading import Annotation, Element, same
from pdf_ua_conditions import (A_NS, DC, HEADINGS, LANGUAGE, STANDARD_TYPES, condition, mapped,
                               property_text, wrong_widths)

# "Tagged PDF Best Practice Guide: Syntax" 1.0, as far as a résumé goes: children of each type, and
# whether it holds content itself.
CHILDREN = {
    "Document": ({"Sect", "Div", "P", "L"} | HEADINGS, False),
    "Sect": ({"Sect", "Div", "P", "L"} | HEADINGS, False),
    "Div": ({"Sect", "Div", "P", "L"} | HEADINGS, False),
    "L": ({"LI", "L"}, False),
    "LI": ({"Lbl", "LBody"}, False),
    "LBody": ({"P", "L", "Span", "Link", "Annot"}, True),
    "P": ({"Span", "Link", "Annot", "Lbl"}, True),
    "Lbl": ({"Span", "Link", "Annot"}, True),
    "Link": ({"Span", "Annot"}, True),
    "Annot": ({"Span"}, True),
    "Span": ({"Span", "Link", "Annot"}, True),
} | {heading: ({"Span", "Link", "Annot"}, True) for heading in HEADINGS}


# Structure and annotations


@condition("A 6.3.1", "an annotation is of a type that is not allowed")
def _(d):
    # ISO 32000-1, table 169, without those of sound, film and space
    allowed = {"/Text", "/Link", "/FreeText", "/Line", "/Square", "/Circle", "/Polygon", "/PolyLine",
               "/Highlight", "/Underline", "/Squiggly", "/StrikeOut", "/Stamp", "/Caret", "/Ink", "/Popup",
               "/FileAttachment", "/Widget", "/PrinterMark", "/TrapNet", "/Watermark", "/Redact"}
    return [str(a.get("/Subtype")) for _, a in d.annotations() if a.get("/Subtype") not in allowed]


@condition("A 6.3.3", "an annotation that needs an appearance has none")
def _(d):
    def has_area(a):
        left, bottom, right, top = (float(v) for v in a.Rect)
        return left != right or bottom != top
    return [str(a.Subtype) for _, a in d.annotations()
            if a.Subtype not in ("/Link", "/Popup") and has_area(a) and "/N" not in a.get("/AP", {})]


@condition("A 6.3.2", "an annotation is not set to print, or is hidden")
def _(d):
    return [str(a.Subtype) for _, a in d.annotations() if int(a.get("/F", 0)) & 0b100111 != 4]


@condition("PDF 14.7.4.4", "the parent tree does not lead back to the elements")
def _(d):
    tree, wrong = d.parent_tree(), []
    for element in d.elements:
        for child in element.children:
            if isinstance(child, tuple):
                page, mcid = child
                key = d.pdf.pages[page].obj.get("/StructParents", -1) if page is not None else -1
                row = tree.get(int(key), [])
                if mcid >= len(row) or not same(row[mcid], element.object):
                    wrong.append(f"page {page}, MCID {mcid}")
            elif isinstance(child, Annotation):
                if not same(tree.get(int(child.object.get("/StructParent", -1))), element.object):
                    wrong.append("annotation")
    claimed = [c for e in d.elements for c in e.children if isinstance(c, tuple)]
    return wrong + ["claimed twice"] * (len(claimed) != len(set(claimed)))


@condition("PDF 14.7.2", "an element's P is not its parent")
def _(d):
    return [e.type for e in d.elements if not
            same(e.object.get("/P"), e.parent.object if e.parent else d.root.StructTreeRoot)]


@condition("Best Practice 1.0", "an element holds what its type may not hold")
def _(d):
    wrong = [] if [e.type for e in d.top] == ["Document"] else ["the root's child is no Document"]
    for element in d.elements:
        allowed, content = CHILDREN.get(mapped(d, element.type), (STANDARD_TYPES, True))
        for child in element.children:
            if isinstance(child, Element) and mapped(d, child.type) not in allowed:
                wrong.append(f"{element.type} holds {child.type}")
            if isinstance(child, tuple) and not content:
                wrong.append(f"{element.type} holds content")
    return wrong


# Fonts


@condition("A 6.2.11.3.2", "a CIDFontType2 has no CIDToGIDMap, or another font has one")
def _(d):
    return [str(f.dictionary.BaseFont) for f in d.fonts()
            if (f.cid_font.Subtype == "/CIDFontType2") != ("/CIDToGIDMap" in f.cid_font)]


@condition("A 6.2.11.3.3", "a CMap is neither embedded nor one of ISO 32000-1, table 118")
def _(d):
    predefined = {"/Identity-H", "/Identity-V"}  # of the table's, those that any script can use
    return [str(f.dictionary.BaseFont) for f in d.fonts()
            if not isinstance(f.dictionary.Encoding, pikepdf.Stream)
            and f.dictionary.Encoding not in predefined]


@condition("A 6.2.11.2", "a font program's key or Subtype is not that of its kind")
def _(d):
    # ISO 32000-1, table 126
    wrong = []
    for font in d.fonts():
        descriptor = font.cid_font.get("/FontDescriptor", {})
        if "/FontFile3" in descriptor:
            right = descriptor.FontFile3.get("/Subtype") in ("/CIDFontType0C", "/OpenType")
        else:
            right = "/FontFile2" in descriptor and font.cid_font.Subtype == "/CIDFontType2"
        if not right:
            wrong.append(str(font.dictionary.BaseFont))
    return wrong


condition("A 6.2.11.5", "a width differs from the font program's by more than 1/1000 em")(wrong_widths)


@condition("A 6.2.11.8", "the glyph .notdef is shown")
def _(d):
    return any(code == 0 for _, code, _ in d.shown())


@condition("A 6.2.11.4.1", "a font program is missing or cannot be read")
def _(d):
    return [str(f.dictionary.BaseFont) for f in d.fonts() if f.program is None]


@condition("A 6.2.11.4.2", "a CIDSet is not complete")
def _(d):
    wrong = []
    for font in d.fonts():
        descriptor = font.cid_font.get("/FontDescriptor", {})
        if "/CIDSet" in descriptor and font.program:
            bits = descriptor.CIDSet.read_bytes()
            present = [i for i in range(len(bits) * 8) if bits[i // 8] & 0x80 >> i % 8]
            if present != font.program.codes():
                wrong.append(str(font.dictionary.BaseFont))
    return wrong


@condition("A 6.2.11.7.2", "a font's ToUnicode does not map all codes shown")
def _(d):
    return sorted({str(f.dictionary.BaseFont) for f, code, _ in d.shown()
                   if f.unicode is None or code not in f.unicode})


def private_use(text):
    return any(0xE000 <= ord(c) <= 0xF8FF or ord(c) >= 0xF0000 for c in text)


@condition("A 6.2.11.7.3", "a private-use character has no ActualText")
def _(d):
    return sorted({code for f, code, event in d.shown()
                   if private_use((f.unicode or {}).get(code, "")) and not event.actual_text})


# PDF/A: colour and resources


def output_profile(d):
    for intent in d.root.get("/OutputIntents", []):
        if intent.get("/S") == "/GTS_PDFA1" and "/DestOutputProfile" in intent:
            return intent.DestOutputProfile
    return None


@condition("A 6.2.3", "the output intent's profile is missing or is no ICC profile of its N")
def _(d):
    profile = output_profile(d)
    if profile is None:
        return True
    data = profile.read_bytes()
    components = {b"RGB ": 3, b"GRAY": 1, b"CMYK": 4}.get(data[16:20])
    return data[36:40] != b"acsp" or int.from_bytes(data[:4], "big") != len(data) \
        or components != int(profile.get("/N", 0)) or data[8] > 4


@condition("A 6.2.4.3", "a device colour is used that the output intent does not define")
def _(d):
    profile = output_profile(d)
    kind = None if profile is None else profile.read_bytes()[16:20]
    defined = {b"RGB ": {"RGB", "Gray"}, b"CMYK": {"CMYK", "Gray"}, b"GRAY": {"Gray"}}.get(kind, set())
    used = {"Gray"} if d.events else set()  # the initial colour is DeviceGray black
    return sorted(used.union(*(page.colours for page in d.page_faults)) - defined)


@condition("A 6.2.2", "a page has no resources of its own, or not all that it shows")
def _(d):
    return ["inherited"] * d.pages_without_resources + \
        [number + 1 for number, page in enumerate(d.pdf.pages) if not d.page_faults[number].fonts
         <= set(page.obj.get("/Resources", {}).get("/Font", {}).keys())]


# ISO 32000-1, table 51.
OPERATORS = set("""b B b* B* BDC BI BMC BT BX c cm CS cs d d0 d1 Do DP EI EMC ET EX f F f* G g gs h i ID j
    J K k l m M MP n q Q re RG rg ri s S SC sc SCN scn sh T* Tc Td TD Tf Tj TJ TL Tm Tr Ts Tw Tz v w W W*
    y ' " """.split()) | {"INLINE IMAGE"}


@condition("A 6.2.2 operators", "a content stream has an operator that ISO 32000-1 does not define")
def _(d):
    return sorted(set().union(*(page.operators for page in d.page_faults)) - OPERATORS)


def resources(d, kind):
    for page in d.pdf.pages:
        found = page.obj.get("/Resources", {}).get(kind, {})
        yield from (found[key] for key in found.keys())


@condition("A 6.2.5", "an ExtGState has a transfer function or a halftone's origin or phase")
def _(d):
    return [key for state in resources(d, "/ExtGState") for key in ("/TR", "/HTP", "/HTO") if key in state] \
        + ["/TR2" for state in resources(d, "/ExtGState") if state.get("/TR2", "/Default") != "/Default"]


@condition("A 6.2.8", "an image has Alternates, OPI or Interpolate")
def _(d):
    return [key for image in resources(d, "/XObject") if image.get("/Subtype") == "/Image"
            for key in ("/Alternates", "/OPI", "/Interpolate")
            if key in image and image.get(key) is not False]


@condition("A 6.2.9", "an XObject is PostScript, or a form with OPI, Ref or PS")
def _(d):
    return [str(form.get("/Subtype")) for form in resources(d, "/XObject")
            if form.get("/Subtype") == "/PS" or form.get("/Subtype2") == "/PS" or
            form.get("/Subtype") == "/Form" and {"/OPI", "/Ref", "/PS"} & set(form.keys())]


# ISO 32000-1, tables 136 and 137.
BLEND_MODES = {f"/{name}" for name in """Normal Compatible Multiply Screen Overlay Darken Lighten ColorDodge
    ColorBurn HardLight SoftLight Difference Exclusion Hue Saturation Color Luminosity""".split()}


@condition("A 6.2.10", "a blend mode is not one of ISO 32000-1")
def _(d):
    return [str(state.BM) for state in resources(d, "/ExtGState")
            if "/BM" in state and state.BM not in BLEND_MODES]


# PDF/A: what a document may do


def actions(d):
    """Every action that the document holds."""
    return [o for o in d.dictionaries() if "/S" in o and
            (o.get("/Type") == "/Action" or {"/URI", "/D", "/F", "/JS", "/N"} & set(o.keys()))]


@condition("A 6.4.1", "a form's fields are drawn by the viewer, or act")
def _(d):
    return [key for key in ("/NeedAppearances",) if d.root.get("/AcroForm", {}).get(key, False)] + \
        ["/A" for _, a in d.annotations() if a.get("/Subtype") == "/Widget" and {"/A", "/AA"} & set(a.keys())]


@condition("A 6.4.2", "there is an XFA form")
def _(d):
    return "/XFA" in d.root.get("/AcroForm", {}) or "/NeedsRendering" in d.root


@condition("A 6.5.1", "an action is of a type that is not allowed")
def _(d):
    allowed = {"/GoTo", "/GoToR", "/GoToE", "/Thread", "/URI", "/SubmitForm", "/Named"}
    named = {"/NextPage", "/PrevPage", "/FirstPage", "/LastPage"}
    return [str(a.S) for a in actions(d)
            if a.S not in allowed or a.S == "/Named" and a.get("/N") not in named]


@condition("A 6.5.2", "the catalog or a page has actions of its own")
def _(d):
    return [1 for o in [d.root, *(page.obj for page in d.pdf.pages)] if "/AA" in o]


@condition("A 6.8", "a file is attached that is not described, or is no PDF/A")
def _(d):
    # whether what is attached conforms is not this checker's to say: it takes none
    return "/EmbeddedFiles" in d.root.get("/Names", {}) or any("/EF" in o for o in d.dictionaries())


@condition("A 6.9", "optional content has a configuration without a name, or one that acts by itself")
def _(d):
    properties = d.root.get("/OCProperties", {})
    configurations = [properties[k] for k in ("/D",) if k in properties]
    configurations += list(properties.get("/Configs", []))
    return [1 for c in configurations if "/Name" not in c or "/AS" in c]


@condition("A 6.10", "there are alternate presentations")
def _(d):
    return "/AlternatePresentations" in d.root.get("/Names", {}) or \
        any("/PresSteps" in page.obj for page in d.pdf.pages)


@condition("A 6.11", "the document states requirements of its viewer")
def _(d):
    return "/Requirements" in d.root


# PDF/A: metadata and logical structure

# ISO 16684-1 and ISO 19005-2, 6.6.2.3: schemas that need no description.
PREDEFINED = {DC, A_NS, "http://ns.adobe.com/pdf/1.3/", "http://ns.adobe.com/xap/1.0/",
              "http://ns.adobe.com/xap/1.0/mm/", "http://ns.adobe.com/xap/1.0/rights/",
              "http://www.aiim.org/pdfa/ns/extension/"}


@condition("A 6.6.2.1", "the catalog's metadata is not an XMP stream")
def _(d):
    metadata = d.root.get("/Metadata", {})
    return metadata.get("/Type") != "/Metadata" or metadata.get("/Subtype") != "/XML"


@condition("A 6.6.2.1 packet", "the XMP packet's header states bytes or encoding, or it is not UTF-8")
def _(d):
    if "/Metadata" not in d.root:
        return True
    data = d.root.Metadata.read_bytes()
    header = re.match(rb"\s*<\?xpacket[^>]*\?>", data)
    try:
        data.decode("utf-8")
    except UnicodeDecodeError:
        return True
    return header is None or re.search(rb"\b(bytes|encoding)\s*=", header.group()) is not None


@condition("A 6.6.2.3.1", "an XMP property is in no predefined schema and not described")
def _(d):
    tree = d.xmp()
    if tree is None:
        return True
    schema, prop = "{http://www.aiim.org/pdfa/ns/schema#}", "{http://www.aiim.org/pdfa/ns/property#}"

    def value(node, name):  # an element's or an attribute's: XMP means the same by both
        return node.get(name) or node.findtext(name)

    described = {(value(s, schema + "namespaceURI"), value(p, prop + "name"))
                 for s in tree.iter() if value(s, schema + "namespaceURI")
                 for p in s.iter() if value(p, prop + "name")}
    return [name for space, name in d.xmp_properties()
            if space not in PREDEFINED and (space, name) not in described]


@condition("A 6.6.4", "XMP does not say PDF/A part 2, conformance A")
def _(d):
    return property_text(d, A_NS, "part") != "2" or property_text(d, A_NS, "conformance") != "A"


@condition("A 6.7.2.2", "MarkInfo does not say that the document is tagged")
def _(d):
    return d.root.get("/MarkInfo", {}).get("/Marked", False) is not True


@condition("A 6.7.3.3", "there is no structure tree")
def _(d):
    return "/StructTreeRoot" not in d.root or not d.elements


@condition("A 6.7.3.4", "a structure type is not mapped to a standard one")
def _(d):
    return [e.type for e in d.elements if mapped(d, e.type) not in STANDARD_TYPES]


@condition("A 6.7.4", "a Lang is no language tag")
def _(d):
    stated = [o.Lang for o in [d.root, *(e.object for e in d.elements)] if "/Lang" in o]
    return [str(tag) for tag in stated if str(tag) and LANGUAGE.match(str(tag)) is None]
