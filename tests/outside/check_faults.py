#!/usr/bin/python3 -B
"""A fault at every call: whatever fails, each verb either does what it would have done, to the byte,
or says in one clear message what was wrong and leaves what stood there; and nothing is left behind.

Calls of the system fail by strace(1), which lets the N-th of a kind return an error number instead of
being made; allocations, and reads and writes that are cut short, by tests/outside/faulty_library.cpp,
which stands before the C library. By default a sample of the points is tried, the same each time; all
of them with QUOIN_FULL=1 (an hour or two), or those of one verb: `check_faults.py mend`.
"""

import collections
import concurrent.futures
import dataclasses
import os
import pathlib
import random
import re
import shutil
import subprocess
import sys
import tempfile

from common import QUOIN, SAMPLES, Tally, has, require_quoin

FULL = bool(os.environ.get("QUOIN_FULL"))
SAMPLED = {"calls": 9, "allocations": 7}  # points of a verb
LIBRARY = QUOIN.parent.parent / "tests" / "faulty_library.so"
PATIENCE = 30

# What may be refused, and how: errno(3) of each call as its manual page has it
FAULTS = {
    "openat": ("EACCES", "EMFILE", "EINTR", "EIO"),
    "read": ("EIO", "EINTR"),
    "write": ("ENOSPC", "EIO", "EINTR"),
    "fsync": ("EIO", "ENOSPC"),
    "rename": ("EACCES", "EIO", "ENOSPC"),
    "renameat2": ("EACCES", "EINVAL", "EIO"),
    "mmap": ("ENOMEM",),
    "newfstatat": ("EACCES", "EIO"),
    "unlink": ("EACCES",),
    "flock": ("ENOLCK",),
    "fchmod": ("EPERM",),
    "clone": ("EAGAIN", "ENOMEM"),
    "clone3": ("EAGAIN",),
    "execve": ("ENOMEM", "EACCES"),
    "pipe2": ("EMFILE",),
    "memfd_create": ("EMFILE", "ENOMEM"),
    "prlimit64": ("EPERM",),
    "close": ("EIO",),
}

DRAFT = """\
name: Juniper Castellane
email: juniper.castellane@ellerystate.example
phone: (360) 555-0142
theme: ./own.theme

section: Experience

role: Front Desk Assistant
employer: Ellery State Recreation Center
place: Port Ellery, WA
dates: Sep 2025 - present
- Check in 140 members whether whether they have a card
- Keep the the keys of 12 rooms

include: parts/honors.resume
"""


@dataclasses.dataclass
class Verb:
    name: str
    words: tuple
    targets: tuple = ()  # what it writes or replaces
    status: int = 0
    tells: bool = False  # its report is of what could not be read, too
    apart: bool = False  # each target is put in place by itself
    has_readers: bool = False  # it runs poppler's tools, whose own reads and writes are not ours to mend


VERBS = [
    Verb("set", ("set", "draft.resume", "-o", "out.pdf", "--plain", "out.txt", "--deps", "out.d"),
         ("out.pdf", "out.txt", "out.d")),
    Verb("set-verify", ("set", "draft.resume", "--verify", "-o", "out.pdf"), ("out.pdf",), has_readers=True),
    Verb("set-many", ("set", "draft.resume", "other.resume", "-o", "many"), ("many/draft.pdf", "many/other.pdf"),
         apart=True),
    Verb("mend", ("mend", "draft.resume"), ("draft.resume",)),
    Verb("proof", ("proof", "draft.resume", "--marked", "out.pdf"), ("out.pdf",), status=1),
    Verb("scan", ("scan", "old.pdf"), has_readers=True),
    Verb("begin", ("begin", "--stage", "undergraduate", "--field", "lab", "-o", "new.resume"), ("new.resume",)),
    Verb("begin-from", ("begin", "--from", "old.pdf", "-o", "new.resume"), ("new.resume",), has_readers=True),
    Verb("tailor", ("tailor", "everything.resume", "posting.txt", "-o", "out.resume"), ("out.resume",)),
    Verb("match", ("match", "everything.resume", "posting.txt", "--report", "out.html"), ("out.html",)),
    Verb("glance", ("glance", "draft.resume", "--marked", "out.pdf"), ("out.pdf",)),
    Verb("redline", ("redline", "other.resume", "draft.resume", "--marked", "out.pdf"), ("out.pdf",),
         tells=True),
    Verb("caseload", ("caseload", "folder", "--report", "out.html"), ("out.html",), tells=True),
    Verb("posting", ("posting", "posting.txt")),
    Verb("checks", ("checks",)),
    Verb("themes", ("themes",)),
    Verb("help", ("help", "markup")),
]

