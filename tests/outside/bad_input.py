#!/usr/bin/python3 -B
"""Every bad input gets one clear message and its exit code, and leaves the old output as it was.

A case gives files, arguments, the exit code (0 done, 1 errors, 2 wrong use, 3 does not fit) and a
pattern that the message must match. In each case `out.pdf` stands there before and must be the same
after, no other file may be left behind, the message must be of reasonable length, of one line for
each fault, without control characters, and not own up to an internal error.

Sources beside the cases: the ill-formed sequences are those of the Unicode Standard 15.0, tables 3-8
to 3-11; message form and `--help` follow the GNU Coding Standards, sections 4.4 and 4.8.
Cases about permissions run as another user when this runs as root, for root may do anything.
"""

import dataclasses
import os
import pathlib
import re
import shutil
import subprocess
import tempfile

from common import PATIENCE, QUOIN, Tally, has, require_quoin, run

OLD = b"%PDF the last good one\n"
GOOD = """\
name: Juniper Castellane
email: juniper.castellane@ellerystate.example

section: Experience

role: Front Desk Assistant
employer: Ellery State Recreation Center
place: Port Ellery, WA
dates: Sep 2025 - present
- Check in 140 members a shift
"""
HEAD, TAIL = GOOD.split("role:")[0], "role:" + GOOD.split("role:")[1]
MEBIBYTE = 1 << 20
NOBODY = 65534


@dataclasses.dataclass
class Case:
    name: str
    code: int
    message: str  # a pattern
    files: dict = dataclasses.field(default_factory=dict)  # name: text or bytes; None: a folder
    args: tuple = ("in.resume", "-o", "out.pdf")
    faults: int = 1  # messages; None: one or more
    stdin: bytes = b""
    env: dict = dataclasses.field(default_factory=dict)
    modes: dict = dataclasses.field(default_factory=dict)  # name: permissions
    unprivileged: bool = False


def source(text, **more):
    return {"files": {"in.resume": text}, **more}


def with_bytes(ill_formed):
    return source(HEAD.encode() + b"# " + ill_formed + b"\n" + TAIL.encode())


CONTENT = [
    Case("empty file", 1, "name", **source("")),
    Case("only blank lines", 1, "name", **source("\n\n \n\t\n")),
    Case("only comments", 1, "comment|name", **source("# a note\n# another\n")),
    Case("no name", 1, "name", **source(GOOD.replace("name: Juniper Castellane\n", ""))),
    Case("name without value", 1, "name", **source(GOOD.replace(" Juniper Castellane", ""))),
    Case("unknown label, nearest named", 1, "emial.*'email'", **source(GOOD.replace("email:", "emial:"))),
    Case("unreadable date", 1, r"in\.resume:9:.*'13", **source(GOOD.replace("Sep 2025", "13/2024"))),
    Case("a line of none of the forms", 1, r"in\.resume:3:", **source(GOOD.replace("\n\n", "\nwho knows\n\n", 1))),
    Case("three mistakes, three messages", 1, "emial", faults=3, **source(
        GOOD.replace("email:", "emial:").replace("Sep 2025", "13/2024").replace("place:", "whereabouts:"))),
    Case("bad setting", 1, "stage|senator", **source("stage: senator\n" + GOOD)),
    Case("size out of range", 1, "size|8", **source("size: 8\n" + GOOD)),
    Case("a scheme no link may have", 1, "javascript", **source(GOOD.replace("140", "<javascript:alert(1)>"))),
    Case("accept without its reason", 1, "reason|accept", **source("accept: two-bullets\n" + GOOD)),
]

# Unicode Standard 15.0, tables 3-8 to 3-11, and a lone start byte
ENCODING = [
    Case("NUL", 1, r"in\.resume.*NUL", **with_bytes(b"\x00")),
    Case("overlong forms", 1, "UTF-8", faults=None, **with_bytes(bytes.fromhex("C0AFE080BFF0818241"))),
    Case("surrogates", 1, "UTF-8", faults=None, **with_bytes(bytes.fromhex("EDA080EDBFBFEDAF41"))),
    Case("above U+10FFFF", 1, "UTF-8", faults=None, **with_bytes(bytes.fromhex("F4919293FF4180BF42"))),
    Case("truncated sequences", 1, "UTF-8", faults=None, **with_bytes(bytes.fromhex("E180E2F09192F1BF41"))),
    Case("Latin-1", 1, "UTF-8", faults=None, **with_bytes("résumé".encode("latin-1"))),
    Case("UTF-16", 1, "UTF-8|NUL", **source(GOOD.encode("utf-16"))),
    Case("cut within a character", 1, "UTF-8", **source(GOOD.encode() + b"- \xc3")),
    Case("a PDF given as the source", 1, "is a PDF", faults=None, **source(b"%PDF-1.7\n%\xb5\xed\xae\xfb\n" + bytes(range(256)))),
]

