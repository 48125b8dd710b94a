#!/usr/bin/python3 -B
"""What is left out of a build, and what the writer never put in, leaves no trace in the PDF.

Each file is unpacked (qpdf --qdf, object streams dissolved) and searched, as bytes, as UTF-16 and in
hexadecimal strings, for: the folders it was read from and written to, the user, the host, today's
date; and for the words that only comments, settings or left-out pieces have. The same words are looked
for in the text that poppler and MuPDF read, where shown glyphs become words, and in attached files.
"""

import datetime
import getpass
import pathlib
import re
import socket
import tempfile

import expected_words
from common import ROOT, SamplePdfs, Tally, quoin_set, run
from readers import mutool, pdftotext

LONG_ENOUGH = 6  # letters: shorter words turn up in any file by chance

# A résumé that hides a word in every place a word can be hidden.
HIDING = """\
# zzcommentzz
name: Juniper Castellane
email: juniper.castellane@ellerystate.example
words: zzspellingzz
accept: two-bullets (zzreasonzz)
updated: 2020-02-02

section: Education

school: Ellery State College
place: Port Ellery, WA {zztagzz}
degree: Bachelor of Arts in Communication {!zzotherzz}
graduation: May 2028 (expected)
minor: zzfieldzz {archive}

section: Experience

# zzinnerzz
role: Front Desk Assistant
employer: Ellery State Recreation Center
dates: Sep 2025 - present
- Check in 140 members a shift
- See zzbulletzz {archive}
-- See zzbelowzz
- Go to <https://zzlinkzz.example/> {archive}

role: zzrolezz
employer: zzemployerzz
dates: Jun 2019 - Jul 2019
for: archive
- See zzentryzz

section: zztitlezz {archive}
holds: activities

activity: zzactivityzz
dates: 2019
"""

# Hardly anything in it: what its PDF holds is of the format.
HEADED = """\
name: Ann
section: Skills

Tools: *A*, /B/, _C_ <https://a.example>
"""


def unpacked(pdf):
    done = run(["qpdf", "--qdf", "--object-streams=disable", pdf, "-"])
    return done.stdout


def spelled(word):
    """The byte forms in which a PDF may hold a word."""
    utf16 = word.encode("utf-16-be")
    return [word.encode("utf-8"), word.encode("latin-1", "replace"), utf16,
            word.encode("utf-8").hex().encode(), word.encode("utf-8").hex().upper().encode(),
            utf16.hex().encode(), utf16.hex().upper().encode()]


def holds(data, word):
    return any(form and form in data for form in spelled(word))


def machine_words(source, pdf):
    words = {str(ROOT), str(pdf.parent), str(pathlib.Path.home()) + "/", getpass.getuser(),
             socket.gethostname()}
    today = datetime.date.today()
    if today.isoformat() not in source.read_text(encoding="utf-8"):  # the writer's own `updated:`
        words |= {today.isoformat(), f"{today:%Y%m%d}"}
    # short names of users and hosts, such as `root`, are words of the PDF format
    return {word for word in words if len(word) >= LONG_ENOUGH}


def long_words(texts):
    found = set()
    for text in texts:
        found |= {w for w in re.findall(r"\w+", expected_words.normalise(text)) if len(w) >= LONG_ENOUGH}
    return found


def searched(pdf):
    """Everything there is to read in a PDF, as bytes."""
    text = (pdftotext(pdf) + mutool(pdf)).encode("utf-8")
    described = run(["pdfinfo", pdf]).stdout + run(["pdfdetach", "-list", pdf]).stdout
    return unpacked(pdf) + text + described


def searched_of(text, tags=()):
    """The same for a résumé of this text."""
    with tempfile.TemporaryDirectory(prefix="outside-") as name:
        source, pdf = pathlib.Path(name, "zzsourcezz.resume"), pathlib.Path(name, "zzoutputzz.pdf")
        source.write_text(text, encoding="utf-8")
        return searched(pdf) if quoin_set(source, pdf, tags).returncode == 0 else b""


def check_samples(tally):
    of_any_pdf = searched_of(HEADED)
    tally.check(of_any_pdf, "set a résumé that is hardly there")
    for name, source, tags, pdf in SamplePdfs(tally):
        reading = expected_words.read(source, tags)
        kept = long_words([" ".join(word.text for word in reading.words)])
        kept = {word.lower() for word in kept}
        data = searched(pdf)
        for word in sorted(machine_words(source, pdf)):
            tally.check(not holds(data, word), f"{name} holds '{word}' of this machine")
        left_out = {w for w in long_words(reading.left_out + reading.comments)
                    if not any(w.lower() in k for k in kept)}
        traces = sorted(w for w in left_out if holds(data, w))
        # what any PDF holds, this résumé's or another's, is no trace of this one
        traces = [w for w in traces if not holds(of_any_pdf, w)]
        tally.check(not traces, f"{name} holds what was left out", ", ".join(traces))


def check_hidden(tally):
    data = searched_of(HIDING, ["zztagzz"])
    tally.check(b"/ObjStm" not in data and b"/FlateDecode" not in data, "the search sees every object")
    tally.check(holds(data, "Castellane"), "the search finds what is there")
    for word in sorted({*re.findall(r"zz\w+zz", HIDING), "zzsourcezz", "zzoutputzz"}):
        tally.check(not holds(data, word), f"trace of {word}")


def main():
    tally = Tally()
    check_samples(tally)
    check_hidden(tally)
    tally.finish()


if __name__ == "__main__":
    main()
