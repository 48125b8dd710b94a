#!/usr/bin/python3
"""Proves that pdf_conformance.py sees what it says it sees.

Into a PDF that passes, with a list, a link and a bookmark, each condition's fault is put in turn;
the check of that condition must report it.

    pdf_conformance_faults.py GOOD.pdf
"""

import io
import re
import sys

import pikepdf
from pikepdf import Array, Dictionary, Name, String

from pdf_conformance import failures
from pdf_reading import Document
from pdf_ua_conditions import CONDITIONS

FAULTS = {}  # condition to a list of functions
RAW_FAULTS = {}


def fault(*numbers):
    def register(change):
        for number in numbers:
            FAULTS.setdefault(number, []).append(change)
        return change
    return register


def raw_fault(number):
    def register(change):
        RAW_FAULTS.setdefault(number, []).append(change)
        return change
    return register


def changed(good, change):
    pdf = pikepdf.open(io.BytesIO(good))
    change(pdf)
    out = io.BytesIO()
    pdf.save(out, object_stream_mode=pikepdf.ObjectStreamMode.disable, static_id=True,
             fix_metadata_version=False)
    return out.getvalue()


def elements(pdf, name):
    found = []

    def walk(element):
        if element.get("/S") == name:
            found.append(element)
        kids = element.get("/K", [])
        for kid in kids if isinstance(kids, Array) else [kids]:
            if isinstance(kid, Dictionary) and "/S" in kid:
                walk(kid)
    walk(pdf.Root.StructTreeRoot.K)
    return found


def content(pdf, edit, page=0):
    page = pdf.pages[page].obj
    page.Contents = pdf.make_stream(edit(page.Contents.read_bytes()))


def first_font(pdf):
    return pdf.pages[0].obj.Resources.Font.F1


def cid_font(pdf):
    return first_font(pdf).DescendantFonts[0]


def xmp(pdf, pattern, replacement):
    metadata = pdf.Root.Metadata
    text, count = re.subn(pattern, replacement, metadata.read_bytes(), flags=re.S)
    assert count, pattern
    metadata.write(text)


def to_unicode(pdf, replacement):
    stream = first_font(pdf).ToUnicode
    stream.write(re.sub(rb"(beginbfchar\n<....>)<.*?>", rb"\1" + replacement, stream.read_bytes()))


def first_link(pdf):
    return next(a for a in pdf.pages[0].obj.Annots if a.Subtype == "/Link")


FIRST_MARK = rb"(/\w+<</MCID 0>>BDC\n)"

fault("UA 01-003")(lambda p: content(p, lambda c: re.sub(
    FIRST_MARK, rb"\1/Artifact<</Type/Layout>>BDC 0 0 1 1 re f EMC\n", c, 1)))
fault("UA 01-004")(lambda p: content(p, lambda c: b"/Artifact<</Type/Layout>>BDC " + re.sub(
    rb"EMC", rb"EMC EMC", c, 1)))
fault("UA 01-005")(lambda p: content(p, lambda c: c + b"\n0 0 1 1 re f\n"))
fault("UA 01-005")(lambda p: content(p, lambda c: re.sub(rb"/MCID 0>>", rb"/MCID 9999>>", c, 1)))
fault("UA 01-007")(lambda p: p.Root.MarkInfo.__setitem__("/Suspects", True))


@fault("UA 02-001")
def unknown_type(pdf):
    elements(pdf, "/P")[0].S = Name("/Paragraph")


@fault("UA 02-003")
def circular_roles(pdf):
    pdf.Root.StructTreeRoot.RoleMap = Dictionary({"/One": Name("/Two"), "/Two": Name("/One")})


@fault("UA 02-004")
def standard_remapped(pdf):
    pdf.Root.StructTreeRoot.RoleMap = Dictionary({"/P": Name("/Div")})


@fault("UA 06-001", "A 6.6.2.1")
def no_metadata(pdf):
    del pdf.Root.Metadata


fault("UA 06-002")(lambda p: xmp(p, rb"<pdfuaid:part>1</pdfuaid:part>", b""))
fault("UA 06-003")(lambda p: xmp(p, rb"<dc:title>.*?</dc:title>", b""))
fault("A 6.6.4")(lambda p: xmp(p, rb"<pdfaid:part>2", b"<pdfaid:part>1"))
fault("A 6.6.4")(lambda p: xmp(p, rb"<pdfaid:conformance>A", b"<pdfaid:conformance>B"))
fault("A 6.6.2.3.1")(lambda p: xmp(p, rb"<pdfaExtension:schemas>.*</pdfaExtension:schemas>", b""))


@fault("UA 07-001")
def no_title_preference(pdf):
    del pdf.Root.ViewerPreferences


@fault("UA 07-002")
def title_not_shown(pdf):
    pdf.Root.ViewerPreferences.DisplayDocTitle = False


@fault("UA 09-005")
def paragraph_in_list(pdf):
    elements(pdf, "/LI")[0].S = Name("/P")


