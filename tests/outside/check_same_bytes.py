#!/usr/bin/python3 -B
"""Same source, same bytes: whoever builds it, wherever, whenever.

Each sample is set a second time from a copy in another folder, with another working directory, time
zone, locale, user name, home and temporary folder, after the clock has moved on, and the two files
must be equal byte for byte. SOURCE_DATE_EPOCH (reproducible-builds.org, version 1.1) must change the
date in the file to the one it states, and nothing a reader sees.
"""

import os
import pathlib
import shutil
import tempfile
import time

from common import SAMPLES, SamplePdfs, Tally, quoin_set, run

ELSEWHERE = {
    "TZ": "Pacific/Chatham",  # 45 minutes off the hour, and a day ahead of much of the world
    "LANG": "tr_TR.UTF-8",  # its capital of i is not I
    "LC_ALL": "de_DE.UTF-8",  # its decimal sign is a comma
    "USER": "someone-else",
    "LOGNAME": "someone-else",
    "HOSTNAME": "another-machine",
}


def elsewhere(folder):
    other = {**os.environ, **ELSEWHERE, "HOME": str(folder), "TMPDIR": str(folder)}
    other.pop("SOURCE_DATE_EPOCH", None)
    return other


def first_difference(a, b):
    at = next((i for i, (x, y) in enumerate(zip(a, b)) if x != y), min(len(a), len(b)))
    return f"{len(a)} and {len(b)} bytes, first difference at {at}: {a[at:at + 40]!r}, {b[at:at + 40]!r}"


def check_epoch(tally, name, source, tags, folder, environment):
    pdf = folder / f"{name}.epoch.pdf"
    stated = 981173106  # 2001-02-03 04:05:06 UTC
    quoin_set(source, pdf, tags, env={**environment, "SOURCE_DATE_EPOCH": str(stated)})
    dates = run(["pdfinfo", "-isodates", pdf], text=True, env={**os.environ, "TZ": "UTC"}).stdout
    found = [row.split(maxsplit=1)[1] for row in dates.splitlines() if "Date:" in row]
    tally.check(found and all(date.startswith("2001-02-03T04:05:06") for date in found),
                f"SOURCE_DATE_EPOCH of {name}", f"found {found}")


def main():
    tally = Tally()
    samples = SamplePdfs(tally)
    time.sleep(1.1)  # a clock in seconds, if one were used, would tell
    with tempfile.TemporaryDirectory(prefix="quite another place ") as name_of_folder:
        folder = pathlib.Path(name_of_folder)
        copies = folder / "copies"
        shutil.copytree(SAMPLES, copies, ignore=shutil.ignore_patterns("*.pdf", "*.d"))
        environment = elsewhere(folder)
        for name, source, tags, pdf in samples:
            again = folder / f"{name}.pdf"
            done = quoin_set(source.name, again, tags, cwd=copies, env=environment, text=True)
            if not tally.check(done.returncode == 0, f"set {name} elsewhere", done.stderr):
                continue
            a, b = pdf.read_bytes(), again.read_bytes()
            tally.check(a == b, f"bytes of {name}", first_difference(a, b) if a != b else "")
            check_epoch(tally, name, copies / source.name, tags, folder, environment)
    tally.finish()


if __name__ == "__main__":
    main()
