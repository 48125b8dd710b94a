#!/usr/bin/python3
"""Writes the words that are spelled right, sorted, one a line: word, a tab, its class.

usage: make_words.py HUNSPELL_DICTIONARY WORDNET_FOLDER SCOWL_FOLDER OUTPUT LETTERS

HUNSPELL_DICTIONARY is without .aff and .dic. The class is a figure for a word of that dictionary,
by how often WordNet's tagged texts have it: 0 never, 1, 2, 3 often; `r` for 0 or 1 where résumés have
it often, or where SCOWL has it among the commonest words; `x` for one of it that is never suggested; `w` for a word of WordNet's that the dictionary
lacks. LETTERS gets the runs of three letters, `^` and `$` for where a word begins and ends, each with
the class of how many words of the dictionary have it: 0 hardly one, up to 5.
"""

import collections
import pathlib
import re
import sys

from make_verbs import lines, noun_senses, own_list

ENTRY_KINDS = {"noun": "1", "verb": "2", "adj": "3", "adv": "4"}  # ss_type: senseidx(5WN)
ORDINARY, OFTEN = 4, 25  # times in the tagged texts
FEW_WORDS = (1, 4, 10, 21, 44)  # of the dictionary: the most of each class of a run of letters
BRITISH = (("is", "iz"), ("ys", "yz"), ("our", "or"), ("re", "er"), ("ae", "e"), ("oe", "e"),
           ("ll", "l"), ("ence", "ense"), ("mme", "m"), ("ogue", "og"), ("oul", "ol"))

# Words of grammar are no part of WordNet.
GRAMMAR = """about above across after against all along although among and another any anybody
anyone anything are because been before behind being below beneath beside besides between beyond
both but could does doing during each either else every everybody everyone everything except for
from had has have having her here hers herself him himself his how however into its itself
many may might mine more most much must myself neither nobody none nor nothing off once onto
other others our ours ourselves out over own rather shall she should since some somebody
someone something such than that the their theirs them themselves then there therefore these
they this those though through throughout till together toward towards under until
upon was were what whatever when whenever where whereas wherever whether which whichever while who
whoever whom whose why will with within without would yet you your yours yourself""".split()

# In résumés often, and hardly in the texts that WordNet tagged.
IN_RESUMES = """assistant bilingual calendar coach coached collaborate collaborated collaboration
collaborative coordinate coordinated coordinator coordinators counselor curricula curriculum
customer customers data database databases deadline deadlines design designed develop developed
email facilitate facilitated facilitator feedback fundraiser fundraising graduate graduated
guidelines implement implemented implementation intern interns internship internships inventory
leadership liaison lifeguard maintenance management marketing mentor mentored mentoring
multicultural networking online operations orientation outreach participants photography portfolio
presentation presentations prioritize prioritized programming publications recruiting recruitment
scheduling semester software spreadsheet spreadsheets streamline streamlined supervise supervised
supervisor teamwork tutor tutored tutoring undergraduate updated upgraded volunteer volunteered
volunteering volunteers website websites workshop workshops""".split()

# Right where they are meant, and never what a résumé is told to write.
NEVER_SUGGESTED = re.compile(
    r"(ass|asse|arse|bastard|bitch|boob|bugger|cock|cockup|cockier|cripple|crap|dick|dyke|erotic|"
    r"fag|fart|hooker|hussy|idiot|moron|naked|negro|nude|orgasm|orgy|penis|piss|poop|porn|prick|"
    r"pubic|pussy|queer|rape|rapist|retard|scrotum|semen|sex|slut|sodomy|spastic|testicle|teste|"
    r"testes|testis|tit|tosser|turd|vagina|vulva|wank|whore|anus|anal|pimp|stripper|suicide)"
    r"(s|es|ed|ing|y|ies|ier)?('s)?|.*highhanded.*", re.IGNORECASE)


class Affix:
    def __init__(self, strip, add, condition, is_prefix, crosses):
        self.strip, self.add = ("" if part == "0" else part for part in (strip, add))
        self.is_prefix, self.crosses = is_prefix, crosses
        self.fits = re.compile("^" + condition if is_prefix else condition + "$").search

    def of(self, stem):
        """The word it makes of the stem, or None."""
        if not self.fits(stem):
            return None
        if self.is_prefix:
            return self.add + stem[len(self.strip):]
        return stem[:len(stem) - len(self.strip)] + self.add


