"""PDF/A-2a: clauses 6.1 of ISO 19005-2:2011, on the file's syntax and its implementation limits."""

import re
from decimal import Decimal

import pikepdf

from pdf_reading import contents, object_streams, raw_objects, tokens
from pdf_ua_conditions import condition

MOST_INTEGER = 2147483647
MOST_REAL = 3.403e38
LONGEST_STRING = 32767
LONGEST_NAME = 127
MOST_OBJECTS = 8388607
DEEPEST_Q = 28
LEAST_SIDE, MOST_SIDE = 3, 14400
BOXES = ("/MediaBox", "/CropBox", "/BleedBox", "/TrimBox", "/ArtBox")
# ISO 32000-1, table 6, without LZWDecode and Crypt
FILTERS = {"/ASCIIHexDecode", "/ASCII85Decode", "/RunLengthDecode", "/FlateDecode", "/CCITTFaxDecode",
           "/JBIG2Decode", "/DCTDecode", "/JPXDecode"}


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


def cross_references(d):
    """What startxref points to, as bytes."""
    found = re.findall(rb"startxref\s+(\d+)\s+%%EOF", d.raw)
    return d.raw[int(found[-1]):] if found else b""


@condition("A 6.1.4", "startxref leads to no cross-reference table or stream as it should be written")
def _(d):
    section = cross_references(d)
    if section.startswith(b"xref"):
        return re.match(rb"xref(\r\n|\r|\n)\d+ \d+ ?(\r\n|\r|\n)(\d{10} \d{5} [nf]( \r| \n|\r\n))", section) \
            is None
    return re.match(rb"\d+ \d+ obj\s*<<.{0,400}?/Type\s*/XRef", section, re.S) is None


@condition("A 6.1.6", "a hexadecimal string has an odd count of digits, or another character")
def _(d):
    strings = [s for o in raw_objects(d) for s in o.hex_strings]
    texts = [data for page in d.pdf.pages for data in contents(page.obj)] + object_streams(d)
    strings += [token[1:-1] for text in texts for _, token in tokens(text)
                if token.startswith(b"<") and token != b"<<"]
    return [s[:20] for s in strings
            if re.fullmatch(rb"([0-9A-Fa-f]{2})*", re.sub(rb"\s", b"", s)) is None]


@condition("A 6.1.7.1 Length", "a stream's Length is not the count of its bytes, or its keywords are not"
           " set off")
def _(d):
    return [o.number for o in raw_objects(d) if not o.length_is_exact]


@condition("A 6.1.7.1 F", "a stream's data lie in another file")
def _(d):
    return [o.objgen[0] for o in d.pdf.objects if isinstance(o, pikepdf.Stream)
            and {"/F", "/FFilter", "/FDecodeParms"} & set(o.keys())]


def filters(stream):
    stated = stream.get("/Filter", pikepdf.Array())
    return [str(f) for f in stated] if isinstance(stated, pikepdf.Array) else [str(stated)]


@condition("A 6.1.7.2", "a stream is compressed by LZW, or by no filter of ISO 32000-1, table 6")
def _(d):
    return [f"{o.objgen[0]} {f}" for o in d.pdf.objects if isinstance(o, pikepdf.Stream)
            for f in filters(o) if f not in FILTERS]


def walk(value, seen=None):
    """Every value in an object, itself first; indirect objects inside are left to their own turn."""
    yield value
    if isinstance(value, pikepdf.Array):
        inner = list(value)
    elif isinstance(value, (pikepdf.Dictionary, pikepdf.Stream)):
        inner = [value[key] for key in value.keys()]
    else:
        return
    for one in inner:
        if not (isinstance(one, pikepdf.Object) and one.is_indirect):
            yield from walk(one)


def name_bytes(name):
    written = name.unparse()[1:]  # with # for what is no printing ASCII character
    return re.sub(rb"#([0-9A-Fa-f]{2})", lambda m: bytes([int(m[1], 16)]), written)


def names(d):
    for top in d.pdf.objects:
        for value in walk(top):
            if isinstance(value, pikepdf.Name):
                yield name_bytes(value)
            elif isinstance(value, (pikepdf.Dictionary, pikepdf.Stream)):
                yield from (key[1:].encode() for key in value.keys())


@condition("A 6.1.8", "a name that people see is not UTF-8")
def _(d):
    # fonts' names and structure types
    seen = [o.get("/BaseFont") for o in d.pdf.objects
            if isinstance(o, pikepdf.Dictionary) and o.get("/Type") == "/Font"]
    seen += [element.object.get("/S") for element in d.elements]
    wrong = []
    for name in (name_bytes(name) for name in seen if name is not None):
        try:
            name.decode("utf-8")
        except UnicodeDecodeError:
            wrong.append(name)
    return wrong


@condition("A 6.1.9", "obj or endobj is not set off as it should be")
def _(d):
    eol = b"\r\n"
    return [o.number for o in raw_objects(d)
            if re.match(rb"\d+ \d+ obj$", d.raw[o.start:o.after_obj]) is None
            or d.raw[o.start - 1] not in eol or d.raw[o.after_obj] not in eol
            or d.raw[o.before_endobj - 1] not in eol or d.raw[o.after_endobj] not in eol]


@condition("A 6.1.12", "the permissions dictionary has other keys than UR3 and DocMDP")
def _(d):
    return sorted(set(d.root.get("/Perms", {}).keys()) - {"/UR3", "/DocMDP"})


def numbers(d):
    for top in d.pdf.objects:
        for value in walk(top):
            if isinstance(value, (int, float, Decimal)) and not isinstance(value, bool):
                yield value


@condition("A 6.1.13 numbers", "a number is out of range")
def _(d):
    return [n for n in numbers(d)
            if abs(n) > (MOST_INTEGER + (n < 0) if isinstance(n, int) else MOST_REAL)]


@condition("A 6.1.13 strings", "a string is longer than 32767 bytes")
def _(d):
    return [len(bytes(v)) for top in d.pdf.objects for v in walk(top)
            if isinstance(v, pikepdf.String) and len(bytes(v)) > LONGEST_STRING]


@condition("A 6.1.13 names", "a name is longer than 127 bytes")
def _(d):
    return [n for n in names(d) if len(n) > LONGEST_NAME]


@condition("A 6.1.13 objects", "there are more than 8388607 indirect objects")
def _(d):
    return int(d.pdf.trailer.get("/Size", 0)) > MOST_OBJECTS + 1


@condition("A 6.1.13 q", "q is nested more than 28 deep")
def _(d):
    return any(page.deepest_q > DEEPEST_Q for page in d.page_faults)


@condition("A 6.1.13 page", "a side of a page is less than 3 units or more than 14400")
def _(d):
    wrong = []
    for number, page in enumerate(d.pdf.pages):
        for key in BOXES:
            box = [float(v) for v in page.obj.get(key, [])]
            sides = [abs(box[2] - box[0]), abs(box[3] - box[1])] if len(box) == 4 else []
            if (box or key == "/MediaBox") and (not sides or not
                                                all(LEAST_SIDE <= s <= MOST_SIDE for s in sides)):
                wrong.append(f"page {number + 1} {key} {box}")
    return wrong
