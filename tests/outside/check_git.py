#!/usr/bin/python3 -B
"""The pieces of samples/git, used as its README says, with git itself: what stands above a change, PDFs
compared, the hook before a commit, the branch that keeps the pages, and what is ignored.
"""

import os
import pathlib
import re
import shutil
import tempfile

from common import QUOIN, SAMPLES, Tally, has, require_quoin, run

ENVIRONMENT = {
    **os.environ, "HOME": "/nonexistent", "GIT_CONFIG_NOSYSTEM": "1", "LC_ALL": "C.UTF-8",
    "GIT_AUTHOR_NAME": "Student", "GIT_AUTHOR_EMAIL": "student@ellerystate.example",
    "GIT_COMMITTER_NAME": "Student", "GIT_COMMITTER_EMAIL": "student@ellerystate.example",
    "GIT_AUTHOR_DATE": "2026-11-02T12:00:00Z", "GIT_COMMITTER_DATE": "2026-11-02T12:00:00Z",
    "PATH": f"{QUOIN.parent}:{os.environ['PATH']}",
}


class Repository:
    """A student's: the sample of the marine biologist, who takes in her education, and one of the nurse."""

    def __init__(self, folder):
        self.folder = folder
        for name in ("marine-biology.resume", "nursing.resume", "Makefile"):
            shutil.copy(SAMPLES / name, folder)
        shutil.copytree(SAMPLES / "shared", folder / "shared")
        shutil.copy(SAMPLES / "gitignore", folder / ".gitignore")
        for name in ("gitattributes", "gitconfig"):
            shutil.copy(SAMPLES / "git" / name, folder / f".{name}")
        self.git("init", "-q", "-b", "main", ".")
        self.git("config", "include.path", "../.gitconfig")
        self.commit("First")

    def run(self, *words):
        return run(words, cwd=self.folder, text=True, env=ENVIRONMENT)

    def git(self, *words):
        done = self.run("git", *words)
        assert done.returncode == 0, (words, done.stderr)
        return done.stdout

    def commit(self, subject):
        self.git("add", "-A")
        self.git("commit", "-q", "-m", subject)

    def edit(self, name, what, by):
        path = self.folder / name
        text = path.read_text()
        assert what in text, what
        path.write_text(text.replace(what, by))


def check_headers(tally, one):
    """`@@ … @@` and the entry that is changed, in the page's words and in the markup."""
    bullet = re.findall(r"^- (\w+ \w+)", (one.folder / "nursing.resume").read_text(), re.M)[-1]
    source = (one.folder / "nursing.resume").read_text()
    above = source[:source.rindex(f"- {bullet}")]
    role = re.findall(r"^(?:role|activity): (.*)", above, re.M)[-1]
    one.edit("nursing.resume", f"- {bullet}", f"- Also {bullet}")
    for words, what in (([], "the page's words"), (["--no-textconv"], "the markup")):
        shown = one.git("diff", "-U0", *words, "nursing.resume")
        headers = re.findall(r"^@@ .* @@ (.*)", shown, re.M)
        tally.check(len(headers) == 1 and role in headers[0], f"above a change, in {what}: {role}", shown)
    one.git("checkout", "-q", ".")


def check_pdfs(tally, one):
    def page():
        done = one.run(QUOIN, "set", "nursing.resume", "-o", "sent.pdf")
        assert done.returncode == 0, done.stderr
        one.git("add", "-f", "sent.pdf")
    page()
    one.git("commit", "-q", "-m", "Sent")
    one.edit("nursing.resume", "Tidewater Care Residence", "Heron Point Residence")
    page()
    shown = one.git("diff", "--cached", "sent.pdf")
    entry = re.search(r"^\+ .*Nursing Assistant, Heron Point Residence, .* \| .*3 bullets$", shown, re.M)
    tally.check(entry, "what a portal gets is compared", shown)
    tally.check("/tmp" not in shown and not re.search(r"^[ +-]PDF: /", shown, re.M), "no temporary file is named", shown)
    (one.folder / "sent.pdf").write_bytes(b"%PDF-1.7 torn")
    shown = one.git("diff", "sent.pdf")
    tally.check("+PDF: " in shown and "/tmp" not in shown, "a PDF that cannot be read", shown)
    one.git("reset", "-q", "--hard", "HEAD~1")


