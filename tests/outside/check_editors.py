#!/usr/bin/env python3
"""The kits of grammar/editors in the editors themselves, without a screen: Vim knows the file, colours
its lines, folds its sections and lists what `quoin proof` says at its lines; nano colours what it shows.
"""
import fcntl
import json
import os
import pathlib
import pty
import select
import struct
import tempfile
import termios
import time

from common import PATIENCE, QUOIN, ROOT, Tally, require_quoin, run

KITS = ROOT / "grammar" / "editors"
TEXT = """# a note
name: Ottoline Brandt

section: Honors and Awards {lab}

award: The the Tide Prize <https://prize.example>
dates: May 2026
- One of *three*
"""

# line, column, and what Vim calls what stands there
COLOURS = [(1, 3, "resumeComment"), (2, 1, "resumeLabel"), (4, 1, "resumeSection"), (4, 29, "resumeTag"),
           (6, 30, "resumeLink"), (8, 1, "resumeBullet"), (8, 11, "resumeStrong")]

VIM = """set nocompatible rtp^={kits}/vim
filetype plugin on
syntax on
edit {file}
let s:names = []
for [s:line, s:column, s:name] in {colours}
  call add(s:names, synIDattr(synID(s:line, s:column, 1), 'name'))
endfor
setlocal makeprg={quoin}\\ proof\\ %:S
silent make!
let s:found = map(getqflist(), {{_, one -> [one.lnum, one.col, one.text]}})
call writefile([json_encode({{'type': &filetype, 'names': s:names, 'fold': foldlevel(6), 'found': s:found}})], '{out}')
qall!
"""


def check_vim(folder, file, tally):
    out, script = folder / "out.json", folder / "script.vim"
    script.write_text(VIM.format(kits=KITS, file=file, quoin=QUOIN, out=out,
                                 colours=json.dumps([list(one) for one in COLOURS])))
    run(["vim", "-es", "-N", "-u", script], stdin=open(os.devnull, "rb"))
    told = json.loads(out.read_text())
    tally.check(told["type"] == "resume", "Vim knows the file", told["type"])
    tally.check(told["names"] == [name for _, _, name in COLOURS], "Vim's colours", told["names"])
    tally.check(told["fold"] == 1, "a section folds", told["fold"])
    tally.check(any(one[:2] == [6, 8] and "doubled-word" in one[2] for one in told["found"]),
                ":make lists findings at their lines", told["found"])


def screen_of(command, environment):
    """What a program draws on a terminal of 40 lines within a second after its last word."""
    child, terminal = pty.fork()
    if child == 0:
        os.execvpe(command[0], command, environment)
    fcntl.ioctl(terminal, termios.TIOCSWINSZ, struct.pack("HHHH", 40, 120, 0, 0))
    drawn, until = b"", time.monotonic() + PATIENCE
    while time.monotonic() < until and select.select([terminal], [], [], 1)[0]:
        drawn += os.read(terminal, 65536)
    os.write(terminal, b"\x18")  # ^X
    os.close(terminal)
    os.waitpid(child, 0)
    return drawn.decode(errors="replace")


def check_nano(folder, file, tally):
    (folder / "nanorc").write_text(f'include "{KITS}/nano/resume.nanorc"\n')
    drawn = screen_of(["nano", "-v", "--rcfile", str(folder / "nanorc"), str(file)],
                      {**os.environ, "TERM": "xterm-256color"})
    for sign, words in [("[34m", "name:"), ("[34m", "award:"), ("[44m", "section: Honors"), ("[30m", "# a note")]:
        tally.check(f"{sign}{words}" in drawn, f"nano colours {words!r}")


def main():
    require_quoin()
    tally = Tally()
    with tempfile.TemporaryDirectory(prefix="outside-") as name:
        folder = pathlib.Path(name)
        file = folder / "draft.resume"
        file.write_text(TEXT)
        check_vim(folder, file, tally)
        check_nano(folder, file, tally)
    tally.finish()


main()
