#!/usr/bin/python3 -B
"""Every word of the source comes out of the PDF, once, in order and whole, with every reader.

Each sample and each of its variants is set in each theme, each program of readers.py reads the PDF, and
its text is aligned (align.py) with the words of expected_words.py. Anything else in the text must be
printed by the theme (theme_literals.py). And what belongs together comes out together: no empty line
stands between an entry and its dates or between a bullet's sign and its words.

A theme of two columns must give them one whole after the other to every reader but the one that goes
line by line, which no place of columns serves; that one is asked for every word, in any order, and
so are all where a section may go on, on the next page, after the other column.

Of headings in the margin and columns of skills, which a theme of tests/fixtures has, those readers
that look at the page, line by line or by blocks, are asked for every word in any order.

A theme that sends dates to the right edge gives them in their place to the readers that keep the file's
order or go line by line; those of READ_EDGES_LOOSE, which part the page by its white space, are asked
for every word, and at least once each must read a date loose: else the theme's description is out of
date.

Printed: for each theme and reader the share of words that it found, of all samples together, and what
came loose; to be 100.00 %, and 0 everywhere but there. For each failure its first mismatch follows, with the source
line it concerns.
"""

import concurrent.futures
import dataclasses
import os
import pathlib
import re
import tempfile

import columns
import expected_words
import readers
from align import Aligner
from common import MARGIN, THEMES, Tally, builds, quoin_set, require_quoin, run
from theme_literals import HOUSE_THEME, WORDS, ThemeLiterals


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


# --- what belongs together

BREAK = "¶"  # stands for an empty line, as readers part blocks


def with_breaks(text):
    return expected_words.normalise(re.sub(r"\n[ \t]*\n\s*|\f", f" {BREAK} ", text))


def date_places(source):
    """Where the source states dates; included files state none beside entries of this one."""
    return {line.place for line in expected_words.read_lines(pathlib.Path(source))
            if line and line.label in expected_words.DATES}


def joints(words, dates):
    """Pairs of neighbouring words that no empty line may part: a bullet's sign (empty) and its first
    word, an entry's last word before its dates and the dates' first."""
    for before, after in zip(words, words[1:]):
        if before.kind == "bullet":
            yield before, after
        elif after.place in dates and before.place not in dates:
            yield before, after


def loose(words, dates, signs, text):
    """The joints that came apart."""
    read = with_breaks(text)
    sign = "|".join(re.escape(s) for s in sorted(signs))
    found = []
    for before, after in joints(words, dates):
        left = f"(?:{sign})" if before.kind == "bullet" else re.escape(before.text)
        # between them nothing but what a theme prints: no letter, no figure
        if not re.search(rf"{left}[^\w{BREAK}]*{re.escape(after.text)}", read):
            found.append(f"{after.place}: '{before.text or '(bullet)'}' and '{after.text}'")
    return found


# --- every sample in every theme, in every reader


@dataclasses.dataclass
class Case:
    theme: str
    name: str
    source: pathlib.Path
    tags: tuple
    pdf: pathlib.Path


DOES_NOT_FIT = 3  # exit status: right to say of a theme that has little room, if not of every sample


def theme_file(name):
    return MARGIN if name == MARGIN.stem else THEMES / f"{name}.theme"


def set_all(folder, tally):
    cases = []
    for theme in [*sorted(THEMES.glob("*.theme")), MARGIN]:
        for name, source, tags in builds():
            pdf = folder / f"{theme.stem}-{name}.pdf"
            named = theme if theme == MARGIN else theme.stem
            done = quoin_set(source, pdf, tags, ["--theme", named], text=True)
            if done.returncode == DOES_NOT_FIT and theme.stem != HOUSE_THEME:
                print(f"{name} does not fit in {theme.stem}")
            elif tally.check(done.returncode == 0, f"set {name} in {theme.stem}", done.stderr.strip()):
                cases.append(Case(theme.stem, name, source, tags, pdf))
    return cases


READ_EDGES_LOOSE = {"pdftotext", "pdfminer"}


