#!/usr/bin/python3 -B
"""Two columns are read one whole after the other, by readers that go by places too: on many pages.

Every labelled page of tests/advice/pages/tuning is set in the theme of two columns, on both papers. The
readers that look at the page, but for the one that goes line by line, must give the words of those that
stand in two in the order in which the file has them. And there must be enough of these: pages that were
all set in one column would be read well too.

Printed: how many pages stand in two columns, and of each reader how many it read in order. The share of
those in two columns is held to LEAST_SHARE.
"""

import concurrent.futures
import os
import pathlib
import re
import tempfile

import columns
import readers
from common import ROOT, Tally, quoin_set, require_quoin, run

PAGES = ROOT / "tests" / "advice" / "pages" / "tuning"
THEME = "oystercatcher"
LEAST_SHARE = 0.2
BY_PLACE = sorted((readers.BY_LAYOUT - readers.LINE_BY_LINE) & set(readers.READERS))
HIGHER = 40  # pt: so much further up than the word before, a word opens a column


def stands_in_two(pdf):
    tops = re.findall(r'<word [^>]*yMin="([\d.]+)"', run(["pdftotext", "-raw", "-bbox", pdf, "-"], text=True).stdout)
    tops = [float(top) for top in tops]
    return any(after < before - HIGHER for before, after in zip(tops, tops[1:]))


def words(text):
    """Signs of bullets apart: some readers give one with its words, some before them."""
    return [word for word in columns.expected_words.normalise(text.replace("\f", " ")).split()
            if re.search(r"\w", word)]


def first_difference(expected, read):
    for i, (one, other) in enumerate(zip(expected, read)):
        if one != other:
            return (f"after '{' '.join(expected[max(0, i - 4):i])}' expected"
                    f" '{' '.join(expected[i:i + 4])}', read '{' '.join(read[i:i + 4])}'")
    return f"{len(expected)} words expected, {len(read)} read"


def read_page(source, paper, folder):
    """Of each reader by place, the first difference, or nothing; None if the page has one column."""
    pdf = folder / f"{source.stem}-{paper}.pdf"
    quoin_set(source, pdf, (), ["--theme", THEME, "--paper", paper, "--draft"])
    if not stands_in_two(pdf):
        return None
    expected = words(readers.pdftotext(pdf, "-raw"))
    faults = {}
    for reader in BY_PLACE:
        read = words(readers.READERS[reader](pdf))
        faults[reader] = "" if read == expected else first_difference(expected, read)
    return faults


def main():
    tally = Tally()
    require_quoin()
    jobs = [(source, paper) for source in sorted(PAGES.glob("*.resume")) for paper in ("letter", "a4")]
    with tempfile.TemporaryDirectory(prefix="outside-") as folder, \
            concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        read = list(pool.map(lambda job: read_page(*job, pathlib.Path(folder)), jobs))
    two = [(job, faults) for job, faults in zip(jobs, read) if faults is not None]
    for (source, paper), faults in two:
        for reader, fault in faults.items():
            tally.check(not fault, f"{reader} reads {source.stem} on {paper} in order", fault)
    tally.check(len(two) >= LEAST_SHARE * len(jobs), "many pages stand in two columns",
                f"{len(two)} of {len(jobs)}")
    for reader in BY_PLACE:
        in_order = sum(not faults[reader] for _, faults in two)
        print(f"{reader}: {in_order} of {len(two)} pages of two columns in order, of {len(jobs)} set")
    for name in readers.MISSING:
        tally.check(name not in readers.BY_LAYOUT, f"{name} is not on this machine")
    tally.finish()


if __name__ == "__main__":
    main()
