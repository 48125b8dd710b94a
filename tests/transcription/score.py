#!/usr/bin/python3
"""Scores drafts made of old documents against labels of what is in them.

usage: score.py [-v] LABELS DRAFT [LABELS DRAFT]...

LABELS is a file as old/README.md has it, or the source that an old PDF of our own was set from; DRAFT
the source that `quoin begin --from` made. Printed is, over all of them, which share of entries, titles, organisations, dates and bullets is placed right,
and of the labels' words which share is kept, in a field, a bullet or a comment. With -v, what is not.
"""

import collections
import pathlib
import re
import sys
import unicodedata

TITLES = ("role", "degree", "project", "award", "credential", "publication", "title")
ORGS = ("employer", "school", "with", "course", "by", "issuer", "venue", "detail")
DATES = ("dates", "graduation", "expires")


def words_of(text):
    text = unicodedata.normalize("NFKC", text).replace("\u2019", "'").replace("\u00ad", "")
    return re.findall(r"[^\W_]+(?:['.+#][^\W_]+)*[+#]*", text.casefold())


def same(label, own):
    """Volume, pages and the sum of a grant are not labelled."""
    first, second = words_of(label), words_of(own)
    rest = second[len(first):]
    return second[:len(first)] == first and all(word[0].isdigit() for word in rest)


def begins(text, start):  # a publication in one label, here in two
    words = words_of(start)
    return words_of(text)[:len(words)] == words and text.lstrip().startswith(("\u201c", '"'))


def date_words(text):
    text = re.sub("[-\u2013]$", " present", text.strip())  # `2021-`
    text = re.sub(r"'(\d\d)\b", r"20\1", text.casefold().replace("\u2019", "'"))
    text = re.sub(r"\b((?:19|20)\d\d)[-\u2013](\d\d)\b(?![-/])",
                  lambda m: f"{m[1]} {m[1][:2]}{m[2]}", text)
    text = re.sub(r"\b(\d\d?)/(\d\d)\b(?!/)", r"\1/20\2", text)
    found = []
    for word in re.findall(r"\d+|[^\W\d_]+", text):
        if re.match(r"(present|now|current|date|ongoing|heute|aujourd)", word):
            found.append("present")
        elif word.isdigit():
            found.append(str(int(word)))
        elif len(word) > 2 and re.match("jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|spring|summer"
                                        "|fall|autumn|winter", word):
            found.append(word[:3])
    return sorted(found)


class Entry:
    def __init__(self):
        self.fields = collections.defaultdict(list)
        self.bullets = []
        self.place_above = []  # of the position above, at the same employer

    def title(self):
        for label in TITLES:
            if self.fields[label]:
                more = [" ".join([name, *self.fields[name]]) for name in ("major", "minor")
                        if label == "degree" and self.fields[name]]
                return " ".join([self.fields[label][0], *more])
        return self.fields["activity"][0] if self.fields["activity"] else ""

    def org(self):
        for label in ORGS:
            if self.fields[label]:
                return self.fields[label][0]
        activity = self.fields["activity"]
        return activity[0] if activity and self.fields["role"] else ""

    def has_degree(self, label):
        """A degree that is labelled with its minor and its honors, which are fields of their own."""
        degree, words = words_of(" ".join(self.fields["degree"])), words_of(label)
        more = {"minor", "major", "in", "with", "and"}.union(*(
            words_of(value) for name in ("major", "minor", "honors")
            for value in self.fields[name]))
        return bool(degree) and words[:len(degree)] == degree and more.issuperset(words[len(degree):])

    def member_of(self):  # a membership is labelled as an organisation without a title
        return self.fields["activity"][0] if self.fields["activity"] else ""

    def place(self):
        return " ".join(self.fields["place"] or self.place_above)

    def dates(self):
        return " ".join(value for label in DATES for value in self.fields[label])

    def facts(self):  # what may hold what the old page had as a bullet
        values = [(label, value) for label, values in self.fields.items() for value in values]
        return self.bullets + [value for _, value in values] + [
            " ".join(pair) for one in values for pair in (one, one[::-1])]


def unfold(text):
    lines = []
    for line in text.split("\n"):
        if line.startswith(" ") and lines:
            lines[-1] += " " + line.strip()
        else:
            lines.append(line)
    return lines


def read_draft(text):
    heading, entries, entry, section, bare = {}, [], None, None, []
    for line in unfold(text):
        plain = re.sub(r"\\(.)", r"\1", line)
        if line.startswith("#"):
            continue
        if not line.strip():
            entry = None
            continue
        field = re.match(r"([^:]{1,60}): (.*)", plain)
        if line.startswith("section:"):
            section, entry = plain[9:], None
        elif section is None and field:
            heading.setdefault(field[1], []).append(field[2])
        elif re.match(r"--? ", line):
            if entry is None:
                entry = Entry()
                entries.append(entry)
            entry.bullets.append(re.sub(r"^--? ", "", plain))
        elif field:
            label = field[1].lower()
            if entry is None or (label == "role" and entry.fields["role"]):
                old = entry
                entry = Entry()
                entries.append(entry)
                if old and label == "role":
                    entry.fields["employer"] = list(old.fields["employer"])
                    entry.place_above = old.fields["place"] or old.place_above
            entry.fields[label].append(field[2])
            if label not in ("for", "holds", "column"):
                bare.append(plain)
        elif section is not None:
            bare.append(plain)
    return heading, entries, bare