@dataclasses.dataclass
class Result:
    theme: str
    reader: str
    expected: int
    found: int
    fault: str = ""
    loose: list = dataclasses.field(default_factory=list)
    edges: bool = False  # loose by what the theme says of itself


def read_case(case):
    """The Result of each reader."""
    theme = ThemeLiterals(theme_file(case.theme))
    words = expected_words.read(case.source, case.tags).numbered(theme.numbered)
    heads = running_heads(theme, case.source, page_count(case.pdf))
    if theme.columns > 1:
        return read_columns(case, theme, words, heads, page_count(case.pdf))
    dates, titles, results = date_places(case.source), columns.section_places(case.source), []
    for reader, read in readers.READERS.items():
        text = read(case.pdf)
        aligned = Aligner(words, theme, heads, titles, WORDS["continued"]).align(text)
        if theme.beside and reader in readers.BY_LAYOUT:
            results.append(read_in_any_order(case, reader, words, text))
            continue
        if theme.fills and reader in READ_EDGES_LOOSE:
            results.append(read_edges(case, reader, words, text, aligned.fault))
            continue
        results.append(Result(case.theme, reader, aligned.expected, aligned.found, aligned.fault,
                              [] if reader in readers.PARTS_LINES
                              else loose(words, dates, theme.signs, text)))
    return results


def read_edges(case, reader, words, text, out_of_order):
    """Every word, in any order; what of it came loose is expected."""
    result = read_in_any_order(case, reader, words, text)
    result.loose, result.edges = [out_of_order] if out_of_order else [], True
    return result


def read_in_any_order(case, reader, words, text):
    lost = columns.missing(words, text)
    total = sum(word.kind == "word" for word in words)
    return Result(case.theme, reader, total, total - len(lost), ", ".join(lost))


def read_columns(case, theme, words, heads, pages):
    in_order, count = columns.in_page_order(words, columns.section_places(case.source),
                                            readers.pdftotext(case.pdf, "-raw"))
    results = []
    for reader, read in readers.READERS.items():
        text = read(case.pdf)
        if reader in readers.LINE_BY_LINE or pages > 1:
            results.append(read_in_any_order(case, reader, words, text))
            continue
        aligned = Aligner(in_order, theme, heads).align(text)
        fault = aligned.fault or ("" if count <= theme.columns else f"sections in {count} columns")
        results.append(Result(case.theme, reader, aligned.expected, aligned.found, fault))
    return results


def print_table(results):
    names = list(readers.READERS)
    print(f"{'':16}" + "".join(f"{name:>20}" for name in names))
    for theme in sorted({result.theme for result in results}):
        cells = []
        for name in names:
            of_cell = [r for r in results if (r.theme, r.reader) == (theme, name)]
            share = 100 * sum(r.found for r in of_cell) / sum(r.expected for r in of_cell)
            apart = sum(len(r.loose) for r in of_cell)
            cells.append(f"{share:.2f} % {apart:>2} loose".rjust(20))
        print(f"{theme:16}" + "".join(cells))


def main():
    tally, results = Tally(), []
    require_quoin()
    with tempfile.TemporaryDirectory(prefix="outside-") as folder, \
            concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        cases = set_all(pathlib.Path(folder), tally)
        for case, of_case in zip(cases, pool.map(read_case, cases)):
            for result in of_case:
                what = f"{result.reader} reads {case.name} in {case.theme}"
                tally.check(not result.fault, what, result.fault)
                tally.check(result.edges or not result.loose, f"{what}: together",
                            "; ".join(result.loose[:3]))
            results += of_case
    print_table(results)
    for theme, reader in sorted({(r.theme, r.reader) for r in results if r.edges}):
        tally.check(any(r.loose for r in results if (r.theme, r.reader) == (theme, reader)),
                    f"{reader} reads a date of {theme} loose", "it no longer does: say so no more")
    unread = {theme.stem for theme in THEMES.glob("*.theme")} - {result.theme for result in results}
    tally.check(not unread, "a sample fits in every theme", ", ".join(sorted(unread)))
    for name in readers.MISSING:
        tally.check(False, f"{name} is not on this machine")
    tally.finish()


if __name__ == "__main__":
    main()
