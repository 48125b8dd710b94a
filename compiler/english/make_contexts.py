#!/usr/bin/python3
"""Writes what tells a word from one that it is typed for: what stands beside each, and near it.

usage: make_contexts.py MODEL PRONUNCIATIONS WORDS WORDNET_FOLDER OUTPUT

MODEL is a model of American English for speech recognition, words with the likelihood of each after
another; PRONUNCIATIONS, words with their sounds; WORDS, as make_words.py writes them. Which words are
taken for which: those that word_pairs.txt and words/word_slips.txt name, either way; those that sound
alike; and those that two letters swapped tell apart, where what may be meant is in use. OUTPUT is for
word_contexts.cpp to map: numbers in the machine's own order, as `tables` has them.
"""

import array
import collections
import itertools
import math
import pathlib
import re
import struct
import sys

from make_verbs import HERE, lines, own_list

ENTRY_KINDS = ("noun", "verb", "adj", "adv")
LISTED, SOUND, SWAPPED = 1, 2, 4  # as word_contexts.hpp has them
TO_NATURAL = 1e-4  # the model's logarithms are to the base 1.0001
COMMON, KNOWN, MEANT = -13, -16, -13.5  # the least logarithm of the likelihood: of what stands
# beside a word, of a word that is looked at, of what may be meant
BESIDE = 0.7  # how far a likelihood is to be from what each word by itself would have
NEAR = 1.5  # and how much more than by chance one is to be near another
STEP = 15  # of a number in a byte, to one in the logarithm
NEAR_STEP = 25
APOSTROPHES = {"you're", "they're", "it's", "who's", "your", "their", "there", "its", "whose"}
STOP_WORDS = set("""the and for with from that which are was were its this these those not who whose
used using use having something someone into out about over any one two also often usu more than
other their his her they she you your when where such can may some all especially usually etc made
make very being has have had but does each own part parts act cause form kind""".split())


class Bits:
    """Entries of so many bits each, packed without a gap, the lowest bit first."""

    def __init__(self, data, offset, entries, widths):
        self.data, self.offset, self.entries, self.widths = data, offset, entries, widths
        self.width = sum(widths)
        self.size = ((1 + entries) * self.width + 7) // 8 + 8

    def rows(self):
        for at in range(self.offset * 8, self.offset * 8 + self.entries * self.width, self.width):
            bits = int.from_bytes(self.data[at >> 3:(at >> 3) + 12], "little") >> (at & 7)
            row = []
            for width in self.widths:
                row.append(bits & ((1 << width) - 1))
                bits >>= width
            yield row


class SpeechModel:
    """A trie of words in reverse, as sphinxbase's ngram_model_trie.c writes it; up to pairs.

    likelihood[w], backoff[w] and pairs[u, w], of w behind u, are natural logarithms.
    """

    MAGIC = b"Trie Language Model"

    def __init__(self, path):
        data = pathlib.Path(path).read_bytes()
        if not data.startswith(self.MAGIC) or data[len(self.MAGIC)] != 3:
            sys.exit(f"{path}: no model of up to three words, as this script reads them")
        at = len(self.MAGIC) + 1
        counts = struct.unpack_from("<3I", data, at)
        at += 12 + 4
        levels = array.array("f", data[at:at + 3 * 4 * 65536])
        at += 3 * 4 * 65536
        single = list(struct.iter_unpack("<ffI", data[at:at + 12 * (counts[0] + 1)]))
        at += 12 * (counts[0] + 1)
        word, following = counts[0].bit_length(), counts[2].bit_length()
        pairs = Bits(data, at, counts[1], (word, 16, 16, following))
        triples = Bits(data, at + pairs.size, counts[2], (word, 16))
        at = triples.offset + triples.size
        self.words = data[at + 4:].decode("latin-1").split("\0")[:counts[0]]
        self.likelihood = [row[0] * TO_NATURAL for row in single]
        self.backoff = [row[1] * TO_NATURAL for row in single]
        self.number = {text: number for number, text in enumerate(self.words)}
        rows = pairs.rows()
        self.pairs = {}
        for behind, (row, after) in enumerate(itertools.pairwise(single)):
            for before, _, level, _ in itertools.islice(rows, after[2] - row[2]):
                self.pairs[before, behind] = levels[level] * TO_NATURAL


