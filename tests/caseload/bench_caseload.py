#!/usr/bin/env python3
"""How long `quoin caseload` takes, and how much memory, as a folder grows.

    bench_caseload.py [COUNT]...    100, 1000 and 10000 without one

QUOIN names the program. The folders are made anew by make_caseload.py, with their history in git."""
import os
import pathlib
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parents[2]
QUOIN = os.environ.get("QUOIN", ROOT / "build" / "bin" / "quoin")


def run(folder, cache):
    """Seconds by the wall and of the cores, and the most memory in MiB."""
    settings = {**os.environ, "XDG_CACHE_HOME": str(cache), "SOURCE_DATE_EPOCH": "1795953600"}
    begin = time.monotonic()
    with subprocess.Popen([QUOIN, "caseload", folder, "--first", "1"], env=settings,
                          stdout=subprocess.DEVNULL) as child:
        _, status, used = os.wait4(child.pid, 0)
        child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode != 0:
        sys.exit(f"quoin caseload: exit status {child.returncode}")
    return time.monotonic() - begin, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024


def show(count, what, figures):
    wall, cores, memory = figures
    print(f"{count:6} {what:20} {wall:7.2f} s wall {cores:7.2f} s of the cores {memory:6.0f} MiB "
          f"{1000 * cores / count:6.2f} ms each", flush=True)


def change_some(folder):
    for path in sorted(folder.rglob("*.resume"))[::100]:
        path.write_text(path.read_text(encoding="utf-8").replace("Field Methods", "Rock Methods"),
                        encoding="utf-8")


def main():
    for count in [int(word) for word in sys.argv[1:]] or [100, 1000, 10000]:
        with tempfile.TemporaryDirectory() as top:
            folder, cache = pathlib.Path(top) / "students", pathlib.Path(top) / "cache"
            subprocess.run([sys.executable, ROOT / "tests" / "caseload" / "make_caseload.py", folder,
                            str(count)], check=True)
            show(count, "cold", run(folder, cache))
            show(count, "unchanged", run(folder, cache))
            change_some(folder)
            show(count, "one in 100 changed", run(folder, cache))


main()
