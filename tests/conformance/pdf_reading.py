"""A PDF as the conformance checker needs it: its raw syntax, structure, shown text, fonts, XMP."""

import io
import logging
import re
import xml.etree.ElementTree as xml
from dataclasses import dataclass, field

import pikepdf
from fontTools.cffLib import CFFFontSet
from fontTools.pens.basePen import NullPen
from fontTools.ttLib import TTFont

logging.getLogger("fontTools").setLevel(logging.ERROR)  # else it remarks on a font's date

RDF = "{http://www.w3.org/1999/02/22-rdf-syntax-ns#}"
XML = "{http://www.w3.org/XML/1998/namespace}"
PAINTING = {"f", "F", "f*", "B", "B*", "b", "b*", "S", "s", "sh", "Do", "INLINE IMAGE"}
SHOWING = {"Tj", "TJ", "'", '"'}


@dataclass
class Event:
    """Something a content stream puts on the page."""
    page: int
    operator: str
    mcid: int | None
    artifact: bool
    actual_text: bool
    font: pikepdf.Object | None = None
    codes: list = field(default_factory=list)


@dataclass
class Element:
    """A structure element; `children` are Elements, content as (page, mcid), annotations."""
    object: pikepdf.Object
    type: str
    parent: "Element | None"
    children: list = field(default_factory=list)


@dataclass
class Annotation:
    object: pikepdf.Object


@dataclass
class PageFaults:
    """What is wrong with the nesting of a page's content."""
    artifact_in_tagged: bool = False
    tagged_in_artifact: bool = False
    deepest_q: int = 0
    colours: set = field(default_factory=set)
    fonts: set = field(default_factory=set)
    operators: set = field(default_factory=set)


def same(a, b):
    return a is not None and b is not None and a.objgen == b.objgen and a.objgen != (0, 0)


class Sfnt:
    """A font program of TrueType or OpenType."""

    def __init__(self, data):
        self._font = TTFont(io.BytesIO(data))
        self._count = self._font["maxp"].numGlyphs
        self._scale = 1000 / self._font["head"].unitsPerEm

    def has(self, code):
        return code < self._count

    def codes(self):
        return list(range(self._count))

    def widths(self, glyph):
        """In 1/1000 em, by each table that has them."""
        found = [self._font["hmtx"][self._font.getGlyphName(glyph)][0] * self._scale]
        if "CFF " in self._font:
            cff = self._font["CFF "].cff
            found.append(cff_width(cff, cff.topDictIndex[0].charset[glyph]) * self._scale)
        return found


class BareCff:
    """A font program of CFF alone: glyphs are shown by their place in it or, if it is keyed by CID, by
    their CID (ISO 32000-1, 9.7.4.2)."""

    def __init__(self, data):
        self._set = CFFFontSet()
        self._set.decompile(io.BytesIO(data), None)
        top = self._set.topDictIndex[0]
        names = top.charset
        self._names = {int(name[3:]) if name.startswith("cid") else 0: name for name in names} if hasattr(
            top, "ROS") else dict(enumerate(names))
        self._scale = 1000 * top.FontMatrix[0]

    def has(self, code):
        return code in self._names

    def codes(self):
        return sorted(self._names)

    def widths(self, code):
        return [cff_width(self._set, self._names[code]) * self._scale]


def cff_width(cff, name):
    drawing = cff.topDictIndex[0].CharStrings[name]
    drawing.draw(NullPen())
    return drawing.width


class Font:
    """A Type 0 font with a two-byte identity encoding."""

    def __init__(self, dictionary):
        self.dictionary = dictionary
        self.cid_font = dictionary.DescendantFonts[0]
        descriptor = self.cid_font.get("/FontDescriptor", {})
        self.program_object = next((descriptor[key] for key in
                                    ("/FontFile2", "/FontFile3", "/FontFile") if key in descriptor), None)
        self.program = self._open()
        self.widths = self._widths()
        self.unicode = self._to_unicode()

    def _open(self):
        if self.program_object is None:
            return None
        try:
            data = self.program_object.read_bytes()
            return BareCff(data) if self.program_object.get("/Subtype") == "/CIDFontType0C" else Sfnt(data)
        except Exception:
            return None

    def _widths(self):
        widths, entries, i = {}, list(self.cid_font.get("/W", [])), 0
        while i < len(entries):
            first = int(entries[i])
            if isinstance(entries[i + 1], pikepdf.Array):
                widths.update({first + k: float(w) for k, w in enumerate(entries[i + 1])})
                i += 2
            else:
                widths.update({c: float(entries[i + 2]) for c in range(first, int(entries[i + 1]) + 1)})
                i += 3
        return widths

    def _to_unicode(self):
        if "/ToUnicode" not in self.dictionary:
            return None
        text = self.dictionary.ToUnicode.read_bytes().decode("latin-1")
        decode = lambda digits: bytes.fromhex(digits).decode("utf-16-be", "replace")
        found = {}
        for block in re.findall(r"beginbfchar(.*?)endbfchar", text, re.S):
            for code, units in re.findall(r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]*)>", block):
                found[int(code, 16)] = decode(units)
        for block in re.findall(r"beginbfrange(.*?)endbfrange", text, re.S):
            for low, high, units in re.findall(r"<(\w+)>\s*<(\w+)>\s*<(\w+)>", block):
                for code in range(int(low, 16), int(high, 16) + 1):
                    start = decode(units)
                    found[code] = start[:-1] + chr(ord(start[-1]) + code - int(low, 16))
        return found


