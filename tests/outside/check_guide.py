#!/usr/bin/python3 -B
"""Every command of the guides in samples/guide is run, in order, as a reader would, on a terminal; what is
shown then is what the guide shows. Pictures are of pages that are there.

    tests/outside/check_guide.py --renew    writes what is shown into the guides, to be read before it stays
"""

import pathlib
import sys
import tempfile

from common import QUOIN, ROOT, SAMPLES, Tally, require_quoin

sys.path.insert(1, str(ROOT / "grammar"))
from guide import ANY_LINES, Reader, is_shown, sessions


def renewed(wanted, real):
    """What is shown, shortened where the guide shortens it."""
    if ANY_LINES not in wanted:
        return real
    at = wanted.index(ANY_LINES)
    after = len(wanted) - at - 1
    return [*real[:at], ANY_LINES, *(real[-after:] if after else [])]


def follow(tally, guide, place):
    """The text of the guide with what was shown in it."""
    text = guide.read_text(encoding="utf-8")
    lines = text.split("\n")
    folder = place / guide.stem
    folder.mkdir()
    new = []  # (block, lines)
    for block, shown in Reader(QUOIN, SAMPLES, folder).follow(text):
        where = f"{guide.name}:{block.line}"
        if block.kind == "picture":
            tally.check(len(block.lines[0].split()) >= 8, f"{where}: the picture is told in words", block.lines)
            tally.check(block.name.endswith(".png"), f"{where}: it is a picture", block.name)
            continue
        if shown is None:
            continue
        told = []
        for (command, wanted), real in zip(sessions(block), shown):
            joined = "\n    ".join(real)
            tally.check(is_shown(wanted, real), f"{where}: {command}", f"shows\n    {joined}")
            tally.check("internal error" not in joined and "not found" not in joined, f"{where}: {command}", joined)
            told += [f"$ {command}", *(wanted if is_shown(wanted, real) else renewed(wanted, real))]
        new.append((block, told))
    for block, told in reversed(new):
        lines[block.line - 1:block.line - 1 + len(block.lines)] = told
    return "\n".join(lines)


def main():
    require_quoin()
    tally = Tally()
    for guide in sorted((SAMPLES / "guide").glob("*.md")):
        with tempfile.TemporaryDirectory(prefix="outside-") as place:
            told = follow(tally, guide, pathlib.Path(place).resolve())
        if "--renew" in sys.argv:
            guide.write_text(told, encoding="utf-8")
    tally.finish()


if __name__ == "__main__":
    main()
