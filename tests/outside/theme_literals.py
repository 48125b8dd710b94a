"""What a theme prints beside the résumé's own words: separators, captions and bullet signs.

A theme file is labelled lines; a line whose value holds `{field}` is a pattern, and what stands in it
outside of `{…}` is printed as it stands, and `{page-word}` as a word of `themes/words` (with `[…]` for what may be missing, `*…*` and `/…/` for looks,
and `\\` before a character that is meant itself).
"""

import pathlib
import re

from common import THEMES
from expected_words import normalise

HOUSE_THEME = "turnstone"
# Between the items of `honors:` and the like, which the source parts with `;`.
BETWEEN_ITEMS = {";", ","}


WORDS = dict(line.split(": ", 1) for line in (THEMES / "words" / "en").read_text(encoding="utf-8").splitlines()
             if ": " in line and not line.startswith("#"))


def worded(pattern):
    """With what the page says by itself: '{page-word} {page}' gives 'page {page}'."""
    return re.sub(r"\{([a-z]+)-word\}", lambda m: WORDS[m.group(1)], pattern)


def theme_path(source):
    """The theme file that a résumé asks for."""
    found = re.search(r"^theme:\s*(\S.*?)\s*$", source.read_text(encoding="utf-8"), re.M | re.I)
    name = found.group(1) if found else HOUSE_THEME
    if "/" in name or name.endswith(".theme"):
        return source.parent / name
    return THEMES / f"{name}.theme"


def literals(pattern):
    """The printed stretches of a pattern, in order: '*{role}*[, {place}]' gives [', ']."""
    kept = []
    pattern = re.sub(r"\\(.)", lambda m: kept.append(m.group(1)) or chr(0xE000 + len(kept) - 1), worded(pattern))
    stretches = re.split(r"\{[^}]*\}|[\[\]]", re.sub(r"[*/]", "", pattern))
    return [re.sub("[\ue000-\uf8ff]", lambda m: kept[ord(m.group()) - 0xE000], s) for s in stretches if s]


class ThemeLiterals:
    """fragments: what may stand beside or between words; signs: bullets; head: the running head;
    fills: whether text is sent to the right edge; beside: whether headings or columns of skills stand
    side by side with text."""

    def __init__(self, path):
        self.fragments = set(BETWEEN_ITEMS)
        self.signs = {"•", "-"}
        self.head = None  # its fields, in order, or None
        self.columns = 1
        self.fills = False
        self.beside = False
        self.numbered = set()  # kinds of section whose entries have numbers
        for label, value in self.inherited(pathlib.Path(path)):
            if label == "columns":
                self.columns = {"one": 1, "two": 2}[value]
            elif (label, value) in (("headings", "margin"), ("skill-columns", "two")):
                self.beside = True
            elif label == "numbered":
                self.numbered = set(re.split(r"\s*,\s*", value)) - {"none"}
            elif label in ("bullet", "inner-bullet"):
                self.signs.add(normalise(value.split("(")[0].strip()))
            elif "{" in value:
                self.fills |= "{fill}" in value
                for stretch in literals(value):
                    self.fragments.update(normalise(stretch).split())
                if label == "running-head":
                    self.head = re.findall(r"\{([^}]*)\}", worded(value))

    def inherited(self, path):
        """The lines of the theme that this one is based on, and its own after them."""
        own = list(self.lines(path))
        base = dict(own).get("based-on")
        return (self.inherited(THEMES / f"{base}.theme") if base else []) + own

    @staticmethod
    def lines(path):
        text = re.sub(r"\n[ \t]+", " ", path.read_text(encoding="utf-8"))
        for line in text.split("\n"):
            found = re.match(r"([^#:][^:]*?)\s*:\s*(.*)$", line)
            if found:
                yield found.group(1).lower(), found.group(2)
