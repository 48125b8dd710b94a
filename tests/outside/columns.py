"""Themes of two columns: in what order their words are to come.

A page of two columns has the sections of one whole before those of the other. Which section goes where
is the theme's choice, so it is read off the page: the words must come in the source's order with some
sections moved behind all others.
"""

import collections
import re

import expected_words


def section_places(source):
    """Where sections begin, in the file and in those that it includes."""
    lines = [line for line in expected_words.read_lines(source) if line]
    places = {line.place for line in lines if line.label == "section"}
    for line in lines:
        if line.label == "include":
            places |= section_places(source.parent / line.value)
    return places


def by_sections(words, places):
    """The words before the first section, then those of each."""
    parts, opening = [[]], None
    for word in words:
        if word.place in places and word.place != opening:
            opening = word.place
            parts.append([])
        parts[-1].append(word)
    return parts


def heading_of(part):
    return " ".join(word.text for word in part if word.place == part[0].place).casefold()


def line_of(heading, lines):
    """The first line that it begins on; in a narrow column it may turn over."""
    for first in range(len(lines)):
        if lines[first] and heading.startswith(lines[first]):
            for past in range(first + 1, min(first + 4, len(lines)) + 1):
                if " ".join(lines[first:past]) == heading:
                    return first
    return 0


def in_page_order(words, places, text):
    """The words in the order of the page that `text` was read from, and the count of columns that the
    order of the sections amounts to."""
    top, *sections = by_sections(words, places)
    lines = [expected_words.normalise(line).strip().casefold() for line in text.split("\n")]
    found = {id(part): line_of(heading_of(part), lines) for part in sections}
    ordered = sorted(sections, key=lambda part: found[id(part)])
    ranks = [sections.index(part) for part in ordered]
    columns = 1 + sum(b < a for a, b in zip(ranks, ranks[1:]))
    return top + [word for part in ordered for word in part], columns


def missing(words, text):
    """The words that are not in the text, in whatever order, by how often they stand there."""
    split = re.compile(r"[^\w@.+#&%$'-]+")
    bare = lambda found: collections.Counter(
        token.strip(".'-") for piece in found for token in split.split(piece) if token.strip(".'-"))
    expected = bare(word.text for word in words if word.kind == "word")
    return sorted((expected - bare(expected_words.normalise(text).split())).elements())
