#!/usr/bin/python3 -B
"""What other programs say of each sample PDF as a file: sound, tagged, with fonts that carry Unicode.

    qpdf --check            no error and no warning (ISO 32000-1 syntax and cross-references)
    pdffonts                every font embedded, subset, and mapped to Unicode
    pdfinfo                 tagged, with a title and an author; not encrypted; no script, no form
    pdfinfo -struct-text    the structure tree, read in order, gives the expected words; its types are
                            standard ones, nested as the PDF Association's guide asks: one Document,
                            headings H1 first and no level skipped, L > LI > Lbl and LBody
    pikepdf                 what the source says of foreign words and abbreviations: Lang and E of
                            their spans (ISO 32000-1, 14.9.2 and 14.9.5)
"""

import re

import pikepdf

import expected_words
from align import Aligner
from common import SamplePdfs, Tally, run
from theme_literals import ThemeLiterals, theme_path

# ISO 32000-1, tables 333 to 338: those that a résumé has a use for
STANDARD_TYPES = {"Document", "Part", "Sect", "Div", "P", "H1", "H2", "H3", "L", "LI", "Lbl", "LBody",
                  "Link", "Span"}
CHILDREN = {  # from the Allowed-children tables of the guide, for these types
    "L": {"LI", "L"},
    "LI": {"Lbl", "LBody"},
    "Document": {"Sect", "Div", "P", "H1", "H2", "H3", "L", "Link"},
    "Sect": {"Sect", "Div", "P", "H1", "H2", "H3", "L", "Link"},
    "P": {"Span", "Link", "Lbl"},
}
BLOCKS = {"Document", "Sect", "Div", "P", "H1", "H2", "H3", "L", "LI", "Lbl", "LBody"}


def check_syntax(tally, name, pdf):
    done = run(["qpdf", "--check", pdf], text=True)
    tally.check(done.returncode == 0 and "WARNING" not in done.stderr + done.stdout,
                f"qpdf --check {name}", (done.stdout + done.stderr).strip().replace("\n", "\n    "))


def check_fonts(tally, name, pdf):
    rows = run(["pdffonts", pdf], text=True).stdout.splitlines()[2:]
    tally.check(rows, f"pdffonts {name}", "no fonts")
    for row in rows:
        emb, sub, uni = row.split()[-5:-2]
        tally.check((emb, sub, uni) == ("yes", "yes", "yes"), f"pdffonts {name}", row)


def information(pdf):
    rows = run(["pdfinfo", pdf], text=True).stdout.splitlines()
    return dict(re.split(r":\s*", row, maxsplit=1) for row in rows if ":" in row)


def check_size(tally, name, pdf):
    """At most 30 KB for a page in the house theme: small enough for any portal's form."""
    pages, size = int(information(pdf)["Pages"]), pdf.stat().st_size
    tally.check(pages > 1 or size <= 30 * 1024, f"size of {name}", f"{size} bytes")


def check_information(tally, name, source, pdf):
    found = information(pdf)
    person = " ".join(w.text for w in expected_words.read(source).words
                      if w.place == name_place(source))
    expected = {"Tagged": "yes", "Encrypted": "no", "JavaScript": "no", "Form": "none",
                "Suspects": "no", "Author": person}
    for key, value in expected.items():
        tally.check(found.get(key) == value, f"pdfinfo {name}",
                    f"{key}: expected '{value}', found '{found.get(key)}'")
    tally.check(person in found.get("Title", ""), f"pdfinfo {name}",
                f"Title '{found.get('Title')}' does not have the name '{person}'")


def name_place(source):
    for line in expected_words.read_lines(source):
        if line and line.label == "name":
            return line.place
    return None


class Node:
    def __init__(self, kind, depth):
        self.kind = kind
        self.depth = depth
        self.children = []  # nodes and strings, in order

    def walk(self):
        yield self
        for child in self.children:
            if isinstance(child, Node):
                yield from child.walk()

    def text(self):
        """Strings joined as they stand inside a block, blocks parted by spaces."""
        out = ""
        for child in self.children:
            if isinstance(child, str):
                out += child
            else:
                inner = child.text()
                out += f" {inner} " if child.kind in BLOCKS else inner
        return out


