#!/usr/bin/python3 -B
"""The manual's pages, as they were built: groff (`man --warnings`) and mandoc (`-T lint`) find nothing.

Sections stand in the order of man-pages(7), whose list is given here; every variable that the sources
ask the environment for stands in quoin(1); and `quoin help` goes by a pager on a terminal alone, the
one that PAGER names. What cannot be written is said, a PDF is kept from a terminal, and a pipe that is
closed early ends a run without a word. What went well is said on a terminal alone, and so is how far a
long run is. Colours are for terminals, unless asked for: https://no-color.org.
"""

import os
import pathlib
import pty
import re
import subprocess
import tempfile

from common import QUOIN, ROOT, SAMPLES, Tally, require_quoin, run

MANUAL = QUOIN.parents[1] / "share" / "man"
ORDER = ["NAME", "SYNOPSIS", "DESCRIPTION", "OPTIONS", "EXIT STATUS", "ENVIRONMENT", "FILES", "EXAMPLES", "SEE ALSO"]
ALWAYS = {1: ORDER, 5: ["NAME", "DESCRIPTION", "EXAMPLES", "SEE ALSO"]}


def on_terminal(words, **environment):
    """What a terminal gets of a command."""
    pid, master = pty.fork()
    if pid == 0:
        os.execvpe(words[0], [str(word) for word in words], {**os.environ, **environment})
    said = b""
    try:
        while piece := os.read(master, 65536):
            said += piece
    except OSError:  # Linux says so when the other side is gone
        pass
    status = os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1])
    os.close(master)
    return status, said.decode().replace("\r\n", "\n")


def check_page(tally, page):
    utf8 = {**os.environ, "LC_ALL": "C.UTF-8", "MANROFFOPT": ""}
    groff = run(["man", "--warnings", "-E", "UTF-8", "-l", page], env=utf8, text=True)
    tally.check(groff.returncode == 0 and not groff.stderr, f"groff on {page.name}", groff.stderr)
    lint = run(["mandoc", "-T", "lint", page], text=True)
    tally.check(lint.returncode == 0 and not lint.stdout, f"mandoc on {page.name}", lint.stdout)
    found = [title.strip('"') for title in re.findall(r"^\.SH (.*)", page.read_text(), re.M)]
    wanted = [title for title in ORDER if title in found]
    tally.check(found == wanted, f"order of sections in {page.name}", ", ".join(found))
    missing = set(ALWAYS[int(page.suffix[1:])]) - set(found)
    tally.check(not missing, f"all sections in {page.name}", ", ".join(missing))


def check_environment(tally):
    sources = "\n".join(path.read_text() for path in (ROOT / "compiler").rglob("*.cpp"))
    asked = set(re.findall(r'getenv\("(\w+)"\)', sources)) | set(re.findall(r'setenv\("(\w+)"', sources))
    asked |= {"LC_ALL", "LC_CTYPE", "LANG"}  # asked for in a loop
    asked |= {"XDG_CONFIG_HOME", "TERMINFO", "TERMINFO_DIRS", "TZ"}  # by libgit2, libtinfo and the C library
    page = (MANUAL / "man1" / "quoin.1").read_text()
    section = re.search(r"^\.SH ENVIRONMENT\n(.*?)^\.SH", page, re.M | re.S).group(1)
    told = set(re.findall(r"\\fB(\w+)\\fP", "\n".join(re.findall(r"^\.TP\n(.*)", section, re.M))))
    tally.check(asked == told, "the variables that are read are those of the manual", f"{asked ^ told}")


def check_pager(tally):
    plain = run([QUOIN, "help", "set"], text=True).stdout
    numbered = re.sub(r"^", "> ", plain, flags=re.M).removesuffix("> ")
    cases = [("PAGER", "sed 's/^/> /'", numbered, "the program that PAGER names"), ("PAGER", "cat", plain, "cat is none"),
             ("PAGER", "", plain, "an empty one is none"), ("PAGER", "no-such-program", plain, "one that is not there")]
    for name, value, wanted, case in cases:
        status, said = on_terminal([QUOIN, "help", "set"], **{name: value})
        tally.check(status == 0 and said.endswith(wanted), f"help on a terminal: {case}", said[:200])
    piped = run([QUOIN, "help", "set"], text=True, env={**os.environ, "PAGER": "false"})
    tally.check(piped.stdout == plain, "help in a pipe is plain", piped.stdout)
    with tempfile.TemporaryDirectory(prefix="outside-") as folder:
        status, said = on_terminal([QUOIN, "help", "markup"], PAGER="head -1", TMPDIR=folder)
        tally.check(status == 0 and said.startswith("The résumé markup"), "a pager that is left early", said)
        check_planted_pager(tally, pathlib.Path(folder), plain)


def check_planted_pager(tally, folder, plain):
    """A program of the pager's name in the working folder is not run, whatever PATH says."""
    (folder / "planted-pager").write_text("#!/bin/sh\necho planted\n")
    (folder / "planted-pager").chmod(0o755)
    for path in (".:/usr/bin:/bin", ":/usr/bin:/bin", ".", ""):
        words = ["/usr/bin/env", "-C", folder, QUOIN, "help", "set"]
        status, said = on_terminal(words, PATH=path, PAGER="planted-pager")
        tally.check(status == 0 and said.endswith(plain), f"no pager of the working folder with PATH={path!r}", said[:200])


