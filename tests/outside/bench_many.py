#!/usr/bin/python3 -B
"""How long one call of `quoin set` takes for 250, 500 and 1000 résumés, and on how many cores.

    tests/outside/bench_many.py [N...]

Each N is set by one process; its time by the wall, the time of all its cores together, their ratio and
the time for each résumé are printed. The last is to stay the same as N grows, and the ratio to come
near the number of cores. This measures, and passes if every PDF is there: speed is no pass or fail.

No two are alike: each has the shape of a sample or of a labelled page, and bullets drawn from all of
them, of like length; the same ones every time.
"""

import bisect
import os
import pathlib
import random
import re
import resource
import subprocess
import sys
import tempfile
import time

from common import QUOIN, ROOT, SAMPLES, Tally, require_quoin

PAGES = ROOT / "tests" / "advice" / "pages"
BULLET = re.compile(r"^- .*\n(?:  +\S.*\n)*", re.MULTILINE)  # with the lines that go on


def pages():
    """What any of them takes its shape and its words from."""
    paths = [*SAMPLES.glob("*.resume"), *PAGES.glob("*/*.resume")]
    texts = [path.read_text(encoding="utf-8") for path in sorted(paths)]
    return [text for text in texts if not re.search(r"^(include|theme):", text, re.MULTILINE)]


class Bullets:
    """All there are, by their length, so that one can stand where another of like length stood."""

    def __init__(self, texts):
        self.by_length = sorted((bullet for text in texts for bullet in BULLET.findall(text)),
                                key=lambda bullet: (len(bullet), bullet))
        self.lengths = [len(bullet) for bullet in self.by_length]

    def like(self, bullet, draw):
        near = bisect.bisect(self.lengths, len(bullet)) + draw.randint(-100, 100)
        return self.by_length[max(0, min(near, len(self.by_length) - 1))]


def mixed(text, bullets, names, draw):
    """Of the same shape, with other bullets and another name."""
    text = BULLET.sub(lambda bullet: bullets.like(bullet[0], draw), text)
    name = "name: " + " ".join(draw.choice(part) for part in names)
    return re.sub(r"^name:.*", lambda _: name, text, count=1, flags=re.MULTILINE)


def make_different(folder, count):
    texts = pages()
    bullets = Bullets(texts)
    called = [line.split() for text in texts for line in re.findall(r"^name: *(.*)", text, re.MULTILINE)]
    names = [words[0] for words in called], [words[-1] for words in called]
    draw = random.Random(count)
    paths = []
    for number in range(count):
        path = folder / f"student-{number:04}.resume"
        path.write_text(mixed(texts[number % len(texts)], bullets, names, draw), encoding="utf-8")
        paths.append(path)
    return paths


def main():
    require_quoin()
    tally = Tally()
    print(f"{os.cpu_count()} cores")
    for count in [int(word) for word in sys.argv[1:]] or [250, 500, 1000]:
        with tempfile.TemporaryDirectory(prefix="outside-") as name:
            folder = pathlib.Path(name)
            paths = make_different(folder, count)
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
                  f"   {1000 * wall / count:6.2f} ms each, {1000 * cores / count:6.2f} of a core")
    tally.finish()


if __name__ == "__main__":
    main()