class Document:
    def __init__(self, raw):
        self.raw = raw
        self.pdf = pikepdf.open(io.BytesIO(raw), inherit_page_attributes=False)
        self.root = self.pdf.Root
        self.pages_without_resources = self._without_resources(self.root.Pages)
        self.events, self.page_faults = [], []
        self._fonts = {}
        for number, page in enumerate(self.pdf.pages):
            self._read_content(number, page.obj)
        self.elements = []
        self.top = []
        if "/StructTreeRoot" in self.root:
            for kid in self._kids(self.root.StructTreeRoot):
                self.top.append(self._read_element(kid, None))

    def _without_resources(self, node):
        if "/Kids" in node:
            return sum(self._without_resources(kid) for kid in node.Kids)
        return 0 if "/Resources" in node else 1

    def font(self, dictionary):
        key = dictionary.objgen
        if key not in self._fonts:
            self._fonts[key] = Font(dictionary)
        return self._fonts[key]

    def text_events(self):
        return [event for event in self.events if event.font is not None]

    def fonts(self):
        return {event.font.objgen: self.font(event.font) for event in self.text_events()}.values()

    def shown(self):
        """Every shown code, with its font and event."""
        for event in self.text_events():
            for code in event.codes:
                yield self.font(event.font), code, event

    def dictionaries(self):
        """Every dictionary, streams' ones and those inside others too."""
        def walk(value):
            if isinstance(value, (pikepdf.Dictionary, pikepdf.Stream)):
                yield value
                inner = [value[key] for key in value.keys()]
            else:
                inner = list(value) if isinstance(value, pikepdf.Array) else []
            for one in inner:
                if isinstance(one, pikepdf.Object) and not one.is_indirect:
                    yield from walk(one)
        for top in self.pdf.objects:
            yield from walk(top)

    def annotations(self):
        for page in self.pdf.pages:
            for annotation in page.obj.get("/Annots", []):
                yield page.obj, annotation

    def outlines(self):
        def walk(item):
            while item is not None:
                yield item
                yield from walk(item.get("/First"))
                item = item.get("/Next")
        yield from walk(self.root.get("/Outlines", {}).get("/First"))

    def page_number(self, page):
        return next((n for n, p in enumerate(self.pdf.pages) if same(p.obj, page)), None)

    def xmp(self):
        if "/Metadata" not in self.root:
            return None
        try:
            return xml.fromstring(self.root.Metadata.read_bytes())
        except xml.ParseError:
            return None

    def xmp_properties(self):
        """(namespace, name) to element or attribute text."""
        tree, found = self.xmp(), {}
        if tree is None:
            return found
        for description in tree.iterfind(f".//{RDF}RDF/{RDF}Description"):
            for key, value in description.attrib.items():
                if not key.startswith(RDF):
                    found[tuple(key[1:].split("}"))] = value
            for child in description:
                found[tuple(child.tag[1:].split("}"))] = child
        return found

    # Structure

    @staticmethod
    def _kids(dictionary):
        kids = dictionary.get("/K")
        if kids is None:
            return []
        return list(kids) if isinstance(kids, pikepdf.Array) else [kids]

    def _read_element(self, dictionary, parent):
        element = Element(dictionary, str(dictionary.get("/S", ""))[1:], parent)
        self.elements.append(element)
        for kid in self._kids(dictionary):
            if isinstance(kid, int):
                element.children.append((self.page_number(dictionary.get("/Pg")), kid))
            elif kid.get("/Type") == "/MCR":
                page = kid.get("/Pg", dictionary.get("/Pg"))
                element.children.append((self.page_number(page), int(kid.MCID)))
            elif kid.get("/Type") == "/OBJR":
                element.children.append(Annotation(kid.Obj))
            else:
                element.children.append(self._read_element(kid, element))
        return element

    def parent_tree(self):
        found = {}

        def walk(node):
            numbers = list(node.get("/Nums", []))
            found.update({int(k): v for k, v in zip(numbers[::2], numbers[1::2])})
            for kid in node.get("/Kids", []):
                walk(kid)
        if "/StructTreeRoot" in self.root and "/ParentTree" in self.root.StructTreeRoot:
            walk(self.root.StructTreeRoot.ParentTree)
        return found

    # Content

    def _read_content(self, number, page):
        faults, stack, depth, font = PageFaults(), [], 0, None
        self.page_faults.append(faults)
        resources = page.get("/Resources", {})
        for instruction in pikepdf.parse_content_stream(page):
            operands = instruction.operands
            operator = str(instruction.operator)
            faults.operators.add(operator)
            if operator in ("BMC", "BDC"):
                mark = self._mark(operands, resources)
                if mark["artifact"] and any(m["mcid"] is not None for m in stack):
                    faults.artifact_in_tagged = True
                if mark["mcid"] is not None and any(m["artifact"] for m in stack):
                    faults.tagged_in_artifact = True
                stack.append(mark)
            elif operator == "EMC":
                stack.pop()
            elif operator in ("q", "Q"):
                depth += 1 if operator == "q" else -1
                faults.deepest_q = max(faults.deepest_q, depth)
            elif operator in ("g", "G", "rg", "RG", "k", "K"):
                faults.colours.add({"g": "Gray", "rg": "RGB", "k": "CMYK"}[operator.lower()])
            elif operator == "Tf":
                faults.fonts.add(str(operands[0]))
                font = resources.get("/Font", {}).get(str(operands[0]))
            elif operator in SHOWING | PAINTING:
                mcids = [m["mcid"] for m in stack if m["mcid"] is not None]
                event = Event(number, operator, mcids[-1] if mcids else None,
                              any(m["artifact"] for m in stack), any(m["actual"] for m in stack))
                if operator in SHOWING:
                    event.font, event.codes = font, self._codes(operands[-1])
                self.events.append(event)

    @staticmethod
    def _mark(operands, resources):
        properties = operands[1] if len(operands) > 1 else {}
        if isinstance(properties, pikepdf.Name):
            properties = resources.get("/Properties", {}).get(str(properties), {})
        mcid = properties.get("/MCID")
        return {"mcid": None if mcid is None else int(mcid), "artifact": operands[0] == "/Artifact",
                "actual": "/ActualText" in properties}

    @staticmethod
    def _codes(shown):
        strings = [s for s in shown if isinstance(s, pikepdf.String)] \
            if isinstance(shown, pikepdf.Array) else [shown]
        data = b"".join(bytes(s) for s in strings)
        return [data[i] << 8 | data[i + 1] for i in range(0, len(data) - 1, 2)]


