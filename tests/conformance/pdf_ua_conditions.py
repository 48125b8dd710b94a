"""PDF/UA-1: failure conditions of the Matterhorn Protocol 1.1, each by its number there.

Those that no document of plain text can meet are left out.
"""

import re

import pikepdf

from pdf_reading import Annotation, Element, same

CONDITIONS = []  # (number, what fails, check)
UA_NS = "http://www.aiim.org/pdfua/ns/id/"
A_NS = "http://www.aiim.org/pdfa/ns/id/"
DC = "http://purl.org/dc/elements/1.1/"
LANGUAGE = re.compile(r"[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$")  # the form of RFC 5646

# ISO 32000-1, 14.8.4.
STANDARD_TYPES = set("""Document Part Art Sect Div BlockQuote Caption TOC TOCI Index NonStruct Private
    P H H1 H2 H3 H4 H5 H6 L LI Lbl LBody Table TR TH TD THead TBody TFoot Span Quote Note Reference
    BibEntry Code Link Annot Ruby RB RT RP Warichu WT WP Figure Formula Form""".split())
HEADINGS = {"H1", "H2", "H3", "H4", "H5", "H6"}


def condition(number, failure):
    def register(check):
        CONDITIONS.append((number, failure, check))
        return check
    return register


# Content and its tags


@condition("UA 01-003", "an artifact lies inside tagged content")
def _(d):
    return any(page.artifact_in_tagged for page in d.page_faults)


@condition("UA 01-004", "tagged content lies inside an artifact")
def _(d):
    return any(page.tagged_in_artifact for page in d.page_faults)


@condition("UA 01-005", "content is neither an artifact nor tagged")
def _(d):
    claimed = {child for element in d.elements for child in element.children
               if isinstance(child, tuple)}
    return [f"page {e.page + 1}, {e.operator}" for e in d.events
            if not e.artifact and (e.page, e.mcid) not in claimed]


@condition("UA 01-007", "Suspects is true")
def _(d):
    return bool(d.root.get("/MarkInfo", {}).get("/Suspects", False))


def role_map(d):
    roles = d.root.get("/StructTreeRoot", {}).get("/RoleMap", {})
    return {str(k)[1:]: str(v)[1:] for k, v in roles.items()}


def mapped(d, name):
    roles, seen = role_map(d), set()
    while name not in STANDARD_TYPES and name in roles and name not in seen:
        seen.add(name)
        name = roles[name]
    return name


@condition("UA 02-001", "a structure type is not standard and not mapped to one that is")
def _(d):
    return [e.type for e in d.elements if mapped(d, e.type) not in STANDARD_TYPES]


@condition("UA 02-003", "a role mapping goes in a circle")
def _(d):
    roles, circular = role_map(d), []
    for start in roles:
        name, steps = start, 0
        while name in roles and steps <= len(roles):
            name, steps = roles[name], steps + 1
        if steps > len(roles):
            circular.append(start)
    return circular


@condition("UA 02-004", "a standard type is mapped to another")
def _(d):
    return [name for name in role_map(d) if name in STANDARD_TYPES]


# The document as a whole


@condition("UA 06-001", "there is no XMP metadata")
def _(d):
    return d.xmp() is None


def property_text(d, namespace, name):
    value = d.xmp_properties().get((namespace, name))
    return value if value is None or isinstance(value, str) else "".join(value.itertext()).strip()


@condition("UA 06-002", "XMP has no PDF/UA identifier")
def _(d):
    return property_text(d, UA_NS, "part") != "1"


@condition("UA 06-003", "XMP has no dc:title")
def _(d):
    return not property_text(d, DC, "title")


@condition("UA 07-001", "ViewerPreferences has no DisplayDocTitle")
def _(d):
    return "/DisplayDocTitle" not in d.root.get("/ViewerPreferences", {})


@condition("UA 07-002", "DisplayDocTitle is false")
def _(d):
    return d.root.get("/ViewerPreferences", {}).get("/DisplayDocTitle", True) is False


# Lists, headings, figures


