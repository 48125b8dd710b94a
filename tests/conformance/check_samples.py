#!/usr/bin/python3 -B
"""Every sample, on every paper, for every stage and in every theme, conforms to PDF/UA-1 and PDF/A-2a.

Each sample is set on both papers for each stage in the house theme, and on both papers in each other
theme, and pdf_conformance.py judges each PDF. No condition may fail.
"""

import concurrent.futures
import os
import pathlib
import re
import shutil
import sys
import tempfile

sys.path.insert(1, str(pathlib.Path(__file__).resolve().parents[1] / "outside"))
from common import SAMPLES, THEMES, Tally, builds, quoin_set, require_quoin
from pdf_conformance import failures
from theme_literals import HOUSE_THEME

PAPERS = ("letter", "a4")
STAGES = ("undergraduate", "recent graduate", "graduate applicant", "experienced", "academic")
DOES_NOT_FIT = 3  # exit status


def at_stage(source, stage):
    """A copy of the source, beside it, that states this stage."""
    text = source.read_text(encoding="utf-8")
    stated, count = re.subn(r"^stage:.*$", f"stage: {stage}", text, flags=re.M)
    copy = source.with_name(f"{source.stem}-{stage.replace(' ', '-')}.resume")
    copy.write_text(stated if count else f"stage: {stage}\n{text}", encoding="utf-8")
    return copy


def cases(samples):
    for name, source, tags in builds():
        here = samples / source.name
        for paper in PAPERS:
            for stage in STAGES:
                yield f"{name}, {paper}, {stage}", at_stage(here, stage), tags, paper, HOUSE_THEME
            for theme in sorted(path.stem for path in THEMES.glob("*.theme")):
                if theme != HOUSE_THEME:
                    yield f"{name}, {paper}, {theme}", here, tags, paper, theme


def judge(numbered):
    """(name, exit status and messages, failed conditions or None where nothing was to be written)"""
    folder, number, (name, source, tags, paper, theme) = numbered
    pdf = folder / f"{number}.pdf"
    done = quoin_set(source, pdf, tags, ["--paper", paper, "--theme", theme], text=True)
    found = failures(pdf.read_bytes()) if done.returncode == 0 else None
    return name, done.returncode, done.stderr.strip(), found


def main():
    tally, unfit = Tally(), 0
    require_quoin()
    with tempfile.TemporaryDirectory(prefix="outside-") as folder, \
            concurrent.futures.ProcessPoolExecutor(os.cpu_count()) as pool:
        folder = pathlib.Path(folder)
        shutil.copytree(SAMPLES, folder / "samples", ignore=shutil.ignore_patterns("*.pdf", "*.d"))
        numbered = ((folder, number, case) for number, case in enumerate(cases(folder / "samples")))
        for name, status, messages, found in pool.map(judge, numbered, chunksize=4):
            if status == DOES_NOT_FIT:
                unfit += 1
            elif tally.check(status == 0, f"set {name}", messages):
                tally.check(not found, name, "; ".join(" ".join(one) for one in found or []))
    print(f"{unfit} do not fit their page, and were not written")
    tally.finish()


if __name__ == "__main__":
    main()
