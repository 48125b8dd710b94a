#!/usr/bin/python3 -B
"""The words a reader must find in a résumé's PDF, in order: a second reading of the markup.

    tests/outside/expected_words.py samples/nursing.resume [TAG...]

prints them, one a line, with the file and line each came from. This is written from the markup's
reference (grammar/language.md) and shares no code with the compiler: regular expressions over whole
lines, slow and plain. It serves as the oracle of check_extraction.py and its neighbours.

It reads correct files only: what the compiler would report as an error is an exception here.

Normalisation: text is NFC, typographic quotes and apostrophes become their typewriter forms, every
dash becomes `-`, every space a plain one, lowered figures plain ones, `...` an ellipsis. So a reader is held to the words, not to how the page sets
quotes. Dates are the exception: they are expected in the form the résumé asks for.
"""

import dataclasses
import pathlib
import re
import sys
import unicodedata

SETTINGS = {"stage", "pages", "theme", "paper", "size", "margins", "dates-as", "language", "updated",
            "words", "accept", "hyphenate", "foreign", "abbreviations"}
HEADING = {"name", "pronouns", "headline", "address", "phone", "email", "link"}
DATES = {"dates", "graduation", "expires"}
ITEMS = {"honors", "courses", "activities"}
FIELDS = HEADING | DATES | ITEMS | {
    "school", "place", "degree", "major", "minor", "gpa", "thesis", "role", "employer", "note",
    "project", "course", "with", "activity", "award", "by", "credential", "issuer", "author", "publication",
    "text", "title", "detail"}

MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September",
          "October", "November", "December"]
SEASONS = {"spring": "Spring", "summer": "Summer", "fall": "Fall", "autumn": "Fall", "winter": "Winter"}


@dataclasses.dataclass(frozen=True)
class Word:
    text: str
    place: str  # file:line
    kind: str = "word"  # or "bullet": a sign, of whatever look


@dataclasses.dataclass
class Line:
    label: str  # lower case; "-" and "--" for bullets, "#" for comments
    spelled: str
    value: str
    place: str
    only: set
    but: set

    def wanted(self, tags):
        return wanted(self.only, self.but, tags)


@dataclasses.dataclass
class Reading:
    words: list
    left_out: list  # texts of pieces that this build leaves out
    comments: list  # texts
    entries: list  # of each section that says what it holds: that, and its entries' first words' indices

    def numbered(self, kinds):
        """The words with a number before each entry of sections of these kinds."""
        words = list(self.words)
        firsts = [(index, number) for holds, indices in self.entries if holds in kinds
                  for number, index in enumerate(indices, 1)]
        for index, number in sorted(firsts, reverse=True):
            words.insert(index, Word(f"{number}.", words[index].place))
        return words


def wanted(only, but, tags):
    """A build that asks for no tag takes everything."""
    if not tags:
        return True
    return not (but & tags) and (not only or bool(only & tags))


def normalise(text):
    text = unicodedata.normalize("NFC", text)
    text = re.sub("[‘’‚‛]", "'", text)
    text = re.sub("[“”„‟]", '"', text)
    text = re.sub("[‐‑‒–—―−]", "-", text)
    text = re.sub("[₀-₉]", lambda figure: str(ord(figure.group()) - 0x2080), text)
    text = re.sub(r"\.\.\.(?![\w./])", "…", text)
    return re.sub(r"[\s\u00a0\u2000-\u200a\u202f\u205f]+", " ", text)


# --- lines


def split_tags(value):
    found = re.search(r"\s*\{([^{}]*)\}\s*$", value)
    if not found:
        return value, set(), set()
    names = found.group(1).lower().split()
    return (value[: found.start()], {n for n in names if not n.startswith("!")},
            {n[1:] for n in names if n.startswith("!")})


def read_line(text, place):
    if text.startswith("#"):
        return Line("#", "#", text[1:], place, set(), set())
    bullet = re.fullmatch(r"(--?)[ \t]+(.*)", text, re.S)
    field = re.fullmatch(r"([^:]+?)[ \t]*:[ \t]*(.*)", text, re.S)
    if not bullet and not field:
        raise ValueError(f"{place}: neither field nor bullet: {text}")
    spelled, value = (bullet or field).groups()
    value, only, but = split_tags(value)
    label = re.sub(r"[ \t-]+", "-", spelled.strip().lower()) if field else spelled
    return Line(label, spelled.strip(), value.strip(), place, only, but)