def structure(pdf):
    """The tree that pdfinfo prints: a type a line or a string in quotes, children indented by two."""
    root = Node("root", -2)
    open_nodes = [root]
    for row in run(["pdfinfo", "-struct-text", "-enc", "UTF-8", pdf], text=True).stdout.split("\n"):
        if not row.strip() or re.match(r"\s*(/|Object \d)", row):
            continue  # attributes of an element, and references to annotations
        depth = len(row) - len(row.lstrip())
        while open_nodes[-1].depth >= depth:
            open_nodes.pop()
        content = row.strip()
        if content.startswith('"'):
            open_nodes[-1].children.append(content[1:].removesuffix('"'))
        else:
            node = Node(re.match(r"\w+", content).group(), depth)
            open_nodes[-1].children.append(node)
            open_nodes.append(node)
    return root


def check_tree(tally, name, root):
    nodes = [node for node in root.walk() if node.kind != "root"]
    kinds = {node.kind for node in nodes}
    tally.check(kinds <= STANDARD_TYPES, f"types of {name}", f"not standard: {kinds - STANDARD_TYPES}")
    tops = [node.kind for node in root.children if isinstance(node, Node)]
    tally.check(tops == ["Document"], f"top of {name}", f"expected one Document, found {tops}")
    for node in nodes:
        allowed = CHILDREN.get(node.kind)
        wrong = {c.kind for c in node.children if isinstance(c, Node)} - (allowed or STANDARD_TYPES)
        if wrong:
            tally.check(False, f"nesting of {name}", f"{node.kind} holds {wrong}")
        if node.kind in ("Document", "Sect", "Div", "L", "LI") and \
                any(isinstance(c, str) and c.strip() for c in node.children):
            tally.check(False, f"nesting of {name}", f"{node.kind} holds text itself")
    check_headings(tally, name, [int(node.kind[1]) for node in nodes if re.fullmatch(r"H\d", node.kind)])


def check_headings(tally, name, levels):
    tally.check(levels[:1] == [1], f"headings of {name}", f"expected H1 first, found {levels[:3]}")
    skips = [(a, b) for a, b in zip(levels, levels[1:]) if b > a + 1]
    tally.check(not skips, f"headings of {name}", f"level skipped: {skips[:3]}")


def stated_glosses(source):
    """(key, value) for each `words (value)` of the settings whose words the résumé has elsewhere."""
    text = re.sub(r"\n[ \t]+", " ", source.read_text(encoding="utf-8"))
    body = re.sub(r"^(foreign|abbreviations):.*$", "", text, flags=re.M)
    for label, value in re.findall(r"^(foreign|abbreviations):(.*)$", text, flags=re.M):
        for words, gloss in re.findall(r"([^;()]+)\(([^)]*)\)", value):
            if re.search(rf"(?<!\w){re.escape(words.strip())}(?!\w)", body):
                yield ("/Lang" if label == "foreign" else "/E"), gloss.strip()


def check_glosses(tally, name, source, pdf):
    stated = set(stated_glosses(source))
    with pikepdf.open(pdf) as document:
        found = {(key, str(each[key])) for each in document.objects
                 if isinstance(each, pikepdf.Dictionary) and each.get("/S") == "/Span"
                 for key in ("/Lang", "/E") if key in each}
    tally.check(found == stated, f"glosses of {name}", f"stated {stated}, found {found}")


def main():
    tally = Tally()
    for name, source, tags, pdf in SamplePdfs(tally):
        check_syntax(tally, name, pdf)
        check_fonts(tally, name, pdf)
        check_size(tally, name, pdf)
        check_information(tally, name, source, pdf)
        check_glosses(tally, name, source, pdf)
        root = structure(pdf)
        check_tree(tally, name, root)
        words = expected_words.read(source, tags).words
        aligned = Aligner(words, ThemeLiterals(theme_path(source))).align(root.text())
        tally.check(aligned.complete, f"structure order of {name}", aligned.fault)
    tally.finish()


if __name__ == "__main__":
    main()
