#!/usr/bin/env python3
"""`quoin set --watch`: the PDF is set anew as the résumé, a file that it takes in, and its theme change,
written in place or, as editors save, beside and renamed. One line is told each time, an error among
them, and while a résumé is saved again and again qpdf never reads half a PDF.
"""
import os
import pathlib
import subprocess
import tempfile
import time

from common import PATIENCE, QUOIN, THEMES, require_quoin, run

HEAD = "name: Ottoline Brandt\ntheme: ./own.theme\ninclude: parts/honors.resume\n"
HONORS = "section: Honors and Awards\n\naward: Tide Prize {}\ndates: May 2026\n"


class Watched:
    def __init__(self, folder):
        self.folder = pathlib.Path(folder)
        (self.folder / "parts").mkdir()
        self.write("draft.resume", HEAD)
        self.write("parts/honors.resume", HONORS.format(0))
        self.write("own.theme", (THEMES / "turnstone.theme").read_text())
        self.process = subprocess.Popen([QUOIN, "set", "--watch", "draft.resume"], cwd=folder,
                                        stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
        os.set_blocking(self.process.stdout.fileno(), False)

    def write(self, name, text):
        (self.folder / name).write_text(text)

    def save(self, name, text):
        beside = self.folder / (name + "~")
        beside.write_text(text)
        beside.rename(self.folder / name)

    def line(self):
        until = time.monotonic() + PATIENCE
        while time.monotonic() < until:
            if line := self.process.stdout.readline():
                return line.rstrip("\n")
            time.sleep(0.01)
        raise AssertionError("nothing was told")

    def bytes(self):
        return (self.folder / "draft.pdf").read_bytes()


def main():
    require_quoin()
    with tempfile.TemporaryDirectory() as folder:
        watched = Watched(folder)
        assert watched.line().startswith("draft.resume: 1 page, "), "the first page is told"
        steps = [  # how, what, what is told then, whether the PDF is another
            (watched.write, "draft.resume", HEAD + "phone: (360) 555-0142\n", "1 page", True),
            (watched.save, "draft.resume", HEAD + "phone: (360) 555-0143\n", "1 page", True),
            (watched.save, "parts/honors.resume", HONORS.format(1), "1 page", True),
            (watched.save, "draft.resume", HEAD + "phon: x\n", "1 error", False),
            (watched.save, "draft.resume", HEAD, "1 page", True),
            (watched.save, "own.theme",
             (THEMES / "sanderling.theme").read_text(), "1 page", True),
        ]
        for how, name, text, told, changes in steps:
            before = watched.bytes()
            how(name, text)
            line = watched.line()
            assert told in line and line.startswith("draft.resume: "), (name, line)
            assert (watched.bytes() != before) == changes, (name, told)
        for number in range(20):
            watched.save("parts/honors.resume", HONORS.format(number))
            time.sleep(0.02)
            done = run(["qpdf", "--check", watched.folder / "draft.pdf"])
            assert done.returncode == 0, done.stderr
        watched.process.terminate()
        watched.process.wait(PATIENCE)
        assert not [name for name in os.listdir(folder) if name.startswith(".")], "nothing is left"
        stdin = run([QUOIN, "set", "--watch", "-"], text=True)
        assert stdin.returncode == 2 and "name a file to --watch" in stdin.stderr, stdin.stderr
    print(f"{len(steps) + 20} passed, 0 failed")


main()
