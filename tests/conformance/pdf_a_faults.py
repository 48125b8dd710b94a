"""A fault for each condition of PDF/A-2a, and of what both standards build on."""

import io
import re
import zlib

import pikepdf
from pikepdf import Array, Dictionary, Name, String

from faults import (cid_font, content, elements, fault, first_code, first_font, first_link,
                    packed_fault, raw_fault, to_unicode, xmp)

fault("A 6.6.4")(lambda p: xmp(p, rb'pdfaid:part="2"', b'pdfaid:part="1"'))
fault("A 6.6.4")(lambda p: xmp(p, rb'pdfaid:conformance="A"', b'pdfaid:conformance="B"'))
fault("A 6.6.2.3.1")(lambda p: xmp(p, rb"<pdfaExtension:schemas>.*</pdfaExtension:schemas>", b""))


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


# For each type a child that "Allowed children" does not list for it, and content where it holds none.
NOT_ALLOWED = {"Document": "Span", "Sect": "LI", "L": "P", "LI": "P", "LBody": "H2", "P": "L", "Lbl": "P",
               "Link": "P", "H1": "P", "H2": "Sect"}
NOT_IN_GROUPS = {"Document": "Annot", "L": "Annot", "LI": "Annot"}
NO_CONTENT = ("Document", "Sect", "L")


def wrong_child(parent, child):
    def change(pdf):
        element = elements(pdf, f"/{parent}")[0]
        kids = element.K if isinstance(element.K, Array) else Array([element.K])
        kids.append(pdf.make_indirect(Dictionary(S=Name(f"/{child}"), P=element)))
        element.K = kids
    return change


def own_content(parent):
    def change(pdf):
        element = elements(pdf, f"/{parent}")[0]
        element.K = Array([0, *(element.K if isinstance(element.K, Array) else [element.K])])
        element.Pg = pdf.pages[0].obj
    return change


for parent_type, child_type in [*NOT_ALLOWED.items(), *NOT_IN_GROUPS.items()]:
    fault("Best Practice 1.0")(wrong_child(parent_type, child_type))
for parent_type in NO_CONTENT:
    fault("Best Practice 1.0")(own_content(parent_type))


@fault("Best Practice 1.0")
def no_document(pdf):
    pdf.Root.StructTreeRoot.K.S = Name("/Sect")


fault("A 6.2.11.7.3")(lambda p: to_unicode(p, b"<E000>"))


@fault("A 6.2.11.4.1")
def broken_program(pdf):
    descriptor = cid_font(pdf).FontDescriptor
    key = "/FontFile2" if "/FontFile2" in descriptor else "/FontFile3"
    descriptor[key].write(b"no font")


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


fault("A 6.1.13 q")(lambda p: content(p, lambda c: b"q " * 29 + c + b" Q" * 29))


@fault("A 6.7.2.2")
def not_marked(pdf):
    pdf.Root.MarkInfo.Marked = False


@fault("A 6.7.3.3")
def no_tree(pdf):
    del pdf.Root.StructTreeRoot


@fault("A 6.2.2 operators")
def unknown_operator(pdf):
    content(pdf, lambda c: c + b"\nBX 1 Frobnicate EX\n")


def resource(pdf, kind, value):
    pdf.pages[0].obj.Resources[kind] = Dictionary(X1=value)


@fault("A 6.2.5")
def transfer_function(pdf):
    resource(pdf, "/ExtGState", Dictionary(TR=Name("/Identity")))


@fault("A 6.2.5")
def second_transfer_function(pdf):
    resource(pdf, "/ExtGState", Dictionary(TR2=Name("/Identity")))


@fault("A 6.2.8")
def interpolated(pdf):
    resource(pdf, "/XObject", pdf.make_stream(
        b"\0", Subtype=Name("/Image"), Width=1, Height=1, BitsPerComponent=8,
        ColorSpace=Name("/DeviceGray"), Interpolate=True))


