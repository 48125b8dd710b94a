#!/usr/bin/python3
"""Writes the tables of verbs and nouns as C++, from WordNet's data and the lists beside this script.

usage: make_verbs.py WORDNET_FOLDER OUTPUT.cpp NOTICE

NOTICE gets WordNet's licence, to go with every copy of the program.
"""

import collections
import pathlib
import sys

HERE = pathlib.Path(__file__).resolve().parent
NOUN, VERB, ADJECTIVE, SATELLITE = "1", "2", "3", "5"  # ss_type in a sense key: senseidx(5WN)
PERSON, TOOL, EVENT = "18", "06", "11"  # noun.person, artifact and event: lexnames(5WN)
DEEDS = {"04", "09", "10", "11", "22"}  # noun.act, cognition, communication, event, process
WITH_OBJECT = set(range(8, 12)) | set(range(14, 22)) | {24, 25, 30, 31}  # frames: wninput(5WN)

# In bullets these are a verb and its object, though WordNet has them as nouns.
VERB_AND_OBJECT = {"clean room", "cut glass", "draft copy", "feed grain", "lead plant",
                   "saw log", "test equipment", "water plant"}


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
    """Single words; WordNet joins the words of a phrase by underscores, few by a hyphen: log-in."""
    words = (line.split(" ", 1)[0] for line in lines(path))
    return {word for word in words
            if "_" not in word and "." not in word and not word.endswith(("-in", "-up"))}


def counts(path):
    """How often each lemma was tagged, by (lemma, ss_type)."""
    total = collections.Counter()
    for line in lines(path):
        key, _, times = line.split()
        lemma, sense = key.split("%")
        total[lemma, sense[0]] += int(times)
    return total


def transitive_verbs(path):
    """Verbs that take an object in one sense or another: wndb(5WN) for the fields."""
    verbs = set()
    for line in lines(path):
        fields = line.split("|")[0].split()
        words, rest = fields[4:4 + 2 * int(fields[3], 16):2], fields[4 + 2 * int(fields[3], 16):]
        frames = rest[2 + 4 * int(rest[0]):]
        for frame, word in zip(frames[1::3], frames[2::3]):
            if int(frame) in WITH_OBJECT:
                verbs.update(words if word == "00" else [words[int(word, 16) - 1]])
    return {verb.lower() for verb in verbs}


def verb_rows(folder, trade):
    nouns, adjectives = lemmas(folder / "index.noun"), lemmas(folder / "index.adj")
    own, tagged = lemmas(folder / "index.verb"), counts(folder / "cntlist.rev")
    transitive = transitive_verbs(folder / "data.verb")
    for base in sorted(own | set(trade)):
        noun = not nouns.isdisjoint((base, base + "s")) or "noun" in trade.get(base, [])
        with_object = base in transitive or base not in own
        adjective = tagged[base, ADJECTIVE] + tagged[base, SATELLITE]
        yield (base, noun, base in adjectives, with_object,
               tagged[base, NOUN], tagged[base, VERB], adjective)


def noun_senses(folder):
    """Each noun's synsets, the most frequent first: (lemma, [(lexical file, is a name)])."""
    synsets = {line[:8]: (line.split()[1], " @i " in line.split("|")[0])
               for line in lines(folder / "data.noun")}
    for line in lines(folder / "index.noun"):
        lemma, _, senses, *rest = line.split()
        yield lemma, [synsets[offset] for offset in rest[-int(senses):]]


def person_nouns(folder):
    """Single words that mean a person before all: barber, soprano; no names."""
    return [lemma for lemma, senses in noun_senses(folder)
            if first_file(senses) == PERSON
            and lemma.replace("-", "").isalpha()]


def first_file(senses):
    """The lexical file of the first sense that is no name; None if there is none."""
    return next((file for file, name in senses if not name), None)


def deed_nouns(folder):
    """Single words that mean before all what is done, known or said: review, physics."""
    return [lemma for lemma, senses in noun_senses(folder)
            if first_file(senses) in DEEDS - {EVENT} and lemma.isalpha()]


def named_compounds(folder):
    """Two words that name one deed, branch of knowledge or tool: data processing, sheet metal."""
    return [lemma.replace("_", " ") for lemma, senses in noun_senses(folder)
            if lemma.count("_") == 1 and lemma.replace("_", "").isalpha()
            and first_file(senses) in DEEDS - {EVENT} | {TOOL}]


def noun_compounds(folder, verbs):
    """Nouns of two words the first of which may be a verb: peer review, dining room."""
    pairs = (lemma.split("_") for lemma, senses in noun_senses(folder)
             if not all(name for _, name in senses))
    compounds = {" ".join(pair) for pair in pairs
                 if len(pair) == 2 and pair[1].isalpha()
                 and (pair[0] in verbs or pair[0].endswith("ing"))}
    return compounds - VERB_AND_OBJECT


def adjectives_in_ed(folder):
    """Adjectives that are made like the past of a verb: baked, used."""
    return [word for word in lemmas(folder / "index.adj") if word.endswith("ed") and word.isalpha()]


