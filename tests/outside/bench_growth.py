#!/usr/bin/python3 -B
"""Processor time of set and proof against size, for each thing that a file can hold many of, up to 1 MiB:
it is to be linear and 2 s at most. `bench_growth.py [--all] [KIND...]` prints a line each, with the growth
from 128 KiB to 1 MiB, which is 8 where it is linear; with --all for the other verbs too. A redline's
two drafts have the size together.
"""

import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

from common import QUOIN, ROOT, require_quoin

SIZES = (1 << 17, (1 << 20) - 1024)
HEAD = "name: Juniper Castellane\nemail: juniper.castellane@ellerystate.example\n"
ENTRY = ("\nsection: Experience\n\nrole: Front Desk Assistant\nemployer: Ellery State Recreation Center\n"
         "place: Port Ellery, WA\ndates: Sep 2025 - present\n")


def word(number):
    """A word that is in no dictionary, another for each number."""
    letters = ""
    number += 1000
    while number:
        letters += "bcdfghjklmnprstv"[number % 16] + "aeiou"[number % 5]
        number //= 7
    return letters


def filled(size, head, piece, tail=""):
    """`head`, as many pieces as there is room for, `tail`."""
    pieces, room, number = [head], size - len(head) - len(tail), 0
    while (room := room - len((next_piece := piece(number)).encode())) > 0:
        pieces.append(next_piece)
        number += 1
    return "".join(pieces) + tail


def bullet(number):
    return f"- Counted {number} eelgrass quadrats at 9 sites and cut entry time {number % 97}% with a datasheet\n"


def nested_gloss(number):
    """All of the one before it, and goes on; in a text of the same words none of them ends with a word."""
    return "ab " * number + "a (y); "


KINDS = {
    "bullets": lambda n: filled(n, HEAD + ENTRY, bullet),
    "words in one bullet": lambda n: filled(n, HEAD + ENTRY + "- Counted ", lambda i: word(i % 5000) + " ", "\n"),
    "sections": lambda n: filled(n, HEAD, lambda i: f"\nsection: Part {i}\n\nrole: Assistant\nemployer: Ellery {i}\n"
                                                    "dates: Sep 2025 - present\n"),
    "entries": lambda n: filled(n, HEAD + "\nsection: Experience\n", lambda i: (
        f"\nrole: Assistant {i}\nemployer: Ellery {i}\nplace: Port Ellery, WA\ndates: Sep 2025 - present\n"
        f"- Counted {i} quadrats\n")),
    "high schools": lambda n: filled(n, HEAD + "\nsection: Education\n", lambda i: (
        f"\nschool: Ellery High School {i}\nplace: Port Ellery, WA\ndegree: Diploma\ngraduation: 2024\n")),
    "tags": lambda n: filled(n, HEAD + ENTRY, lambda i: f"- Counted {i} quadrats {{t{i} u{i % 9}}}\n"),
    "marks": lambda n: filled(n, HEAD + ENTRY, lambda i: f"- Counted *{i}* of _the_ *quadrats* at _9_ sites\n"),
    "misspellings": lambda n: filled(n, HEAD + ENTRY,
                                     lambda i: "- Cuonted " + " ".join(word(i * 8 + j) for j in range(8)) + "\n"),
    "links": lambda n: filled(n, HEAD + ENTRY, lambda i: f"- Counted <https://a{i}.example/b> at sites\n"),
    "accepted checks": lambda n: filled(n // 2, HEAD, lambda i: f"accept: weak-opening (reason {i})\n") +
                                 filled(n // 2, ENTRY, bullet),
    "skill groups": lambda n: filled(n, HEAD + "\nsection: Skills\n\n", lambda i: (
        f"{word(i).title()}: " + ", ".join(word(i * 4 + j) for j in range(4)) + "\n")),
    "skills in one group": lambda n: filled(n, HEAD + "\nsection: Skills\n\nTools: ", lambda i: word(i) + ", ", "x\n"),
    "doubled words": lambda n: filled(n, HEAD + ENTRY + "- Counted ", lambda _: "whether whether ", "\n"),
    "combining marks": lambda n: filled(n, HEAD + ENTRY + "- Counted ", lambda _: "a\u0301\u0323\u0308b ", "\n"),
    "abbreviations": lambda n: filled(n // 2, HEAD, lambda i: f"abbreviations: {word(i)} (thing {i})\n") +
                               filled(n // 2, ENTRY + "- Counted ", lambda i: word(i % 5000) + " ", "\n"),
    "one gloss": lambda n: filled(n // 2, HEAD + "abbreviations: ", lambda _: "tide ", "out (a thing)\n") +
                           filled(n // 2, ENTRY + "- Counted ", lambda _: "tide ", "\n"),
    "nested glosses": lambda n: filled(n // 2, HEAD + "abbreviations: ", nested_gloss, "x (y)\n") +
                                filled(n // 2, ENTRY + "- Counted ", lambda _: "ab ", "\n"),
    "honors": lambda n: filled(n, HEAD + "\nsection: Honors\n",
                               lambda i: f"\naward: Prize {i}\nby: Someone {word(i)}\ndates: 2024\n"),
    "courses": lambda n: filled(n, HEAD + "\nsection: Education\n\nschool: Ellery State College\n"
                                "degree: BS in Biology\ngraduation: May 2027\ncourses: ", lambda i: word(i) + "; ", "x\n"),
}


VERBS = {
    "set": ("set", "draft.resume", "-o", "draft.pdf"),
    "proof": ("proof", "draft.resume"),
}
OTHER_VERBS = {
    "draft": ("set", "draft.resume", "--draft", "--plain", "draft.txt", "-o", "draft.pdf"),
    "mend": ("mend", "--dry-run", "draft.resume"),
    "redline": ("redline", "old.resume", "half.resume"),
    "match": ("match", "draft.resume", "posting.txt"),
    "tailor": ("tailor", "draft.resume", "posting.txt", "-o", "tailored.resume"),
}


def write_drafts(folder, kind, size):
    """The whole draft; half of it, and the same with every seventh bullet another."""
    (folder / "draft.resume").write_text(KINDS[kind](size))
    half = KINDS[kind](size // 2)
    (folder / "half.resume").write_text(half)
    (folder / "old.resume").write_text("\n".join(
        line + " again" if i % 7 == 0 and line.startswith("- ") else line for i, line in enumerate(half.split("\n"))))
    (folder / "tailored.resume").unlink(missing_ok=True)


def seconds(words, folder):
    before = os.times()
    subprocess.run([QUOIN, *words], cwd=folder, capture_output=True, check=False)
    after = os.times()
    return after.children_user + after.children_system - before.children_user - before.children_system


def main():
    require_quoin()
    with tempfile.TemporaryDirectory(prefix="growth-") as made:
        folder = pathlib.Path(made)
        shutil.copy(sorted((ROOT / "samples" / "postings").glob("*.txt"))[0], folder / "posting.txt")
        verbs = VERBS | (OTHER_VERBS if "--all" in sys.argv[1:] else {})
        kinds = [kind for kind in sys.argv[1:] if kind != "--all"] or KINDS
        for kind in kinds:
            for name, verb in verbs.items():
                times = []
                for size in SIZES:
                    write_drafts(folder, kind, size)
                    times.append(seconds(verb, folder))
                print(f"{kind:22} {name:7} {times[0]:6.2f} s {times[1]:6.2f} s  x {times[1] / times[0]:.1f}", flush=True)


if __name__ == "__main__":
    main()