def same_word(one, other):
    """Whether endings alone tell them apart: plan, planned."""
    short, long = sorted((one, other), key=len)
    stems = {short, short[:-1] + "i" if short.endswith("y") else short, short + short[-1]}
    endings = ("s", "es", "ed", "d", "ing", "er", "r", "'s", "ers", "rs", "ly")
    if short.endswith("e"):
        stems.add(short[:-1])
    return any(long == stem + ending for stem in stems for ending in endings)


def apart(one, other):
    """The fewest letters that make one of the other."""
    row = list(range(len(other) + 1))
    for i, letter in enumerate(one, 1):
        above, row = row, [i]
        for k, against in enumerate(other, 1):
            row.append(min(above[k] + 1, row[-1] + 1, above[k - 1] + (letter != against)))
    return row[-1]


def listed_pairs(alike):
    """Either way; of rules, where sight or sound is what leads astray, and no form of a verb."""
    text = (HERE / "words" / "word_slips.txt").read_text(encoding="utf-8")
    pairs = {pair for pair in re.findall(r"^([a-z']+) > ([a-z']+) =", text, re.MULTILINE)
             if not same_word(*pair) and (pair in alike or apart(*pair) <= 2)}
    pairs.update(map(tuple, own_list("word_pairs.txt")))
    return pairs | {(other, one) for one, other in pairs}


def sound_alikes(path):
    by_sound = collections.defaultdict(set)
    for line in pathlib.Path(path).read_text(encoding="latin-1").splitlines():
        word, *sounds = line.split()
        by_sound[tuple(sounds)].add(re.sub(r"\(\d+\)$", "", word))
    return {pair for words in by_sound.values() for pair in itertools.permutations(words, 2)}


def swapped_letters(words):
    for word in words:
        for i in range(len(word) - 1):
            other = word[:i] + word[i + 1] + word[i] + word[i + 2:]
            if len(word) > 2 and other != word and other in words:
                yield word, other


def confused(model, pronunciations, ranks):
    """Which word is typed for which, by the numbers of both, and by what."""
    plain = {word for word in model.words if word.isalpha() and len(word) > 1 and word in ranks}
    looked_at = plain | APOSTROPHES

    def may_be_meant(typed, meant):
        return (typed in looked_at and meant in looked_at
                and model.likelihood[model.number[typed]] > KNOWN
                and model.likelihood[model.number[meant]] > MEANT
                and (meant in APOSTROPHES or ranks[meant] in "123r")
                and not same_word(typed, meant))

    kinds, alike = collections.Counter(), sound_alikes(pronunciations)
    for pair in listed_pairs(alike):
        if all(word in model.number for word in pair) and pair[1] in ranks and ranks[pair[1]] != "x":
            kinds[pair] |= LISTED
    for pair in alike:
        if may_be_meant(*pair):
            kinds[pair] |= SOUND
    for pair in swapped_letters(plain):
        if may_be_meant(*pair):
            kinds[pair] |= SWAPPED
    return {(model.number[typed], model.number[meant]): kind
            for (typed, meant), kind in kinds.items()}


def stem(word):
    for ending in ("ings", "ing", "ies", "ied", "ers", "ed", "es", "er", "s", "e", "y", "ly"):
        if word.endswith(ending) and len(word) - len(ending) >= 3:
            return word[:-len(ending)]
    return word


def synsets(folder):
    """The words of each synset, its gloss and its examples: wndb(5WN) for the fields."""
    for kind in ENTRY_KINDS:
        for line in lines(folder / f"data.{kind}"):
            fields, _, gloss = line.partition("|")
            fields = fields.split()
            names = " ".join(fields[4:4 + 2 * int(fields[3], 16):2])
            yield set(re.findall("[a-z]+", f"{names} {gloss}".lower()))