@fault("A 6.2.9")
def form_of_another_file(pdf):
    resource(pdf, "/XObject",
             pdf.make_stream(b"", Subtype=Name("/Form"), BBox=[0, 0, 1, 1], Ref=Dictionary()))


@fault("A 6.2.10")
def unknown_blend_mode(pdf):
    resource(pdf, "/ExtGState", Dictionary(BM=Name("/Frobnicate")))


@fault("A 6.2.11.2")
def program_of_no_kind(pdf):
    descriptor = cid_font(pdf).FontDescriptor
    program = descriptor[next(key for key in ("/FontFile2", "/FontFile3") if key in descriptor)]
    program.Subtype = Name("/Type1C")
    descriptor.FontFile3 = program


@fault("A 6.2.11.3.2")
def glyph_map_misplaced(pdf):
    font = cid_font(pdf)
    if "/CIDToGIDMap" in font:
        del font.CIDToGIDMap
    else:
        font.CIDToGIDMap = Name("/Identity")


@fault("A 6.2.11.3.3")
def encoding_of_another_name(pdf):
    first_font(pdf).Encoding = Name("/Other-H")


@fault("A 6.2.11.5")
def widths_off(pdf):
    row = cid_font(pdf).W[1]
    for i in range(len(row)):
        row[i] = float(row[i]) - 1.2


fault("A 6.2.11.8")(lambda p: first_code(p, b"\0\0"))


def annotation(pdf, **keys):
    pdf.pages[0].obj.Annots.append(Dictionary(Rect=[0, 0, 9, 9], F=4, **keys))


fault("A 6.3.1")(lambda p: annotation(p, Subtype=Name("/Sound")))
fault("A 6.3.3")(lambda p: annotation(p, Subtype=Name("/Text"), Contents=String("words")))
fault("A 6.4.1")(lambda p: p.Root.__setitem__("/AcroForm", Dictionary(Fields=[], NeedAppearances=True)))
fault("A 6.4.1")(lambda p: annotation(p, Subtype=Name("/Widget"), AA=Dictionary()))
fault("A 6.4.2")(lambda p: p.Root.__setitem__("/AcroForm", Dictionary(Fields=[], XFA=String(""))))


def action(pdf, **keys):
    first_link(pdf).A = Dictionary(Type=Name("/Action"), **keys)


fault("A 6.5.1")(lambda p: action(p, S=Name("/Launch"), F=String("a")))
fault("A 6.5.1")(lambda p: action(p, S=Name("/JavaScript"), JS=String("1")))
fault("A 6.5.1")(lambda p: action(p, S=Name("/Named"), N=Name("/Print")))
fault("A 6.5.2")(lambda p: p.Root.__setitem__("/AA", Dictionary()))
fault("A 6.5.2")(lambda p: p.pages[0].obj.__setitem__("/AA", Dictionary()))
fault("A 6.6.2.1 packet")(lambda p: xmp(p, rb"<\?xpacket begin", b'<?xpacket encoding="UTF-8" begin'))
fault("A 6.6.2.1 packet")(lambda p: xmp(p, rb"<dc:title>", b"\xff<dc:title>"))


@fault("A 6.7.3.4")
def unmapped_type(pdf):
    elements(pdf, "/P")[0].S = Name("/Paragraph")


@fault("A 6.7.4")
def malformed_language(pdf):
    elements(pdf, "/P")[0].Lang = String("en_US")


@fault("A 6.8")
def attachment(pdf):
    pdf.Root.Names = Dictionary(EmbeddedFiles=Dictionary(Names=[]))


fault("A 6.9")(lambda p: p.Root.__setitem__("/OCProperties", Dictionary(OCGs=[], D=Dictionary())))
fault("A 6.10")(lambda p: p.pages[0].obj.__setitem__("/PresSteps", Dictionary()))
fault("A 6.11")(lambda p: p.Root.__setitem__("/Requirements", Array()))


# Clauses 6.1, in objects


