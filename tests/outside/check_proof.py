#!/usr/bin/env python3
"""`quoin proof`, `mend` and `checks` as programs: exit codes, what goes where, mends on disk."""

import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

from common import QUOIN, ROOT, SAMPLES, require_quoin, run

CLEAN = (ROOT / "tests" / "advice" / "clean.resume").read_text(encoding="utf-8")
ENVIRONMENT = {**os.environ, "SOURCE_DATE_EPOCH": "1795132800"}  # 2026-11-20

counts = {True: 0, False: 0}


def check(holds, complaint):
    counts[bool(holds)] += 1
    if not holds:
        print("FAILED", complaint)


def quoin(*arguments, **options):
    options.setdefault("env", ENVIRONMENT)
    done = run([QUOIN, *arguments], **options)
    return done.returncode, done.stdout.decode(), done.stderr.decode()


def proof(*arguments, **options):
    return quoin("proof", *arguments, **options)


def mend(*arguments, **options):
    return quoin("mend", *arguments, **options)


def check_exit_codes(folder):
    should = CLEAN.replace("ottoline.brandt@ellerystate.example", "beachbum42@ellerystate.example")
    must = CLEAN.replace("(360) 555-0142", "555-0142")
    error = CLEAN.replace("phone:", "phon:")
    cases = [  # text, options, exit code, a word on standard output, a word on standard error
        (CLEAN, [], 0, "reminder [voicemail]", ""),
        (should, [], 0, "should [email-tone]", ""),
        (should, ["--strict"], 1, "should [email-tone]", ""),
        (must, [], 1, "must [phone-form]", ""),
        (error, [], 1, "", "error: unknown label 'phon'; did you mean 'phone'?"),
        (must, ["--summary"], 1, "not ready: one thing", ""),
        (CLEAN, ["--summary"], 0, "ready to send", ""),
        (error, ["--summary"], 1, "not ready", "error: unknown label 'phon'"),
        (CLEAN, ["--theme", "nosuch", "--summary"], 1, "not ready", "nosuch"),
    ]
    for number, (text, options, code, out, err) in enumerate(cases):
        path = folder / f"case{number}.resume"
        path.write_text(text, encoding="utf-8")
        for where, name, given in [("file", path, None), ("standard input", "-", text.encode())]:
            found = proof(*options, name, input=given)
            what = f"{where}, case {number}: {found}"
            check(found[0] == code, what)
            check(out in found[1] and (out or not found[1]), what)
            check(err in found[2] and (err or not found[2]), what)


def check_wrong_use():
    for arguments, message in [
        (["proof"], "a résumé file is required"),
        (["proof", "-", "-"], "standard input can be read once"),
        (["proof", "--format", "xml", "a.resume"], "unknown format 'xml'"),
        (["proof", "--sumary", "a.resume"], "did you mean '--summary'?"),
        (["proof", "--summary", "--format", "sarif", "a.resume"], "does not go with --format sarif"),
        (["proof", "--mend", "a.resume"], "write 'quoin mend FILE'"),
        (["proof", "--dry-run", "a.resume"], "write 'quoin mend --dry-run FILE'"),
        (["proof", "--list"], "write 'quoin checks --list'"),
        (["proof", "--explain", "two-lines"], "looks at and why, 'quoin checks NAME'"),
        (["proof", "--reference"], "write 'quoin checks --reference'"),
        (["mend"], "a résumé file is required"),
        (["mend", "-", "-"], "standard input can be read once"),
        (["mend", "--format", "sarif", "a.resume"], "unknown option '--format'"),
        (["checks", "two-line"], "did you mean 'two-lines'?"),
        (["checks", "--reference", "two-lines"], "takes no names"),
    ]:
        code, out, err = quoin(*arguments)
        check(code == 2 and message in err and not out, f"{arguments}: {code}, {err!r}")
    for verb in "proof", "mend":
        code, _, err = quoin(verb, "a.resume", env={**ENVIRONMENT, "SOURCE_DATE_EPOCH": "soon"})
        check(code == 2 and "SOURCE_DATE_EPOCH" in err, f"{verb}, SOURCE_DATE_EPOCH=soon: {code}")


def check_tables():
    code, listed, _ = quoin("checks")
    names = [line.split()[0] for line in listed.splitlines() if line.startswith("  ")]
    check(code == 0 and len(names) > 60, f"checks: {len(names)} names")
    explained = []
    for name in names:
        code, out, _ = quoin("checks", name)
        check(code == 0 and out.startswith(f"{name} ("), f"checks {name}")
        explained.append(out)
    code, out, _ = quoin("checks", *names)
    check(code == 0 and out == "\n".join(explained), "checks, all of them named")
    code, page, _ = quoin("checks", "--reference")
    check(page == (ROOT / "grammar" / "checks.md").read_text(encoding="utf-8"), "grammar/checks.md")


