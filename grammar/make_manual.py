#!/usr/bin/env python3
"""Makes the manual's pages: make_manual.py QUOIN DAY FOLDER

QUOIN is the program, whose table of verbs and options is asked of it, DAY the day that the pages bear. A
page for the program, one for each verb and one for each language go below FOLDER, in man1 and man5, in
the macros of man(7) and the order of man-pages(7): the options of the table, the chapters of this
folder's references, and what manual.md says beside them.
"""
import json
import pathlib
import re
import subprocess
import sys
import textwrap

from make_text import blocks, cells_of, words

HERE = pathlib.Path(__file__).resolve().parent
LANGUAGES = {"resume": ("language.md", "A whole résumé"), "theme": ("themes.md", None), "office": ("office.md", None)}
SIGNS = {"\\": r"\e", "-": r"\-", "'": r"\(aq", "`": r"\(ga", "^": r"\(ha", "~": r"\(ti"}


def typed(text):
    """Text whose signs are to be typed as they are shown."""
    return "".join(SIGNS.get(sign, sign if sign.isascii() else rf"\[u{ord(sign):04X}]") for sign in text)


def bold(text):
    return rf"\fB{typed(text)}\fP"


def italic(text):
    return rf"\fI{typed(text)}\fP"


def prose(text):
    """Markdown within a paragraph: code is bold, for it is to be typed; links are their words."""
    out = []
    for piece in re.split(r"(``? ?.+? ?``?(?!`))", text):
        if piece.startswith("`"):
            out.append(bold(piece.strip("`").strip()))
            continue
        parts = re.split(r"\*([^*]+)\*", words(piece))
        for i, part in enumerate(parts):
            signs = typed(part).replace(r"\-", "-").replace(r"\(aq", "'")
            out.append(rf"\fI{signs}\fP" if i % 2 else signs)
    return "".join(out)


def filled(text):
    """A paragraph's lines; none begins as a request would."""
    lines = textwrap.wrap(text, 76, break_long_words=False, break_on_hyphens=False)
    return [r"\&" + line if line[0] in ".'" else line for line in lines]


def example(lines):
    return [".PP", ".in +4n", ".EX", *(r"\&" * line.startswith((".", "'")) + typed(line) for line in lines), ".EE", ".in"]


def entry(head, text):
    return [".TP", head, *filled(text)]


def quoted(text):
    return '"' + text.replace('"', r"\(dq") + '"'


# --- Markdown

def table(lines):
    names, *rows = [cells_of(row) for row in [lines[0], *lines[2:]]]
    for first, second, *rest in rows:
        yield from entry(prose(first) or r"\&", prose(second or "-"))
        for name, cell in zip(names[2:], rest):
            if cell:
                yield from [".br", *filled(f"{name}: {prose(cell)}")]


def paragraph(text):
    listed = re.match(r"(-|\d+\.) +(.*)", text)
    if not listed:
        return [".PP", *filled(prose(text))]
    sign = r"\(bu" if listed[1] == "-" else listed[1]
    return [f".IP {sign} 3", *filled(prose(listed[2]))]


def chapters(page):
    """(heading, roff) of each chapter of a reference; the first is what stands above all headings."""
    title, lines = "", []
    for kind, block in blocks(page):
        text = " ".join(line.strip() for line in block)
        if kind == "heading" and not text.startswith("###"):
            yield title, lines
            title, lines = text.lstrip("# "), []
        elif kind == "heading":
            lines += [".PP", bold(text.lstrip("# "))]
        elif kind == "example":
            lines += example(block)
        elif kind == "table":
            lines += table(block)
        elif kind != "blank" and not ("](#" in text and text.count("](#") > text.count(". ")):
            lines += paragraph(text)
    yield title, lines


# --- the manual