def affixes(path):
    """hunspell(5), AFFIX FILE: by flag. Rules without flags of their own are all that en_US has."""
    found, crosses = collections.defaultdict(list), {}
    for line in path.read_text(encoding="utf-8").splitlines():
        fields = line.split()
        if not fields or fields[0] not in ("PFX", "SFX"):
            continue
        if fields[2] in ("Y", "N"):
            crosses[fields[1]] = fields[2] == "Y"
            continue
        if "/" in fields[3]:
            sys.exit(f"{path}: an affix with flags, which this script does not read: {line}")
        found[fields[1]].append(
            Affix(*fields[2:5], fields[0] == "PFX", crosses[fields[1]]))
    return found


def forms(stem, flags, rules):
    """hunspell(5): the stem, with each affix, and with a prefix and a suffix where both cross."""
    yield stem
    all_rules = [rule for flag in flags for rule in rules.get(flag, [])]
    for rule in all_rules:
        word = rule.of(stem)
        if word is None:
            continue
        yield word
        if not rule.is_prefix and rule.crosses:
            for other in all_rules:
                if other.is_prefix and other.crosses and other.fits(stem):
                    yield other.of(word)


def dictionary_words(name):
    """Every word of the dictionary, and those that it never suggests."""
    rules = affixes(pathlib.Path(name + ".aff"))
    words, hidden = set(), set()
    for entry in pathlib.Path(name + ".dic").read_text(encoding="utf-8").splitlines()[1:]:
        stem, _, flags = entry.strip().partition("/")
        if not stem or stem[0].isdigit():
            continue
        made = set(forms(stem, flags, rules))
        words |= made
        if "!" in flags:
            hidden |= made
    return words, hidden


def exceptions(folder, kind):
    """Forms that no rule makes, with their bases."""
    rows = (line.split()[:2] for line in lines(folder / f"{kind}.exc"))
    return [(form, base) for form, base in rows if "_" not in form]


def regular_forms(lemma, kind):
    """Plurals of nouns, forms of verbs; where English may double a consonant, none are made."""
    consonant_y = re.search("[^aeiou]y$", lemma)
    if consonant_y:
        yield lemma[:-1] + "ies"
    else:
        yield lemma + ("es" if re.search("(s|x|z|ch|sh)$", lemma) else "s")
    if kind != "verb" or re.search("(^|[^aeiou])[aeiou][^aeiouwxy]$", lemma):
        return
    silent_e = re.search("[^eoy]e$", lemma)
    yield lemma[:-1] + "ied" if consonant_y else lemma + ("d" if lemma.endswith("e") else "ed")
    yield (lemma[:-1] if silent_e else lemma) + "ing"


def british(word, words):
    """Whether one of the dictionary's is its American spelling; anaesthetise has two turns."""
    stems = {word, word.replace("ae", "e"), word.replace("oe", "e")}
    turned = {stem.replace(gb, us) for stem in stems for gb, us in BRITISH}
    return not words.isdisjoint((stems | turned) - {word})


def is_slip_for(word, classes):
    """Whether a letter doubled, or not, makes a word in use of it: programing, refered."""
    single = {word[:i] + word[i + 1:] for i in range(1, len(word)) if word[i] == word[i - 1]}
    double = {word[:i] + word[i] + word[i:] for i in range(1, len(word))}
    return any(classes.get(one, "0") in "23r" for one in single | double)


def wordnet_words(folder):
    """Words in small letters, no names, with their forms."""
    irregular = {base for form, base in exceptions(folder, "verb")}
    irregular |= {row[0] for row in own_list("irregular_verbs.txt")}
    lemmas = {kind: {line.split(" ", 1)[0] for line in lines(folder / f"index.{kind}")}
              for kind in ENTRY_KINDS}
    lemmas["noun"] = {lemma for lemma, senses in noun_senses(folder)
                      if not all(name for _, name in senses)}
    capitals = names_in_capitals(folder)
    words = set()
    for kind, all_of_kind in lemmas.items():
        for lemma in all_of_kind - capitals:
            if not re.fullmatch("[a-z]{4,}(-[a-z]{2,})?", lemma):
                continue
            words.add(lemma)
            if kind in ("noun", "verb") and not (kind == "verb" and lemma in irregular):
                words.update(regular_forms(lemma, kind))
    words.update(form for form, base in exceptions(folder, "noun") if base in words)
    return words