TOKEN = re.compile(rb"%[^\r\n]*|<<|>>|<[^<>]*>|\(|/[^\s()<>\[\]{}/%]*|[\[\]{}]|[^\s()<>\[\]{}/%]+|>")


def tokens(data, position=0, end=None):
    """(offset, token) of PDF syntax; a literal string comes as its whole bytes."""
    end = len(data) if end is None else end
    while match := TOKEN.search(data, position, end):
        start, position = match.start(), match.end()
        if match.group() == b"(":
            depth, position = 1, start + 1
            while depth and position < end:
                depth += {0x28: 1, 0x29: -1}.get(data[position], 0)
                position += 2 if data[position] == 0x5C else 1
        jump = yield start, data[start:position]
        if jump is not None:
            position = jump


def contents(page):
    """The content streams of a page."""
    streams = page.get("/Contents", [])
    streams = streams if isinstance(streams, pikepdf.Array) else [streams]
    return [stream.read_bytes() for stream in streams]


def object_streams(document):
    """The syntax of the objects in each object stream, unpacked."""
    found = []
    head = rb"(\d+) (\d+) obj\s*<<(?:(?!endobj).){0,200}?/Type\s*/ObjStm"
    for match in re.finditer(head, document.raw, re.S):
        stream = document.pdf.get_object(int(match[1]), int(match[2]))
        found.append(stream.read_bytes()[int(stream.First):])
    return found


@dataclass
class RawObject:
    number: int
    start: int               # of the object's number
    after_obj: int           # just after the keyword
    before_endobj: int       # of the keyword
    after_endobj: int = 0
    hex_strings: list = field(default_factory=list)
    stream_length: int | None = None  # as stated; None where there is no stream
    length_is_exact: bool = True


def raw_objects(document):
    """The file's indirect objects as they are written, streams skipped by their stated lengths."""
    data, found, current, recent = document.raw, [], None, []
    scan = tokens(data)
    item = next(scan, None)
    while item is not None:
        offset, token = item
        jump = None
        if token == b"obj" and len(recent) >= 2:
            current = RawObject(int(recent[-2][1]), recent[-2][0], offset + 3, 0)
        elif token == b"endobj" and current:
            current.before_endobj, current.after_endobj = offset, offset + 6
            found.append(current)
            current = None
        elif token == b"stream" and current:
            begin = offset + 6 + (2 if data[offset + 6:offset + 8] == b"\r\n" else 1)
            stated = stated_length(recent, document)
            current.stream_length = stated
            after = data[begin + stated:begin + stated + 11]
            current.length_is_exact = re.match(rb"\r?\nendstream", after) is not None
            jump = begin + stated if current.length_is_exact else data.find(b"endstream", begin)
        elif token.startswith(b"<") and token != b"<<" and current:
            current.hex_strings.append(token[1:-1])
        recent = (recent + [(offset, token)])[-400:]
        try:
            item = scan.send(jump) if jump is not None else next(scan, None)
        except StopIteration:
            item = None
    return found


def stated_length(recent, document):
    words = [token for _, token in recent]
    at = len(words) - 1 - words[::-1].index(b"/Length")
    if words[at + 3:at + 4] == [b"R"]:
        return int(document.pdf.get_object(int(words[at + 1]), 0))
    return int(words[at + 1])
