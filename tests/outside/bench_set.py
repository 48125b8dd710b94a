#!/usr/bin/python3 -B
"""How long `quoin set` takes from nothing to a PDF, beside a browser printing the same words.

    tests/outside/bench_set.py [N]       N whole processes of each, 25 of quoin by default

The median and the spread of whole processes are printed, and their ratio. A browser is what a student
without quoin prints an HTML page with; it does far more, so the ratio says what the wait feels like,
not which program is better made. Without chromium that part is left out. This measures, and passes if
every process did its work: speed is no pass or fail here.
"""

import html
import pathlib
import statistics
import sys
import tempfile
import time

import expected_words
from common import SAMPLES, Tally, has, quoin_set, require_quoin, run

SAMPLE = SAMPLES / "marine-biology.resume"
FLAGS = ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
         "--disable-component-update", "--disable-sync"]


def timed(work, count):
    times = []
    for _ in range(count):
        start = time.perf_counter()
        done = work()
        times.append(1000 * (time.perf_counter() - start))
        if done.returncode != 0:
            return None
    return times


def as_html(source):
    """The same words, a paragraph for each source line."""
    lines, place = [], None
    for word in expected_words.read(source).words:
        if word.place != place:
            lines.append([])
            place = word.place
        lines[-1].append(word.text or "•")
    body = "\n".join(f"<p>{html.escape(' '.join(line))}</p>" for line in lines)
    style = "body{font:10.5pt serif;margin:0}p{margin:0 0 2pt}@page{size:letter;margin:.75in}"
    return f"<!doctype html><meta charset=utf-8><title>Résumé</title><style>{style}</style>\n{body}\n"


def report(name, times):
    times = sorted(times)
    print(f"{name:12} median {statistics.median(times):8.1f} ms   fastest {times[0]:8.1f}"
          f"   slowest {times[-1]:8.1f}   of {len(times)}")
    return statistics.median(times)


def print_in_browser(folder, page, run_number):
    # a fresh profile each time, or the second start finds what the first one made
    return run(["chromium", *FLAGS, f"--user-data-dir={folder}/profile-{run_number}",
                f"--print-to-pdf={folder}/page.pdf", page])


def main():
    require_quoin()
    tally = Tally()
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 25
    with tempfile.TemporaryDirectory(prefix="outside-") as name:
        folder = pathlib.Path(name)
        times = timed(lambda: quoin_set(SAMPLE, folder / "out.pdf"), count)
        if not tally.check(times, "quoin sets the sample"):
            tally.finish()
        ours = report("quoin set", times)
        if not has("chromium"):
            print("chromium is not here: no comparison")
            tally.finish()
        page = folder / "page.html"
        page.write_text(as_html(SAMPLE), encoding="utf-8")
        numbers = iter(range(count))
        times = timed(lambda: print_in_browser(folder, page, next(numbers)), max(3, count // 5))
        if tally.check(times and (folder / "page.pdf").exists(), "chromium prints the page"):
            print(f"ratio        {report('chromium', times) / ours:.1f}")
    tally.finish()


if __name__ == "__main__":
    main()
