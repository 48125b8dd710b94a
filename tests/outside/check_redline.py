#!/usr/bin/python3 -B
"""`quoin redline` beside git itself, and its marked page before readers that quoin did not write.

git makes the repositories, runs the settings of samples/git, and is what drafts, renames and shallow
clones are compared with. pikepdf reads the marked page's structure (ISO 32000-1, 14.7.3, role map;
table 345, TextDecorationType), poppler its words; PDF/A-2 and PDF/UA-1 as in tests/conformance. An
installed tree that was moved finds its module, and one without it says so.
"""

import json
import os
import pathlib
import shutil
import sys
import tempfile

import pikepdf

from common import QUOIN, ROOT, SAMPLES, THEMES, Tally, require_quoin, run

sys.path.insert(1, str(ROOT / "tests" / "conformance"))
from pdf_conformance import failures

ENVIRONMENT = {
    **os.environ, "SOURCE_DATE_EPOCH": "1795132800", "HOME": "/nonexistent", "GIT_CONFIG_NOSYSTEM": "1",
    "GIT_AUTHOR_NAME": "Student", "GIT_AUTHOR_EMAIL": "student@ellerystate.example",
    "GIT_COMMITTER_NAME": "Student", "GIT_COMMITTER_EMAIL": "student@ellerystate.example",
    "PATH": f"{QUOIN.parent}:{os.environ['PATH']}",
}
EDITS = [("212", "240"), ("Anacortes", "Port Ellery"), ("Laboratory: ", "Laboratory: centrifuge, "),
         (", PCR\n", "\n"), ("dates: Jun 2026 - Aug 2026", "dates: Jun 2026 - Sep 2026"),
         ("- Trained 4 volunteers in GPS and quadrat placement, raising agreement of counts from 81% to 94%\n",
          "")]


def tell(folder, *words):
    return run([QUOIN, "redline", *words], cwd=folder, text=True, env=ENVIRONMENT)


def git(folder, *words):
    done = run(["git", *words], cwd=folder, text=True, env=ENVIRONMENT)
    assert done.returncode == 0, (words, done.stderr)
    return done.stdout


def edited(text, edits=tuple(EDITS)):
    for what, by in edits:
        assert what in text, what
        text = text.replace(what, by)
    return text


def new_repository(folder):
    """Two drafts of the marine biologist's résumé, and a third in the work tree."""
    shutil.copy(SAMPLES / "marine-biology.resume", folder / "draft.resume")
    shutil.copytree(SAMPLES / "shared", folder / "shared")
    git(folder, "init", "-q", ".")
    git(folder, "add", "-A")
    git(folder, "commit", "-q", "-m", "First")
    draft = folder / "draft.resume"
    draft.write_text(edited(draft.read_text(), EDITS[:2]))
    git(folder, "commit", "-q", "-a", "-m", "Second")
    draft.write_text(edited(draft.read_text(), EDITS[2:]))
    return draft


def check_told(tally, folder):
    done = tell(folder, "draft.resume")
    tally.check(done.returncode == 0 and done.stderr == "", "since HEAD", done.stderr)
    for words in ("since draft.resume at HEAD: four changes",
                  "dates: 'Jun 2026 – Aug 2026' is now 'Jun 2026 – Sep 2026'",
                  "new Laboratory item: 'centrifuge'", "Laboratory item gone: 'PCR'",
                  "bullet gone: 'Trained 4 volunteers", "\nPage\n  "):
        tally.check(words in done.stdout, "since HEAD", f"{words!r} is not in {done.stdout!r}")
    done = tell(folder, "draft.resume", "--since", "HEAD~1", "--format", "json")
    told = json.loads(done.stdout)
    tally.check(len(told["changes"]) == len(EDITS), "since HEAD~1", done.stdout)
    tally.check(told["before"]["commit"] == git(folder, "rev-parse", "HEAD~1").strip(), "the commit", done.stdout)
    for name in ("gitattributes", "gitconfig"):  # as the README of samples/git says to use it
        shutil.copy(SAMPLES / "git" / name, folder / f".{name}")
    git(folder, "config", "include.path", "../.gitconfig")
    told = git(folder, "redline", "HEAD~1", "HEAD", "--", "draft.resume")
    tally.check("place: 'Anacortes, WA' is now 'Port Ellery, WA'" in told, "between two commits", told)
    copy = folder / "copy.resume"
    shutil.copy(folder / "draft.resume", copy)
    same = tell(folder, "draft.resume", copy)
    tally.check((same.returncode, same.stdout, same.stderr) == (0, "", ""), "a copy says nothing", same)
    copy.unlink()


