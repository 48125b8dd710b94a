#!/usr/bin/python3 -B
"""Death at any moment: a verb is killed (SIGKILL), told to stop (SIGTERM, SIGINT, SIGHUP) or left without a
reader of what it says (SIGPIPE, as the system sends it and by hand) at random points of its run.
What it writes is then the old file or the new one, whole; what was told to stop leaves nothing behind,
and what was killed at most part files of its own, which the next run of the same target takes away.
90 deaths by default, the same each time; 1,000 a verb with QUOIN_FULL=1.
"""

import os
import pathlib
import random
import shutil
import signal
import subprocess
import tempfile
import time

from check_faults import bare_environment, contents, make_folder
from common import QUOIN, Tally, require_quoin

DEATHS = 1000 if os.environ.get("QUOIN_FULL") else 18
SIGNALS = (signal.SIGKILL, signal.SIGTERM, signal.SIGINT, signal.SIGHUP, signal.SIGPIPE)
UNREAD = "nobody reads"

VERBS = {
    "set": (("set", "draft.resume", "-o", "out.pdf", "--plain", "out.txt"), ("out.pdf", "out.txt")),
    "mend": (("mend", "draft.resume"), ("draft.resume",)),
    "caseload": (("caseload", "folder", "--report", "out.html"), ("out.html",)),
    "begin": (("begin", "--stage", "undergraduate", "--field", "lab", "-o", "new.resume"), ("new.resume",)),
    "watch": (("set", "--watch", "draft.resume", "-o", "out.pdf"), ("out.pdf",)),
}


def is_part(name):
    return pathlib.PurePath(name).name.startswith(".quoin-") and name.endswith(".part")


def finished(folder, words):
    """It run to its end; the watch, until its first page is there."""
    started = time.monotonic()
    process = subprocess.Popen([QUOIN, *words], cwd=folder, env=bare_environment(folder),
                               stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    if "--watch" in words:
        process.stdout.readline()
        process.terminate()
    process.communicate(timeout=30)
    return contents(folder), time.monotonic() - started


def heard_by_all():
    """Nothing is ignored: a test that runs in the background hands on that SIGINT is, and Python SIGPIPE."""
    for one in SIGNALS[1:]:
        signal.signal(one, signal.SIG_DFL)


def one_death(tally, name, model, root, lot, new, longest):
    words, targets = VERBS[name]
    folder = root / "w"
    shutil.copytree(model, folder)
    old = contents(folder)
    how = lot.choice((*SIGNALS, UNREAD))
    output = subprocess.PIPE if how == UNREAD else subprocess.DEVNULL
    process = subprocess.Popen([QUOIN, *words], cwd=folder, env=bare_environment(folder),
                               stdout=output, stderr=output, preexec_fn=heard_by_all)
    if how == UNREAD:
        process.stdout.close()
        process.stderr.close()
    time.sleep(lot.uniform(0, 1.1 * longest))
    if how != UNREAD:
        process.send_signal(how)
    elif "--watch" in words:
        process.terminate()
    process.wait(timeout=60)
    now = contents(folder)
    case = f"{name}, {how if how == UNREAD else how.name}"
    for file in {*old, *new, *now}:
        if is_part(file):
            tally.check(how == signal.SIGKILL, f"{case}: {file} is left behind")
        else:
            may_be = (old.get(file), new.get(file)) if file in targets else (old.get(file),)
            tally.check(now.get(file) in may_be, f"{case}: {file} is neither the old nor the new one")
    parts = [file for file in now if is_part(file)]
    if parts:
        finished(folder, words)
        left = [file for file in contents(folder) if is_part(file)]
        # a new draft is not written over one that is there, nor is what needs no mend written
        written = name not in ("begin", "mend") or now.get(targets[0]) == old.get(targets[0])
        tally.check(not (left and written), f"{case}: the next run leaves {left}")
    shutil.rmtree(folder)
    return bool(parts)


def main():
    require_quoin()
    tally = Tally()
    lot = random.Random(11)
    with tempfile.TemporaryDirectory(prefix="death-") as made:
        root = pathlib.Path(made)
        model = root / "model"
        model.mkdir()
        make_folder(model)
        for name, (words, _) in VERBS.items():
            shutil.copytree(model, root / "whole")
            new, longest = finished(root / "whole", words)
            shutil.rmtree(root / "whole")
            littered = sum(one_death(tally, name, model, root, lot, new, longest) for _ in range(DEATHS))
            print(f"{name}: {DEATHS} deaths within {longest * 1000:.0f} ms, {littered} with a part file, which the next run took away")
    tally.finish()


if __name__ == "__main__":
    main()