def verbs_of_nouns(folder, verbs):
    """What is done, by the noun for it that is derived from a verb: inspection, inspect."""
    synsets = {line[:8]: line.split("|")[0].split() for line in lines(folder / "data.verb")}
    deeds = {lemma for lemma, senses in noun_senses(folder) if senses[0][0] in DEEDS}
    pairs = {}
    for line in lines(folder / "data.noun"):
        fields = line.split("|")[0].split()
        count = int(fields[3], 16)
        nouns, rest = fields[4:4 + 2 * count:2], fields[4 + 2 * count:]
        for sign, target, kind, ends in zip(*[iter(rest[1:1 + 4 * int(rest[0])])] * 4):
            if sign != "+" or kind != "v":
                continue
            noun = nouns[int(ends[:2], 16) - 1]
            verb = synsets[target][4:][2 * (int(ends[2:], 16) - 1)]
            alike = noun[:4] == verb[:4] and noun.startswith(verb[:max(4, len(verb) - 3)])
            if alike and noun in deeds and noun.isalpha() and noun.islower() and verb in verbs and noun != verb \
                    and noun.endswith(("ion", "ment", "ance", "ence", "al", "ery", "ure", "sis")):
                pairs.setdefault(noun, verb)
    return [f"{noun}\\t{verb}" for noun, verb in pairs.items()]


def derived_words(folder):
    """Words that WordNet derives from one another, or that pertain to one another, in their first two
    senses: statistics, statistical; diagnose, diagnosis."""
    parts = {"n": "noun", "v": "verb", "a": "adj"}
    synsets, ranks = {}, {}
    for part, file in parts.items():
        for line in lines(folder / f"data.{file}"):
            fields = line.split("|")[0].split()
            count = int(fields[3], 16)
            rest = fields[4 + 2 * count:]
            words = [word.split("(")[0] for word in fields[4:4 + 2 * count:2]]
            synsets[part, fields[0]] = words, list(zip(*[iter(rest[1:1 + 4 * int(rest[0])])] * 4))
        for line in lines(folder / f"index.{file}"):
            fields = line.split()
            for rank, offset in enumerate(fields[-int(fields[2]):]):
                ranks[fields[0], part, offset] = rank
    pairs = collections.defaultdict(set)
    for (part, offset), (words, pointers) in synsets.items():
        for sign, target, kind, ends in pointers:
            other_part = "a" if kind == "s" else kind
            if sign not in "+\\" or ends == "0000" or (other_part, target) not in synsets:
                continue
            word = words[int(ends[:2], 16) - 1]
            other = synsets[other_part, target][0][int(ends[2:], 16) - 1]
            first_senses = (ranks.get((word, part, offset), 9) < 2 and
                            ranks.get((other, other_part, target), 9) < 2)
            if first_senses and are_alike(word, other):
                pairs[word].add(other)
                pairs[other].add(word)
    return [f"{word}\\t{' '.join(sorted(others))}" for word, others in pairs.items()]


def are_alike(word, other):
    """Plain words with one beginning, and neither a mere quality: safe, safeness."""
    far = ("able", "ible", "ness", "ly", "ism", "less")
    return (word != other and len(word) > 3 and word[:4] == other[:4] and
            all(one.isalpha() and one.islower() and not one.endswith(far) for one in (word, other)))


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


def word_list(name, words):
    """One text: a table of its own would cost the loader a relocation a word."""
    body = "\n".join(f'    "{word}\\n"' for word in sorted(words))
    return f"std::string_view {name}() {{\n    return\n{body};\n}}\n\n"


def cell(value):
    if isinstance(value, bool):
        return str(value).lower()
    return quoted(value) if isinstance(value, str) else str(min(value, 65535))


def write(folder, output, licence):
    trade = {row[0]: row[1:] for row in own_list("trade_verbs.txt")}
    verb_entries = list(verb_rows(folder, trade))
    verbs = [tuple(map(cell, row)) for row in verb_entries]
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
    text += '#include "compiler/english/verb_table.hpp"\n\nnamespace quoin::english {\n'
    for kind, name, rows in tables:
        text += "namespace {\n\n" + table(kind, name, rows) + "\n"
    text += word_list("person_nouns", person_nouns(folder))
    text += word_list("noun_compounds", noun_compounds(folder, {row[0] for row in verb_entries}))
    text += word_list("deed_nouns", deed_nouns(folder))
    text += word_list("named_compounds", named_compounds(folder))
    text += word_list("derived_words", derived_words(folder))
    text += word_list("verbs_of_nouns", verbs_of_nouns(folder, {row[0] for row in verb_entries}))
    text += word_list("adjectives_in_ed", adjectives_in_ed(folder))
    pathlib.Path(output).write_text(text + "}\n", encoding="ascii")
    pathlib.Path(licence).write_text("\n".join(licence_lines) + "\n", encoding="ascii")


if __name__ == "__main__":
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    write(pathlib.Path(sys.argv[1]), *sys.argv[2:])