@fault("UA 13-004")
def figure(pdf):
    elements(pdf, "/P")[0].S = Name("/Figure")


@fault("UA 14-002")
def first_heading_is_h2(pdf):
    for heading in elements(pdf, "/H1"):
        heading.S = Name("/P")


@fault("UA 14-003")
def level_skipped(pdf):
    for heading in elements(pdf, "/H2"):
        heading.S = Name("/H4")


@fault("UA 14-006", "UA 14-007")
def plain_headings(pdf):
    parent = elements(pdf, "/H2")[0].P
    for _ in range(2):
        parent.K.append(pdf.make_indirect(Dictionary(S=Name("/H"), P=parent)))


@fault("UA 11-001", "UA 11-003", "UA 11-004", "UA 11-006")
def no_language(pdf):
    del pdf.Root.Lang


@fault("UA 11-001")
def malformed_language(pdf):
    pdf.Root.Lang = String("American English")


@fault("UA 11-002")
def alternative_without_language(pdf):
    del pdf.Root.Lang
    elements(pdf, "/P")[0].Alt = String("words")


@fault("UA 11-005")
def field_without_language(pdf):
    del pdf.Root.Lang
    pdf.Root.AcroForm = Dictionary(Fields=[Dictionary(FT=Name("/Tx"), TU=String("words"))])


@fault("UA 28-004")
def note_without_contents(pdf):
    pdf.pages[0].obj.Annots.append(Dictionary(Subtype=Name("/Text"), Rect=[0, 0, 9, 9], F=4))


@fault("UA 28-008")
def no_tab_order(pdf):
    del pdf.pages[0].obj.Tabs


@fault("UA 28-009")
def tab_order_by_rows(pdf):
    pdf.pages[0].obj.Tabs = Name("/R")


@fault("UA 28-011")
def link_in_span(pdf):
    for link in elements(pdf, "/Link"):
        link.S = Name("/Span")


@fault("UA 28-011")
def link_outside_tree(pdf):
    pdf.pages[0].obj.Annots.append(Dictionary(Subtype=Name("/Link"), Rect=[0, 0, 9, 9], F=4))


@fault("UA 28-012")
def link_without_contents(pdf):
    del first_link(pdf).Contents


@fault("A 6.3.2")
def link_not_printed(pdf):
    first_link(pdf).F = 0


@fault("A 6.3.2")
def link_hidden(pdf):
    first_link(pdf).F = 6


@fault("PDF 14.7.4.4")
def parent_tree_shifted(pdf):
    row = pdf.Root.StructTreeRoot.ParentTree.Nums[1]
    row[0], row[1] = row[1], row[0]


@fault("PDF 14.7.4.4")
def link_key_lost(pdf):
    first_link(pdf).StructParent = 999


@fault("PDF 14.7.2")
def wrong_parent(pdf):
    elements(pdf, "/P")[0].P = elements(pdf, "/H1")[0]


@fault("Best Practice 1.0")
def label_in_section(pdf):
    elements(pdf, "/H2")[0].S = Name("/Lbl")


@fault("Best Practice 1.0")
def content_in_section(pdf):
    elements(pdf, "/H2")[0].S = Name("/Sect")


@fault("UA 10-001", "A 6.2.11.7.2")
def code_unmapped(pdf):
    stream = first_font(pdf).ToUnicode
    stream.write(re.sub(rb"(beginbfchar\n)<....><.*?>\n", rb"\1", stream.read_bytes()))


fault("UA 31-028")(lambda p: to_unicode(p, b"<0000>"))
fault("UA 31-029")(lambda p: to_unicode(p, b"<FEFF>"))
fault("UA 31-029")(lambda p: to_unicode(p, b"<FFFE>"))
fault("A 6.2.11.7.3")(lambda p: to_unicode(p, b"<E000>"))


@fault("UA 31-027")
def no_to_unicode(pdf):
    del first_font(pdf).ToUnicode


def as_type2(pdf):
    font = cid_font(pdf)
    font.Subtype = Name("/CIDFontType2")
    return font


@fault("UA 31-004")
def map_of_another_name(pdf):
    as_type2(pdf).CIDToGIDMap = Name("/Other")


@fault("UA 31-005")
def no_map(pdf):
    font = as_type2(pdf)
    if "/CIDToGIDMap" in font:
        del font.CIDToGIDMap


@fault("UA 31-009", "A 6.2.11.4.1")
def not_embedded(pdf):
    descriptor = cid_font(pdf).FontDescriptor
    for key in ("/FontFile2", "/FontFile3"):
        if key in descriptor:
            del descriptor[key]


@fault("A 6.2.11.4.1")
def broken_program(pdf):
    descriptor = cid_font(pdf).FontDescriptor
    key = "/FontFile2" if "/FontFile2" in descriptor else "/FontFile3"
    descriptor[key].write(b"no font")


