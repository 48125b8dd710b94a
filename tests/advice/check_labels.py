#!/usr/bin/python3
"""Checks that the labelled bullets and the tables beside this file are well formed, and counts them.

The labels themselves are a judgement, which README.md explains; this looks at their form only.
"""

import collections
import pathlib
import sys

HERE = pathlib.Path(__file__).resolve().parent
LABELS = ["tense", "action-verb", "weak-opening", "first-person", "passive", "figure"]
HARD = "bullets_hard_half.tsv"  # more slips and look-alikes than a résumé has
HALVES = ["bullets_tuning.tsv", "bullets_held_back.tsv", HARD]
LEAST_BULLETS, LEAST_POSITIVES, LEAST_ROWS = 240, 25, 40
MOST_SHARED = 0.65  # of the words of two bullets in different halves; more is a paraphrase

# Per table: columns, the column of the verdict, the verdicts of each kind.
TABLES = {
    "contacts.tsv": (5, 3, {
        "email-form": {"ok", "malformed"}, "email-tone": {"professional", "unprofessional"},
        "phone": {"ok", "malformed"}, "phone-pair": {"alike", "mixed"},
        "link": {"clean", "unclean"}, "address": {"ok", "too-much"}}),
    "degrees.tsv": (5, 2, {
        "degree": {"well-formed", "malformed", "type-missing"},
        "gpa": {"show", "may-show", "leave-out", "over-scale", "scale-missing", "decimals",
                "unreadable"}}),
    "dates.tsv": (5, 3, {
        "range": {"ok", "end-before-start", "day-given", "missing", "unreadable"},
        "graduation": {"ok", "expected-in-past", "missing", "month-missing", "month-missing,expected-in-past"}, "updated": {"ok", "not-updated"},
        "present-updated": {"ok", "stale-present"}, "order": {"ok", "out-of-order"},
        "forms": {"alike", "mixed"}}),
}

tally = collections.Counter()


def check(holds, complaint):
    tally["passed" if holds else "failed"] += 1
    if not holds:
        print("FAILED", complaint)


def rows(name):
    """(place, columns) of each line after the header."""
    lines = (HERE / name).read_text(encoding="utf-8").split("\n")
    check(lines[0].startswith("# "), f"{name}:1: no header line")
    check(lines[-1] == "", f"{name}: last line is not ended")
    return [(f"{name}:{n}", line.split("\t")) for n, line in enumerate(lines[1:-1], 2)]


def trimmed(columns):
    return all(column and column == column.strip() and "  " not in column for column in columns)


def read_half(name):
    bullets, counts = [], collections.Counter()
    for place, columns in rows(name):
        well = len(columns) == 3 and trimmed(columns)
        check(well, f"{place}: not three trimmed columns")
        if not well:
            continue
        context, text, given = columns
        labels = [] if given == "-" else given.split(",")
        check(context in ("current", "ended"), f"{place}: context '{context}'")
        check(labels == [label for label in LABELS if label in labels],
              f"{place}: '{given}' holds an unknown label, one twice, or is out of order")
        check(not text.startswith("-"), f"{place}: the bullet's mark stands in its text")
        bullets.append((place, text))
        counts.update(labels or ["clean"])
        counts[context] += 1
    return bullets, counts


def check_counts(name, total, counts):
    check(total >= LEAST_BULLETS, f"{name}: {total} bullets")
    for label in LABELS:
        check(counts[label] >= LEAST_POSITIVES, f"{name}: {counts[label]} of '{label}'")
    least = 0.15 if name == HARD else 0.30
    check(least <= counts["clean"] / total <= 0.45, f"{name}: {counts['clean']} of {total} clean")
    shown = ", ".join(f"{counts[key]} {key}" for key in ["current", "ended", "clean", *LABELS])
    print(f"{name}: {total} bullets; {shown}")


def check_apart(tuning, held_back):
    """No bullet twice, and none in one half that paraphrases one in the other."""
    seen = collections.Counter(text.casefold() for _, text in tuning + held_back)
    for text, times in seen.items():
        check(times == 1, f"'{text}' stands {times} times")
    words = {text: set(text.casefold().split()) for _, text in tuning + held_back}
    for place, text in held_back:
        here = words[text]
        shared, other = max((len(here & words[t]) / len(here | words[t]), p) for p, t in tuning)
        check(shared <= MOST_SHARED, f"{place}: shares {shared:.2f} of its words with {other}")


def check_table(name, width, verdict_at, kinds):
    counts, seen = collections.Counter(), set()
    for place, columns in rows(name):
        well = len(columns) == width and trimmed(columns)
        check(well, f"{place}: not {width} trimmed columns")
        if not well:
            continue
        kind, value, verdict = columns[0], columns[1], columns[verdict_at]
        check(kind in kinds, f"{place}: kind '{kind}'")
        check(set(verdict.split(",")) <= kinds.get(kind, set()), f"{place}: verdict '{verdict}'")
        check((kind, value) not in seen, f"{place}: '{value}' twice")
        seen.add((kind, value))
        counts[kind] += 1
    check(counts.total() >= LEAST_ROWS, f"{name}: {counts.total()} rows")
    print(f"{name}: {counts.total()} rows; " + ", ".join(f"{n} {k}" for k, n in counts.items()))


def main():
    halves = []
    for name in HALVES:
        bullets, counts = read_half(name)
        check_counts(name, len(bullets), counts)
        halves.append(bullets)
    tuning, held_back, hard = halves
    check_apart(tuning, held_back)
    check_apart(tuning, hard)
    for name, (width, verdict_at, kinds) in TABLES.items():
        check_table(name, width, verdict_at, kinds)
    print(f"{tally['passed']} passed, {tally['failed']} failed")
    return 1 if tally["failed"] else 0


if __name__ == "__main__":
    sys.exit(main())