# What the dynamic loader and strace say of themselves, before quoin is there
OF_OTHERS = re.compile(r"error while loading shared libraries|strace: ")


def make_folder(folder):
    (folder / "parts").mkdir()
    (folder / "many").mkdir()
    (folder / "folder").mkdir()
    (folder / "draft.resume").write_text(DRAFT)
    (folder / "other.resume").write_text(DRAFT.replace("140", "150"))
    (folder / "parts/honors.resume").write_text("section: Honors\n\naward: Tide Prize\ndates: 2025\n")
    (folder / "own.theme").write_text("based-on: turnstone\n")
    shutil.copy(folder / "draft.resume", folder / "folder/draft.resume")
    (folder / "folder/draft.resume").write_text(DRAFT.replace("theme: ./own.theme\n", "").replace("include: parts/honors.resume\n", ""))
    shutil.copy(SAMPLES / "everything/marine-biology.resume", folder / "everything.resume")
    shutil.copy(SAMPLES / "postings/field-technician.txt", folder / "posting.txt")
    shutil.copytree(SAMPLES / "shared", folder / "shared", dirs_exist_ok=True)
    for name in ("out.pdf", "out.txt", "out.d", "out.html", "out.resume", "many/draft.pdf", "many/other.pdf"):
        (folder / name).write_bytes(b"what stood there\n")


def bare_environment(folder, **more):
    kept = {name: os.environ[name] for name in ("PATH", "LANG") if name in os.environ}
    return {**kept, "HOME": str(folder), "XDG_CACHE_HOME": str(folder / "cache"),
            "SOURCE_DATE_EPOCH": "1796000000", **more}


@dataclasses.dataclass
class Outcome:
    status: int
    out: bytes
    err: str
    files: dict
    folder: str


def contents(folder):
    return {str(path.relative_to(folder)): path.read_bytes() for path in sorted(folder.rglob("*"))
            if path.is_file() and "cache" not in path.relative_to(folder).parts[:1]}


class Bench:
    """Folders made once and copied for each run."""

    def __init__(self, root):
        self.root = pathlib.Path(root)
        self.model = self.root / "model"
        self.model.mkdir()
        make_folder(self.model)
        subprocess.run([QUOIN, "set", "draft.resume", "-o", "old.pdf"], cwd=self.model, check=True,
                       env=bare_environment(self.model), capture_output=True)

    def run(self, verb, before=(), **environment):
        folder = pathlib.Path(tempfile.mkdtemp(dir=self.root))
        shutil.copytree(self.model, folder / "w")
        inside = folder / "w"
        try:
            done = subprocess.run([*before, str(QUOIN), *verb.words], cwd=inside, capture_output=True,
                                  env=bare_environment(inside, **environment), timeout=PATIENCE)
            return Outcome(done.returncode, done.stdout, done.stderr.decode(errors="replace"),
                           contents(inside), str(inside))
        except subprocess.TimeoutExpired:
            return Outcome(-99, b"", "it hangs", {}, str(inside))
        finally:
            shutil.rmtree(folder, ignore_errors=True)


def is_half_done(outcome, good, before, verb):
    """Whether some targets are new and others old."""
    changing = [name for name in verb.targets if before.get(name) != good.files.get(name)]
    return len({outcome.files.get(name) == before.get(name) for name in changing}) > 1


