#!/usr/bin/python3 -B
"""`cmake --install` into any prefix, which is then moved: the program there finds its themes, fonts,
modules and references beside itself, and the manual, completions, licence and samples came along.
"""

import os
import pathlib
import shutil
import tempfile

from common import QUOIN, SAMPLES, Tally, require_quoin, run

CAME_ALONG = ["share/man/man1/quoin.1", "share/man/man1/quoin-set.1", "share/man/man5/quoin-resume.5",
              "share/bash-completion/completions/quoin", "share/zsh/site-functions/_quoin",
              "share/zsh/vendor-completions/_quoin", "share/fish/vendor_completions.d/quoin.fish",
              "share/doc/quoin/LICENSE", "share/doc/quoin/README.md", "share/doc/quoin/grammar/language.md",
              "share/doc/quoin/grammar/schemas/match.schema.json", "share/doc/quoin/samples/Makefile",
              "share/doc/quoin/samples/office/office.rules", "share/doc/quoin/samples/git/pre-commit",
              "share/doc/quoin/samples/guide/student.md", "share/doc/quoin/guide.html", "share/quoin/dictionaries/en_US.licence"]


def check_use(tally, program, folder):
    home = {"PATH": os.environ["PATH"], "HOME": str(folder), "GIT_CONFIG_NOSYSTEM": "1"}

    def quoin(*words):
        done = run([program, *words], cwd=folder, env=home, text=True)
        tally.check(done.returncode == 0, f"installed and moved: {' '.join(words[:2])}",
                    f"{done.returncode}: {done.stderr}")
        return done.stdout

    shutil.copytree(SAMPLES / "shared", folder / "shared")
    draft = folder / "draft.resume"
    shutil.copy(SAMPLES / "marine-biology.resume", draft)
    quoin("set", "draft.resume", "--plain", "draft.txt", "-o", "draft.pdf")
    tally.check((folder / "draft.pdf").read_bytes().startswith(b"%PDF-"), "installed and moved: a page is made")
    quoin("begin", "--from", "draft.txt", "-o", "again.resume")
    tally.check("name: " in (folder / "again.resume").read_text(), "installed and moved: a draft is made")
    git = ["git", "-c", "user.name=-", "-c", "user.email=-", "-C", folder]
    for words in (["init", "-q"], ["add", "draft.resume", "shared"], ["commit", "-q", "-m", "first"]):
        done = run([*git, *words], env=home, text=True)
        tally.check(done.returncode == 0, f"git {words[0]}", done.stderr)
    draft.write_text(draft.read_text().replace("Port Ellery, WA", "Port Ellery, OR", 1))
    tally.check("OR" in quoin("redline", "draft.resume"), "installed and moved: earlier drafts are read")
    tally.check("The theme language" in quoin("help", "themes"), "installed and moved: the references are read")
    tally.check("whimbrel" in quoin("themes"), "installed and moved: the themes are found")


def main():
    require_quoin()
    tally = Tally()
    with tempfile.TemporaryDirectory(prefix="outside-") as made:
        folder = pathlib.Path(made)
        first, moved = folder / "first", folder / "else where" / "opt"
        done = run(["cmake", "--install", QUOIN.parents[1], "--prefix", first], text=True)
        if tally.check(done.returncode == 0, "cmake --install", done.stderr):
            moved.parent.mkdir()
            first.rename(moved)
            for name in CAME_ALONG:
                tally.check((moved / name).exists(), f"{name} is installed")
            strange = [str(path) for path in moved.rglob("*") if path.is_file() and path.suffix in (".py", ".pdf", ".d", ".cpp")]
            tally.check(not strange, "nothing of the workshop is installed", ", ".join(strange))
            (folder / "work").mkdir()
            check_use(tally, moved / "bin" / "quoin", folder / "work")
    tally.finish()


if __name__ == "__main__":
    main()