def names_in_capitals(folder):
    """Lemmas that the data write with a capital in every sense: wndb(5WN) for the fields."""
    with_capital, without = set(), set()
    for kind in ENTRY_KINDS:
        for line in lines(folder / f"data.{kind}"):
            fields = line.split("|")[0].split()
            for word in fields[4:4 + 2 * int(fields[3], 16):2]:
                (without if word == word.lower() else with_capital).add(word.lower())
    return with_capital - without


def tagged(folder):
    total = collections.Counter()
    for line in lines(folder / "cntlist.rev"):
        key, _, times = line.split()
        total[key.split("%")[0]] += int(times)
    return total


def bases_of(word, bases):
    """The word, and what it may be a form of."""
    candidates = {word, *bases.get(word, ())}
    for ending, instead in (("'s", ("",)), ("s", ("",)), ("es", ("",)), ("ies", ("y",)),
                            ("ied", ("y",)), ("ed", ("", "e")), ("ing", ("", "e")), ("ly", ("",)),
                            ("er", ("", "e")), ("ers", ("", "e")), ("ment", ("",))):
        if word.endswith(ending):
            candidates.update(word[:-len(ending)] + end for end in instead)
    doubled = re.fullmatch(r"(.*([a-z]))\2(ed|ing|er)", word)
    if doubled:
        candidates.add(doubled[1])
    return candidates


def commonest(scowl):
    """Words of SCOWL's sizes 10 and 20, some 12,000: chocolate, restaurant. Few texts were tagged."""
    return {line for kind in ("english", "american") for size in (10, 20)
            for line in (scowl / f"{kind}-words.{size}").read_text("latin-1").split()}


def ranks(words, hidden, folder, scowl):
    """Each word of the dictionary with its class."""
    count, bases = tagged(folder), collections.defaultdict(set)
    for kind in ("noun", "verb", "adj", "adv"):
        for form, base in exceptions(folder, kind):
            bases[form].add(base)
    of_resumes = {word for row in own_list("resume_words.txt") for word in row}
    common = commonest(scowl)
    classes = {}
    for word in words:
        candidates = bases_of(word.lower(), bases)
        often = word in GRAMMAR or word in IN_RESUMES
        times = OFTEN if often else max(count[one] for one in candidates)
        rank = "3" if times >= OFTEN else "2" if times >= ORDINARY else "1" if times else "0"
        often = word in common or not of_resumes.isdisjoint(candidates)
        if rank in "01" and word.islower() and often:
            rank = "r"
        bad = word in hidden or NEVER_SUGGESTED.fullmatch(word)
        classes[word] = "x" if bad else rank
    return classes


def all_letters(words):
    """Each run of three letters, with the class of how many words have it."""
    times = collections.Counter()
    for word in words:
        if re.fullmatch("[a-z]+", word):
            whole = f"^{word}$"
            times.update({whole[i:i + 3] for i in range(len(whole) - 2)})
    for run, count in times.items():
        yield run, str(sum(count > most for most in FEW_WORDS))


def write_rows(output, rows):
    in_order = sorted((word.encode(), rank.encode()) for word, rank in rows)
    pathlib.Path(output).write_bytes(b"".join(word + b"\t" + rank + b"\n" for word, rank in in_order))


def write(dictionary, folder, scowl, output, letters):
    words, hidden = dictionary_words(dictionary)
    classes = ranks(words, hidden, folder, scowl)
    for word in wordnet_words(folder) - words:
        own = not british(word, words) and word.capitalize() not in words
        if own and not is_slip_for(word, classes):
            classes[word] = "w"
    write_rows(output, classes.items())
    write_rows(letters, all_letters(words))


if __name__ == "__main__":
    if len(sys.argv) != 6:
        sys.exit(__doc__)
    write(sys.argv[1], pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3]), *sys.argv[4:])
