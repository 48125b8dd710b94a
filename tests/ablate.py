#!/usr/bin/python3
"""Leaves each list of words out, one at a time, and says what quoin makes of the labelled material.

usage: ablate.py [ROOM[/FILE]...]        (every room that has words/, unless told)

A list without which no finding on a labelled page or bullet changes and no term of a labelled
posting, and which no unit test misses either, is no help and is to be taken out. It asks the unit
tests of build/, made with -DQUOIN_TESTS=ON, and `cmake --build build --target quoin_without`, to
both of which QUOIN_WITHOUT=ROOM/LIST names the list. The bullets held back are left alone.
"""

import concurrent.futures
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[1]
BIN = ROOT / "build/bin"
OPENING = re.compile(r"^\[([a-z_]+)", re.M)


def page_of(bullets):
    """A source whose entries hold the labelled bullets, those of ended jobs apart."""
    lines = ["name: Ottoline Brandt", "email: o.brandt@ellerystate.example",
             "phone: (360) 555-0142", "", "section: Experience", ""]
    for context, dates in (("ended", "May 2024 – Aug 2025"), ("current", "Sep 2025 – present")):
        texts = [text for kind, text in bullets if kind == context]
        for i in range(0, len(texts), 5):
            lines += ["role: Assistant", "employer: Skerry House", f"dates: {dates}"]
            lines += [f"- {text}" for text in texts[i:i + 5]] + [""]
    return "\n".join(lines)


def labelled_pages(folder):
    rows = [line.split("\t")[:2] for line in
            (ROOT / "tests/advice/bullets_tuning.tsv").read_text().splitlines() if "\t" in line]
    for number in range(0, len(rows), 200):
        (folder / f"bullets{number}.resume").write_text(page_of(rows[number:number + 200]))
    return sorted([*folder.glob("*.resume"), *(ROOT / "tests/advice/pages").glob("*/*.resume"),
                   *(ROOT / "tests/first_hour").glob("*.resume")])


def findings(without, pages):
    files = run(without, "quoin_without", "proof", "--format", "json", *pages)
    return {(file["file"], finding["place"]["line"], finding["check"], finding["text"],
             finding["suggestion"])
            for file in files["files"] for finding in file["findings"]}


def terms(without, postings):
    files = run(without, "quoin_without", "posting", "--format", "json", *postings)
    return {(file["file"], json.dumps(term)) for file in files["files"] for term in file["terms"]}


class Labelled:
    """What is said of all that is labelled, by a batch of files: most lists show in the first."""

    def __init__(self, folder):
        postings = sorted((ROOT / "tests/postings/labelled").glob("*/*.txt"))
        self.batches = [(say, files[i::count], say("", files[i::count]))
                        for say, files, count in ((findings, labelled_pages(folder), 5),
                                                  (terms, postings, 2))
                        for i in range(count)]

    def changed(self, without):
        return next(filter(None, (len(said ^ say(without, files))
                                  for say, files, said in self.in_order(without))), 0)

    def in_order(self, without):
        first = terms if without.startswith("postings/") else findings
        return sorted(self.batches, key=lambda batch: batch[0] != first)


def run(without, program, *words):
    done = subprocess.run([BIN / program, *words], capture_output=True, text=True, check=False,
                          cwd=ROOT, env={**os.environ, "QUOIN_WITHOUT": without})
    return json.loads(done.stdout)


def failing_tests(without, *filters):
    done = subprocess.run([BIN / "quoin_tests", "-m", "-aa=1", *filters,
                           "-tce=*200 résumés*,*grid*,hostile*,every word of every list*"],
                          capture_output=True, text=True, check=False, cwd=ROOT,
                          env={**os.environ, "QUOIN_WITHOUT": without})
    told = re.split(r"^=+$", done.stdout, flags=re.M)  # by test; a test may only say something
    failed = [re.search(r"^TEST CASE: +(.*)$", one, re.M)[1] for one in told
              if "ERROR:" in one and "TEST CASE:" in one]
    return failed or ["(ended early)"] * (done.returncode != 0)


def judged(labelled, room, name):
    without = f"{room}/{name}"
    if changed := labelled.changed(without):
        return f"{changed} said otherwise"
    own = f"*/tests/{room}/*"
    failed = failing_tests(without, f"-sf={own}") or failing_tests(without, f"-sfe={own}")
    return f"the test '{failed[0]}' fails" if failed else "NOTHING changes"


def lists_of(rooms):
    for room, _, file in (one.partition("/") for one in rooms):
        for source in sorted((ROOT / f"compiler/{room}/words").glob(f"{file or '*'}.txt")):
            for name in OPENING.findall(source.read_text()):
                yield room, source.name, name


def main(rooms):
    with tempfile.TemporaryDirectory() as folder, \
            concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        labelled = Labelled(pathlib.Path(folder))
        lists = list(lists_of(rooms))
        verdicts = pool.map(lambda one: judged(labelled, one[0], one[2]), lists)
        for (room, file, name), verdict in zip(lists, verdicts):
            print(f"{room}/{file}: {name}: {verdict}", flush=True)


if __name__ == "__main__":
    main(sys.argv[1:] or sorted(path.parent.name for path in ROOT.glob("compiler/*/words")))
