#!/usr/bin/python3
"""Checks PDF files against PDF/UA-1 (ISO 14289-1) and PDF/A-2a (ISO 19005-2).

UA is a failure condition of the Matterhorn Protocol 1.1, A a clause of ISO 19005-2:2011, PDF a
clause of ISO 32000-1:2008.

    pdf_conformance.py FILE...    prints each failed condition; exit status 1 if there is one
    pdf_conformance.py --list     prints the conditions
"""

import sys

import pikepdf

import pdf_a_conditions  # these two register their conditions
import pdf_a_file_conditions
from pdf_reading import Document
from pdf_ua_conditions import CONDITIONS

assert pdf_a_conditions and pdf_a_file_conditions


def failures(raw):
    """(number, what fails, where) of each failed condition."""
    try:
        document = Document(raw)
    except pikepdf.PdfError as error:
        return [("A 6.1.4", "the file cannot be read", str(error))]
    found = []
    for number, failure, check in CONDITIONS:
        where = check(document)
        if where:
            shown = "; ".join(str(w) for w in where[:5]) if isinstance(where, list) else ""
            found.append((number, failure, shown))
    return found


def main(arguments):
    if arguments == ["--list"]:
        for number, failure, _ in CONDITIONS:
            print(f"{number}: {failure}")
        return 0
    if not arguments:
        print(__doc__, file=sys.stderr)
        return 2
    failed = False
    for path in arguments:
        with open(path, "rb") as file:
            for number, failure, where in failures(file.read()):
                failed = True
                print(f"{path}: {number}: {failure}" + (f" ({where})" if where else ""))
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
