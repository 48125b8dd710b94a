#!/usr/bin/python3 -B
"""The text for a portal's form survives being pasted: `quoin set --plain` of every sample.

A form's text box keeps letters and the signs of a typewriter, joins what spaces and tabs set apart, and
cuts spaces off the ends of lines (common practice; there is no standard). So:

    only letters, marks and figures of any script, printable ASCII, and line feeds
    no tab, no space at a line's end, no two spaces inside a line, no two empty lines
    not empty, and a line feed at its end
    every word of the source in order (expected_words.py), and nothing else but what the theme prints
    each section's title alone on a line after an empty one; each bullet on one line, after `- `
    the same after a form has done its worst: spaces run together, line feeds as CRLF and back
"""

import pathlib
import re
import tempfile
import unicodedata

import expected_words
from align import Aligner
from columns import section_places
from common import Tally, builds, quoin_set, require_quoin
from theme_literals import ThemeLiterals, theme_path


def strange(text):
    """Characters that forms mangle."""
    return sorted({c for c in text if c != "\n" and not " " <= c <= "~"
                   and not (ord(c) > 0x7F and unicodedata.category(c)[0] in "LMN")})


def untidy(text):
    found = []
    for number, line in enumerate(text.split("\n"), 1):
        if line != line.rstrip():
            found.append(f"line {number} ends in a space")
        if re.search(r"\S\s\s", line):
            found.append(f"line {number} has two spaces: {line[:50]}")
    if "\n\n\n" in text or text.startswith("\n"):
        found.append("empty lines that part nothing")
    if not text.endswith("\n") or text.endswith("\n\n"):
        found.append("its end is not one line feed")
    return found


def pasted(text):
    """As a text box may hand it on."""
    lines = text.replace("\n", "\r\n").replace("\t", " ").split("\r\n")
    return "\n".join(re.sub(r" +", " ", line).strip() for line in lines)


def ascii_signs(word):
    return word.replace("…", "...").replace("′", "'").replace("″", '"')


class PlainLiterals:
    """Of a theme, as they are printed here: `|` for a dot in the middle, and addresses in brackets."""

    def __init__(self, theme):
        self.fragments = {fragment.replace("·", "|") for fragment in theme.fragments}
        self.signs = {"-"}


def without_addresses(text, source):
    """The addresses of links that the page shows by words alone are added here, in brackets."""
    uris = re.findall(r"<((?:https?|mailto|tel):[^<>\s]*)>", source.read_text(encoding="utf-8"))
    fields = re.findall(r"(?:https?://|mailto:)[^\s)>]+", source.read_text(encoding="utf-8"))
    for uri in sorted({*uris, *fields}, key=len, reverse=True):
        text = text.replace(f" ({uri})", "")
    return text


def check_lines(tally, name, words, places, text):
    lines = text.split("\n")
    bullets = sum(word.kind == "bullet" for word in words)
    found = sum(re.match(r" *- \S", line) is not None for line in lines)
    tally.check(found == bullets, f"bullets of {name}", f"expected {bullets} lines, found {found}")
    titles = {}
    for word in words:
        if word.place in places:
            titles.setdefault(word.place, []).append(word.text)
    for title in map(" ".join, titles.values()):
        alone = [i for i, line in enumerate(lines) if expected_words.normalise(line) == title]
        tally.check(any(i > 0 and lines[i - 1] == "" for i in alone), f"title '{title}' of {name}")


def check(tally, name, source, tags, text):
    tally.check(not strange(text), f"signs of {name}", " ".join(f"{c} U+{ord(c):04X}" for c in strange(text)))
    tally.check(not untidy(text), f"lines of {name}", "; ".join(untidy(text)[:3]))
    words = [expected_words.Word(ascii_signs(w.text), w.place, w.kind)
             for w in expected_words.read(source, tags).words]
    aligner = Aligner(words, PlainLiterals(ThemeLiterals(theme_path(source))))
    for form, given in (("text", text), ("pasted text", pasted(text))):
        aligned = aligner.align(without_addresses(given, source))
        tally.check(aligned.complete, f"{form} of {name}", aligned.fault)
    check_lines(tally, name, words, section_places(source), text)


def main():
    tally = Tally()
    require_quoin()
    with tempfile.TemporaryDirectory(prefix="outside-") as folder:
        for name, source, tags in builds():
            plain = pathlib.Path(folder, f"{name}.txt")
            done = quoin_set(source, pathlib.Path(folder, f"{name}.pdf"), tags, ["--plain", plain], text=True)
            if tally.check(done.returncode == 0, f"set {name}", done.stderr.strip()):
                check(tally, name, source, tags, plain.read_bytes().decode("utf-8"))
    for text, right in ((" a", True), ("a ", False), ("a  b", False), ("a\tb", False), ("a\n\n\nb", False)):
        tally.check(right == (not untidy(text + "\n") and not strange(text)), f"what it says of {text!r}")
    for sign in "·•–—’“…\u00a0\u00ad\ufeff\u200b\ue000":
        tally.check(strange(sign), f"U+{ord(sign):04X} is found")
    tally.finish()


if __name__ == "__main__":
    main()
