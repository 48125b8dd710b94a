#!/usr/bin/python3 -B
"""Processor time of set and proof against size, for each thing that a file can hold many of, up to 1 MiB:
it is to be linear and 2 s at most. `bench_growth.py [--all] [KIND...]` prints a line each, with the growth
from 128 KiB to 1 MiB, which is 8 where it is linear; with --all for the other verbs too, and for postings
and old documents of that size. A redline's two drafts have the size together.
"""

import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

from common import QUOIN, ROOT, require_quoin

SIZES = (1 << 17, (1 << 20) - 1024)
HEAD = "name: Juniper Castellane\nemail: juniper.castellane@ellerystate.example\n"
ENTRY = ("\nsection: Experience\n\nrole: Front Desk Assistant\nemployer: Ellery State Recreation Center\n"
         "place: Port Ellery, WA\ndates: Sep 2025 - present\n")


def word(number):
    """A word that is in no dictionary, another for each number."""
    letters = ""
    number += 1000
    while number:
        letters += "bcdfghjklmnprstv"[number % 16] + "aeiou"[number % 5]
        number //= 7
    return letters


def filled(size, head, piece, tail=""):
    """`head`, as many pieces as there is room for, `tail`."""
    pieces, room, number = [head], size - len(head) - len(tail), 0
    while (room := room - len((next_piece := piece(number)).encode())) > 0:
        pieces.append(next_piece)
        number += 1
    return "".join(pieces) + tail


def bullet(number):
    return f"- Counted {number} eelgrass quadrats at 9 sites and cut entry time {number % 97}% with a datasheet\n"


def nested_gloss(number):
    """All of the one before it, and goes on; in a text of the same words none of them ends with a word."""
    return "ab " * number + "a (y); "


