"""Programs that read a PDF's words, as employers' portals and people's viewers do.

Each reader takes a PDF and gives its text:

    pdftotext, in its three ways of ordering   poppler-utils
    mutool                                     mupdf-tools
    pdfminer                                   python3-pdfminer
    pdfbox                                     libpdfbox2-java and a Java runtime
    pdf.js                                     npm pdfjs-dist, of package.json, in build/node_modules or
                                               the folder that QUOIN_PDFJS names

READERS holds those that are on this machine, and MISSING names the others: tests/outside/run sees to it
that there are none.
"""

import importlib.util
import os
import pathlib

from common import ROOT, has, run

JAVA = pathlib.Path("/usr/share/java")
JARS = [JAVA / f"{name}.jar" for name in ("pdfbox2", "pdfbox2-tools", "fontbox2", "commons-logging")]
# a runtime that is started for one page has no use for its second compiler
JAVA_OPTIONS = ["-Djava.awt.headless=true", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"]
PDFJS = pathlib.Path(os.environ.get("QUOIN_PDFJS", ROOT / "build" / "node_modules" / "pdfjs-dist"))
PDFJS_READER = pathlib.Path(__file__).with_name("pdfjs_text.mjs")


def _output(command):
    done = run(command)
    if done.returncode != 0:
        raise RuntimeError(f"{command[0]}: {done.stderr.decode(errors='replace').strip()}")
    return done.stdout.decode("utf-8")


def pdftotext(pdf, *options):
    return _output(["pdftotext", "-enc", "UTF-8", *options, pdf, "-"])


def mutool(pdf):
    return _output(["mutool", "draw", "-q", "-F", "txt", pdf])


def pdfminer(pdf):
    from pdfminer.high_level import extract_text

    return extract_text(str(pdf))


def pdfbox(pdf):
    return _output(["java", *JAVA_OPTIONS, "-cp", ":".join(map(str, JARS)),
                    "org.apache.pdfbox.tools.ExtractText", "-encoding", "UTF-8", "-console", pdf])


def pdfjs(pdf):
    return _output(["node", PDFJS_READER, PDFJS, pdf])


READERS = {
    "pdftotext": pdftotext,
    "pdftotext -layout": lambda pdf: pdftotext(pdf, "-layout"),
    "pdftotext -raw": lambda pdf: pdftotext(pdf, "-raw"),
    "mutool": mutool,
}

# Those that order words by where they stand on the page, not by where they stand in the file.
BY_LAYOUT = {"pdftotext", "pdftotext -layout", "pdfminer"}

# Of these, one that takes whatever stands at one height for one line.
LINE_BY_LINE = {"pdftotext -layout"}

# It puts an empty line between any two lines that are set well apart.
PARTS_LINES = {"pdfminer"}

MISSING = []
for name, reader, present in (
    ("pdfminer", pdfminer, importlib.util.find_spec("pdfminer") is not None),
    ("pdfbox", pdfbox, has("java") and all(jar.exists() for jar in JARS)),
    ("pdf.js", pdfjs, has("node") and (PDFJS / "legacy" / "build" / "pdf.mjs").exists()),
):
    if present:
        READERS[name] = reader
    else:
        MISSING.append(name)