def read_lines(path):
    """Folded lines joined; None for a blank line."""
    text = path.read_bytes().decode("utf-8-sig").replace("\r\n", "\n")
    joined = []
    for number, line in enumerate(text.split("\n"), 1):
        if not line.strip():
            joined.append(None)
        elif line[0] in " \t":
            joined[-1][0] += " " + line.strip()
        else:
            joined.append([line, f"{path.name}:{number}"])
    return [one and read_line(*one) for one in joined]


# --- inline text


def plain(text):
    """Marks, escapes and link addresses removed: what stands on the page."""
    kept = []

    def keep(match_text):
        kept.append(match_text)
        return chr(0xE000 + len(kept) - 1)

    text = re.sub(r"\\(.)", lambda m: keep(m.group(1)), text)
    text = re.sub(r"<((?:https?|mailto|tel):[^<>\s]*)>",
                  lambda m: keep("\0" + m.group(1)), text)
    # a lone address shows itself, without its scheme; one after text stands behind that text
    text = re.sub(r"([\ue000-\uf8ff])", lambda m: _shown(kept, m, text), text)
    opening = r"(?:(?<=^)|(?<=[\s(\[\"'–—*/_])|(?<=--))"
    closing = r"(?=$|[\s.,;:!?)\]\"'–—*/_]|--)"
    for _ in range(4):
        for mark in "*/_":
            m = re.escape(mark)
            text = re.sub(rf"{opening}{m}(?=[^\s{m}])([^{m}]*?[^\s{m}]){m}{closing}", r"\1", text)
    return re.sub(r"[\ue000-\uf8ff]", lambda m: kept[ord(m.group()) - 0xE000], text)


def _shown(kept, match, text):
    index = ord(match.group()) - 0xE000
    if kept[index].startswith("\0"):
        before = text[: match.start()].strip()
        kept[index] = "" if before else re.sub(r"^\0(https?://|mailto:|tel:)", "", kept[index])
    return match.group()


def words_of(text):
    text = re.sub(r"\s*--\s*", " - ", plain(text))
    return normalise(text).split()


def split_items(text, separator):
    """Cut at the separators outside of parentheses; none empty."""
    items, depth = [""], 0
    for sign in text:
        depth += {"(": 1, ")": -1}.get(sign, 0)
        if sign == separator and depth <= 0:
            items.append("")
        else:
            items[-1] += sign
    return [item.strip() for item in items if item.strip()]


# --- dates


def month_number(word):
    word = word.lower().rstrip(".")
    for number, name in enumerate(MONTHS, 1):
        if len(word) >= 3 and name.lower().startswith(word) or (word == "sept" and number == 9):
            return number
    return None


def print_month(year, month, form):
    if form == "06/2026":
        return f"{month:02}/{year}"
    if form == "2026-06":
        return f"{year}-{month:02}"
    name = MONTHS[month - 1]
    return f"{name if form == 'June 2026' else name[:3]} {year}"


def print_date(text, form):
    text = text.strip()
    if re.fullmatch("present|current|ongoing", text, re.I):
        return "Present"
    if re.fullmatch(r"\d{4}", text):
        return text
    if found := re.fullmatch(r"(\d{1,2})/(\d{4})", text):
        return print_month(int(found.group(2)), int(found.group(1)), form)
    if found := re.fullmatch(r"(\d{4})-(\d{2})(?:-\d{2})?", text):
        return print_month(int(found.group(1)), int(found.group(2)), form)
    if found := re.fullmatch(r"([A-Za-z]+)\.?\s+(\d{4})", text):
        word, year = found.groups()
        if word.lower() in SEASONS:
            return f"{SEASONS[word.lower()]} {year}"
        if month := month_number(word):
            return print_month(int(year), month, form)
    raise ValueError(f"a date in a form this oracle does not read: {text}")


def print_dates(text, form):
    bare = re.sub(r"\(?\bexpected\b\)?", "", text, flags=re.I).strip()
    ends = [print_date(end, form) for end in re.split(r"\s+(?:-|–|to)\s+", bare)]
    printed = " – ".join(ends)
    return f"{printed} (expected)" if bare != text.strip() else printed


