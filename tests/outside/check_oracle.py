#!/usr/bin/python3 -B
"""The checks' own parts against cases worked by hand, so that a pass of theirs means something.

Markup is that of grammar/language.md, its examples among them; the alignments are small texts with one
thing wrong in each, which must be found wrong.
"""

import pathlib
import tempfile

import expected_words
from align import Aligner
from common import Tally
from expected_words import Word
from theme_literals import literals

PLAIN = [  # typed, on the page (normalised)
    ("cut entry time *18%* with", "cut entry time 18% with"),
    ("/Title of a Work/, 2025", "Title of a Work, 2025"),
    ("_under_ and */both/*", "under and both"),
    ("3.62/4.00 and/or snake_case 2*3", "3.62/4.00 and/or snake_case 2*3"),
    ("C/C++ and CI/CD", "C/C++ and CI/CD"),
    ("(*so*) \"/so/\"", "(so) \"so\""),
    ("Portfolio <https://a.example/x>", "Portfolio"),
    ("<https://a.example/x>", "a.example/x"),
    (r"\*not\* \/this\/ Dr.\ Who", "*not* /this/ Dr. Who"),
    ("12-15 otters -- and a heron", "12-15 otters - and a heron"),
    ("“typed” ‘quotes’ — and", "\"typed\" 'quotes' - and"),
    ("*open and /closed/", "*open and closed"),
]

DATES = [  # typed, form, printed
    ("Jun 2026 - Aug 2026", "Jun 2026", "Jun 2026 – Aug 2026"),
    ("06/2026 to present", "Jun 2026", "Jun 2026 – Present"),
    ("September 2025", "06/2026", "09/2025"),
    ("2026-06", "June 2026", "June 2026"),
    ("May 2027 (expected)", "Jun 2026", "May 2027 (expected)"),
    ("expected May 2027", "2026-06", "2027-05 (expected)"),
    ("Summer 2026", "06/2026", "Summer 2026"),
    ("2019 – 2021", "Jun 2026", "2019 – 2021"),
]

PATTERNS = [
    ("*{role}*[, /{employer}/][ \\({dates}\\)]", [", ", " (", ")"]),
    ("[GPA {gpa}]", ["GPA "]),
    ("{a} \\/ {b}", [" / "]),
]

TAGGED = """name: A B {!lab}
headline: Both {lab field}

section: Skills {field}

One: two

section: Experience

role: R
for: lab
- kept {lab}
- left {field}
-- below
"""
SELECTED = [  # tags, words
    ((), "A B Both Skills One two Experience R • kept • left • below"),
    (("lab",), "Both Experience R • kept"),
    (("field",), "A B Both Skills One two"),
    (("field", "lab"), "Both Skills One two Experience R • kept • left • below"),
]

EXPECTED = [Word(w, "f:1", "bullet" if w == "•" else "word")
            for w in "Intern Trust Jun 2026 • Counted eelgrass-beds at 9 sites".split()]
TEXTS = [  # a reader's text, whether it is right
    ("Intern, Trust (Jun 2026)\n• Counted eelgrass-beds\nat 9 sites", True),
    ("Intern,Trust (Jun 2026) • Counted eelgrass‑beds at 9 sites", True),
    ("Intern Trust Jun 2026 • Counted eelgrass-beds at 9", False),
    ("Intern Trust Jun 2026 • Counted eelgrass-beds at 9 sites sites", False),
    ("Intern Trust Jun 2026 • Counted eelgrass- beds at 9 sites", False),
    ("Intern Trust Jun 2026 • Counted eelgrassbeds at 9 sites", False),
    ("Intern Trust Jun2026 • Counted eelgrass-beds at 9 sites", False),
    ("Intern Trust • Counted eelgrass-beds at 9 sites Jun 2026", False),
    ("Intern Trust Jun 2026 Counted eelgrass-beds at 9 sites", False),
    ("Intern Trust Jun 2026 • Counted eelgrass-beds • at 9 sites", False),
    ("Intern Trust Jun 2026 • Counted secret eelgrass-beds at 9 sites", False),
    ("", False),
]


EXPECTED_TITLE = [Word("Two", "b:9"), Word("Words", "b:9")]
TEXTS_OVER_PAGES = [
    ("Two Words Intern Trust Jun 2026\fA, 2 Two Words (more) • Counted eelgrass-beds at 9 sites", True),
    ("Two Words Intern Trust Jun 2026\fA, 2 • Counted eelgrass-beds at 9 sites", False),
    ("Two Words Intern Trust Jun 2026 • Counted Two Words (more) eelgrass-beds at 9 sites\fA, 2", False),
    ("A, 2 Two Words Intern Trust Jun 2026 • Counted eelgrass-beds at 9 sites", True),
]


class Signs:
    fragments = {",", "(", ")"}
    signs = {"•"}


def main():
    tally = Tally()
    for typed, page in PLAIN:
        found = " ".join(expected_words.words_of(typed))
        tally.check(found == page, f"plain text of {typed!r}", f"{found!r}")
    for typed, form, printed in DATES:
        found = expected_words.print_dates(typed, form)
        tally.check(found == printed, f"date {typed!r} as {form!r}", f"{found!r}")
    for pattern, stretches in PATTERNS:
        tally.check(literals(pattern) == stretches, f"literals of {pattern!r}", f"{literals(pattern)}")
    with tempfile.TemporaryDirectory() as folder:
        source = pathlib.Path(folder, "a.resume")
        source.write_text(TAGGED, encoding="utf-8")
        for tags, words in SELECTED:
            found = " ".join(w.text or "•" for w in expected_words.read(source, tags).words)
            tally.check(found == words, f"selected for {tags}", found)
    for text, right in TEXTS:
        result = Aligner(EXPECTED, Signs).align(text)
        tally.check(result.complete == right, f"alignment of {text!r}", result.fault)
    heads = Aligner(EXPECTED, Signs, [["A", "2"]])
    tally.check(heads.align("Intern Trust Jun 2026\fA, 2 • Counted eelgrass-beds at 9 sites").complete,
                "a running head on page two")
    tally.check(not heads.align("Intern Trust Jun 2026 • Counted eelgrass-beds at 9 sites").complete,
                "a running head that is missing")
    again = Aligner([*EXPECTED_TITLE, *EXPECTED], Signs, [["A", "2"]], ["b:9"], "(more)")
    for text, right in TEXTS_OVER_PAGES:
        tally.check(again.align(text).complete == right, f"a title again in {text!r}")
    tally.finish()


if __name__ == "__main__":
    main()
