"""PDF/A-2a: clauses of ISO 19005-2:2011 (A); and what both standards build on: clauses of
ISO 32000-1:2008 (PDF) and the PDF Association's guide to structure types."""

import re

import pikepdf

from pdf_reading import Annotation, Element, raw_objects, same
from pdf_ua_conditions import (A_NS, DC, HEADINGS, STANDARD_TYPES, condition, glyph_count, mapped,
                               property_text)

# "Tagged PDF Best Practice Guide: Syntax" 1.0, as far as a résumé goes: children of each type, and
# whether it holds content itself.
CHILDREN = {
    "Document": ({"Sect", "Div", "P", "L"} | HEADINGS, False),
    "Sect": ({"Sect", "Div", "P", "L"} | HEADINGS, False),
    "Div": ({"Sect", "Div", "P", "L"} | HEADINGS, False),
    "L": ({"LI", "L"}, False),
    "LI": ({"Lbl", "LBody"}, False),
    "LBody": ({"P", "L", "Span", "Link"}, True),
    "P": ({"Span", "Link", "Lbl"}, True),
    "Lbl": ({"Span", "Link"}, True),
    "Link": ({"Span"}, True),
    "Span": ({"Span", "Link"}, True),
} | {heading: ({"Span", "Link"}, True) for heading in HEADINGS}


# Structure and annotations


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
            if present != list(range(glyph_count(font))):
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


# PDF/A: the file's bytes


@condition("A 6.1.2", "the header is not %PDF-1.n and a comment of four bytes above 127")
def _(d):
    return re.match(rb"%PDF-1\.[0-7](\r\n|\r|\n)%[\x80-\xff]{4}", d.raw) is None


@condition("A 6.1.3 ID", "the trailer has no ID")
def _(d):
    identifier = d.pdf.trailer.get("/ID", [])
    return len(identifier) != 2 or not all(bytes(part) for part in identifier)


@condition("A 6.1.3 Encrypt", "the file is encrypted")
def _(d):
    return "/Encrypt" in d.pdf.trailer


@condition("A 6.1.3 EOF", "something follows the last %%EOF")
def _(d):
    return re.search(rb"%%EOF(\r\n|\r|\n)?\Z", d.raw) is None


@condition("A 6.1.6", "a hexadecimal string has an odd count of digits, or another character")
def _(d):
    strings = [s for o in raw_objects(d) for s in o.hex_strings]
    strings += [s for p in d.pdf.pages for content in contents(p.obj)
                for s in re.findall(rb"(?<!<)<([^<>]*)>(?!>)", content)]
    return [s[:20] for s in strings
            if re.fullmatch(rb"([0-9A-Fa-f]{2})*", re.sub(rb"\s", b"", s)) is None]


def contents(page):
    streams = page.get("/Contents", [])
    streams = streams if isinstance(streams, pikepdf.Array) else [streams]
    return [stream.read_bytes() for stream in streams]


@condition("A 6.1.7.1", "a stream's Length is not the count of its bytes")
def _(d):
    return [o.number for o in raw_objects(d) if not o.length_is_exact]


@condition("A 6.1.7.2", "a stream is compressed by LZW")
def _(d):
    return [o.objgen[0] for o in d.pdf.objects if isinstance(o, pikepdf.Stream)
            and "LZWDecode" in str(o.get("/Filter", ""))]


@condition("A 6.1.9", "obj or endobj is not set off as it should be")
def _(d):
    eol = b"\r\n"
    return [o.number for o in raw_objects(d)
            if re.match(rb"\d+ \d+ obj$", d.raw[o.start:o.after_obj]) is None
            or d.raw[o.start - 1] not in eol or d.raw[o.after_obj] not in eol
            or d.raw[o.before_endobj - 1] not in eol or d.raw[o.after_endobj] not in eol]


@condition("A 6.1.13", "q is nested more than 28 deep")
def _(d):
    return any(page.deepest_q > 28 for page in d.page_faults)


# PDF/A: metadata and logical structure

# ISO 16684-1 and ISO 19005-2, 6.6.2.3: schemas that need no description.
PREDEFINED = {DC, A_NS, "http://ns.adobe.com/pdf/1.3/", "http://ns.adobe.com/xap/1.0/",
              "http://ns.adobe.com/xap/1.0/mm/", "http://ns.adobe.com/xap/1.0/rights/",
              "http://www.aiim.org/pdfa/ns/extension/"}


@condition("A 6.6.2.1", "the catalog's metadata is not an XMP stream")
def _(d):
    metadata = d.root.get("/Metadata", {})
    return metadata.get("/Type") != "/Metadata" or metadata.get("/Subtype") != "/XML"


@condition("A 6.6.2.3.1", "an XMP property is in no predefined schema and not described")
def _(d):
    tree = d.xmp()
    if tree is None:
        return True
    schema, prop = "{http://www.aiim.org/pdfa/ns/schema#}", "{http://www.aiim.org/pdfa/ns/property#}"
    described = {(s.findtext(schema + "namespaceURI"), name.text)
                 for s in tree.iter() if s.find(schema + "namespaceURI") is not None
                 for name in s.iter(prop + "name")}
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
