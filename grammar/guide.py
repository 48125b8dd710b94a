"""The guides of samples/guide: read, and followed as a reader would who types what they show.

A fenced block is what its first line says:

    ```resume draft.resume      a file, written as it stands; likewise any other kind with a name
    ```diff draft.resume        changes of a file: lines with a `-` go, those with a `+` come in their place
    ```console                  commands after `$ `, and what a terminal shows then; a line of `…` alone
                                stands for any number of lines

`![what it shows](draft.png)` is the first page of draft.pdf at that point, and a comment
`<!-- day: 2026-11-02 -->` says on which day the following is done. What the installed program has in
/usr/share/doc/quoin/samples is taken from the samples of the source.
"""
import fcntl
import os
import pathlib
import pty
import re
import struct
import subprocess
import sys
import termios
from dataclasses import dataclass

INSTALLED = "/usr/share/doc/quoin/samples"
ANY_LINES = "…"


@dataclass
class Block:
    kind: str     # of a fence its word; `picture`, `day`, else `text`
    name: str     # of a file, a picture or a day
    lines: list
    line: int     # of the guide, from 1, that its first one is


def blocks(text):
    """All of a guide: fences, pictures and days each by itself, what is between as `text`."""
    lines, at, between = text.split("\n"), 0, []
    while at < len(lines):
        line, begin = lines[at], at
        fence = re.fullmatch(r"```(\w+)(?: (\S+))?", line)
        single = re.fullmatch(r"!\[(?P<picture>.*)\]\((\S+)\)|<!-- (?P<day>day): (\S+) -->", line)
        at += 1
        if not fence and not single:
            between.append(line)
            continue
        if between:
            yield Block("text", "", between, begin - len(between) + 1)
            between = []
        if fence:
            end = lines.index("```", at)
            yield Block(fence[1], fence[2] or "", lines[at:end], at + 1)
            at = end + 1
        elif single["day"]:
            yield Block("day", single[4], [], at)
        else:
            yield Block("picture", single[2], [single["picture"]], at)
    yield Block("text", "", between, at - len(between) + 1)


def sessions(block):
    """(command, what is shown then) of a console's block."""
    found = []
    for line in block.lines:
        if line.startswith("$ "):
            found.append((line[2:], []))
        else:
            found[-1][1].append(line)
    return found


def is_shown(wanted, real):
    """Whether the lines are those of the guide."""
    if ANY_LINES not in wanted:
        return wanted == real
    at = wanted.index(ANY_LINES)
    if wanted[:at] != real[:at]:
        return False
    return any(is_shown(wanted[at + 1:], real[begin:]) for begin in range(at, len(real) + 1))


def on_terminal(command, folder, environment):
    """What a terminal of 80 columns shows of a shell's command, and the folder it is in afterwards."""
    reader, writer = os.pipe()
    os.set_inheritable(writer, True)
    pid, master = pty.fork()
    if pid == 0:
        os.chdir(folder)
        fcntl.ioctl(1, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
        os.execvpe("sh", ["sh", "-c", f"{command}\npwd >&{writer}"], environment)
    os.close(writer)
    said = b""
    try:
        while piece := os.read(master, 65536):
            said += piece
    except OSError:  # Linux says so when the other side is gone
        pass
    os.waitpid(pid, 0)
    os.close(master)
    with open(reader, encoding="utf-8") as told:
        folder = pathlib.Path(told.read().strip() or folder)
    text = re.sub(r"\r[^\n]*?\x1b\[K", "", said.decode().replace("\r\n", "\n"))  # progress is taken back
    return [line.rstrip() for line in text.split("\n")[:-1]], folder


class Reader:
    """Who follows a guide, in a folder of her own."""

    def __init__(self, program, samples, folder):
        self.samples, self.folder = str(samples), pathlib.Path(folder).resolve()
        home = self.folder.parent / "home"
        home.mkdir(exist_ok=True)
        person = {f"GIT_{who}_{what}": value for who in ("AUTHOR", "COMMITTER")
                  for what, value in (("NAME", "Reader"), ("EMAIL", "reader@ellerystate.example"))}
        self.environment = {
            "PATH": f"{pathlib.Path(program).parent}:{os.environ['PATH']}", "HOME": str(home), "TERM": "dumb",
            "LC_ALL": "C.UTF-8", "GIT_CONFIG_NOSYSTEM": "1", "GIT_PAGER": "cat", "GIT_CONFIG_COUNT": "1",
            "GIT_CONFIG_KEY_0": "init.defaultBranch", "GIT_CONFIG_VALUE_0": "main", **person}

    def day(self, day):
        seconds = int(subprocess.check_output(["date", "-u", "-d", f"{day} 12:00", "+%s"]))
        self.environment |= {"SOURCE_DATE_EPOCH": str(seconds), "GIT_AUTHOR_DATE": f"{seconds} +0000",
                             "GIT_COMMITTER_DATE": f"{seconds} +0000"}

    def run(self, command):
        """What is shown; lines of it that name the samples name them as installed ones."""
        shown, self.folder = on_terminal(command.replace(INSTALLED, self.samples), self.folder, self.environment)
        return [line.replace(self.samples, INSTALLED) for line in shown]

    def write(self, block):
        (self.folder / block.name).write_text("\n".join(block.lines) + "\n", encoding="utf-8")

    def change(self, block):
        path = self.folder / block.name
        text = path.read_text(encoding="utf-8")
        old = "".join(line[1:] + "\n" for line in block.lines if not line.startswith("+"))
        new = "".join(line[1:] + "\n" for line in block.lines if not line.startswith("-"))
        if text.count(old) != 1:
            sys.exit(f"line {block.line} of the guide: what goes from {block.name} stands there {text.count(old)} times")
        path.write_text(text.replace(old, new), encoding="utf-8")

    def picture(self, block, resolution):
        """PNG of the first page."""
        pdf = (self.folder / block.name).with_suffix(".pdf")
        return subprocess.check_output(["pdftoppm", "-r", str(resolution), "-png", "-singlefile", str(pdf)])

    def follow(self, text):
        """Each block once it has been done as it says; of a console's, what was shown."""
        for block in blocks(text):
            shown = None
            if block.kind == "day":
                self.day(block.name)
            elif block.kind == "console":
                shown = [self.run(command) for command, _ in sessions(block)]
            elif block.kind == "diff":
                self.change(block)
            elif block.name and block.kind != "picture":
                self.write(block)
            yield block, shown