def check_history(tally, folder):
    """What the old draft took in is read as it was, though it is gone; a rename is followed."""
    git(folder, "stash", "-q")
    (folder / "term").mkdir()
    git(folder, "mv", "draft.resume", "term/spring.resume")
    git(folder, "mv", "shared", "term/shared")
    git(folder, "commit", "-q", "-m", "Third")
    spring = folder / "term" / "spring.resume"
    done = tell(folder, "term/spring.resume", "--since", "HEAD~1")
    tally.check((done.returncode, done.stdout) == (0, ""), "a rename alone says nothing", done)
    text = spring.read_text()
    spring.write_text("".join(line for line in text.splitlines(True) if not line.startswith("include:")))
    shutil.rmtree(folder / "term" / "shared")
    done = tell(folder / "term", "spring.resume", "--since", "HEAD~2")
    tally.check(done.returncode == 0 and "removed section" in done.stdout, "an include that is gone", done)
    git(folder, "checkout", "-q", "--", ".")
    with tempfile.TemporaryDirectory() as place:
        git(pathlib.Path(place), "clone", "-q", "--depth", "1", f"file://{folder}", "clone")
        done = tell(pathlib.Path(place) / "clone", "term/spring.resume", "--since", "HEAD~2")
        tally.check(done.returncode == 1 and "shallow clone" in done.stderr and done.stdout == "", "shallow", done)


def check_settings(tally, folder):
    """samples/git, on what git compares with the work tree."""
    spring = folder / "term" / "spring.resume"
    text = spring.read_text()
    spring.write_text(edited(text, EDITS[2:3]))
    shown = git(folder, "diff", "--", "term/spring.resume")
    tally.check("+Laboratory: centrifuge, pH meter" in shown and "- Counted" not in shown, "textconv", shown)
    told = git(folder, "redline")
    tally.check("new Laboratory item: 'centrifuge'" in told and "/tmp" not in told, "difftool", told)
    tally.check("term/spring.resume (new), since term/spring.resume (old)" in told, "difftool names", told)
    spring.write_text("name Ottoline\n")
    shown = git(folder, "diff", "--", "term/spring.resume")
    tally.check("+name Ottoline" in shown, "textconv of a draft that cannot be set", shown)
    (folder / "term" / "new.resume").write_text(text)
    git(folder, "add", "-N", "term/new.resume")
    told = git(folder, "redline", "--", "term/new.resume")
    tally.check("since no draft" in told, "a file that was not there", told)
    spring.write_text(text)


def check_marked(tally, folder):
    before = SAMPLES / "marine-biology.resume"
    shutil.copytree(SAMPLES / "shared", folder / "shared")
    after = folder / "after.resume"
    after.write_text(edited(before.read_text()))
    for theme in sorted(path.stem for path in THEMES.glob("*.theme")):
        pdf = folder / f"{theme}.pdf"
        done = tell(folder, before, after, "--theme", theme, "--marked", pdf)
        tally.check(done.returncode == 0, f"{theme}: marked", done.stderr)
        wrong = failures(pdf.read_bytes())
        tally.check(not wrong, f"{theme}: conformance", wrong)
        check_structure(tally, theme, pdf)
        words = " ".join(run(["pdftotext", "-l", 1, pdf, "-"], text=True).stdout.split())
        for shown in ("212 240", "Trained 4 volunteers", "centrifuge"):
            tally.check(shown in words, f"{theme}: words", f"{shown!r} is not in {words!r}")


def check_structure(tally, theme, pdf):
    with pikepdf.open(pdf) as document:
        tree = document.Root.StructTreeRoot
        tally.check(tree.RoleMap == pikepdf.Dictionary(Ins=pikepdf.Name.Span, Del=pikepdf.Name.Span),
                    f"{theme}: role map", tree.RoleMap)
        found = {"/Ins": [], "/Del": []}
        for element in document.objects:
            if isinstance(element, pikepdf.Dictionary) and str(element.get("/S", "")) in found:
                found[str(element.S)].append(element)
        lines = {"/Ins": "/Underline", "/Del": "/LineThrough"}
        for kind, elements in found.items():
            tally.check(len(elements) >= 3, f"{theme}: {kind}", len(elements))
            tally.check(all(str(element.A.TextDecorationType) == lines[kind] for element in elements),
                        f"{theme}: {kind} decoration", "another")
        said = [str(element.Alt) for element in found["/Del"]]
        tally.check("deleted: 212" in said, f"{theme}: said", said)