SIZE = [
    Case("one line of 50 MB", 1, "in.resume", **source(b"- " + b"x" * (50 << 20))),
    Case("50 MB of line ends", 1, "in.resume", **source(b"\n" * (50 << 20))),
    Case("a word of 0.9 MiB", 3, "too long|fit|line", **source(GOOD + "- " + "x" * (9 * MEBIBYTE // 10) + "\n")),
    Case("a bullet of 150,000 words", 3, "line", **source(GOOD + "- " + "word " * 150_000 + "\n")),
    Case("5,000 entries", 3, "line", **source(HEAD + (TAIL + "\n") * 5_000)),
    Case("more pages than a reader is asked for", 1, "cannot be verified: .*first 20 pages", faults=None,
         **source(HEAD + (TAIL + "\n") * 700), args=("in.resume", "-o", "out.pdf", "--draft", "--verify")),
    Case("100,000 bad lines", 1, "in.resume", faults=None, **source(GOOD + "\nnonsense\n" * 50_000)),
    Case("200 lines too long", 3, r"\d+ lines? too long", **source(GOOD + "- Served guests\n" * 200)),
]

# As typed text these are sound, if odd; they must end, and whatever is said, `set` makes the page
# or says that it does not fit.
REPEATED = ["*", "/", "_", "* ", " *x", "\\", "<", "<https://a", "(", "\"", "'", "--", "{", "{a} ", "-", "1-",
            "*/_", "\u0301", "\u200d", "\u202e", "👩‍🔬"]

FILES = [
    Case("no such file", 1, "in.resume.*no such file|no such file.*in.resume"),
    Case("a folder", 1, "in.resume.*folder|directory", files={"in.resume": None}),
    Case("missing include", 1, r"in\.resume:1:.*other", **source("include: other.resume\n" + GOOD)),
    Case("include of itself", 1, r"in\.resume.*->.*in\.resume|in\.resume.*itself", **source(
        "include: in.resume\n" + GOOD)),
    Case("include cycle", 1, r"a\.resume.*b\.resume", files={
        "in.resume": "include: a.resume\n" + GOOD, "a.resume": "include: b.resume\n",
        "b.resume": "include: a.resume\n"}),
    Case("include of a folder", 1, "folder|directory", files={"in.resume": "include: sub\n" + GOOD, "sub": None}),
    Case("include with bad UTF-8", 1, r"a\.resume.*UTF-8", files={
        "in.resume": "include: a.resume\n" + GOOD, "a.resume": b"section: \xff\n"}),
    Case("output folder missing", 1, "nowhere", args=("in.resume", "-o", "nowhere/out.pdf"), **source(GOOD)),
    Case("output is a folder", 1, "folder|directory", files={"in.resume": GOOD, "sub": None},
         args=("in.resume", "-o", "sub")),
    Case("/dev/full", 1, "/dev/full.*(full|space)", args=("in.resume", "-o", "/dev/full"), **source(GOOD)),
    Case("nothing on standard input", 1, "standard input|stdin|name", args=("-", "-o", "out.pdf")),
    Case("output over the source", 2, "source|overwr", args=("in.resume", "-o", "in.resume"), **source(GOOD)),
    Case("output name too long", 1, "long", args=("in.resume", "-o", "x" * 300 + ".pdf"), **source(GOOD)),
    Case("unreadable file", 1, "in.resume.*(read|permission)", modes={"in.resume": 0}, unprivileged=True, **source(GOOD)),
    Case("folder that cannot be written", 1, "out.pdf.*permission", unprivileged=True, **source(GOOD)),
]

THEMES = [
    Case("unknown theme", 1, "theme.*nosuch|nosuch.*theme", args=("in.resume", "-o", "out.pdf", "--theme", "nosuch"),
         **source(GOOD)),
    Case("unknown theme in the source", 1, r"in\.resume:1:.*nosuch", **source("theme: nosuch\n" + GOOD)),
    Case("a theme that is none", 1, r"bad\.theme:", faults=None, args=("in.resume", "-o", "out.pdf", "--theme", "./bad.theme"),
         files={"in.resume": GOOD, "bad.theme": "who knows\n"}),
    Case("an empty theme", 1, r"bad\.theme", faults=None, args=("in.resume", "-o", "out.pdf", "--theme", "./bad.theme"),
         files={"in.resume": GOOD, "bad.theme": ""}),
]

WRONG_USE = [
    Case("no verb", 2, "verb", args=None),
    Case("no file", 2, "file", args=()),
    Case("unknown option", 2, "--pepar.*'--paper'", args=("in.resume", "--pepar", "a4"), **source(GOOD)),
    Case("unknown paper", 2, "legal|paper", args=("in.resume", "--paper", "legal"), **source(GOOD)),
    Case("option without its value", 2, "-o|--output", args=("in.resume", "-o"), **source(GOOD)),
    Case("two files, one output", 2, "out.pdf", args=("in.resume", "b.resume", "-o", "out.pdf"),
         files={"in.resume": GOOD, "b.resume": GOOD}),
    Case("epoch that is no number", 2, "SOURCE_DATE_EPOCH", env={"SOURCE_DATE_EPOCH": "yesterday"}, **source(GOOD)),
]


class Bench:
    """A program other users may run, with its data, and a fresh folder for every case."""

    def __init__(self, root):
        self.root = pathlib.Path(root)
        self.root.chmod(0o755)
        self.data = self.root / "share" / "quoin"
        shutil.copytree(QUOIN.parents[1] / "share" / "quoin", self.data)
        (self.root / "bin").mkdir()
        self.quoin = shutil.copy(QUOIN, self.root / "bin")

    def folder(self, case):
        folder = pathlib.Path(tempfile.mkdtemp(dir=self.root))
        folder.chmod(0o755)
        for name, content in {**case.files, "out.pdf": OLD}.items():
            path = folder / name
            if content is None:
                path.mkdir()
            else:
                path.write_bytes(content if isinstance(content, bytes) else content.encode())
        for name, mode in case.modes.items():
            (folder / name).chmod(mode)
        return folder

    def run(self, case, folder):
        command = [self.quoin] if case.args is None else [self.quoin, "set", *case.args]
        if case.unprivileged:
            if os.getuid() == 0:
                command = ["setpriv", f"--reuid={NOBODY}", f"--regid={NOBODY}", "--clear-groups", *command]
            else:
                folder.chmod(0o555)
        return run(command, cwd=folder, input=case.stdin, env={**os.environ, **case.env})


def complaint(case, done, before, after):
    """What is wrong with the outcome, or nothing."""
    text = done.stderr.decode("utf-8", "replace")
    lines = text.splitlines()
    if done.returncode != case.code:
        return f"exit code {done.returncode}, expected {case.code}: {text[:300]!r}"
    if after != before:
        return f"files changed: {sorted(k for k in before.keys() | after.keys() if before.get(k) != after.get(k))}"
    if not any(re.search(case.message, line) for line in lines):
        return f"message does not match '{case.message}': {text[:300]!r}"
    if "internal error" in text or "terminate called" in text:
        return text[:300]
    if re.search(r"[\x00-\x08\x0b-\x1f\x7f\ufffd]", text):
        return f"control characters in the message: {text[:300]!r}"
    return bad_form(case, lines)


def bad_form(case, lines):
    # who can mend some of them is told behind them, once
    offer = re.compile(r"quoin: 'quoin mend .*' makes \d+ of these changes$")
    faults = [line for line in lines
              if re.match(r"quoin[^:]*: |\S.*?: error: ", line) and not offer.match(line)]
    if len(faults) != case.faults if case.faults is not None else not faults:
        return f"{len(faults)} messages, expected {case.faults or 'some'}: {lines[:6]}"
    for line in faults:
        if line.endswith(".") or len(line) > 600:
            return f"form of the message: {line[:300]!r}"
    return ""


def contents(folder):
    return {p.name: None if p.is_dir() else (p.stat().st_size, p.stat().st_mtime_ns)
            for p in folder.iterdir()}


def check(tally, bench, case):
    folder = bench.folder(case)
    before = contents(folder)
    try:
        done = bench.run(case, folder)
    except subprocess.TimeoutExpired:
        tally.check(False, case.name, f"no end within {PATIENCE} s")
        return
    folder.chmod(0o755)
    wrong = complaint(case, done, before, contents(folder))
    if (folder / "out.pdf").read_bytes() != OLD:
        wrong = wrong or "the old output is gone"
    tally.check(not wrong, case.name, wrong)
    shutil.rmtree(folder)


def check_repeated(tally, bench):
    for sign in REPEATED:
        case = Case(f"400 KB of {sign!r}", 0, "", **source(GOOD + "- " + sign * (400_000 // len(sign.encode())) + "\n"))
        folder = bench.folder(case)
        try:
            done = bench.run(case, folder)
            text = done.stderr.decode("utf-8", "replace")
            sound = done.returncode in (0, 1, 3) and "internal error" not in text and len(text) < 100_000
            tally.check(sound, case.name, f"exit code {done.returncode}, {len(text)} characters: {text[:200]!r}")
        except subprocess.TimeoutExpired:
            tally.check(False, case.name, f"no end within {PATIENCE} s")
        shutil.rmtree(folder)


def check_installation(tally, bench):
    """Data folders in which something is missing or broken."""
    fonts = sorted(p for p in (bench.data / "fonts").rglob("*") if p.suffix in (".otf", ".ttf"))
    used = Case("a missing font file", 1, "font", faults=None, env={"QUOIN_DATA": "data"}, **source(GOOD))
    broken = {
        "every font file missing": lambda data: [(data / f.relative_to(bench.data)).unlink() for f in fonts],
        "every font file empty": lambda data: [(data / f.relative_to(bench.data)).write_bytes(b"") for f in fonts],
        "every font file rubbish": lambda data: [(data / f.relative_to(bench.data)).write_bytes(b"\x00\x01\x00\x00" * 999)
                                                 for f in fonts],
        "no list of families": lambda data: (data / "fonts" / "families").unlink(),
        "no themes": lambda data: shutil.rmtree(data / "themes"),
        "no data at all": shutil.rmtree,
    }
    for name, breaks in broken.items():
        case = dataclasses.replace(used, name=name, message="font|theme|families|data")
        folder = bench.folder(case)
        shutil.copytree(bench.data, folder / "data")
        breaks(folder / "data")
        before = contents(folder)
        done = bench.run(case, folder)
        wrong = complaint(case, done, before, contents(folder))
        tally.check(not wrong, name, wrong)
        shutil.rmtree(folder)


def check_full_standard_output(tally, bench):
    case = Case("standard output full", 1, "full|space", args=("in.resume", "-o", "-"), **source(GOOD))
    folder = bench.folder(case)
    with open("/dev/full", "wb") as full:
        done = subprocess.run([bench.quoin, "set", *case.args], cwd=folder, stdout=full,
                              stderr=subprocess.PIPE, timeout=PATIENCE)
    wrong = complaint(case, done, {}, {})
    tally.check(not wrong, case.name, wrong)


def main():
    require_quoin()
    tally = Tally()
    with tempfile.TemporaryDirectory(prefix="outside-") as root:
        bench = Bench(root)
        good = Case("a good one, for comparison", 0, "", **source(GOOD))
        folder = bench.folder(good)
        done = bench.run(good, folder)
        tally.check(done.returncode == 0 and (folder / "out.pdf").read_bytes() != OLD, good.name,
                    done.stderr.decode("utf-8", "replace"))
        for case in [*CONTENT, *ENCODING, *SIZE, *FILES, *THEMES, *WRONG_USE]:
            if case.unprivileged and os.getuid() == 0 and not has("setpriv"):
                print(f"skipped {case.name}: root may do anything, and there is no setpriv")
                continue
            check(tally, bench, case)
        check_repeated(tally, bench)
        check_installation(tally, bench)
        check_full_standard_output(tally, bench)
    tally.finish()


if __name__ == "__main__":
    main()