fault("A 6.1.8")(lambda p: first_font(p).__setitem__("/BaseFont", Name("/ABCDEF+#ff")))
fault("A 6.1.12")(lambda p: p.Root.__setitem__("/Perms", Dictionary(Other=1)))
fault("A 6.1.13 numbers")(lambda p: p.Root.__setitem__("/Other", 2147483648))
fault("A 6.1.13 strings")(lambda p: p.Root.__setitem__("/Other", String("x" * 32768)))
fault("A 6.1.13 names")(lambda p: p.Root.__setitem__("/Other", Name("/" + "x" * 128)))
fault("A 6.1.13 page")(lambda p: p.pages[0].obj.__setitem__("/MediaBox", Array([0, 0, 612, 14401])))
fault("A 6.1.13 page")(lambda p: p.pages[0].obj.__setitem__("/CropBox", Array([0, 0, 2, 99])))


@fault("A 6.1.7.1 F")
def stream_elsewhere(pdf):
    pdf.Root.Metadata.F = String("other")


# In the file's bytes


raw_fault("A 6.1.2")(lambda b: b.replace(b"%PDF-1.7\n%", b"%PDF-1.7\n% ", 1))
raw_fault("A 6.1.2")(lambda b: b" " + b)
raw_fault("A 6.1.3 ID")(lambda b: b[:b.rindex(b"/ID")] + b[b.rindex(b"/ID"):].replace(b"/ID", b"/IX", 1))
raw_fault("A 6.1.3 EOF")(lambda b: b.rstrip() + b"\n% more\n")
raw_fault("A 6.1.6")(lambda b: b.replace(b"/Supplement 0", b"/Odd <ABC> ", 1))
raw_fault("A 6.1.6")(lambda b: b.replace(b"/Supplement 0", b"/Odd <AX> ", 1))
raw_fault("A 6.1.7.1 Length")(lambda b: re.sub(
    rb"/Length (\d+)", lambda m: b"/Length " + str(int(m[1]) + 1).encode(), b, 1))
raw_fault("A 6.1.9")(lambda b: b.replace(b" 0 obj\n", b" 0  obj", 1))
raw_fault("A 6.1.9")(lambda b: b.replace(b"\nendobj", b" endobj", 1))


raw_fault("A 6.1.4")(lambda b: b.replace(b"\nxref\n", b"\nxref \n", 1))
raw_fault("A 6.1.4")(lambda b: re.sub(rb"startxref\n\d+", b"startxref\n9", b))
raw_fault("A 6.1.7.1 Length")(lambda b: b.replace(b"\nendstream", b" endstream", 1))
raw_fault("A 6.1.13 objects")(lambda b: re.sub(rb"/Size \d+", b"/Size 8388609", b))
packed_fault("A 6.1.2")(lambda b: b.replace(b"%PDF-1.7\n%", b"%PDF-1.7\n% ", 1))
packed_fault("A 6.1.3 EOF")(lambda b: b + b"more")
packed_fault("A 6.1.4")(lambda b: re.sub(rb"startxref\n\d+", b"startxref\n9", b))
packed_fault("A 6.1.9")(lambda b: b.replace(b"\nendobj", b" endobj", 1))


@packed_fault("A 6.1.6")
def odd_digits_in_an_object_stream(good):
    # as many bytes in the string, and in the stream, so that everything else stays where it is
    pdf = pikepdf.open(io.BytesIO(good))
    stream = next(o for o in pdf.objects if o.get("/Type") == "/ObjStm" and b"(Identity)" in o.read_bytes())
    text = stream.read_bytes().replace(b"(Identity)", b"<0000000> ")
    # widths that are all alike make room: they are another fault, and not asked about here
    text = re.sub(rb"/W ?\[[^\]]*", lambda m: re.sub(rb"[1-9]", b"0", m[0]), text)
    packed = zlib.compress(text, 9)
    before = stream.read_raw_bytes()
    assert len(packed) <= len(before)
    return good.replace(before, packed.ljust(len(before), b"\0"), 1)


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
