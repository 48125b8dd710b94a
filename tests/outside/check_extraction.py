#!/usr/bin/python3 -B
"""Every word of the source comes out of the PDF, once, in order and whole, with every reader.

For each sample and each of its variants, each program of readers.py reads the PDF, and its text is
aligned (align.py) with the words of expected_words.py. Anything else in the text must be printed by
the theme (theme_literals.py). Printed: the share of words that each reader found, to be 100.00 %
everywhere, and for each failure its first mismatch with the source line it concerns.
"""

import pathlib

import expected_words
import readers
from align import Aligner
from common import SamplePdfs, Tally, run
from theme_literals import ThemeLiterals, theme_path


def page_count(pdf):
    for line in run(["pdfinfo", pdf], text=True).stdout.splitlines():
        if line.startswith("Pages:"):
            return int(line.split()[1])
    return 0


def running_heads(theme, source, pages):
    if theme.head is None:
        return []
    fields = heading_fields(source)
    heads = []
    for page in range(2, pages + 1):
        texts = [str(page) if field == "page" else fields.get(field, "") for field in theme.head]
        heads.append(" ".join(texts).split())
    return heads


def heading_fields(source):
    fields = {}
    for line in expected_words.read_lines(pathlib.Path(source)):
        if line and line.label == "section":
            break
        if line and line.label in expected_words.HEADING:
            fields.setdefault(line.label, " ".join(expected_words.words_of(line.value)))
    return fields


def aligner_for(source, tags, pdf):
    theme = ThemeLiterals(theme_path(source))
    words = expected_words.read(source, tags).words
    return Aligner(words, theme, running_heads(theme, source, page_count(pdf)))


def print_table(rows):
    names = list(readers.READERS)
    print(f"{'':32}{'words':>6}" + "".join(f"{name:>19}" for name in names))
    for name, words, shares in rows:
        print(f"{name:32}{words:>6}" + "".join(f"{share:>17.2f} %" for share in shares))
    found = len(rows) and all(share == 100 for _, _, shares in rows for share in shares)
    print("every word with every reader" if found else "words are missing, see below")


def main():
    tally = Tally()
    rows, faults = [], []
    for name, source, tags, pdf in SamplePdfs(tally):
        aligner = aligner_for(source, tags, pdf)
        shares = []
        for reader, read in readers.READERS.items():
            result = aligner.align(read(pdf))
            shares.append(result.percent())
            faults.append((result.complete, f"{reader} reads {name}", result.fault))
        rows.append((name, aligner.count(), shares))
    print_table(rows)
    if readers.MISSING:
        print(f"not on this machine, not asked: {', '.join(readers.MISSING)}")
    for fault in faults:
        tally.check(*fault)
    tally.finish()


if __name__ == "__main__":
    main()