def check_hook(tally, one):
    hook = one.folder / ".git" / "hooks" / "pre-commit"
    shutil.copy(SAMPLES / "git" / "pre-commit", hook)

    def attempt(case, goes, said="", words=("-m", "Next")):
        done = one.run("git", "commit", *words)
        told = done.stdout + done.stderr
        tally.check((done.returncode == 0) == goes and said in told and "/tmp" not in told, f"the hook: {case}", told)
        left = [path.name for path in (one.folder / ".git").glob("staged.*")]
        tally.check(not left, f"the hook leaves nothing behind: {case}", left)
        return told

    good = (one.folder / "nursing.resume").read_text()
    (one.folder / "notes.txt").write_text("Ask about the deadline.\n")
    one.edit("nursing.resume", "Bellingham", "Bellinghamm")  # wrong, and not staged
    one.git("add", "notes.txt")
    told = attempt("quiet where no résumé is staged", True, words=("-q", "-m", "Notes"))
    tally.check(told == "", "nothing is said where no résumé is staged", told)

    one.git("add", "nursing.resume")
    (one.folder / "nursing.resume").write_text(good)  # mended, but not staged
    attempt("what is staged, not what is there", False, "'Bellinghamm' is not in the dictionary")
    attempt("and not what is there, of a part of it", False, "nursing.resume: not ready")
    one.edit("nursing.resume", "Bellingham", "Anacortes")
    one.git("add", "nursing.resume")
    one.edit("nursing.resume", "name: ", "nam: ")  # broken since
    attempt("good, and broken since", True)
    one.git("checkout", "-q", ".")

    one.edit("nursing.resume", "name: ", "size: 12\nname: ")
    one.git("add", "nursing.resume")
    attempt("too long", False, "too long for 1 page at 12 pt")
    one.git("reset", "-q", "--hard")
    one.edit("shared/brandt-education.resume", "degree: Bachelor", "degree: Bachelorr")
    one.git("add", "-A")
    attempt("a part of one", False, "marine-biology.resume: not ready")
    attempt("not asked", True, words=("--no-verify", "-m", "Not asked"))
    one.git("reset", "-q", "--hard", "HEAD~1")
    one.git("rm", "-q", "nursing.resume")
    attempt("one that is taken away", True)
    (one.folder / "más.resume").write_text(good.replace("Bellingham", "Bellinghamm"))
    one.git("add", "-A")
    attempt("a name with an accent", False, "más.resume: not ready")
    one.git("reset", "-q", "--hard", "HEAD~1")
    (one.folder / "más.resume").unlink(missing_ok=True)
    hook.unlink()


def check_pages(tally, one):
    keep = SAMPLES / "git" / "keep-pages"
    before = one.git("status", "--porcelain")
    done = one.run("sh", keep)
    tally.check(done.returncode == 0 and "marine-biology.pdf" in done.stdout, "pages are kept", done)
    kept = one.git("ls-tree", "--name-only", "pages").split()
    tally.check(kept == ["marine-biology.pdf", "nursing.pdf"], "a page for each résumé, and nothing else", kept)
    tally.check(one.git("status", "--porcelain") == before, "the work tree is as it was")
    done = one.run("sh", keep)
    tally.check(done.returncode == 0 and "are kept already" in done.stdout, "the same pages are kept once", done)
    one.edit("nursing.resume", "Tidewater Care Residence", "Heron Point Residence")
    one.git("commit", "-qam", "Second")
    done = one.run("sh", keep)
    changed = one.git("diff", "--name-only", "pages~1", "pages").split()
    tally.check(changed == ["nursing.pdf"], "only what changed is another PDF", f"{done} {changed}")
    tally.check("Heron Point" in one.git("diff", "pages~1", "pages"), "pages are compared as any PDF")
    tally.check("Second" in one.git("log", "-1", "--format=%s", "pages"), "the commit is named")
    one.edit("nursing.resume", "name: ", "nam: ")
    one.git("commit", "-qam", "Broken")
    last = one.git("rev-parse", "pages")
    done = one.run("sh", keep)
    tally.check(done.returncode != 0 and one.git("rev-parse", "pages") == last, "what cannot be set changes nothing", done)
    done = one.run("sh", keep, "no-such-commit")
    tally.check(done.returncode == 2 and "no commit 'no-such-commit'" in done.stderr, "no such commit", done)
    one.git("rm", "-q", "--cached", "Makefile")
    (one.folder / "Makefile").unlink()
    one.edit("nursing.resume", "nam: ", "name: ")
    one.git("commit", "-qam", "Without make")
    done = one.run("sh", keep)
    tally.check(done.returncode == 0 and len(one.git("ls-tree", "--name-only", "pages").split()) == 2, "without make", done)
    one.run("install", keep, ".git/hooks/post-commit")
    one.edit("nursing.resume", "Heron Point Residence", "Cape Morrow Residence")
    one.git("commit", "-qam", "Third")
    tally.check("Third" in one.git("log", "-1", "--format=%s", "pages"), "kept after each commit by itself")


def check_ignored(tally, one):
    for name in ("draft.pdf", "draft.d", "draft.begin", "draft.pdf.part"):
        done = one.run("git", "check-ignore", "-q", name)
        tally.check(done.returncode == 0, f"{name} is ignored")
    for name in ("draft.resume", "posting.txt", "office.rules"):
        done = one.run("git", "check-ignore", "-q", name)
        tally.check(done.returncode == 1, f"{name} is not ignored")


def main():
    require_quoin()
    tally = Tally()
    with tempfile.TemporaryDirectory(prefix="outside-") as place:
        one = Repository(pathlib.Path(place).resolve())
        for check in (check_headers, check_pdfs, check_hook, check_pages, check_ignored):
            check(tally, one)
    if has("shellcheck"):
        for name in ("pre-commit", "keep-pages"):
            done = run(["shellcheck", SAMPLES / "git" / name], text=True)
            tally.check(done.returncode == 0, f"shellcheck on {name}", done.stdout)
    else:
        print("shellcheck is not here: the scripts are not looked at")
    tally.finish()


if __name__ == "__main__":
    main()
