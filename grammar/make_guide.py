#!/usr/bin/env python3
"""Makes one page of HTML of the guides of samples/guide: make_guide.py PROGRAM SAMPLES OUTPUT.html

The page stands by itself: its pictures, in it, are of the pages that come of following the guides here and
now. It has no script, is light or dark as the reader has it, and reads in order without its colours.
"""
import base64
import html
import pathlib
import re
import struct
import sys
import tempfile

from guide import Reader
from make_text import blocks as text_blocks, cells_of

TITLE = "quoin: a guide for students, and one for advisers"
GUIDES = {"student": "For a student", "adviser": "For an adviser"}
RESOLUTION = 72  # of pictures, by the inch: a page of the size it is

STYLE = """
:root { color-scheme: light dark; --ink: #1d2428; --soft: #4b575e; --paper: #fdfdfb; --well: #f1f2ee;
  --edge: #8b969c; --link: #0b5563; --gone: #8a2b1d; --new: #1d5e34 }
@media (prefers-color-scheme: dark) { :root { --ink: #e4e6e1; --soft: #b3bcc0; --paper: #171b1d;
  --well: #22282b; --edge: #78838a; --link: #86cfdd; --gone: #f0a899; --new: #9fd8b0 } }
* { box-sizing: border-box }
body { margin: 0 auto; padding: 1.5rem 1.1rem 4rem; max-width: 48rem; background: var(--paper); color: var(--ink);
  font: 1.0625rem/1.6 Georgia, "Liberation Serif", serif }
h1, h2, h3 { line-height: 1.25; text-wrap: balance }
h1 { font-size: 1.7rem } h2 { font-size: 1.45rem; margin-top: 3.5rem; border-top: 1px solid var(--edge); padding-top: 1.5rem }
h3 { font-size: 1.15rem; margin-top: 2.2rem }
a { color: var(--link) }
a:focus-visible, pre:focus-visible { outline: 3px solid var(--link); outline-offset: 2px }
code, pre { font: 0.8125rem/1.55 "Liberation Mono", monospace }
code { background: var(--well); padding: 0.1em 0.25em; border-radius: 3px; overflow-wrap: anywhere }
figure { margin: 1.2rem 0 }
figcaption { font-size: 0.9rem; color: var(--soft) }
pre { margin: 0.3rem 0 0; padding: 0.8rem 1rem; overflow-x: auto; background: var(--well); border-radius: 4px;
  border-left: 3px solid var(--edge) }
.file pre { white-space: pre-wrap }
pre b { font-weight: bold } pre .prompt { color: var(--soft); user-select: none }
pre del { color: var(--gone); text-decoration: none } pre ins { color: var(--new); text-decoration: none }
img { max-width: 100%; height: auto; background: #fff; border: 1px solid var(--edge) }
table { border-collapse: collapse; width: 100% } th, td { text-align: left; vertical-align: top;
  padding: 0.35rem 0.6rem; border-bottom: 1px solid var(--edge) }
nav ol { padding-left: 1.2rem }
@media print { body { max-width: none; font-size: 10.5pt } pre { white-space: pre-wrap } figure { break-inside: avoid } }
"""


def inline(text):
    text = html.escape(text, quote=False)
    text = re.sub(r"`([^`]+)`", r"<code>\1</code>", text)
    text = re.sub(r"\[([^\]]+)\]\((\w+)\.md\)", r'<a href="#\2">\1</a>', text)  # of the guides, on this page
    return re.sub(r"(?<![\w*])\*([^*\s][^*]*)\*", r"<em>\1</em>", text)


def anchor(guide, title):
    return f"{guide}-" + re.sub(r"\W+", "-", title.lower()).strip("-")


def table(rows):
    head, *body = [[inline(cell) for cell in cells_of(row)] for row in (rows[0], *rows[2:])]
    yield "<table><thead><tr>" + "".join(f'<th scope="col">{cell}</th>' for cell in head) + "</tr></thead><tbody>"
    for row in body:
        yield "<tr>" + "".join(f"<td>{cell}</td>" for cell in row) + "</tr>"
    yield "</tbody></table>"