def read_labels(path):
    records = []
    for line in open(path, encoding="utf-8"):
        fields = line.rstrip("\n").split("\t")
        if fields[0] == "entry":
            records.append(("entry", dict(field.split("=", 1) for field in fields[1:])))
        elif fields[0]:
            records.append((fields[0], fields[1:]))
    return records


def labels_of_source(path):
    text = re.sub(r"^include: (.*)$", lambda m: (path.parent / m[1]).read_text(encoding="utf-8"),
                  path.read_text(encoding="utf-8"), flags=re.M)
    text = "\n".join(re.sub(r" \{[^}]*\}$", "", line) for line in unfold(text))  # tags
    text = re.sub(r" ?<(https?://|mailto:)[^>]*>", "", text)
    heading, entries, bare = read_draft(text)
    records = [("name", heading["name"])]
    records += [("contact", [label, value]) for label in ("email", "phone", "address")
                for value in heading.get(label, [])]
    for entry in entries:
        values = {"title": entry.title(), "org": entry.org(), "dates": entry.dates(),
                  "place": " ".join(entry.fields["place"])}
        if any(values.values()):
            records.append(("entry", {key: value for key, value in values.items() if value}))
            records += [("bullet", [bullet]) for bullet in entry.bullets]
    records += [("text", [re.sub(r"^[^:]*: ", "", line)]) for line in bare]
    return records


def records_of(path):
    return labels_of_source(path) if path.suffix == ".resume" else read_labels(path)


def likeness(label, entry):
    def near(a, b):
        first, second = set(words_of(a)), set(words_of(b))
        return len(first & second) / max(1, len(first | second)) if a else 0
    dates = label.get("dates", "")
    same_dates = bool(dates) and date_words(dates) == date_words(entry.dates())
    org = near(label.get("org", ""), entry.org())
    if "title" not in label:
        org = 2 * max(org, near(label.get("org", ""), entry.member_of()))
    return 2 * near(label.get("title", ""), entry.title()) + org + same_dates


class Score:
    def __init__(self):
        self.right = collections.Counter()
        self.all = collections.Counter()
        self.wrong = []

    def add(self, what, right, said=""):
        self.all[what] += 1
        self.right[what] += bool(right)
        if not right:
            self.wrong.append(f"{what}: {said}")

    def share(self, what):
        return self.right[what] / max(1, self.all[what])


def score(labels, text, total):
    heading, entries, _ = read_draft(text)
    score_ = Score()
    kept = collections.Counter(words_of(re.sub(r"\\(.)", r"\1", text.replace("\n# ", " ")
                                               .replace("\n  ", " "))))
    free, entry = list(entries), None
    for kind, value in labels:
        if kind == "entry":
            best = max(free, key=lambda one: likeness(value, one), default=None)
            found = best is not None and likeness(value, best) > 1
            entry = best if found else Entry()
            if found:
                free.remove(best)
            score_.add("entry", found, value)
            for key, own in (("title", entry.title()), ("org", entry.org()),
                             ("place", entry.place())):
                if key in value:
                    whole = f"{own} {entry.org()}"
                    member = key == "org" and "title" not in value
                    score_.add(key, same(value[key], own) or begins(whole, value[key]) or
                               key == "title" and entry.has_degree(value[key]) or
                               member and same(value[key], entry.member_of()),
                               f"{value[key]!r}, found {own!r}")
            if "dates" in value:
                score_.add("dates", date_words(value["dates"]) == date_words(entry.dates()),
                           f"{value['dates']!r}, found {entry.dates()!r}")
        elif kind == "bullet":
            right = entry is not None and any(
                " ".join(words_of(value[0])) in " ".join(words_of(fact)) or
                " ".join(words_of(fact)) in " ".join(words_of(value[0])) and len(words_of(fact)) > 1
                for fact in entry.facts())
            score_.add("bullet", right, value[0])
        elif kind == "name":
            score_.add("name", any(same(value[0], one) for one in heading.get("name", [])), value[0])
        elif kind == "contact":
            own = heading.get(value[0], [])
            score_.add("contact", any(same(value[1], one) for one in own), f"{value[1]!r}, {own}")
        said = value.values() if kind == "entry" else value
        for word in words_of(" ".join(said)):
            if kind == "contact" and word in ("email", "phone", "address", "link"):
                continue
            score_.add("word", kept[word] > 0, word)
    total.right.update(score_.right)
    total.all.update(score_.all)
    return score_


def main(arguments):
    verbose = arguments[:1] == ["-v"]
    pairs = arguments[1:] if verbose else arguments
    total = Score()
    for labels, draft in zip(pairs[::2], pairs[1::2]):
        one = score(records_of(pathlib.Path(labels)), open(draft, encoding="utf-8").read(), total)
        if verbose:
            print(draft.rsplit("/", 1)[-1], *(f"{what} {one.right[what]}/{one.all[what]}"
                                               for what in one.all))
            print(*("    " + line for line in one.wrong), sep="\n")
    print(*(f"{what} {total.share(what):.3f} ({total.right[what]}/{total.all[what]})"
            for what in sorted(total.all)), sep="\n")


if __name__ == "__main__":
    main(sys.argv[1:])
