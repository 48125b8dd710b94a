#!/usr/bin/env python3
"""Makes a reference page of this folder plain text for a terminal: make_text.py PAGE.md OUTPUT.txt

Examples are set in, a row of a table becomes its first cell with the others below it, links are their
words; what stands in backticks keeps them, for it is to be typed.
"""
import re
import sys
import textwrap

WIDTH = 80


def words(text):
    text = re.sub(r"\[([^\]]+)\]\([^)]*\)", r"\1", text)
    return re.sub(r"\*\*([^*]+)\*\*", r"\1", text)


def wrapped(text, first="", rest=""):
    return textwrap.wrap(words(text), WIDTH, initial_indent=first, subsequent_indent=rest,
                         break_long_words=False, break_on_hyphens=False)


def cells_of(row):
    return [cell.strip() for cell in row.strip().strip("|").split("|")]


def table(rows):
    head = cells_of(rows[0])
    for row in rows[2:]:
        first, *others = cells_of(row)
        yield from wrapped(first, "  ", "    ")
        for name, cell in zip(head[1:], others):
            if cell:
                yield from wrapped(cell if len(others) == 1 else f"{name}: {cell}", "      ", "      ")


def heading(line):
    text = words(line.lstrip("#").strip())
    return [text, ("=" if line.startswith("# ") else "-") * len(text)] if not line.startswith("###") else [text]


def blocks(page):
    """The page as (kind, lines): what stands together is one block."""
    kind, lines = "text", []
    for line in page.split("\n"):
        fence = line.startswith("```")
        if kind == "example":
            if fence:
                yield kind, lines
                kind, lines = "text", []
            else:
                lines.append(line)
            continue
        new = "example" if fence else "table" if line.startswith("|") else "item" if re.match(r"(-|\d+\.) ", line) \
            else "heading" if line.startswith("#") else "blank" if not line.strip() \
            else "item" if kind == "item" and line.startswith("  ") else "text"
        if new != kind or new == "heading" or (new == "item" and not line.startswith("  ")):
            if lines:
                yield kind, lines
            kind, lines = new, []
        if not fence:
            lines.append(line)
    if lines:
        yield kind, lines


def plain(page):
    for kind, lines in blocks(page):
        if kind == "example":
            yield from (f"    {line}".rstrip() for line in lines)
        elif kind == "table":
            yield from table(lines)
        elif kind == "heading":
            yield from heading(lines[0])
        elif kind == "blank":
            yield ""
        else:
            text = " ".join(line.strip() for line in lines)
            if "](#" in text and text.count("](#") > text.count(". "):
                continue  # a list of the page's own chapters
            yield from wrapped(text, "", "  " if kind == "item" else "")


if __name__ == "__main__":
    with open(sys.argv[1], encoding="utf-8") as source:
        text = "\n".join(plain(source.read()))
    with open(sys.argv[2], "w", encoding="utf-8") as output:
        output.write(re.sub(r"\n{3,}", "\n\n", text).strip() + "\n")
