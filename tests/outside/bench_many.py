#!/usr/bin/python3 -B
"""How long one call of `quoin set` takes for 250, 500 and 1000 résumés, and on how many cores.

    tests/outside/bench_many.py [N...]

Each N is set by one process; its time by the wall, the time of all its cores together, their ratio and
the time for each résumé are printed. The last is to stay the same as N grows, and the ratio to come
near the number of cores. This measures, and passes if every PDF is there: speed is no pass or fail.
"""

import os
import pathlib
import resource
import subprocess
import sys
import tempfile
import time

from common import QUOIN, SAMPLES, Tally, require_quoin


def copies(folder, count):
    texts = [path.read_text(encoding="utf-8") for path in sorted(SAMPLES.glob("*.resume"))]
    texts = [text for text in texts if "\ninclude:" not in text]
    paths = []
    for number in range(count):
        path = folder / f"student-{number:04}.resume"
        path.write_text(texts[number % len(texts)], encoding="utf-8")
        paths.append(path)
    return paths


def main():
    require_quoin()
    tally = Tally()
    print(f"{os.cpu_count()} cores")
    for count in [int(word) for word in sys.argv[1:]] or [250, 500, 1000]:
        with tempfile.TemporaryDirectory(prefix="outside-") as name:
            folder = pathlib.Path(name)
            paths = copies(folder, count)
            out = folder / "out"
            out.mkdir()
            before = resource.getrusage(resource.RUSAGE_CHILDREN)
            start = time.perf_counter()
            subprocess.run([QUOIN, "set", *paths, "-o", out], stderr=subprocess.DEVNULL, check=False)
            wall = time.perf_counter() - start
            after = resource.getrusage(resource.RUSAGE_CHILDREN)
            cores = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
            tally.check(len(list(out.glob("*.pdf"))) == count, f"{count} PDFs are there")
            print(f"{count:5} résumés   wall {wall:6.2f} s   cores {cores:6.2f} s   ratio {cores / wall:4.2f}"
                  f"   {1000 * wall / count:6.2f} ms each")
    tally.finish()


if __name__ == "__main__":
    main()