def wrong_in(outcome, good, before, verb):
    """What is against the promise; empty if nothing is."""
    same_files = outcome.files == good.files
    if outcome.status == good.status and same_files and outcome.out == good.out:
        return ""
    if outcome.status == -99:
        return "it hangs"
    if outcome.status < 0 or outcome.status > 128:
        return f"ended by signal {outcome.status}: {outcome.err[-200:]}"
    if "internal error" in outcome.err:
        return f"told as a fault of quoin: {outcome.err[:300]}"
    if not verb.apart and is_half_done(outcome, good, before, verb):
        return "some of what it writes is new, some is old"
    told_in_report = verb.tells and outcome.out != good.out
    for name in {*outcome.files, *before, *good.files}:
        now = outcome.files.get(name)
        if name in verb.targets and told_in_report:
            continue
        if name in verb.targets and now in (before.get(name), good.files.get(name)):
            continue
        if now != before.get(name):
            return f"{name} {'is left behind' if name not in before else 'is neither the old nor the new one'}"
    if told_in_report:
        return ""
    if outcome.status == good.status and not outcome.err:
        return "silently another outcome"
    if not outcome.err.strip():
        return f"exit status {outcome.status} without a word"
    if outcome.status == 0 and not same_files:
        return f"exit status 0, and not what was to be written: {outcome.err[:200]}"
    return ""


def calls_of(bench, verb):
    """How often each call is made, by its name."""
    log = bench.root / f"{verb.name}.log"
    bench.run(verb, ("strace", "-f", "-qq", "-o", str(log), "-e", "trace=" + ",".join(FAULTS)))
    counts = collections.Counter()
    per_process = collections.Counter()
    for line in log.read_text(errors="replace").splitlines():
        found = re.match(r"(\d+) +(\w+)\(", line)
        if found:
            per_process[found[1], found[2]] += 1
    for (_, call), count in per_process.items():
        counts[call] = max(counts[call], count)
    return counts


def points_of(bench, verb):
    calls = [("call", call, error, at) for call, count in sorted(calls_of(bench, verb).items())
             for error in FAULTS[call] for at in range(1, count + 1)
             if not (verb.has_readers and call in ("read", "write"))
             # the dynamic loader has no word for a first mapping that fails
             if (call, at) != ("mmap", 1)]
    count = bench.root / f"{verb.name}.count"
    bench.run(verb, LD_PRELOAD=str(LIBRARY), FAULT_COUNT=str(count))
    allocations = [("allocation", "", "", at) for at in range(1, int(count.read_text()) + 1)]
    if FULL:
        return calls + allocations
    lot = random.Random(7)
    return (lot.sample(calls, min(SAMPLED["calls"], len(calls))) +
            lot.sample(allocations, min(SAMPLED["allocations"], len(allocations))))


def try_point(bench, verb, point, good, before):
    kind, call, error, at = point
    if kind == "allocation":
        outcome = bench.run(verb, LD_PRELOAD=str(LIBRARY), FAULT_AT=str(at))
    else:
        outcome = bench.run(verb, ("strace", "-f", "-qq", "-o", "/dev/null", "--seccomp-bpf",
                                   "-e", f"trace={call}", "-e", f"inject={call}:error={error}:when={at}"))
    if OF_OTHERS.search(outcome.err):
        return ""
    if point[:2] == ("call", "unlink"):  # what may not be taken away stays, for the next run to try again
        for name in [name for name in outcome.files if re.search(r"\.quoin-\w+-\d+\.part$", name)]:
            del outcome.files[name]
    return wrong_in(outcome, good, before, verb)


def main():
    require_quoin()
    tally = Tally()
    chosen = [verb for verb in VERBS if verb.name in sys.argv[1:] or len(sys.argv) == 1]
    traced = has("strace") and subprocess.run(["strace", "-f", "--seccomp-bpf", "-e", "trace=openat", "-o", "/dev/null", "true"],
                                              capture_output=True).returncode == 0
    if not traced:
        print("no process may be traced here: only allocations are tried")
        FAULTS.clear()
    with tempfile.TemporaryDirectory(prefix="faults-") as root, \
            concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        bench = Bench(root)
        before = contents(bench.model)
        tried = 0
        for verb in chosen:
            good = bench.run(verb)
            tally.check(good.status == verb.status, f"{verb.name} without a fault", good.err[:300])
            short = bench.run(verb, LD_PRELOAD=str(LIBRARY), FAULT_SHORT="1")
            tally.check((short.status, short.files) == (good.status, good.files),
                        f"{verb.name}: reads and writes cut short", short.err[:300])
            points = points_of(bench, verb)
            tried += len(points)
            for point, wrong in zip(points, pool.map(lambda p: try_point(bench, verb, p, good, before), points)):
                tally.check(not wrong, f"{verb.name}: {' '.join(map(str, point))}", wrong)
        print(f"{tried} points")
    tally.finish()


if __name__ == "__main__":
    main()