KINDS = {
    "bullets": lambda n: filled(n, HEAD + ENTRY, bullet),
    "words in one bullet": lambda n: filled(n, HEAD + ENTRY + "- Counted ", lambda i: word(i % 5000) + " ", "\n"),
    "sections": lambda n: filled(n, HEAD, lambda i: f"\nsection: Part {i}\n\nrole: Assistant\nemployer: Ellery {i}\n"
                                                    "dates: Sep 2025 - present\n"),
    "entries": lambda n: filled(n, HEAD + "\nsection: Experience\n", lambda i: (
        f"\nrole: Assistant {i}\nemployer: Ellery {i}\nplace: Port Ellery, WA\ndates: Sep 2025 - present\n"
        f"- Counted {i} quadrats\n")),
    "high schools": lambda n: filled(n, HEAD + "\nsection: Education\n", lambda i: (
        f"\nschool: Ellery High School {i}\nplace: Port Ellery, WA\ndegree: Diploma\ngraduation: 2024\n")),
    "tags": lambda n: filled(n, HEAD + ENTRY, lambda i: f"- Counted {i} quadrats {{t{i} u{i % 9}}}\n"),
    "marks": lambda n: filled(n, HEAD + ENTRY, lambda i: f"- Counted *{i}* of _the_ *quadrats* at _9_ sites\n"),
    "misspellings": lambda n: filled(n, HEAD + ENTRY,
                                     lambda i: "- Cuonted " + " ".join(word(i * 8 + j) for j in range(8)) + "\n"),
    "links": lambda n: filled(n, HEAD + ENTRY, lambda i: f"- Counted <https://a{i}.example/b> at sites\n"),
    "accepted checks": lambda n: filled(n // 2, HEAD, lambda i: f"accept: weak-opening (reason {i})\n") +
                                 filled(n // 2, ENTRY, bullet),
    "skill groups": lambda n: filled(n, HEAD + "\nsection: Skills\n\n", lambda i: (
        f"{word(i).title()}: " + ", ".join(word(i * 4 + j) for j in range(4)) + "\n")),
    "skills in one group": lambda n: filled(n, HEAD + "\nsection: Skills\n\nTools: ", lambda i: word(i) + ", ", "x\n"),
    "doubled words": lambda n: filled(n, HEAD + ENTRY + "- Counted ", lambda _: "whether whether ", "\n"),
    "combining marks": lambda n: filled(n, HEAD + ENTRY + "- Counted ", lambda _: "a\u0301\u0323\u0308b ", "\n"),
    "abbreviations": lambda n: filled(n // 2, HEAD, lambda i: f"abbreviations: {word(i)} (thing {i})\n") +
                               filled(n // 2, ENTRY + "- Counted ", lambda i: word(i % 5000) + " ", "\n"),
    "one gloss": lambda n: filled(n // 2, HEAD + "abbreviations: ", lambda _: "tide ", "out (a thing)\n") +
                           filled(n // 2, ENTRY + "- Counted ", lambda _: "tide ", "\n"),
    "nested glosses": lambda n: filled(n // 2, HEAD + "abbreviations: ", nested_gloss, "x (y)\n") +
                                filled(n // 2, ENTRY + "- Counted ", lambda _: "ab ", "\n"),
    "honors": lambda n: filled(n, HEAD + "\nsection: Honors\n",
                               lambda i: f"\naward: Prize {i}\nby: Someone {word(i)}\ndates: 2024\n"),
    "includes": lambda n: filled(n, HEAD + ENTRY, lambda i: (
        f"include: parts/{i}.resume\n" if i < 60 else bullet(i))),
    "long name": lambda n: filled(n, "name: ", lambda i: word(i) + " ", "\nemail: ana@b.example\n" + ENTRY + "- Counted\n"),
    "long address": lambda n: filled(n, HEAD + "address: ", lambda i: word(i) + ", ", "\n" + ENTRY + "- Counted\n"),
    "long phone": lambda n: filled(n, HEAD + "phone: ", lambda i: word(i) + " ", "\n" + ENTRY + "- Counted\n"),
    "long place": lambda n: filled(n, HEAD + "\nsection: Experience\n\nrole: Assistant\nemployer: Ellery\ndates: 2024\n"
                                   "place: ", lambda i: word(i) + ", ", "WA\n- Counted\n"),
    "long link": lambda n: filled(n, HEAD + "link: a.example/", lambda _: "ab/", "\n" + ENTRY + "- Counted\n"),
    "one long word": lambda n: filled(n, HEAD + ENTRY + "- Counted ", lambda _: "abc-defgh/", "\n"),
    "words of one letter": lambda n: filled(n, HEAD + ENTRY + "- Counted ", lambda _: "a ", "\n"),
    "bar tables": lambda n: filled(n, HEAD + ENTRY, lambda i: f"{word(i)} | {word(i + 1)} | {i}\n"),
    "repeated skills": lambda n: filled(n, HEAD + "\nsection: Skills\n\n", lambda _: "Tools: Python, R\n"),
    "prose": lambda n: filled(n, HEAD + "\nsection: Notes\nholds: prose\n",
                              lambda i: f"\ntext: Counted {word(i)} and {word(i + 1)} at the quay\n"),
    "courses": lambda n: filled(n, HEAD + "\nsection: Education\n\nschool: Ellery State College\n"
                                "degree: BS in Biology\ngraduation: May 2027\ncourses: ", lambda i: word(i) + "; ", "x\n"),
}


# Postings of 1 MiB, which `posting` and `match` read.
POSTINGS = {
    "posting of one line": lambda n: filled(n, "Requirements: ", lambda i: word(i) + ", ", "x\n"),
    "posting of lines": lambda n: filled(n, "Requirements\n",
                                         lambda i: f"- Experience with {word(i)} and {word(i + 7)}\n"),
    "posting of headings": lambda n: filled(n, "", lambda i: f"\nWhat {word(i)} is\n\n- {word(i * 3)}\n"),
    "posting of names": lambda n: filled(n, "About\n", lambda i: f"{word(i).title()} {word(i + 1).title()} works with "
                                                               f"{word(i + 2).title()}. "),
    "posting of sentences": lambda n: filled(n, "You will\n", lambda i: f"You bring experience in {word(i)} and the "
                                                                       f"analysis of {word(i + 3)} data. "),
    "posting of the same word": lambda n: filled(n, "Requirements\n- ", lambda _: "titration ", "\n"),
    "page of nested parts": lambda n: "<!DOCTYPE html><html><body>" + "<div>" * ((n - 80) // 11) + "Python" +
                                      "</div>" * ((n - 80) // 11),
    "page of lists": lambda n: filled(n, "<!DOCTYPE html><html><body><h2>Requirements</h2><ul>",
                                      lambda i: f"<li><b>{word(i)}</b> and {word(i + 9)}</li>", "</ul></body></html>"),
    "page of styles": lambda n: filled(n // 2, "<!DOCTYPE html><html><head><style>",
                                       lambda i: f".c{i}{{display:none}}", "</style></head><body>") +
                                filled(n // 2, "", lambda i: f"<p class=\"c{i} d\">{word(i)}</p>", "</body></html>"),
    "page of attributes": lambda n: filled(n, "<!DOCTYPE html><html><body><p ", lambda i: f"a{i}=b ",
                                           ">Python</p></body></html>"),
}

# Old documents of 1 MiB, which `begin --from` reads.
OLD_HEAD = "Juniper Castellane\njuniper.castellane@ellerystate.example\n\nEXPERIENCE\n"
OLD = {
    "old entries": lambda n: filled(n, OLD_HEAD, lambda i: (
        f"\nAssistant {i}, Ellery {i}, Port Ellery, WA        Sep 2025 - present\n- Counted {i} quadrats\n")),
    "old bullets": lambda n: filled(n, OLD_HEAD, bullet),
    "old sections": lambda n: filled(n, OLD_HEAD, lambda i: f"\nSKILLS\nTools: {word(i)}\n"),
    "old words in one line": lambda n: filled(n, OLD_HEAD, lambda i: word(i) + " ", "\n"),
    "old blank lines": lambda n: filled(n, OLD_HEAD, lambda _: "\n", "x\n"),
    "old columns": lambda n: filled(n, OLD_HEAD, lambda i: f"{word(i)}            {word(i + 1)}          2024\n"),
    "old contacts": lambda n: filled(n, "Juniper Castellane\n", lambda i: f"{word(i)}@a{i}.example | (360) 555-0142\n"),
    "old degrees": lambda n: filled(n, "Juniper Castellane\n\nEDUCATION\n", lambda i: (
        f"BS in {word(i)}, Ellery College, May {2000 + i % 25}, GPA 3.{i % 10}\n")),
    "old dates": lambda n: filled(n, OLD_HEAD, lambda i: f"Jan {1990 + i % 30} - Mar {1990 + i % 31}\n"),
    "old paragraphs": lambda n: filled(n, OLD_HEAD, lambda i: f"{word(i).title()} {word(i + 1)} and {word(i + 2)} "
                                                              f"{word(i + 3)}\n" + "\n" * (i % 5 == 0)),
}

POSTING = ("posting.txt",)
VERBS = {
    "set": ("set", "draft.resume", "-o", "draft.pdf"),
    "proof": ("proof", "draft.resume"),
}
OTHER_VERBS = {
    "draft": ("set", "draft.resume", "--draft", "--plain", "draft.txt", "-o", "draft.pdf"),
    "scan": ("scan", "draft.pdf"),  # what `draft` made
    "marked": ("proof", "draft.resume", "--marked", "marked.pdf"),
    "glance": ("glance", "draft.resume"),
    "mend": ("mend", "--dry-run", "draft.resume"),
    "redline": ("redline", "old.resume", "half.resume"),
    "match": ("match", "draft.resume", "posting.txt"),
    "tailor": ("tailor", "draft.resume", "posting.txt", "-o", "tailored.resume"),
    "caseload": ("caseload", "students", "--no-cache"),
    "server": ("language-server",),
}
POSTING_VERBS = {
    "posting": ("posting", "given"),
    "match": ("match", "sample.resume", "given"),
    "tailor": ("tailor", "sample.resume", "given", "-o", "tailored.resume"),
}
OLD_VERBS = {"begin": ("begin", "--from", "given", "-o", "begun.resume")}


def write_drafts(folder, kind, size):
    """The whole draft; half of it, and the same with every seventh bullet another."""
    (folder / "students").mkdir(exist_ok=True)
    (folder / "parts").mkdir(exist_ok=True)
    for number in range(60):  # as many as may be taken in, of a size that they may have together
        (folder / "parts" / f"{number}.resume").write_text(filled(size // 80, "", bullet))
    for draft in (folder / "draft.resume", folder / "students" / "draft.resume"):
        draft.write_text(KINDS[kind](size))
    half = KINDS[kind](size // 2)
    (folder / "half.resume").write_text(half)
    (folder / "old.resume").write_text("\n".join(
        line + " again" if i % 7 == 0 and line.startswith("- ") else line for i, line in enumerate(half.split("\n"))))


def message(method, params, number=None):
    body = {"jsonrpc": "2.0", "method": method, "params": params} | ({} if number is None else {"id": number})
    encoded = json.dumps(body).encode()
    return b"Content-Length: %d\r\n\r\n%s" % (len(encoded), encoded)


def open_in_server(folder):
    """A draft opened, and its findings waited for."""
    uri = (folder / "draft.resume").as_uri()
    server = subprocess.Popen([QUOIN, "language-server"], stdin=subprocess.PIPE, stdout=subprocess.PIPE)

    def say(*words):
        server.stdin.write(message(*words))
        server.stdin.flush()

    def hear(wanted):
        while True:
            length = int(server.stdout.readline().split(b":")[1])
            server.stdout.readline()
            if wanted in server.stdout.read(length):
                return
    say("initialize", {"processId": None, "rootUri": folder.as_uri(), "capabilities": {}}, 1)
    hear(b'"id":1')
    say("initialized", {})
    say("textDocument/didOpen", {"textDocument": {"uri": uri, "languageId": "quoin", "version": 1,
                                                  "text": (folder / "draft.resume").read_text()}})
    hear(b"publishDiagnostics")
    say("shutdown", None, 2)
    hear(b'"id":2')
    say("exit", None)
    server.wait()


def seconds(words, folder):
    before = os.times()
    if words == ("language-server",):
        open_in_server(folder)
    else:
        subprocess.run([QUOIN, *words], cwd=folder, capture_output=True, check=False)
    after = os.times()
    return after.children_user + after.children_system - before.children_user - before.children_system


def told(kind, name, times):
    print(f"{kind:24} {name:8} {times[0]:6.2f} s {times[1]:6.2f} s  x {times[1] / max(times[0], 0.01):.1f}", flush=True)


def time_verbs(folder, kind, verbs, write):
    times = {name: [] for name in verbs}
    for size in SIZES:
        write(size)
        for name, verb in verbs.items():
            for made in ("tailored.resume", "begun.resume"):
                (folder / made).unlink(missing_ok=True)
            times[name].append(seconds(verb, folder))
    for name in verbs:
        told(kind, name, times[name])


def main():
    require_quoin()
    every = "--all" in sys.argv[1:]
    asked = [kind for kind in sys.argv[1:] if kind != "--all"]
    with tempfile.TemporaryDirectory(prefix="growth-") as made:
        folder = pathlib.Path(made)
        shutil.copy(sorted((ROOT / "samples" / "postings").glob("*.txt"))[0], folder / "posting.txt")
        shutil.copy(ROOT / "samples" / "nursing.resume", folder / "sample.resume")
        for kind in asked or KINDS:
            if kind in KINDS:
                verbs = VERBS | (OTHER_VERBS if every else {})
                time_verbs(folder, kind, verbs, lambda size, kind=kind: write_drafts(folder, kind, size))
        for texts, verbs in ((POSTINGS, POSTING_VERBS), (OLD, OLD_VERBS)):
            for kind in asked or (texts if every else ()):
                if kind in texts:
                    time_verbs(folder, kind, verbs, lambda size, kind=kind, texts=texts: (
                        folder / "given").write_text(texts[kind](size)))


if __name__ == "__main__":
    main()