# --- the whole


class Reader:
    def __init__(self, path, tags):
        self.tags = {tag.lower() for tag in tags}
        self.form = "Jun 2026"
        self.reading = Reading([], [], [], [])
        lines = self.without_comments(read_lines(path))
        first = next((i for i, line in enumerate(lines) if line and line.label == "section"), len(lines))
        includes = []
        for line in filter(None, lines[:first]):
            self.heading_line(line, path, includes)
        # files taken in stand where they are named: above the file's own sections
        for included in includes:
            self.sections(included)
        self.sections(lines[first:])

    def without_comments(self, lines):
        self.reading.comments += [line.value for line in lines if line and line.label == "#"]
        return [line for line in lines if not line or line.label != "#"]

    def heading_line(self, line, path, includes):
        if line.label == "dates-as":
            self.form = line.value
        elif line.label == "include":
            included = self.without_comments(read_lines(path.parent / line.value))
            includes.append(included)
        elif line.label in HEADING:
            if line.wanted(self.tags):
                self.reading.words += self.field(line)
            else:
                self.reading.left_out.append(line.value)
        elif line.label not in SETTINGS:
            raise ValueError(f"{line.place}: unknown label {line.label}")

    def sections(self, lines):
        section = []
        for line in [*lines, Line("section", "", "", "", set(), set())]:
            if line and line.label == "section" and section:
                self.section(section)
                section = []
            if section or line:
                section.append(line)

    def section(self, lines):
        opening, rest = lines[0], lines[1:]
        if not opening.value:
            return
        entries, holds = [[]], None
        for line in rest:
            if line is None:
                entries.append([])
            elif line.label == "holds":
                holds = line.value
            elif line.label != "column":
                entries[-1].append(line)
        whole = opening.wanted(self.tags)
        of_entries = [self.entry(entry, whole) for entry in entries if entry]
        if whole and (any(of_entries) or not any(entries)):
            self.reading.words += self.word_list(opening.value, opening.place)
            firsts = []
            for words in filter(None, of_entries):
                firsts.append(len(self.reading.words))
                self.reading.words += words
            self.reading.entries.append((holds, firsts))
        else:
            self.reading.left_out.append(opening.value)

    def entry(self, lines, whole):
        for line in lines:
            if line.label == "for":
                names = line.value.lower().split()
                only = {n for n in names if not n.startswith("!")}
                but = {n[1:] for n in names if n.startswith("!")}
                whole = whole and wanted(only, but, self.tags)
        words = []
        above = True  # whether the bullet that an inner one stands below is kept
        for line in lines:
            if line.label == "for":
                continue
            kept = whole and line.wanted(self.tags)
            if line.label == "-":
                above = kept
            if line.label == "--":
                kept = kept and above
            if kept:
                words += self.field(line)
            else:
                self.reading.left_out.append(line.value)
        return words

    def field(self, line):
        if line.label in ("-", "--"):
            return [Word("", line.place, "bullet")] + self.word_list(line.value, line.place)
        if line.label in DATES:
            return self.word_list(print_dates(line.value, self.form), line.place)
        if line.label in ITEMS:
            return self.items(line.value, ";", line.place)
        if line.label in FIELDS:
            return self.word_list(line.value, line.place)
        separator = ";" if len(split_items(line.value, ";")) > 1 else ","  # a group of skills
        return self.word_list(line.spelled, line.place) + self.items(line.value, separator, line.place)

    def items(self, text, separator, place):
        """What parts the items is the theme's to print, so it is no word of the source."""
        return [word for item in split_items(text, separator) for word in self.word_list(item, place)]

    def word_list(self, text, place):
        return [Word(word, place) for word in words_of(text)]


def read(path, tags=()):
    """The Reading of a résumé for a build that asks for these tags."""
    return Reader(pathlib.Path(path), tags).reading


def main():
    if len(sys.argv) < 2:
        sys.exit("usage: expected_words.py FILE.resume [TAG...]")
    for word in read(sys.argv[1], sys.argv[2:]).words:
        print(f"{word.place}\t{word.text or '(bullet)'}")


if __name__ == "__main__":
    main()
