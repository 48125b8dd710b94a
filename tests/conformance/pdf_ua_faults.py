"""A fault for each condition of PDF/UA-1."""

import re

from pikepdf import Array, Dictionary, Name, String

from faults import (cid_font, content, elements, fault, first_code, first_font, first_link,
                    to_unicode, xmp)

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


fault("UA 06-002")(lambda p: xmp(p, rb' pdfuaid:part="1"', b""))
fault("UA 06-003")(lambda p: xmp(p, rb"<dc:title>.*?</dc:title>", b""))


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


@fault("UA 28-002")
def note_outside_tree(pdf):
    pdf.pages[0].obj.Annots.append(Dictionary(Subtype=Name("/Text"), Rect=[0, 0, 9, 9], F=4,
                                              Contents=String("words")))


@fault("UA 28-002")
def note_in_paragraph(pdf):
    page = pdf.pages[0].obj
    note = pdf.make_indirect(Dictionary(Subtype=Name("/Text"), Rect=[0, 0, 9, 9], F=4, StructParent=9000,
                                        Contents=String("words")))
    page.Annots.append(note)
    paragraph = elements(pdf, "/P")[0]
    kids = paragraph.K if isinstance(paragraph.K, Array) else Array([paragraph.K])
    kids.append(Dictionary(Type=Name("/OBJR"), Obj=note, Pg=page))
    paragraph.K = kids
    pdf.Root.StructTreeRoot.ParentTree.Nums.extend([9000, paragraph])


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


@fault("UA 10-001", "A 6.2.11.7.2")
def code_unmapped(pdf):
    stream = first_font(pdf).ToUnicode
    stream.write(re.sub(rb"(beginbfchar\n)<....><.*?>\n", rb"\1", stream.read_bytes()))


fault("UA 31-028")(lambda p: to_unicode(p, b"<0000>"))
fault("UA 31-029")(lambda p: to_unicode(p, b"<FEFF>"))
fault("UA 31-029")(lambda p: to_unicode(p, b"<FFFE>"))


@fault("UA 31-027")
def no_to_unicode(pdf):
    del first_font(pdf).ToUnicode


def as_type2(pdf):
    font = cid_font(pdf)
    font.Subtype = Name("/CIDFontType2")
    return font


@fault("UA 31-001")
def encoding_of_another_name(pdf):
    first_font(pdf).Encoding = Name("/Other-H")


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


fault("UA 31-011")(lambda p: first_code(p, b"\x7f\xff"))
fault("UA 31-030")(lambda p: first_code(p, b"\0\0"))


@fault("UA 31-016")
def widths_off(pdf):
    row = cid_font(pdf).W[1]
    for i in range(len(row)):
        row[i] = float(row[i]) + 1.2
