#!/usr/bin/python3
"""Writes the verb tables as C++, from WordNet's data and the lists beside this script.

usage: make_verbs.py WORDNET_FOLDER OUTPUT.cpp NOTICE

NOTICE gets WordNet's licence, to go with every copy of the program.
"""

import collections
import pathlib
import sys

HERE = pathlib.Path(__file__).resolve().parent
NOUN, VERB = "1", "2"  # ss_type in a sense key: senseidx(5WN)


def lines(path):
    """Lines of a file of WordNet's without its notice, which is indented."""
    with open(path, encoding="ascii") as file:
        return [line for line in file.read().splitlines() if not line.startswith("  ")]


def notice(path):
    """The licence that opens each file of WordNet's, without its line numbers."""
    with open(path, encoding="ascii") as file:
        kept = [line.split(None, 1)[1:] for line in file if line.startswith("  ")]
    return [line[0].rstrip() if line else "" for line in kept]


def own_list(name):
    text = (HERE / name).read_text(encoding="ascii")
    return [line.split() for line in text.splitlines() if line and not line.startswith("#")]


def lemmas(path):
    """Single words; WordNet joins the words of a phrase by underscores."""
    words = (line.split(" ", 1)[0] for line in lines(path))
    return {word for word in words if "_" not in word and "." not in word}


def counts(path):
    """How often each lemma was tagged, by (lemma, ss_type)."""
    total = collections.Counter()
    for line in lines(path):
        key, _, times = line.split()
        lemma, sense = key.split("%")
        total[lemma, sense[0]] += int(times)
    return total


def verb_rows(folder, trade):
    nouns, tagged = lemmas(folder / "index.noun"), counts(folder / "cntlist.rev")
    for base in sorted(lemmas(folder / "index.verb") | set(trade)):
        noun = base in nouns or "noun" in trade.get(base, [])
        yield base, noun, min(tagged[base, NOUN], 65535), min(tagged[base, VERB], 65535)


def exception_rows(folder):
    rows = {}
    for line in lines(folder / "verb.exc"):
        form, base = line.split()[:2]
        if "_" not in form:
            rows.setdefault(form, base)
    return sorted(rows.items())


def irregular_form_rows(irregular):
    rows = {}
    for base, past, participle in irregular:
        rows.setdefault(past, base)
        rows.setdefault(participle, base)
    return sorted(rows.items())


def quoted(text):
    return '"' + text + '"'


def table(kind, name, rows):
    body = ",\n".join("    {" + ", ".join(row) + "}" for row in rows)
    return (f"constexpr {kind} {name}_table[] = {{\n{body},\n}};\n\n"
            f"}}\n\nstd::span<const {kind}> {name}() {{\n    return {name}_table;\n}}\n")


def write(folder, output, licence):
    trade = {row[0]: row[1:] for row in own_list("trade_verbs.txt")}
    verbs = [(quoted(base), str(noun).lower(), str(nouns), str(used))
             for base, noun, nouns, used in verb_rows(folder, trade)]
    exceptions = [(quoted(form), quoted(base)) for form, base in exception_rows(folder)]
    own = sorted(own_list("irregular_verbs.txt"))
    irregular = [tuple(map(quoted, row)) for row in own]
    forms = [tuple(map(quoted, row)) for row in irregular_form_rows(own)]
    tables = [("VerbEntry", "verb_entries", verbs),
              ("VerbException", "verb_exceptions", exceptions),
              ("IrregularVerb", "irregular_verbs", irregular),
              ("IrregularForm", "irregular_forms", forms)]
    text = "// Written by make_verbs.py. The data of WordNet in it stand under this notice:\n//\n"
    licence_lines = notice(folder / "index.verb")
    text += "".join(f"// {line}".rstrip() + "\n" for line in licence_lines)
    text += '#include "compiler/language/verb_table.hpp"\n\nnamespace quoin {\n'
    for kind, name, rows in tables:
        text += "namespace {\n\n" + table(kind, name, rows) + "\n"
    pathlib.Path(output).write_text(text + "}\n", encoding="ascii")
    pathlib.Path(licence).write_text("\n".join(licence_lines) + "\n", encoding="ascii")


if __name__ == "__main__":
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    write(pathlib.Path(sys.argv[1]), *sys.argv[2:])
