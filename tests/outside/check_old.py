#!/usr/bin/python3
"""`quoin begin --from` over old documents: which share of what they say is placed right.

Those of tests/transcription/old were written by hand in other ways than quoin's, with labels; their
PDFs are made here by headless Chromium and by cairo. The other half are the samples, set in every
theme: what was typed is known. Every draft is to be one that `quoin set` reads, and every word of
the labels is to be in it.
"""

import concurrent.futures
import pathlib
import sys
import tempfile

from common import QUOIN, ROOT, SAMPLES, THEMES, Tally, quoin_set, require_quoin, run

sys.path.insert(0, str(ROOT / "tests" / "transcription"))
import score  # noqa: E402

OLD = ROOT / "tests" / "transcription" / "old"
# The least share of each that is placed right
OURS = {"entry": 0.97, "title": 0.97, "org": 0.97, "dates": 0.97, "bullet": 0.97, "name": 1,
        "word": 1}
OTHERS = {"entry": 0.98, "title": 0.97, "org": 0.97, "dates": 0.97, "bullet": 0.97, "name": 1,
          "word": 1}


def document_of(source, folder):
    """The document itself, or the PDF that its source makes."""
    pdf = folder / f"{source.stem}.pdf"
    if source.suffix == ".html":
        run(["chromium", "--headless", "--no-sandbox", "--disable-gpu",
             f"--user-data-dir={folder / source.stem}", "--no-pdf-header-footer",
             f"--print-to-pdf={pdf}", source.as_uri()])
        return pdf
    if source.suffix == ".py":
        run(["/usr/bin/python3", source, pdf])
        return pdf
    return source


def old_document(work):
    labels, folder = work
    source = next(path for path in sorted(OLD.glob(f"{labels.stem}.*")) if path != labels)
    return labels, document_of(source, folder)


def old_documents(folder):
    with concurrent.futures.ThreadPoolExecutor() as pool:
        yield from pool.map(old_document,
                            [(labels, folder) for labels in sorted(OLD.glob("*.labels"))])


def set_sample(work):
    source, theme, pdf = work
    quoin_set(source, pdf, options=["--theme", theme])
    return source, pdf


def our_documents(folder):
    work = [(source, theme.stem, folder / f"{source.stem}.{theme.stem}.pdf")
            for source in sorted(SAMPLES.glob("*.resume")) for theme in sorted(THEMES.glob("*.theme"))]
    with concurrent.futures.ThreadPoolExecutor() as pool:
        yield from pool.map(set_sample, work)


def drafted(work):
    labels, document, folder = work
    draft = folder / f"{document.name}.resume"
    made = run([QUOIN, "begin", "--from", document, "-o", draft], text=True)
    done = run([QUOIN, "set", draft, "-o", draft.with_suffix(".pdf")], text=True)
    return labels, document, draft, made, done


def check_drafts(documents, folder, floors, kind, tally):
    total = score.Score()
    with concurrent.futures.ThreadPoolExecutor() as pool:
        drafts = list(pool.map(drafted, [(*one, folder) for one in documents]))
    for labels, document, draft, made, done in drafts:
        if not tally.check(made.returncode == 0, f"begin --from {document.name}", made.stderr):
            continue
        tally.check(done.returncode in (0, 3), f"set of {draft.name}", done.stderr)
        records = score.records_of(labels)
        score.score(records, draft.read_text(encoding="utf-8"), total)
    for what, floor in floors.items():
        tally.check(total.share(what) >= floor, f"{kind}: {what}",
                    f"{total.share(what):.4f} of {total.all[what]}, expected {floor} at least")


def main():
    require_quoin()
    tally = Tally()
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        check_drafts(old_documents(folder), folder, OTHERS, "old documents", tally)
        check_drafts(our_documents(folder), folder, OURS, "samples", tally)
    tally.finish()


if __name__ == "__main__":
    main()