def near_odds(words, folder):
    """By how much more than by chance stems are in a synset of each stem of the words."""
    wanted = {stem(word) for word in words}
    together = collections.defaultdict(collections.Counter)
    times, total = collections.Counter(), 0
    for synset in synsets(folder):
        total += 1
        stems = {stem(word) for word in synset if len(word) > 2 and word not in STOP_WORDS}
        times.update(stems)
        for one in stems & wanted:
            together[one].update(stems)
    for one, counted in together.items():
        for other, count in counted.items():
            chance = (times[one] + 1) * (times[other] + 0.5) / total
            odds = math.log((count + 0.3) / (chance + 0.3))
            if odds >= NEAR and other != one:
                yield one, other, odds


def in_byte(number):
    return max(0, min(255, round(number)))


def telling_pairs(model, words):
    kept = words | {number for number in range(len(model.words))
                    if model.likelihood[number] > COMMON}
    for (before, behind), odds in model.pairs.items():
        if (before in words or behind in words) and before in kept and behind in kept:
            by_themselves = model.backoff[before] + model.likelihood[behind]
            if abs(odds - by_themselves) >= BESIDE:
                yield before, behind, odds


def grouped(rows, numbers):
    """Rows of (key, word, number) as where each key's begin, the words, and the numbers."""
    rows = sorted((numbers[key], numbers[word], number) for key, word, number in rows)
    begins, at = array.array("I"), 0
    for key in range(len(numbers) + 1):
        while at < len(rows) and rows[at][0] < key:
            at += 1
        begins.append(at)
    return (begins, array.array("H", (word for _, word, _ in rows)),
            bytes(number for _, _, number in rows))


def near_rows(model, used, confusable, folder):
    by_stem = collections.defaultdict(list)
    for number in used:
        by_stem[stem(model.words[number])].append(number)
    names = {model.words[number] for number in confusable}
    for one, other, odds in near_odds(names, folder):
        for word in set(by_stem[one]) & confusable:
            for near in by_stem[other]:
                yield word, near, in_byte(odds * NEAR_STEP)


def tables(model, kinds, folder):
    confusable = {number for pair in kinds for number in pair}
    beside = list(telling_pairs(model, confusable))
    used = confusable | {number for row in beside for number in row[:2]}
    used = sorted(used, key=lambda number: model.words[number])
    numbers = {number: place for place, number in enumerate(used)}
    if len(used) > 65535:
        sys.exit("more words than two bytes can number")
    texts = [model.words[number].encode() for number in used]
    ends = array.array("I", itertools.accumulate(map(len, texts), initial=0))
    pairs = grouped(((*pair, kind) for pair, kind in kinds.items()), numbers)
    after = grouped(((before, behind, in_byte(-odds * STEP)) for before, behind, odds in beside),
                    numbers)
    near = grouped(set(near_rows(model, used, confusable, folder)), numbers)
    single = [bytes(in_byte(-of[number] * STEP) for number in used)
              for of in (model.likelihood, model.backoff)]
    head = array.array("I", (len(used), len(pairs[1]), len(after[1]), len(near[1]), ends[-1]))
    groups = (pairs, after, near)
    yield from (head, ends, *(group[0] for group in groups), *(group[1] for group in groups),
                *(group[2] for group in groups), *single, b"".join(texts))


def write(model, pronunciations, words, folder, output):
    speech = SpeechModel(model)
    rows = pathlib.Path(words).read_text(encoding="utf-8").splitlines()
    kinds = confused(speech, pronunciations, dict(row.split("\t") for row in rows))
    made = tables(speech, kinds, pathlib.Path(folder))
    pathlib.Path(output).write_bytes(b"".join(bytes(table) for table in made))


if __name__ == "__main__":
    if len(sys.argv) != 6:
        sys.exit(__doc__)
    write(*sys.argv[1:])