def check_outputs(tally):
    for words in (["--help"], ["--version"], ["set", "--help"], ["help"], ["help", "--format", "json"], ["checks"]):
        with open("/dev/full", "wb") as full:
            done = subprocess.run([QUOIN, *words], stdout=full, stderr=subprocess.PIPE, text=True)
        told = done.stderr.endswith(": cannot write to standard output: the disk is full\n") and done.stderr.count("\n") == 1
        tally.check(done.returncode == 1 and told, f"quoin {' '.join(words)} on a full disk", done.stderr)
    for words in (["checks", "--reference"], ["help", "markup"]):
        reader, writer = os.pipe()
        os.close(reader)
        done = subprocess.run([QUOIN, *words], stdout=writer, stderr=subprocess.PIPE, restore_signals=True)
        os.close(writer)
        tally.check(not done.stderr, f"quoin {' '.join(words)} into a closed pipe", done.stderr)
    for target in ("-", "/dev/stdout", "/dev/tty"):
        status, said = on_terminal([QUOIN, "set", SAMPLES / "nursing.resume", "-o", target])
        kept = status == 1 and "%PDF" not in said and "a PDF is not for a terminal" in said
        tally.check(kept, f"a PDF on a terminal by {target}", said[:200])


def check_success(tally):
    """A line on a terminal tells of the page and where it is; a pipe gets nothing."""
    with tempfile.TemporaryDirectory(prefix="outside-") as folder:
        page, text = os.path.join(folder, "page.pdf"), os.path.join(folder, "page.txt")
        cases = [([SAMPLES / "nursing.resume", "-o", page], rf"{page}: 1 page, [\d.]+ pt, \d+ lines? free\n"),
                 ([SAMPLES / "nursing.resume", "--plain", text], rf"{text}: the text alone\n"),
                 ([SAMPLES / "nursing.resume", "-o", page, "--plain", text], rf"{page} and {text}: 1 page, .* free\n")]
        for words, wanted in cases:
            status, said = on_terminal([QUOIN, "set", *words])
            tally.check(status == 0 and re.fullmatch(wanted, said), "success on a terminal", said)
            piped = run([QUOIN, "set", *words], text=True)
            tally.check(piped.stdout + piped.stderr == "", "success in a pipe", piped.stdout + piped.stderr)
        chosen = os.path.join(folder, "chosen.resume")
        words = [QUOIN, "tailor", SAMPLES / "everything" / "marine-biology.resume",
                 SAMPLES / "postings" / "field-technician.txt", "-o", chosen]
        status, said = on_terminal(words)
        tally.check(status == 0 and re.fullmatch(rf"{chosen}: 1 page, .* free\n", said), "what is chosen, on a terminal", said)
        many = [os.path.join(folder, f"{number}.resume") for number in range(600)]
        for name in many:
            with open(name, "w") as file:
                file.write((SAMPLES / "nursing.resume").read_text())
        status, said = on_terminal([QUOIN, "set", *many, "-o", folder])
        tally.check(status == 0 and said.count(" free\n") == len(many), "a line for each of many", said[-200:])
        told = re.search(r"\r\[#*\.*\] \d+ of 600, \d+ s left: [^\n]*\x1b\[K\r\x1b\[K", said)
        tally.check(told, "a long run says how far it is, and takes that back", said[:200])
        piped = run([QUOIN, "set", *many, "-o", folder], text=True)
        tally.check(piped.stdout + piped.stderr == "", "many in a pipe", piped.stdout + piped.stderr)


def check_colours(tally):
    with tempfile.TemporaryDirectory(prefix="outside-") as folder:
        wrong = os.path.join(folder, "wrong.resume")
        with open(wrong, "w") as file:
            file.write("nam: Ottoline Brandt\n")
        cases = [([], {"TERM": "xterm"}, True, True), ([], {"TERM": "dumb"}, True, False),
                 ([], {"TERM": "xterm", "NO_COLOR": "1"}, True, False), ([], {"TERM": "xterm", "NO_COLOR": ""}, True, True),
                 (["--color=never"], {"TERM": "xterm"}, True, False), (["--color", "always"], {"NO_COLOR": "1"}, False, True),
                 ([], {"TERM": "xterm"}, False, False), (["--color=auto"], {"TERM": "xterm"}, False, False)]
        for options, environment, terminal, wanted in cases:
            words = [QUOIN, "set", wrong, *options]
            bare = {"NO_COLOR": "", **environment}
            said = on_terminal(words, **bare)[1] if terminal else run(words, env={**os.environ, **bare}, text=True).stderr
            tally.check(("\x1b[" in said) == wanted, f"colours: {options} {environment} {'on a terminal' * terminal}", said)


def main():
    require_quoin()
    tally = Tally()
    for page in sorted(MANUAL.glob("man*/*")):
        check_page(tally, page)
    check_environment(tally)
    check_pager(tally)
    check_outputs(tally)
    check_success(tally)
    check_colours(tally)
    tally.finish()


if __name__ == "__main__":
    main()
