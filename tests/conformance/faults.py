"""Faults to put into a PDF that passes: the registry, and ways to change a PDF."""

import io
import re

import pikepdf
from pikepdf import Array, Dictionary

FAULTS = {}  # condition to a list of functions
RAW_FAULTS = {}
PACKED_FAULTS = {}


def fault(*numbers):
    def register(change):
        for number in numbers:
            FAULTS.setdefault(number, []).append(change)
        return change
    return register


def raw_fault(number):
    """In the bytes of the file with a cross-reference table, every object in the open."""
    def register(change):
        RAW_FAULTS.setdefault(number, []).append(change)
        return change
    return register


def packed_fault(number):
    """In the bytes of the file as it was given, with object streams."""
    def register(change):
        PACKED_FAULTS.setdefault(number, []).append(change)
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


def first_code(pdf, code):
    """Two bytes, neither of them one to be escaped, in place of the first two that are shown."""
    shown = rb"\[\((?:\\.|[^\\]){2}"
    content(pdf, lambda c: re.sub(shown, lambda _: b"[(" + code, c, count=1, flags=re.S))


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