def prose(guide, lines):
    """Paragraphs, lists, tables and headings, the last a step below the page's own."""
    listed = False
    for kind, block in text_blocks("\n".join(lines)):
        text = " ".join(line.strip() for line in block)
        if listed and kind not in ("item", "blank"):
            listed = False
            yield "</ul>"
        if kind == "heading":
            title = text.lstrip("# ")
            level, name = (2, guide) if text.startswith("# ") else (3, anchor(guide, title))
            yield f'<h{level} id="{name}">{inline(title)}</h{level}>'
        elif kind == "table":
            yield from table(block)
        elif kind == "item":
            if not listed:
                yield "<ul>"
            listed = True
            yield f"<li>{inline(text[2:])}</li>"
        elif kind == "text":
            yield f"<p>{inline(text)}</p>"
    if listed:
        yield "</ul>"


def well(caption, lines, name):
    """Lines that keep their breaks; they may be wider than the screen, and are then moved by keys too."""
    label = html.escape(name)
    told = f"<figcaption>{inline(caption)}</figcaption>" if caption else ""
    text = "\n".join(lines)
    kind = ' class="file"' if caption else ""
    return f'<figure{kind}>{told}<pre tabindex="0" role="region" aria-label="{label}">{text}</pre></figure>'


def console(block):
    lines = [f'<span class="prompt" aria-hidden="true">$ </span><b>{html.escape(line[2:])}</b>' if line.startswith("$ ")
             else html.escape(line) for line in block.lines]
    return well("", lines, f"Terminal, line {block.line} of the guide")


def change(block):
    tags = {"-": "del", "+": "ins"}
    lines = [f"<{tags[line[0]]}>{html.escape(line)}</{tags[line[0]]}>" if line[:1] in tags else html.escape(line)
             for line in block.lines]
    return well(f"In `{block.name}`", lines, f"Changes of {block.name}, line {block.line} of the guide")


def picture(block, png):
    width, height = struct.unpack(">II", png[16:24])
    data = base64.b64encode(png).decode()
    return (f'<figure><img alt="{html.escape(block.lines[0])}" width="{width}" height="{height}" '
            f'src="data:image/png;base64,{data}"></figure>')


def guide_html(guide, text, reader):
    for block, _ in reader.follow(text):
        if block.kind == "text":
            yield from prose(guide, block.lines)
        elif block.kind == "picture":
            yield picture(block, reader.picture(block, RESOLUTION))
        elif block.kind == "console":
            yield console(block)
        elif block.kind == "diff":
            yield change(block)
        elif block.kind != "day":
            yield well(f"`{block.name}`", map(html.escape, block.lines), f"{block.name}, line {block.line} of the guide")


def contents(texts):
    yield '<nav aria-label="Contents"><ol>'
    for guide, text in texts.items():
        titles = [title for level, title in re.findall(r"^(##?) (.*)", text, re.M) if level == "##"]
        first = re.search(r"^# (.*)", text, re.M)[1]
        yield f'<li><a href="#{guide}">{GUIDES[guide]}: {inline(first)}</a><ol>'
        yield from (f'<li><a href="#{anchor(guide, title)}">{inline(title)}</a></li>' for title in titles)
        yield "</ol></li>"
    yield "</ol></nav>"


def main():
    program, samples, output = map(pathlib.Path, sys.argv[1:])
    texts = {guide: (samples / "guide" / f"{guide}.md").read_text(encoding="utf-8") for guide in GUIDES}
    lines = ["<!DOCTYPE html>", '<html lang="en">', "<head>", '<meta charset="utf-8">',
             '<meta name="viewport" content="width=device-width, initial-scale=1">',
             f"<title>{TITLE}</title>", f"<style>{STYLE}</style>", "</head>", "<body>",
             f"<header><h1>{TITLE}</h1></header>", *contents(texts), "<main>"]
    for guide, text in texts.items():
        with tempfile.TemporaryDirectory() as place:
            folder = pathlib.Path(place) / guide
            folder.mkdir()
            lines += guide_html(guide, text, Reader(program.resolve(), samples.resolve(), folder))
    output.parent.mkdir(parents=True, exist_ok=True)
    output.write_text("\n".join([*lines, "</main>", "</body>", "</html>", ""]), encoding="utf-8")


if __name__ == "__main__":
    main()
