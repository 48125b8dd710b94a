#!/usr/bin/python3 -B
"""`quoin proof --marked`: every finding on its page, judged by readers that quoin did not write.

tests/advice/faulty.resume and every sample, in every theme. pikepdf reads the annotations and the
structure tree, poppler the words and where they stand. References: ISO 32000-1, sections 12.5.2
(annotations), 12.5.6.2 (groups), 12.5.6.4 (text), 12.5.6.10 (highlight), 14.7.4.4 (finding the
structure element of an object); PDF/A-2 and PDF/UA-1 as in tests/conformance.
"""

import html
import json
import os
import pathlib
import re
import sys
import tempfile

import pikepdf

from common import QUOIN, ROOT, THEMES, Tally, builds, quoin_set, require_quoin, run

sys.path.insert(1, str(ROOT / "tests" / "conformance"))
from pdf_conformance import failures

ENVIRONMENT = {**os.environ, "SOURCE_DATE_EPOCH": "1795132800"}  # 2026-11-20
PRINT = 4  # table 165
FEWEST_PLACES_COMPARED = 100  # that the last check below did look


def proof_marked(source, tags, theme, pdf):
    options = [word for tag in tags for word in ("--for", tag)]
    return run([QUOIN, "proof", "--format", "json", "--theme", theme, "--marked", pdf, *options, source],
               env=ENVIRONMENT)


def page_text(pdf, page):
    return run(["pdftotext", "-f", page, "-l", page, pdf, "-"]).stdout


