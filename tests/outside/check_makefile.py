#!/usr/bin/env python3
"""samples/Makefile, copied beside one résumé, makes its page again when it is asked to; names that
GNU make or the shell would read as something else are refused, and run nothing.
"""
import pathlib
import shutil
import tempfile

from common import QUOIN, SAMPLES, require_quoin, run

# names of files, and whether make goes on
NAMES = [("draft.resume", True), ("-x.resume", True), ("--for.resume", True), ("my-draft_2.resume", True), ("my draft.resume", False),
         ("a`touch ran`.resume", False), ("a$(touch ran).resume", False), ("a;touch ran.resume", False),
         ("a'b.resume", False), ('a"b.resume', False), ("a:b.resume", False), ("a%b.resume", False),
         ("a&b.resume", False), ("a$b.resume", False), ("a\\b.resume", False)]


def make(folder, *words):
    return run(["make", "-s", f"QUOIN={QUOIN}", *words], cwd=folder, text=True)


def check_name(name, goes):
    with tempfile.TemporaryDirectory() as place:
        folder = pathlib.Path(place)
        shutil.copy(SAMPLES / "Makefile", folder)
        shutil.copy(SAMPLES / "first-draft.resume", folder / name)
        done = make(folder)
        assert (done.returncode == 0) == goes, (name, done.stderr)
        assert not (folder / "ran").exists(), f"{name}: a command in the name was run"
        if not goes:
            assert "rename" in done.stderr, (name, done.stderr)
            return
        pdf = folder / name.replace(".resume", ".pdf")
        first = pdf.stat().st_mtime_ns
        assert make(folder).returncode == 0 and pdf.stat().st_mtime_ns == first, f"{name}: made twice"
        for rule in ("proof", "ready"):
            assert name in make(folder, rule).stdout, (rule, name)
        make(folder, "marked")
        assert pdf.with_suffix(".marked.pdf").exists(), name
        assert make(folder, "clean").returncode == 0
        assert {path.name for path in folder.iterdir()} == {"Makefile", name}


def check_variants():
    with tempfile.TemporaryDirectory() as place:
        folder = pathlib.Path(place)
        for name in ("Makefile", "environmental-chemistry.resume"):
            shutil.copy(SAMPLES / name, folder)
        assert make(folder, "variants=environmental-chemistry.lab").returncode == 0
        assert (folder / "environmental-chemistry.lab.pdf").exists()


def check_postings():
    with tempfile.TemporaryDirectory() as place:
        folder = pathlib.Path(place)
        shutil.copy(SAMPLES / "Makefile", folder)
        for name in ("everything", "postings"):
            shutil.copytree(SAMPLES / name, folder / name)
        done = make(folder, "marine-biology.for-field-technician.pdf")
        pdf = folder / "marine-biology.for-field-technician.pdf"
        assert done.returncode == 0 and pdf.exists(), done.stderr
        first = pdf.stat().st_mtime_ns
        assert make(folder, pdf.name).returncode == 0 and pdf.stat().st_mtime_ns == first, "made twice"
        posting = folder / "postings" / "field-technician.txt"
        posting.write_text(posting.read_text() + "\nYou will also count seals.\n")
        assert make(folder, pdf.name).returncode == 0 and pdf.stat().st_mtime_ns != first, "not made anew"
        assert make(folder, "clean").returncode == 0 and not list(folder.glob("*.pdf"))
        posting.rename(posting.with_name("a$(touch ran).txt"))
        assert make(folder).returncode != 0 and not (folder / "ran").exists()


if __name__ == "__main__":
    require_quoin()
    for each in NAMES:
        check_name(*each)
    check_variants()
    check_postings()
    print(f"samples/Makefile: {len(NAMES)} names, a variant, and a posting")