def check_bad(tally, folder):
    good, bad = folder / "good.resume", folder / "bad.resume"
    good.write_text((SAMPLES / "first-draft.resume").read_text())
    bad.write_text(good.read_text() + "\nrole without a colon\n")
    run([QUOIN, "set", good, "-o", folder / "page.pdf"])
    (folder / "other.txt").write_text("Dear all,\nthis is no resume.\n")
    for what, words, status, said in [
            ("no draft", [], 2, "a draft is required"),
            ("three drafts", [good, good, good], 2, "two drafts are compared, and 3 were named"),
            ("two and a revision", [good, bad, "--since", "HEAD"], 2, "two were named"),
            ("standard input alone", ["-"], 2, "has no earlier draft"),
            ("standard input twice", ["-", "-"], 2, "standard input can be read once"),
            ("no repository", [good], 1, "good.resume: is in no git repository"),
            ("a PDF", ["page.pdf", good], 1, "page.pdf: error: is a PDF"),
            ("no résumé", ["other.txt", good], 1, "other.txt:1"),
            ("no file", ["none.resume", good], 1, "none.resume: error: no such file"),
            ("a folder", [folder, good], 1, "is a folder"),
            ("over a draft", [good, bad, "--marked", bad], 2, "would write over one of the drafts"),
            ("the same twice", ["good.resume", "good.resume"], 0, "'good.resume' was named twice"),
            ("an error in the new", [good, bad], 1, "bad.resume:"),
            ("an error in the old", [bad, good], 1, "bad.resume:")]:
        done = tell(folder, *words)
        tally.check(done.returncode == status and said in done.stderr and "internal" not in done.stderr, what, done)
    done = tell(folder, bad, good)
    tally.check("good.resume alone can be read: 1 page" in done.stdout, "the other half", done.stdout)


def check_large(tally, folder):
    """Nearly 1 MiB in each draft, of bullets that are all different and all changed."""
    def source(word):
        entries = (f"role: Keeper {i}\nemployer: Trust {i}\n" +
                   "".join(f"- Counted {word}{i}x{j} of {i * j} at {j} sites\n" for j in range(20)) + "\n"
                   for i in range(1000))
        return "name: Ottoline Brandt\n\nsection: Experience\n\n" + "".join(entries)
    for name, word in (("old", "eelgrass"), ("new", "oysters")):
        (folder / f"{name}.resume").write_text(source(word)[:1_000_000].rsplit("\n", 1)[0] + "\n")
    done = tell(folder, "old.resume", "new.resume", "--format", "json")
    tally.check(done.returncode == 0 and len(json.loads(done.stdout)["changes"]) > 10_000, "1 MB", done.stderr[:300])


def check_installed(tally, folder):
    build = QUOIN.parents[1]
    if not (build / "cmake_install.cmake").exists():
        return
    done = run(["cmake", "--install", build, "--prefix", folder / "first"], text=True)
    tally.check(done.returncode == 0, "installed", done.stderr)
    moved = (folder / "first").rename(folder / "moved")
    program = moved / "bin" / "quoin"
    new_repository(folder)
    done = run([program, "redline", "draft.resume"], cwd=folder, text=True, env=ENVIRONMENT)
    tally.check("four changes" in done.stdout, "an installed tree that was moved", done)
    (moved / "lib" / "quoin" / "history.so").unlink()
    done = run([program, "redline", "draft.resume"], cwd=folder, text=True, env=ENVIRONMENT)
    tally.check(done.returncode == 1 and done.stderr.startswith("quoin: quoin's module 'history'") and
                done.stderr.count("\n") == 1, "without its module", done)
    done = run([program, "set", "draft.resume"], cwd=folder, text=True, env=ENVIRONMENT)
    tally.check(done.returncode == 0, "set without the module", done)


def main():
    require_quoin()
    tally = Tally()
    with tempfile.TemporaryDirectory() as place:
        folders = [pathlib.Path(place).resolve() / name for name in ("git", "marked", "bad", "large", "installed")]
        for folder in folders:
            folder.mkdir()
        new_repository(folders[0])
        for check in (check_told, check_history, check_settings):
            check(tally, folders[0])
        for check, folder in zip((check_marked, check_bad, check_large, check_installed), folders[1:]):
            check(tally, folder)
    tally.finish()


if __name__ == "__main__":
    main()
