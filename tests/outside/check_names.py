#!/usr/bin/env python3
"""A file's name cannot say what quoin says: of one that holds a line end, what every verb prints about it
stays on one line, on standard output and on standard error alike.
"""
import os
import pathlib
import shutil
import subprocess
import tempfile

from common import QUOIN, SAMPLES, Tally, require_quoin

FORGED = "other.resume: ready"
NAME = f"x.resume: ready\n{FORGED}\ny"
DRAFT, OLD, POSTING, GONE = f"{NAME}.resume", f"{NAME}.txt", f"{NAME} posting.txt", f"{NAME} gone.resume"

CASES = [("set", DRAFT, "-o", "out.pdf"), ("set", DRAFT, "-o", "out.pdf", "--explain"), ("set", DRAFT, "--deps", "out.d"),
         ("set", DRAFT, "-o", f"{NAME}/none.pdf"), ("set", DRAFT, "-o", DRAFT), ("set", GONE), ("set", "broken" + DRAFT),
         ("proof", DRAFT), ("proof", DRAFT, "--summary"), ("proof", DRAFT, "--roster"), ("proof", GONE), ("proof", DRAFT, "--marked", DRAFT),
         ("mend", DRAFT, "--dry-run"), ("mend", GONE), ("mend", DRAFT), ("glance", DRAFT), ("glance", GONE), ("scan", f"{NAME}.pdf"),
         ("scan", GONE), ("scan", DRAFT), ("posting", POSTING), ("posting", GONE), ("match", DRAFT, POSTING), ("match", DRAFT, GONE),
         ("tailor", DRAFT, POSTING, "-o", f"{NAME} out.resume", "--explain"), ("begin", "--from", OLD, "-o", "begun.resume"),
         ("begin", "--from", OLD, "-o", f"{NAME} begun.resume"), ("begin", "--from", GONE, "-o", "none.resume"), ("begin", "-o", DRAFT),
         ("redline", DRAFT, "other.resume"), ("redline", "other.resume", DRAFT), ("redline", GONE, DRAFT), ("redline", DRAFT),
         ("caseload", "."), ("caseload", ".", "--format", "json"), ("caseload", GONE), ("caseload", ".", "--report", DRAFT),
         ("themes", "--specimen", f"{NAME}.theme"), ("set", DRAFT, "--theme", f"{NAME}.theme"), (NAME,), ("set", DRAFT, f"--{NAME}"),
         ("set", DRAFT, NAME, "-o", NAME), ("help", NAME), ("checks", NAME)]


def make_folder(folder):
    shutil.copy(SAMPLES / "first-draft.resume", folder / DRAFT)
    shutil.copy(SAMPLES / "nursing.resume", folder / "other.resume")
    (folder / f"broken{DRAFT}").write_text("nam: Juniper Castellane\n")
    shutil.copy(sorted((SAMPLES / "postings").glob("*.txt"))[0], folder / POSTING)
    (folder / OLD).write_text("Juniper Castellane\n\nEXPERIENCE\nAssistant, Ellery State College    2024\n- Counted seals\n")
    subprocess.run([QUOIN, "set", "other.resume", "-o", f"{NAME}.pdf"], cwd=folder, check=True, capture_output=True)


def check_watched(tally, folder):
    watching = subprocess.Popen([QUOIN, "set", "--watch", DRAFT, "-o", "watched.pdf"], cwd=folder, text=True,
                                stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
    line = watching.stdout.readline()
    watching.terminate()
    watching.communicate()
    tally.check("<U+000A>" in line, "set --watch", line)


def main():
    require_quoin()
    tally = Tally()
    for words in CASES:
        with tempfile.TemporaryDirectory() as place:
            folder = pathlib.Path(place)
            make_folder(folder)
            done = subprocess.run([QUOIN, *words], cwd=folder, capture_output=True, text=True,
                                  env={**os.environ, "XDG_CACHE_HOME": str(folder / "cache")}, stdin=subprocess.DEVNULL)
            said = done.stdout + done.stderr
            forged = [line for line in said.split("\n") if line.startswith(FORGED)]
            tally.check(not forged and done.returncode >= 0, f"quoin {' '.join(words)!r}", said[:400])
    with tempfile.TemporaryDirectory() as place:
        make_folder(pathlib.Path(place))
        check_watched(tally, pathlib.Path(place))
    tally.finish()


if __name__ == "__main__":
    main()