fault("UA 31-011")(lambda p: content(p, lambda c: re.sub(rb"<[0-9A-F]{4}", b"<7FFF", c, 1)))
fault("UA 31-030")(lambda p: content(p, lambda c: re.sub(rb"<[0-9A-F]{4}", b"<0000", c, 1)))


@fault("UA 31-016")
def widths_off(pdf):
    row = cid_font(pdf).W[1]
    for i in range(len(row)):
        row[i] = float(row[i]) + 1.2


@fault("A 6.2.11.4.2")
def incomplete_cid_set(pdf):
    cid_font(pdf).FontDescriptor.CIDSet = pdf.make_stream(b"\xc0")


@fault("A 6.2.3", "A 6.2.4.3")
def no_intent(pdf):
    del pdf.Root.OutputIntents


@fault("A 6.2.3")
def intent_of_other_components(pdf):
    pdf.Root.OutputIntents[0].DestOutputProfile.N = 4


fault("A 6.2.4.3")(lambda p: content(p, lambda c: b"0 0 0 1 k\n" + c))


@fault("A 6.2.2")
def inherited_resources(pdf):
    for page in pdf.Root.Pages.Kids:
        page.Parent.Resources = page.Resources
        del page.Resources


fault("A 6.1.13")(lambda p: content(p, lambda c: b"q " * 29 + c + b" Q" * 29))


@fault("A 6.7.2.2")
def not_marked(pdf):
    pdf.Root.MarkInfo.Marked = False


@fault("A 6.7.3.3")
def no_tree(pdf):
    del pdf.Root.StructTreeRoot


# In the file's bytes


raw_fault("A 6.1.2")(lambda b: b.replace(b"%PDF-1.7\n%", b"%PDF-1.7\n% ", 1))
raw_fault("A 6.1.2")(lambda b: b" " + b)
raw_fault("A 6.1.3 ID")(lambda b: b[:b.rindex(b"/ID")] + b[b.rindex(b"/ID"):].replace(b"/ID", b"/IX", 1))
raw_fault("A 6.1.3 EOF")(lambda b: b.rstrip() + b"\n% more\n")
raw_fault("A 6.1.6")(lambda b: b.replace(b"/Supplement 0", b"/Odd <ABC> ", 1))
raw_fault("A 6.1.6")(lambda b: b.replace(b"/Supplement 0", b"/Odd <AX> ", 1))
raw_fault("A 6.1.7.1")(lambda b: re.sub(
    rb"/Length (\d+)", lambda m: b"/Length " + str(int(m[1]) + 1).encode(), b, 1))
raw_fault("A 6.1.9")(lambda b: b.replace(b" 0 obj\n", b" 0  obj", 1))
raw_fault("A 6.1.9")(lambda b: b.replace(b"\nendobj", b" endobj", 1))


@raw_fault("A 6.1.3 Encrypt")
def encrypted(good):
    pdf, out = pikepdf.open(io.BytesIO(good)), io.BytesIO()
    pdf.save(out, encryption=pikepdf.Encryption(owner="a", user="", R=4))
    return out.getvalue()


@raw_fault("A 6.1.7.2")
def lzw(good):
    # One page's content as LZW: clear, the bytes as 9-bit codes with a clear before each, end.
    pdf = pikepdf.open(io.BytesIO(good))
    page = pdf.pages[0].obj
    bits = "".join(f"{256:09b}{byte:09b}" for byte in page.Contents.read_bytes()) + f"{257:09b}"
    bits += "0" * (-len(bits) % 8)
    data = bytes(int(bits[i:i + 8], 2) for i in range(0, len(bits), 8))
    page.Contents = pikepdf.Stream(pdf, data, Filter=Name("/LZWDecode"))
    out = io.BytesIO()
    pdf.save(out, compress_streams=False, stream_decode_level=pikepdf.StreamDecodeLevel.none)
    return out.getvalue()


def reports(raw, number):
    return number in [failed for failed, _, _ in failures(raw)]


def main(arguments):
    if len(arguments) != 1:
        print(__doc__, file=sys.stderr)
        return 2
    with open(arguments[0], "rb") as file:
        good = file.read()
    for name, raw in (("as given", good), ("rewritten", changed(good, lambda pdf: None))):
        for number, failure, where in failures(raw):
            print(f"the good PDF, {name}, fails {number}: {failure} ({where})")
            return 1
    missed = sorted({n for n, _, _ in CONDITIONS} - set(FAULTS) - set(RAW_FAULTS))
    for number in missed:
        print(f"{number}: no fault is tried")
    tried = [(n, changed(good, change)) for n, changes in FAULTS.items() for change in changes]
    tried += [(n, change(good)) for n, changes in RAW_FAULTS.items() for change in changes]
    unseen = [number for number, raw in tried if not reports(raw, number)]
    for number in unseen:
        print(f"{number}: its fault is not reported")
    print(f"{len(tried)} faults tried for {len(FAULTS) + len(RAW_FAULTS)} conditions, "
          f"{len(unseen)} not reported")
    return 1 if missed or unseen else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
