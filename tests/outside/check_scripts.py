#!/usr/bin/python3 -B
"""Names in Chinese, Korean, Hebrew and Arabic letters stand on the page and come out of it whole.

A theme that names Debian's Noto fonts for them (fonts-noto-cjk, whose glyphs are keyed by CID, and
fonts-noto-core) sets a résumé with such names. Each program of readers.py is to give the first two as they
were typed. Of letters that are read from right to left no order of glyphs serves all of them: those that turn
them back are to give both words of a name, and `--verify` is to pass where there is one.
"""

import pathlib
import re
import tempfile

import readers
from common import ROOT, Tally, quoin_set, require_quoin, run

NAMES = {"Han": "徐小明", "Hangul": "김하늘"}
TURNED = {"Hebrew": "משה כהן", "Arabic": "نور الحسن"}
TURNING = ("pdftotext", "pdftotext -layout", "pdfbox", "pdf.js")
FONTS = ("opentype/noto/NotoSansCJK-Regular.ttc", "truetype/noto/NotoSansHebrew-Regular.ttf",
         "truetype/noto/NotoNaskhArabic-Regular.ttf")
MARKS = re.compile("[\u200e\u200f\u202a-\u202e\u2066-\u2069]")  # that a reader puts around them


def source(names):
    texts = [f"text: In {script} letters {name}" for script, name in names.items()]
    return "\n".join(["name: Ming Xu 徐小明", "email: ming.xu@ellerystate.example", "theme: ./scripts.theme", "",
                      "section: Names", "holds: prose", "", "\n\n".join(texts), ""])


def set_names(place, stem, names, options):
    (place / f"{stem}.resume").write_text(source(names), encoding="utf-8")
    return quoin_set(place / f"{stem}.resume", place / f"{stem}.pdf", options=options, text=True)


def check_page(tally, pdf):
    fonts = run(["pdffonts", pdf], text=True).stdout.splitlines()[2:]
    tally.check(all(line.split()[-5] == "yes" for line in fonts), "every font is embedded", "\n".join(fonts))
    conforms = run(["/usr/bin/python3", "-B", ROOT / "tests" / "conformance" / "pdf_conformance.py", pdf], text=True)
    tally.check(conforms.returncode == 0, "it conforms", conforms.stdout)


def words_of(text):
    return " ".join(MARKS.sub("", text).split()) + " "


def main():
    tally = Tally()
    require_quoin()
    with tempfile.TemporaryDirectory(prefix="outside-") as folder:
        place = pathlib.Path(folder)
        (place / "scripts.theme").write_text(f"based-on: turnstone\nfamily-file: {', '.join(FONTS)}\n", encoding="utf-8")
        one_word = {script: name.split()[-1] for script, name in TURNED.items()}
        done = set_names(place, "names", NAMES | one_word, ["--verify"])
        if tally.check(done.returncode == 0, "a page with names in other scripts", done.stderr.strip()):
            check_page(tally, place / "names.pdf")
            for reader, read in readers.READERS.items():
                text = read(place / "names.pdf")
                tally.check(f"Ming Xu {NAMES['Han']}" in text, f"the name by {reader}", text)
                for script, name in NAMES.items():
                    tally.check(f"letters {name} " in words_of(text), f"{script} by {reader}", text)
        done = set_names(place, "turned", TURNED, [])
        if tally.check(done.returncode == 0, "a page with names of two words from right to left", done.stderr.strip()):
            check_page(tally, place / "turned.pdf")
            for reader in TURNING:
                text = words_of(readers.READERS[reader](place / "turned.pdf"))
                for script, name in TURNED.items():
                    tally.check(f"letters {name} " in text, f"{script} by {reader}", text)
    tally.finish()


if __name__ == "__main__":
    main()
