"""What the outside checks share: where things are, how quoin is called, and how results are counted.

The folder holds checks of quoin's output by programs that quoin did not write, and by a second,
slow reading of the markup (expected_words.py) that shares no line with the compiler. Each check is
a script without arguments, run from anywhere:

    QUOIN=build/bin/quoin tests/outside/check_extraction.py

QUOIN names the program (default: build/bin/quoin of this checkout). A script ends with one line,
`N passed, N failed`, and exit code 1 if anything failed. Python 3.11 and its standard library are
enough; the readers are named in readers.py with the Debian packages they come from.
"""

import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[2]
SAMPLES = ROOT / "samples"
THEMES = ROOT / "themes"
MARGIN = ROOT / "tests" / "fixtures" / "margin.theme"  # has what stands side by side without two columns
QUOIN = pathlib.Path(os.environ.get("QUOIN", ROOT / "build" / "bin" / "quoin")).resolve()

# The variants of samples/Makefile: a résumé and the tags one build asks for.
VARIANTS = {"environmental-chemistry": ("lab", "field")}

# A guard against hanging, not a measurement: everything here takes far less.
PATIENCE = 60


def builds():
    """(name, source, tags) of every sample PDF, named as samples/Makefile names it."""
    for source in sorted(SAMPLES.glob("*.resume")):
        yield source.stem, source, ()
        for tag in VARIANTS.get(source.stem, ()):
            yield f"{source.stem}.{tag}", source, (tag,)


def run(command, **options):
    """A finished process; its output as bytes unless text=True."""
    options.setdefault("timeout", PATIENCE)
    return subprocess.run([str(word) for word in command], capture_output=True, **options)


def quoin_set(source, output, tags=(), options=(), **run_options):
    command = [QUOIN, "set", source, "-o", output, *options]
    for tag in tags:
        command += ["--for", tag]
    # a date that the surroundings state would be in the file, and rightly
    bare = {name: value for name, value in os.environ.items() if name != "SOURCE_DATE_EPOCH"}
    run_options.setdefault("env", bare)
    return run(command, **run_options)


def require_quoin():
    if not QUOIN.exists():
        sys.exit(f"{QUOIN} is not built; build it first or set QUOIN")


def has(program):
    return shutil.which(program) is not None


class Tally:
    """Counts cases; a failed one says what was expected, on its own lines."""

    def __init__(self):
        self.passed = 0
        self.failed = 0

    def check(self, holds, case, detail=""):
        if holds:
            self.passed += 1
        else:
            self.failed += 1
            print(f"FAILED {case}" + (f"\n    {detail}" if detail else ""))
        return bool(holds)

    def finish(self):
        # a run that checked nothing proves nothing
        if self.passed + self.failed == 0:
            self.check(False, "no case was run")
        print(f"{self.passed} passed, {self.failed} failed")
        sys.exit(1 if self.failed else 0)


class SamplePdfs:
    """Every sample set once into a folder of its own, removed at the end."""

    def __init__(self, tally):
        require_quoin()
        self._folder = tempfile.TemporaryDirectory(prefix="outside-")
        self.folder = pathlib.Path(self._folder.name)
        self.all = []  # (name, source, tags, pdf)
        for name, source, tags in builds():
            pdf = self.folder / f"{name}.pdf"
            done = quoin_set(source, pdf, tags, text=True)
            if tally.check(done.returncode == 0, f"set {name}", done.stderr.strip()):
                self.all.append((name, source, tags, pdf))

    def __iter__(self):
        # a generator holds on to self, and with it to the folder, for as long as the loop runs
        yield from self.all
