#!/usr/bin/python3
"""Proves that pdf_conformance.py sees what it says it sees.

Into a PDF that passes, with a list, a link and a bookmark, each condition's fault is put in turn;
the check of that condition must report it.

    pdf_conformance_faults.py GOOD.pdf
"""

import sys

import pdf_a_faults  # these two register their faults
import pdf_ua_faults
from faults import FAULTS, PACKED_FAULTS, RAW_FAULTS, changed
from pdf_conformance import failures
from pdf_ua_conditions import CONDITIONS

assert pdf_a_faults and pdf_ua_faults


def reports(raw, number):
    return number in [failed for failed, _, _ in failures(raw)]


def main(arguments):
    if len(arguments) != 1:
        print(__doc__, file=sys.stderr)
        return 2
    with open(arguments[0], "rb") as file:
        good = file.read()
    for name, raw in (("as given", good), ("rewritten", changed(good, lambda pdf: None))):
        for number, failure, where in failures(raw):
            print(f"the good PDF, {name}, fails {number}: {failure} ({where})")
            return 1
    plain = changed(good, lambda pdf: None)
    missed = sorted({n for n, _, _ in CONDITIONS} - set(FAULTS) - set(RAW_FAULTS) - set(PACKED_FAULTS))
    for number in missed:
        print(f"{number}: no fault is tried")
    tried = [(n, changed(good, change)) for n, changes in FAULTS.items() for change in changes]
    tried += [(n, change(plain)) for n, changes in RAW_FAULTS.items() for change in changes]
    tried += [(n, change(good)) for n, changes in PACKED_FAULTS.items() for change in changes]
    unseen = [number for number, raw in tried if not reports(raw, number)]
    for number in unseen:
        print(f"{number}: its fault is not reported")
    print(f"{len(tried)} faults tried for {len(CONDITIONS)} conditions, "
          f"{len(unseen)} not reported")
    return 1 if missed or unseen else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