@condition("UA 09-005", "a list is not made of L, LI, Lbl and LBody as ISO 32000-1, table 336, has it")
def _(d):
    wrong = []
    for e in d.elements:
        parent = mapped(d, e.parent.type) if e.parent else ""
        kinds = [mapped(d, c.type) for c in e.children if isinstance(c, Element)]
        name = mapped(d, e.type)
        if name == "L" and not set(kinds) <= {"L", "LI", "Caption"}:
            wrong.append("L holds " + ", ".join(kinds))
        if name == "LI" and (parent != "L" or not set(kinds) <= {"Lbl", "LBody"}):
            wrong.append(f"LI in {parent} holds " + ", ".join(kinds))
        if name == "LBody" and parent != "LI":
            wrong.append(f"LBody in {parent}")
    return wrong


@condition("UA 13-004", "a Figure has neither Alt nor ActualText")
def _(d):
    return ["Figure" for e in d.elements if mapped(d, e.type) == "Figure"
            and "/Alt" not in e.object and "/ActualText" not in e.object]


def heading_levels(d):
    return [int(mapped(d, e.type)[1]) for e in d.elements if mapped(d, e.type) in HEADINGS]


@condition("UA 14-002", "the first heading is not H1")
def _(d):
    return heading_levels(d)[:1] not in ([], [1])


@condition("UA 14-003", "a heading level is skipped")
def _(d):
    levels = heading_levels(d)
    return [f"H{b} after H{a}" for a, b in zip(levels, levels[1:]) if b > a + 1]


@condition("UA 14-006", "a node holds more than one H")
def _(d):
    return ["H" for e in d.elements
            if [mapped(d, c.type) for c in e.children if isinstance(c, Element)].count("H") > 1]


@condition("UA 14-007", "both H and Hn are used")
def _(d):
    return bool(heading_levels(d)) and any(mapped(d, e.type) == "H" for e in d.elements)


# Natural language


def language(dictionary):
    return LANGUAGE.match(str(dictionary.get("/Lang", ""))) is not None


def has_language(d, element):
    while element is not None:
        if language(element.object):
            return True
        element = element.parent
    return language(d.root)


@condition("UA 11-001", "the language of page content is not known")
def _(d):
    return [e.type for e in d.elements if any(isinstance(c, tuple) for c in e.children)
            and not has_language(d, e)]


@condition("UA 11-002", "the language of an Alt, ActualText or E is not known")
def _(d):
    return [e.type for e in d.elements if {"/Alt", "/ActualText", "/E"} & set(e.object.keys())
            and not has_language(d, e)]


@condition("UA 11-003", "the language of bookmarks is not known")
def _(d):
    return not language(d.root) and any(True for _ in d.outlines())


@condition("UA 11-004", "the language of an annotation's Contents is not known")
def _(d):
    return [str(a.Contents) for _, a in d.annotations() if "/Contents" in a
            and not has_language(d, element_of_annotation(d, a))]


@condition("UA 11-005", "the language of a form field's TU is not known")
def _(d):
    fields = d.root.get("/AcroForm", {}).get("/Fields", [])
    return not language(d.root) and any("/TU" in f for f in fields)


@condition("UA 11-006", "the language of the metadata is not known")
def _(d):
    title = d.xmp_properties().get((DC, "title"))
    languages = {li.get("{http://www.w3.org/XML/1998/namespace}lang") for li in title.iter()} - {None} \
        if title is not None and not isinstance(title, str) else set()
    return not language(d.root) and not languages - {"x-default"}


# Annotations


def element_of_annotation(d, annotation):
    for element in d.elements:
        for child in element.children:
            if isinstance(child, Annotation) and same(child.object, annotation):
                return element
    return None


@condition("UA 28-004", "an annotation has neither Contents nor an element with Alt")
def _(d):
    wrong = []
    for _, annotation in d.annotations():
        element = element_of_annotation(d, annotation)
        described = str(annotation.get("/Contents", "")) != ""
        if annotation.Subtype not in ("/Link", "/Widget", "/Popup") and not described and (
                element is None or "/Alt" not in element.object):
            wrong.append(str(annotation.Subtype))
    return wrong