class Manual:
    def __init__(self, table, day, folder):
        self.table, self.day, self.folder = table, day, folder
        self.verbs = {verb["name"]: verb for verb in table["verbs"]}
        own = (HERE / "manual.md").read_text(encoding="utf-8")
        self.rows = {name: [cells_of(line) for line in re.findall(r"^\|.*", text, re.M)[2:]]
                     for name, text in re.findall(r"^## (\w+)\n(.*?)(?=^## |\Z)", own, re.M | re.S)}
        self.about = re.search(r"^## Description\n(.*?)^## ", own, re.M | re.S)[1].strip().split("\n\n")

    def all_pages(self):
        yield "quoin", 1, self.program()
        for verb in self.verbs.values():
            yield f"quoin-{verb['name']}", 1, self.verb(verb)
        for name in LANGUAGES:
            yield f"quoin-{name}", 5, self.language(name)

    def write(self):
        for old in self.folder.glob("man[15]/*"):
            old.unlink()
        for name, chapter, sections in self.all_pages():
            lines = [f".TH {name.upper()} {chapter} {self.day} {quoted('quoin ' + self.table['program'])}"]
            for title, text in sections:
                if text:
                    # the first paragraph of a section needs no macro
                    lines += [f".SH {quoted(title) if ' ' in title else title}", *text[text[0] == ".PP":]]
            target = self.folder / f"man{chapter}" / f"{name}.{chapter}"
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_text("\n".join(lines) + "\n", encoding="utf-8")

    def read_by(self, kind, verb):
        """The rows of the environment or of files that are a verb's; all of them for the program."""
        for name, users, text in self.rows[kind]:
            if verb is None or users == "all" or verb in users.split(", "):
                yield from entry(prose(name), prose(text[0].upper() + text[1:] + "."))

    def examples(self, page):
        for name, command, does in self.rows["Examples"]:
            if name == page or page is None and name in ("begin", "set", "proof"):
                yield from entry(prose(command), prose(does[0].upper() + does[1:] + "."))

    def see_also(self, own):
        names = ["quoin(1)", *(f"quoin-{verb}(1)" for verb in self.verbs), *(f"quoin-{name}(5)" for name in LANGUAGES)]
        names = [name for name in names if not name.startswith(own + "(")]
        lines = [f".BR {name.replace('-', chr(92) + '-').replace('(', ' (')}," for name in names]
        return lines[:-1] + [lines[-1].rstrip(",")]

    def program(self):
        verbs = [line for verb in self.verbs.values()
                 for line in (".TP", rf".BR quoin\-{typed(verb['name'])} (1)", *filled(prose(verb["does"])))]
        about = [line for text in self.about for line in paragraph(" ".join(text.split()))]
        return [("NAME", [rf"quoin \- {prose('typeset and proofread résumés written in plain text')}"]),
                ("SYNOPSIS", [".B quoin", r"\fIVERB\fP [\fIOPTION\fP]... [\fIFILE\fP]...", ".br", ".B quoin help", r"[\fITOPIC\fP]..."]),
                ("DESCRIPTION", [*about, ".SS Verbs", *verbs]),
                ("OPTIONS", [*entry(r"\fB\-h\fP, \fB\-\-help\fP", "Print the verbs, or what the verb before it does, and exit."),
                             *entry(r"\fB\-V\fP, \fB\-\-version\fP", "Print the version and exit.")]),
                ("EXIT STATUS", exit_status(self.verbs["themes"]["notes"])),
                ("ENVIRONMENT", [*self.read_by("Environment", None)]),
                ("FILES", [*self.read_by("Files", None)]),
                ("EXAMPLES", [*self.examples(None)]), ("SEE ALSO", self.see_also("quoin"))]

    def verb(self, verb):
        name = verb["name"]
        does = verb["does"].rstrip(".")
        notes = verb["notes"].partition("Exit status:")[0].strip().split("\n\n")
        about = [line for text in [does + ".", *notes] if text for line in paragraph(" ".join(text.split()))]
        return [("NAME", filled(rf"quoin\-{typed(name)} \- {prose(does[0].lower() + does[1:])}")),
                ("SYNOPSIS", [rf".B quoin {typed(name)}", r"[\fIOPTION\fP]..." + (" " + operands(verb["operands"]) if verb["operands"] else "")]),
                ("DESCRIPTION", about), ("OPTIONS", options(verb)), ("EXIT STATUS", exit_status(verb["notes"])),
                ("ENVIRONMENT", [*self.read_by("Environment", name)]), ("FILES", [*self.read_by("Files", name)]),
                ("EXAMPLES", [*self.examples(name)]), ("SEE ALSO", self.see_also(f"quoin-{name}"))]

    def language(self, name):
        file, shown = LANGUAGES[name]
        (_, _), (title, about), *rest = chapters((HERE / file).read_text(encoding="utf-8"))
        sections = [line for heading, text in rest if heading != shown
                    for line in [f".SS {quoted(prose(heading))}", *text[text[0] == ".PP":]]]
        examples = [line for heading, text in rest if heading == shown for line in text]
        return [("NAME", [rf"quoin\-{name} \- {prose(re.sub('^The', 'the', title))}"]),
                ("DESCRIPTION", about + sections), ("EXAMPLES", examples + [*self.examples(name)]),
                ("SEE ALSO", self.see_also(f"quoin-{name}"))]


def operands(text):
    return re.sub(r"\w+", lambda word: italic(word[0]), text)


def options(verb):
    lines = []
    for option in verb["options"]:
        value = italic(option["argument"]) if option["argument"] else ""
        forms = [bold(option["letter"]) + (f" {value}" if value else "")] if option["letter"] else []
        forms.append(bold("--" + option["name"]) + (f"={value}" if value else ""))
        does = option["does"][0].upper() + option["does"][1:] + "."
        if option["argument"]:
            # the value is in italics wherever it is spoken of
            does = rf"\fI{option['argument']}\fP".join(map(prose, re.split(rf"\b{option['argument']}\b", does)))
        else:
            does = prose(does)
        lines += entry(", ".join(forms), does)
    return lines + entry(r"\fB\-h\fP, \fB\-\-help\fP", "Print help and exit.")


def exit_status(notes):
    text = " ".join(notes.partition("Exit status:")[2].split())
    listed, dot, after = text.partition(". ")
    lines = []
    for status, meaning in re.findall(r"(\d) (.*?)(?=, \d |\.?$)", listed):
        lines += entry(bold(status), prose(meaning[0].upper() + meaning[1:] + "."))
    return lines + (paragraph(after) if dot else [])


if __name__ == "__main__":
    program, day, folder = sys.argv[1:]
    told = subprocess.run([program, "help", "--format", "json"], check=True, capture_output=True)
    Manual(json.loads(told.stdout), day, pathlib.Path(folder)).write()