def page_words(pdf, page):
    """(left, top from the page's foot, right, bottom, word)"""
    out = run(["pdftotext", "-bbox", "-f", page, "-l", page, pdf, "-"]).stdout.decode()
    height = float(re.search(r'<page width="[\d.]+" height="([\d.]+)"', out).group(1))
    return [(float(left), height - float(top), float(right), height - float(bottom), html.unescape(word))
            for left, top, right, bottom, word in
            re.findall(r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)</word>', out)]


def words_under(quads, words):
    """The words of which some lies under a quadrilateral."""
    found = []
    for left, top, right, bottom, word in words:
        middle = (top + bottom) / 2
        for q in range(0, len(quads), 8):
            xs, ys = quads[q: q + 8: 2], quads[q + 1: q + 8: 2]
            if min(ys) < middle < max(ys) and min(max(xs), right) - max(min(xs), left) > 0.5:
                found.append(word)
                break
    return found


def typed(source, place):
    """The words of the source at a finding's place, as the page would have them."""
    line = source.read_text(encoding="utf-8").splitlines()[place["line"] - 1]
    text = line[place["column"] - 1: place["column"] - 1 + place["length"]]
    return re.sub(r"[*_\\]|(?<!\w)/|/(?!\w)", "", text).replace("'", "’").split()


def stands_in(words, among):
    return any(among[i: i + len(words)] == words for i in range(len(among) - len(words) + 1))


def element_of(tree, annotation):
    numbers = tree.ParentTree.Nums
    for i in range(0, len(numbers), 2):
        if int(numbers[i]) == int(annotation.StructParent):
            return numbers[i + 1]
    return None


def check_annotation(annotation, page, tree, what, tally):
    element = element_of(tree, annotation)
    tally.check(element is not None and element.S == "/Annot", f"{what}: in an Annot element")
    if element is not None:
        kids = element.K if isinstance(element.K, pikepdf.Array) else [element.K]
        tally.check([kid.Obj.objgen for kid in kids] == [annotation.objgen], f"{what}: its element holds it alone")
    tally.check(int(annotation.F) == PRINT, f"{what}: printed, and not hidden")
    tally.check(set(annotation.AP.keys()) == {"/N"}, f"{what}: one appearance")
    left, bottom, right, top = (float(value) for value in annotation.Rect)
    width, height = float(page.MediaBox[2]), float(page.MediaBox[3])
    tally.check(0 <= left < right <= width and 0 <= bottom < top <= height, f"{what}: on the paper")


def check_findings(findings, flags, what, tally):
    """Every finding has a flag that says all of it, and there are no others."""
    tally.check(sorted({number for number, _, _ in flags}) == [finding["number"] for finding in findings],
                f"{what}: a flag for every finding", str(sorted({number for number, _, _ in flags})))
    for finding in findings:
        for number, subject, contents in flags:
            if number == finding["number"]:
                tally.check(subject == finding["check"] and
                            contents.startswith(f"{number}, {finding['weight']}: ") and
                            finding["text"] in contents and finding["suggestion"] in contents and
                            finding["why"] in contents, f"{what}: flag {number}", contents)


def check_words(source, finding, marked, words, what, tally):
    """What is marked is what the finding's place holds, where the page has it as typed. 1 if so."""
    wanted = typed(source, finding["place"]) if "column" in finding["place"] else []
    on_page = [word for _, _, _, _, word in words]
    if not wanted or not marked or not stands_in(wanted, on_page):
        return 0
    tally.check(stands_in(wanted, marked), f"{what}: finding {finding['number']} marks '{' '.join(wanted)}'",
                " ".join(marked))
    return 1


def check_one(source, tags, theme, folder, tally):
    """How many places were compared word for word."""
    what = f"{source.stem}{''.join('.' + tag for tag in tags)}, {theme}"
    pdf, again, bare = folder / "marked.pdf", folder / "again.pdf", folder / "bare.pdf"
    done = proof_marked(source, tags, theme, pdf)
    if not tally.check(done.returncode in (0, 1) and pdf.exists(), f"{what}: written", done.stderr.decode()):
        return 0
    findings = json.loads(done.stdout)["files"][0]["findings"]
    proof_marked(source, tags, theme, again)
    tally.check(pdf.read_bytes() == again.read_bytes(), f"{what}: the same bytes twice")
    tally.check(not failures(pdf.read_bytes()), f"{what}: conforms", str(failures(pdf.read_bytes()))[:300])

    quoin_set(source, bare, tags, ["--theme", theme, "--draft"])
    pages = len(pikepdf.open(bare).pages)
    compared, flags = 0, []
    by_number = {finding["number"]: finding for finding in findings}
    with pikepdf.open(pdf) as document:
        tally.check(len(document.pages) > pages, f"{what}: a sheet behind the pages")
        for number in range(1, pages + 1):
            tally.check(page_text(pdf, number) == page_text(bare, number), f"{what}: page {number} as set makes it")
            page, words = document.pages[number - 1], page_words(pdf, number)
            for annotation in page.get("/Annots", []):
                if annotation.Subtype == "/Link":
                    continue
                of = int(re.match(r"\d+", str(annotation.Contents)).group())
                check_annotation(annotation, page, document.Root.StructTreeRoot, f"{what}: note {of}", tally)
                if annotation.Subtype == "/Text":
                    flags.append((of, str(annotation.Subj), str(annotation.Contents)))
                    continue
                tally.check(annotation.Subtype == "/Highlight" and annotation.RT == "/Group" and
                            str(annotation.IRT.Contents).startswith(f"{of}, "), f"{what}: note {of} and its words")
                quads = [float(value) for value in annotation.QuadPoints]
                compared += check_words(source, by_number[of], words_under(quads, words), words, what, tally)
    check_findings(findings, flags, what, tally)
    sheet = b"".join(page_text(pdf, number) for number in range(pages + 1, pages + 9)).decode()
    # a line may begin with its label or stand beside it
    numbers = {int(number) for number in re.findall(r"(?:^|\s)(\d+)(?=\s+(?:Line|The whole))", sheet)}
    tally.check(numbers == set(by_number), f"{what}: the sheet lists every finding", str(numbers ^ set(by_number)))
    return compared


def check_use(folder, tally):
    source = ROOT / "tests" / "advice" / "faulty.resume"
    broken, out = folder / "broken.resume", folder / "out.pdf"
    broken.write_text("nam: Al Bay\n", encoding="utf-8")
    copy = folder / "copy.resume"
    copy.write_bytes(source.read_bytes())
    for arguments, code, message in [
        (["--marked", out, "--mend", copy], 2, "write 'quoin mend FILE'"),
        (["--marked", out, copy, source], 2, "is not a folder"),
        (["--marked", copy, copy], 2, "would write over the résumé itself"),
        (["--marked", "-", "--format", "json", copy], 2, "standard output holds one thing"),
        (["--marked", out, broken], 1, "unknown label 'nam'"),
        (["--marked", folder / "none" / "out.pdf", copy], 1, "none"),
    ]:
        done = run([QUOIN, "proof", *arguments], env=ENVIRONMENT)
        tally.check(done.returncode == code and message in done.stderr.decode() and not out.exists(),
                    f"{arguments[2:]}: exit code {code}", done.stderr.decode())
    tally.check(copy.read_bytes() == source.read_bytes(), "the source stays as it was")
    piped = run([QUOIN, "proof", "--marked", "-", "-"], env=ENVIRONMENT, input=source.read_bytes())
    tally.check(piped.returncode == 1 and piped.stdout.startswith(b"%PDF-1.7"), "from and to a pipe")


def main():
    require_quoin()
    tally, compared = Tally(), 0
    cases = [("faulty", ROOT / "tests" / "advice" / "faulty.resume", ()), *builds()]
    with tempfile.TemporaryDirectory(prefix="outside-") as name:
        folder = pathlib.Path(name)
        for theme in sorted(path.stem for path in THEMES.glob("*.theme")):
            for _, source, tags in cases:
                compared += check_one(source, tags, theme, folder, tally)
        check_use(folder, tally)
    tally.check(compared >= FEWEST_PLACES_COMPARED, "places compared word for word", str(compared))
    print(f"{compared} findings compared with their source word for word")
    tally.finish()


if __name__ == "__main__":
    main()
