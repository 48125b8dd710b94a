#!/usr/bin/python3 -B
"""That equal things are equal on the page, within 0.01 pt: every sample in every theme, and in one of
tests/fixtures with headings in the margin and columns of skills.

The positions are read back from the PDF: the content stream's text operators (ISO 32000-1, section
9.4) give each line its place and size, the structure tree says what it is. Of one PDF and one column:

    one size        name, section headings, entry headings, text; each kind has one
    one left edge   section headings; bullet signs and bullet texts, each level for itself
    one distance    from baseline to baseline, for each pair of kinds that follow each other: what
                    stands under a section's heading, what a section's heading stands under, line and
                    line of one paragraph; and of all that follow each other in an entry, one
    the bounds      no text under 10 pt, running text of 10 to 12 pt, margins of 0.5 to 1 inch

and the places of all lines are compared with those in tests/goldens, so that no change to how a page
looks goes unseen. `check_positions.py --renew` writes the goldens anew.
"""

import pathlib
import sys
import tempfile
from dataclasses import dataclass

import pikepdf

from common import MARGIN, QUOIN, ROOT, SAMPLES, THEMES, Tally, quoin_set, require_quoin, run
from theme_literals import ThemeLiterals

GOLDENS = ROOT / "tests" / "goldens"
SAME = 0.0101  # pt: places are written to a hundredth
LEVELS = {"/H1": "name", "/H2": "section", "/H3": "title"}


@dataclass
class Line:
    """The first glyph of a line of one structure element."""
    page: int
    kind: str  # name, section, title, text, sign N, bullet N (its level), number, numbered
    element: tuple
    x: float
    y: float
    size: float
    is_first: bool = True  # of its paragraph


class Structure:
    """From marked content to the block it belongs to."""

    def __init__(self, pdf):
        numbers = pdf.Root.StructTreeRoot.ParentTree
        self.parents = dict(self.pairs(numbers))

    @classmethod
    def pairs(cls, node):
        for kid in node.get("/Kids", []):
            yield from cls.pairs(kid)
        flat = list(node.get("/Nums", []))
        yield from zip(map(int, flat[::2]), flat[1::2])

    def block(self, page, mcid):
        """(kind, id) of the paragraph, heading or sign that the content is part of."""
        element = self.parents[int(page.StructParents)][mcid]
        while element.S not in ("/P", "/Lbl", *LEVELS):
            element = element.P
        if element.S in LEVELS:
            return LEVELS[str(element.S)], element.objgen
        level, above = 0, element
        while above.S != "/Document":
            if above.S == "/L" and above.A.ListNumbering == "/Decimal":  # an entry with its number
                return ("number" if element.S == "/Lbl" else "numbered"), element.objgen
            level += above.S == "/L"
            above = above.P
        if element.S == "/Lbl":
            return f"sign {level}", element.objgen
        return (f"bullet {level}" if level else "text"), element.objgen


def lines_of(pdf):
    """Every line, in the order of the content."""
    structure = Structure(pdf)
    for number, page in enumerate(pdf.pages, 1):
        marked, size, at, shown = [], 0.0, (0.0, 0.0), None
        for operands, operator in pikepdf.parse_content_stream(page):
            match str(operator):
                case "BDC":
                    properties = operands[1]
                    marked.append(properties.get("/MCID") if isinstance(properties, pikepdf.Dictionary) else None)
                case "BMC":
                    marked.append(None)
                case "EMC":
                    marked.pop()
                case "BT":
                    at = (0.0, 0.0)
                case "Tf":
                    size = float(operands[1])
                case "Td":
                    at = (at[0] + float(operands[0]), at[1] + float(operands[1]))
                case "TJ" | "Tj":
                    mcid = next((m for m in reversed(marked) if m is not None), None)
                    if mcid is None:
                        continue  # a running head
                    kind, element = structure.block(page, int(mcid))
                    here = (number, element, round(at[1], 2))
                    if here != shown:
                        yield Line(number, kind, element, *at, size)
                    shown = here


def with_firsts(lines):
    """Marks the lines that go on a paragraph."""
    seen = set()
    for line in lines:
        line.is_first = line.element not in seen
        seen.add(line.element)
    return lines


def columns(lines):
    """The lines of each column of each page: the heading's, the main column's, the narrow one's."""
    column = []
    for line in lines:
        if column and (line.page != column[-1].page or line.y > column[-1].y + 1):
            yield column
            column = []
        column.append(line)
    if column:
        yield column


def spread(values):
    return max(values) - min(values) if values else 0.0


def check_one(tally, case, what, found):
    """found: {kind: values}, each kind of which is to have one value."""
    for kind, values in sorted(found.items()):
        tally.check(spread(values) <= SAME, f"{case}: {what} of {kind}",
                    f"from {min(values):.3f} to {max(values):.3f} pt")


def group(pairs):
    found = {}
    for key, value in pairs:
        found.setdefault(key, []).append(value)
    return found


def left_edges(lines):
    """A bullet's lines stand at one edge; a quotation mark may hang out of a first line of text."""
    for column in columns(lines):
        first = min(line.x for line in column if line.kind == "section") if any(
            line.kind == "section" for line in column) else None
        if first is None:
            continue
        for line in column:
            if line.kind == "section" or line.kind.startswith("sign"):
                yield line.kind, line.x - first


