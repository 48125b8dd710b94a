#!/usr/bin/python3 -B
"""Names in Chinese and Korean letters stand on the page and come out of it whole, with every reader.

A theme that names Debian's Noto font for them (fonts-noto-cjk), whose glyphs are keyed by CID, sets a
résumé with such names; each program of readers.py is to give each name as it was typed.
"""

import pathlib
import tempfile

import readers
from common import ROOT, Tally, quoin_set, require_quoin, run

NAMES = {"Han": "徐小明", "Hangul": "김하늘"}
FONT = "opentype/noto/NotoSansCJK-Regular.ttc"


def source():
    names = [f"text: In {script} letters {name}, as above" for script, name in NAMES.items()]
    return "\n".join(["name: Ming Xu 徐小明", "email: ming.xu@ellerystate.example", "theme: ./scripts.theme", "",
                      "section: Names", "holds: prose", "", *names, ""])


def main():
    tally = Tally()
    require_quoin()
    with tempfile.TemporaryDirectory(prefix="outside-") as folder:
        place = pathlib.Path(folder)
        (place / "scripts.theme").write_text(f"based-on: turnstone\nfamily-file: {FONT}\n", encoding="utf-8")
        (place / "names.resume").write_text(source(), encoding="utf-8")
        pdf = place / "names.pdf"
        done = quoin_set(place / "names.resume", pdf, options=["--verify"], text=True)
        if tally.check(done.returncode == 0, "a page with names in other scripts", done.stderr.strip()):
            fonts = run(["pdffonts", pdf], text=True).stdout.splitlines()[2:]
            tally.check(all(line.split()[-5] == "yes" for line in fonts), "every font is embedded", "\n".join(fonts))
            conforms = run(["/usr/bin/python3", "-B", ROOT / "tests" / "conformance" / "pdf_conformance.py", pdf], text=True)
            tally.check(conforms.returncode == 0, "it conforms", conforms.stdout)
            for reader, read in readers.READERS.items():
                text = read(pdf)
                tally.check(f"Ming Xu {NAMES['Han']}" in text, f"the name by {reader}", text)
                for script, name in NAMES.items():
                    tally.check(f"letters {name}, as" in " ".join(text.split()), f"{script} by {reader}", text)
    tally.finish()


if __name__ == "__main__":
    main()