def check_json(folder):
    path = folder / "json.resume"
    path.write_text(CLEAN.replace("- Counted 212", "- Counted  212"), encoding="utf-8")
    _, out, _ = proof("--format", "json", path)
    found = json.loads(out)["files"][0]["findings"]
    spacing = [one for one in found if one["check"] == "spacing"]
    check(len(spacing) == 1, f"json: {[one['check'] for one in found]}")
    line = path.read_text(encoding="utf-8").splitlines()[spacing[0]["place"]["line"] - 1]
    begin = spacing[0]["place"]["column"] - 1
    check(line[begin:begin + spacing[0]["place"]["length"]] == "  ", f"json: {spacing[0]['place']}")


def check_standard_input():
    """One name everywhere."""
    given = CLEAN.replace("(360) 555-0142", "555-0142").encode()
    _, out, _ = proof("--format", "json", "-", input=given)
    one = json.loads(out)["files"][0]
    check({one["file"], one["findings"][0]["place"]["file"]} == {"standard input"}, one["file"])
    _, out, _ = proof("--summary", "-", input=given)
    check(out.startswith("standard input: not ready"), f"--summary -: {out!r}")


def check_full_disk(folder):
    """What cannot be written is an error, and is not said to be done."""
    path = folder / "full.resume"
    path.write_text(CLEAN.replace("- Counted 212", "- Counted  212"), encoding="utf-8")
    for arguments in [["mend", "-"], ["mend", "--dry-run", path], ["proof", path],
                      ["proof", "--summary", path], ["proof", "--format", "json", path],
                      ["proof", "--format", "sarif", path], ["checks"], ["checks", "--reference"],
                      ["checks", "spacing"]]:
        with open("/dev/full", "wb") as full, open(path, "rb") as given:
            done = subprocess.run([QUOIN, *arguments], env=ENVIRONMENT, stdin=given,
                                  stdout=full, stderr=subprocess.PIPE, check=False)
        err = done.stderr.decode()
        check(done.returncode == 1 and "cannot write to standard output" in err
              and "made" not in err, f"{arguments} > /dev/full: {done.returncode}, {err!r}")


def check_patch(folder):
    """GNU patch takes what --dry-run prints, whatever the name."""
    if not shutil.which("patch"):
        return
    for name in ["plain.resume", "a b.resume", 'q"uote.resume', "back\\slash.resume", "é ü.resume"]:
        (folder / name).write_text(CLEAN.replace("- Counted 212", "- Counted  212"),
                                   encoding="utf-8")
        _, diff, _ = mend("--dry-run", name, cwd=folder)
        run(["patch", "-s", "-p0"], cwd=folder, input=diff.encode())
        check((folder / name).read_text(encoding="utf-8") == CLEAN, f"patch of {name}: {diff!r}")


def check_mends(folder):
    path = folder / "mend.resume"
    faulty = CLEAN.replace("- Counted 212", "- Counted  212").replace("acres of", "acres of of")
    path.write_text(faulty, encoding="utf-8", newline="\r\n")
    before = path.read_bytes()
    code, diff, _ = mend("--dry-run", path)
    check(code == 0 and path.read_bytes() == before, "a dry run wrote to the file")
    check(diff.count("\n-") == 2 and diff.count("\n+") == 3, f"diff: {diff!r}")  # and its head
    code, out, err = mend(path)
    check((code, out) == (0, "") and "two mends made" in err, f"mend: {code}, {out!r}, {err!r}")
    clean = CLEAN.replace("\n", "\r\n").encode()
    check(path.read_bytes() == clean, "the mended file is not the clean one")
    code, out, err = mend(path)
    check((code, out, err) == (0, "", ""), f"a second time: {code}, {out!r}, {err!r}")
    check(path.read_bytes() == clean, "a second mend changed the file")
    code, out, _ = mend("-", input=before)
    check(out.encode() == clean, "mend of standard input")
    check([one.name for one in folder.iterdir() if one.name.startswith(".")] == [], "left files")


def check_samples():
    """A variant of a sample says nothing of what it leaves out, and nothing is to be mended."""
    for sample in sorted(SAMPLES.glob("*.resume")):
        code, diff, _ = mend("--dry-run", sample)
        check((code, diff) == (0, ""), f"{sample.name}: {diff}")
    code, out, err = proof("--for", "lab", SAMPLES / "environmental-chemistry.resume")
    check(code == 0 and not err, f"--for lab: {code}, {err!r}")
    _, _, err = proof("--for", "labb", SAMPLES / "environmental-chemistry.resume")
    check("did you mean 'lab'?" in err, f"--for labb: {err!r}")


def main():
    require_quoin()
    with tempfile.TemporaryDirectory(prefix="quoin-proof-") as name:
        folder = pathlib.Path(name)
        check_exit_codes(folder)
        check_json(folder)
        check_mends(folder)
        check_full_disk(folder)
        check_patch(folder)
    check_standard_input()
    check_wrong_use()
    check_tables()
    check_samples()
    print(f"{counts[True]} passed, {counts[False]} failed")
    sys.exit(1 if counts[False] else 0)


main()