def feet(lines):
    """Of each line, the lowest that comes before it on its page, or None: what stands side by side may
    end higher than what it stands beside."""
    lowest = None
    for line in lines:
        if lowest and lowest.page != line.page:
            lowest = None
        yield lowest
        if not lowest or line.y < lowest.y:
            lowest = line


def distances(lines, beside):
    """From each baseline to the next, by the pair of kinds, where one distance is meant."""
    foot = dict(zip(map(id, lines), feet(lines)))
    for column in columns(lines):
        rows = [line for line in column if not line.kind.startswith(("sign", "number "))]
        for above, line in zip(rows, rows[1:]):
            if beside and line.kind == "section" and line.is_first:
                above = foot[id(line)]
            down = above.y - line.y
            if down < SAME:
                continue  # the same line
            if not line.is_first:
                yield f"line after line of {line.kind}", down
            elif line.kind == "section" and above.kind != "name":
                yield "section after anything", down
            elif above.kind == "section":
                yield "anything after a section", down
            elif above.kind == "title" or line.kind.startswith("bullet"):
                yield "line after line of an entry", down


def check_bounds(tally, case, pdf, lines):
    text = [line.size for line in lines if line.kind.startswith(("title", "bullet"))]
    tally.check(min(line.size for line in lines) >= 10 - SAME, f"{case}: no text under 10 pt")
    tally.check(max(text, default=10) <= 12 + SAME, f"{case}: running text of 12 pt at most")
    _, height = [float(value) for value in pdf.pages[0].MediaBox][2:]
    tally.check(min(line.x for line in lines) >= 36 - SAME, f"{case}: half an inch at the left")
    tally.check(min(line.y for line in lines) >= 36 - SAME, f"{case}: half an inch at the foot")
    tally.check(max(line.y for line in lines) <= height - 36 + SAME, f"{case}: half an inch at the head")
    tally.check(min(line.x for line in lines) <= 72 + SAME, f"{case}: an inch at the left at most")


def positions(lines):
    return "".join(f"{line.page} {line.kind:8} {line.x:7.2f} {line.y:7.2f} {line.size:5.2f}\n"
                   for line in lines)


def check_golden(tally, case, name, text, renew):
    golden = GOLDENS / f"{name}.txt"
    if renew:
        golden.parent.mkdir(parents=True, exist_ok=True)
        golden.write_text(text, encoding="utf-8")
    expected = golden.read_text(encoding="utf-8") if golden.exists() else ""
    differing = [f"{a!r} was {b!r}" for a, b in zip(text.splitlines(), expected.splitlines()) if a != b]
    tally.check(text == expected, f"{case}: as in {golden.relative_to(ROOT)}",
                differing[0] if differing else "a different number of lines")


def check_pdf(tally, case, name, path, beside, renew):
    with pikepdf.open(path) as pdf:
        lines = with_firsts(list(lines_of(pdf)))
        sizes = group((line.kind, line.size) for line in lines if line.kind in ("section", "title")
                      or line.kind.startswith(("sign", "bullet")))
        check_one(tally, case, "the size", sizes)
        check_one(tally, case, "the left edge", group(left_edges(lines)))
        check_one(tally, case, "the distance", group(distances(lines, beside)))
        check_bounds(tally, case, pdf, lines)
        check_golden(tally, case, name, positions(lines), renew)


def preferred_size(theme):
    """The text's size that a theme's own settings prefer."""
    sizes = (value for label, value in ThemeLiterals.lines(THEMES / f"{theme}.theme") if label == "size")
    return float(next(sizes).split("(")[0])


def check_specimen(tally, theme, path):
    """A specimen shows a theme as it likes itself best."""
    done = run([QUOIN, "themes", "--specimen", theme, "-o", path], text=True)
    if not tally.check(done.returncode == 0, f"specimen of {theme}", done.stderr.strip()):
        return
    with pikepdf.open(path) as pdf:
        found = {round(line.size, 2) for line in lines_of(pdf) if line.kind == "bullet 1"}
    tally.check(found == {preferred_size(theme)}, f"specimen of {theme}: at the preferred size",
                f"{found} pt")


def main():
    require_quoin()
    renew = "--renew" in sys.argv[1:]
    tally = Tally()
    sources = [*sorted(SAMPLES.glob("*.resume")), THEMES / "specimen.resume"]
    with tempfile.TemporaryDirectory(prefix="positions-") as folder:
        for theme in [*sorted(THEMES.glob("*.theme")), MARGIN]:
            if theme != MARGIN:
                check_specimen(tally, theme.stem, pathlib.Path(folder) / "specimen.pdf")
            beside = ThemeLiterals(theme).beside
            for source in sources:
                case = f"{source.stem} in {theme.stem}"
                pdf = pathlib.Path(folder) / "page.pdf"
                done = quoin_set(source, pdf, options=("--theme", theme), text=True)
                if tally.check(done.returncode == 0, f"set {case}", done.stderr.strip()):
                    check_pdf(tally, case, f"{theme.stem}/{source.stem}", pdf, beside, renew)
    tally.finish()


if __name__ == "__main__":
    main()
