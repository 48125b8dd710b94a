#!/usr/bin/python3 -B
"""What README.md shows is what happens: its first résumé is set, its slip is told as it says, and the
marine biologist's sample is as much too long as it says.
"""

import pathlib
import re
import shutil
import tempfile
import textwrap

from common import QUOIN, ROOT, SAMPLES, Tally, require_quoin, run

README = (ROOT / "README.md").read_text()


def block_with(first_line):
    """The indented block that begins so."""
    found = re.search(rf"^    {re.escape(first_line)}.*\n(?:(?:    .*)?\n)*", README, re.M)
    return textwrap.dedent(found.group()).strip() + "\n"


def quoin_in(folder, *words):
    return run([QUOIN, *words], cwd=folder, text=True)


def main():
    require_quoin()
    tally = Tally()
    with tempfile.TemporaryDirectory(prefix="outside-") as name:
        folder = pathlib.Path(name)
        draft = folder / "draft.resume"
        first = block_with("name: Ottoline Brandt")
        draft.write_text(first)
        done = quoin_in(folder, "set", "draft.resume")
        tally.check(done.returncode == 0 and not done.stderr, "the first résumé is set", done.stderr)
        tally.check((folder / "draft.pdf").exists(), "the first résumé's page is draft.pdf")

        draft.write_text(first.replace("role:", "rol:"))
        done = quoin_in(folder, "set", "draft.resume")
        said = block_with("draft.resume:15:1: error:")
        tally.check(done.stderr == said, "the slip is told", f"{done.stderr!r} is not {said!r}")

        shutil.copytree(SAMPLES / "shared", folder / "shared")
        sample = (SAMPLES / "marine-biology.resume").read_text()
        size = re.search(r"asked for at ([\d.]+) pt", README).group(1)
        draft.write_text(sample.replace("\nlink:", f"\nsize: {size}\nmargins: 1\nlink:", 1))
        done = quoin_in(folder, "set", "draft.resume")
        said = block_with("draft.resume: error:")
        tally.check(done.returncode == 3, "what is too long has exit status 3", done.returncode)
        tally.check(done.stderr == said, "the cuts are those of the README", done.stderr)
    tally.finish()


main()