@condition("UA 28-002", "an annotation is in no structure element, or in one that is no Annot")
def _(d):
    wrong = []
    for _, annotation in d.annotations():
        element = element_of_annotation(d, annotation)
        # a link has its own condition, 28-011
        elsewhere = element is None or (annotation.Subtype not in ("/Link", "/Widget", "/PrinterMark")
                                        and mapped(d, element.type) != "Annot")
        if annotation.Subtype != "/Popup" and elsewhere:
            wrong.append(str(annotation.Subtype))
    return wrong


@condition("UA 28-008", "a page with annotations has no Tabs")
def _(d):
    return any("/Annots" in p.obj and "/Tabs" not in p.obj for p in d.pdf.pages)


@condition("UA 28-009", "a page's Tabs is not S")
def _(d):
    return any("/Annots" in p.obj and p.obj.get("/Tabs", "/S") != "/S" for p in d.pdf.pages)


@condition("UA 28-011", "a link annotation is not in a Link element")
def _(d):
    links = [a for _, a in d.annotations() if a.Subtype == "/Link"]
    elements = [element_of_annotation(d, a) for a in links]
    return ["link" for e in elements if e is None or mapped(d, e.type) != "Link"]


@condition("UA 28-012", "a link annotation has no Contents")
def _(d):
    return ["link" for _, a in d.annotations() if a.Subtype == "/Link" and not str(a.get("/Contents", ""))]


# Fonts


@condition("UA 10-001", "a shown code stands for no Unicode text")
def _(d):
    return sorted({f"{f.dictionary.BaseFont} {code}" for f, code, _ in d.shown()
                   if not (f.unicode or {}).get(code)})


@condition("UA 31-001", "a CIDFont's CIDSystemInfo and its CMap's have other names")
def _(d):
    # an Identity CMap goes with any Adobe collection; this checker reads no other
    return [str(f.dictionary.BaseFont) for f in d.fonts()
            if f.dictionary.get("/Encoding") not in ("/Identity-H", "/Identity-V")
            or not {"/Registry", "/Ordering", "/Supplement"}
            <= set(f.cid_font.get("/CIDSystemInfo", {}).keys())]


@condition("UA 31-004", "CIDToGIDMap is neither a stream nor Identity")
def _(d):
    return [str(f.dictionary.BaseFont) for f in d.fonts() if f.cid_font.Subtype == "/CIDFontType2"
            and "/CIDToGIDMap" in f.cid_font and f.cid_font.CIDToGIDMap != "/Identity"
            and not isinstance(f.cid_font.CIDToGIDMap, pikepdf.Stream)]


@condition("UA 31-005", "a CIDFontType2 has no CIDToGIDMap")
def _(d):
    return [str(f.dictionary.BaseFont) for f in d.fonts()
            if f.cid_font.Subtype == "/CIDFontType2" and "/CIDToGIDMap" not in f.cid_font]


@condition("UA 31-009", "a font is not embedded")
def _(d):
    return [str(f.dictionary.BaseFont) for f in d.fonts() if f.program_object is None]


@condition("UA 31-011", "a shown glyph is not in the font program")
def _(d):
    return sorted({code for f, code, _ in d.shown() if f.program and not f.program.has(code)})


def wrong_widths(d):
    wrong = set()
    for font, code in {(f, code) for f, code, _ in d.shown()}:
        if font.program and font.program.has(code):
            stated = font.widths.get(code, float(font.cid_font.get("/DW", 1000)))
            if any(abs(stated - true) > 1 for true in font.program.widths(code)):
                wrong.add(f"{font.dictionary.BaseFont} {code}")
    return sorted(wrong)


condition("UA 31-016", "a width differs from the font program's by more than 1/1000 em")(wrong_widths)


@condition("UA 31-027", "a font has no ToUnicode")
def _(d):
    return [str(f.dictionary.BaseFont) for f in d.fonts() if f.unicode is None]


@condition("UA 31-028", "ToUnicode gives U+0000")
def _(d):
    return [code for f in d.fonts() for code, text in (f.unicode or {}).items() if "\0" in text]


@condition("UA 31-029", "ToUnicode gives U+FEFF or U+FFFE")
def _(d):
    return [code for f in d.fonts() for code, text in (f.unicode or {}).items()
            if set(text) & {"\ufeff", "\ufffe"}]


@condition("UA 31-030", "the glyph .notdef is shown")
def _(d):
    return any(code == 0 for _, code, _ in d.shown())
