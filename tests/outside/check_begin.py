#!/usr/bin/python3 -B
"""`quoin begin` driven through a pseudo-terminal, as a person at a keyboard drives it, and through
pipes: answering, being wrong, insisting, skipping, going back, help, leaving by each way there is,
being killed, and going on; with editing and on a terminal that cannot edit; and every file that is in
its way.
"""

import errno
import fcntl
import os
import pathlib
import pty
import select
import signal
import struct
import tempfile
import termios
import time

from common import QUOIN, Tally, require_quoin, run

PATIENCE = 10  # seconds for what takes milliseconds
WAYS = ("xterm", "dumb")  # with editing, and without
UP, BACKSPACE, CTRL_A, CTRL_C, CTRL_D, CTRL_U = "\x1b[A", "\x7f", "\x01", "\x03", "\x04", "\x15"


class Typist:
    """A run of begin on a terminal of its own; what it shows is read while it is typed to."""

    def __init__(self, folder, words=(), terminal="xterm"):
        self.shown = ""
        self.pid, self.keys = pty.fork()
        if self.pid == 0:
            os.chdir(folder)
            for number in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP):
                signal.signal(number, signal.SIG_DFL)  # a run in the background ignores some
            os.environ["TERM"] = terminal
            os.environ["LC_ALL"] = "C"
            os.execv(QUOIN, [str(QUOIN), "begin", *words])
        self.resize(24, 80)

    def resize(self, rows, columns):
        fcntl.ioctl(self.keys, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))

    def read_until(self, ends):
        """All that is shown until `ends(shown)`, or the run is over."""
        end = time.monotonic() + PATIENCE
        shown = ""
        while time.monotonic() < end and not ends(shown):
            if not select.select([self.keys], [], [], 0.05)[0]:
                continue
            try:
                piece = os.read(self.keys, 65536)
            except OSError as fault:
                if fault.errno != errno.EIO:
                    raise
                break
            if not piece:
                break
            shown += piece.decode("utf-8", "replace")
        self.shown += shown
        return shown

    def wait_for(self, prompt):
        return self.read_until(lambda shown: shown.rstrip("\r").endswith(prompt))

    def press(self, keys):
        os.write(self.keys, keys.encode())

    def type(self, line, prompt):
        """A line, and all that is shown until the next prompt stands, which is below it: the one above
        may be drawn once more."""
        self.press(line + "\r")
        return self.read_until(
            lambda shown: "\n" in shown and shown.rstrip("\r").endswith(prompt))

    def end(self):
        """The exit status once it is over; negative for a signal."""
        self.read_until(lambda shown: False)
        until = time.monotonic() + PATIENCE
        while not (over := os.waitpid(self.pid, os.WNOHANG))[0]:
            if time.monotonic() > until:
                os.kill(self.pid, signal.SIGKILL)  # it hangs, which the status tells
            time.sleep(0.002)
        status = over[1]
        os.close(self.keys)
        return os.waitstatus_to_exitcode(status)

    def kill(self, number):
        os.kill(self.pid, number)
        return self.end()


def at_name(folder, terminal, words=()):
    typist = Typist(folder, words, terminal)
    typist.wait_for("stage: ")
    typist.type("1", "field: ")
    typist.type("trades", "name: ")
    return typist


def to_the_end(folder, terminal, tally):
    """Every sign once, and the draft is what was typed."""
    typist = at_name(folder, terminal)
    case = f"{terminal}: "
    tally.check("a name has its capitals" in typist.type("wren halloran", "name: "), case + "wrong")
    typist.type("Wren Halloran", "headline: ")
    typist.type("", "address: ")
    tally.check("It is now: Wren" in typist.type("<", "headline: ") + typist.type("<", "name: "),
                case + "back")
    typist.type("", "headline: ")
    typist.type("", "address: ")
    typist.type("Port Ellery, WA", "phone: ")
    typist.type("555-0171", "phone: ")
    typist.type("!", "email: ")
    tally.check("not so: " in typist.type("?", "email: "), case + "help")
    tally.check("phone: 555-0171" in typist.type("=", "email: "), case + "list")
    typist.type("wren.halloran@ellerystate.example", "link: ")
    typist.type(">", "school: ")
    typist.type(">", "role: ")
    typist.type("Café Helper", "employer: ")
    typist.type("Lantern Street Coffee", "place: ")
    typist.type("", "dates: ")
    typist.type("since summer", "dates: ")
    tally.check("in the past" in typist.type("Jun 2024 - Aug 2024", "bullet: "), case + "tense")
    typist.type("Washed 140 cups an hour", "bullet: ")
    typist.type("", "role: ")
    typist.press(">>\r")
    tally.check(typist.end() == 0, case + "finished", typist.shown[-300:])
    tally.check("quoin set draft.resume" in typist.shown, case + "what to run next")
    draft = (folder / "draft.resume").read_text()
    for line in ("name: Wren Halloran", "phone: 555-0171", "role: Café Helper",
                 "dates: Jun 2024 - Aug 2024", "- Washed 140 cups an hour"):
        tally.check(f"\n{line}\n" in draft, f"{case}'{line}' is in the draft", draft)
    tally.check(not (folder / "draft.begin").exists(), case + "what was kept is gone")
    done = run([QUOIN, "set", "draft.resume"], cwd=folder, text=True)
    tally.check(done.returncode == 0, case + "the draft is set", done.stderr)


def leave_and_go_on(folder, terminal, tally):
    """Left by each way there is, the next run stands at the same question."""
    ways = {
        "'.'": lambda typist: (typist.press(".\r"), typist.end())[1],
        "control-C": lambda typist: (typist.press(CTRL_C), typist.end())[1],
        "control-C in a word": lambda typist: (typist.press("abc" + CTRL_C), typist.end())[1],
        "control-D": lambda typist: (typist.press(CTRL_D), typist.end())[1],
        "SIGTERM": lambda typist: typist.kill(signal.SIGTERM),
        "SIGHUP": lambda typist: typist.kill(signal.SIGHUP),
        "SIGKILL": lambda typist: typist.kill(signal.SIGKILL),
    }
    typist = at_name(folder, terminal)
    typist.type("Wren Halloran", "headline: ")
    for name, way in ways.items():
        case = f"{terminal}: {name}: "
        status = way(typist)
        tally.check(status == (-9 if name == "SIGKILL" else 0), case + "exit status", str(status))
        if status == 0:
            tally.check("draft.begin" in typist.shown[-300:], case + "what is kept is told",
                        typist.shown[-300:])
        tally.check((folder / "draft.begin").exists(), case + "the answers are kept")
        tally.check(not (folder / "draft.resume").exists(), case + "no draft is written")
        typist = Typist(folder, (), terminal)
        shown = typist.wait_for("headline: ")
        tally.check("Going on from" in shown, case + "it goes on at the same question", shown)
    tally.check("name: Wren Halloran" in typist.type("=", "headline: "), f"{terminal}: still there")
    typist.kill(signal.SIGKILL)
    (folder / "draft.begin").unlink()


def edit(folder, tally):
    """Keys that edit and recall, a resized window, a run that was stopped and resumed."""
    typist = at_name(folder, "xterm")
    typist.press("ren Halloranx" + BACKSPACE + CTRL_A + "W\r")
    typist.wait_for("headline: ")
    typist.resize(40, 20)
    typist.press("Zoë")
    typist.resize(24, 132)
    os.kill(typist.pid, signal.SIGSTOP)
    os.kill(typist.pid, signal.SIGCONT)
    typist.press(CTRL_U + "Welding student, two seasons in a boatyard\r")
    typist.wait_for("address: ")
    typist.press(UP)
    tally.check("boatyard" in typist.read_until(lambda shown: "boatyard" in shown),
                "edited: the last answer again")
    typist.type(CTRL_U + "Port Ellery, WA", "phone: ")
    listed = typist.type("=", "phone: ")
    for line in ("name: Wren Halloran", "headline: Welding student, two seasons in a boatyard",
                 "address: Port Ellery, WA"):
        tally.check(line in listed, f"edited: {line}", listed)
    typist.press(".\r")
    tally.check(typist.end() == 0, "edited: left")
    (folder / "draft.begin").unlink()


def begin(folder, words=(), typed=b"", **options):
    return run([QUOIN, "begin", *words], cwd=folder, input=typed, **options)


def refused(tally, case, done, status, told):
    said = done.stderr.decode("utf-8", "replace")
    lines = said.strip().splitlines()
    tally.check(done.returncode == status and told in said and len(lines) <= 2, case,
                f"{done.returncode}: {said}")


def piped(folder, tally):
    """Answers from a pipe; the prompts stand on lines of their own."""
    answers = "1\nlab\nWren Halloran\n>\n>\nBarista\n>>\n".encode()
    done = begin(folder, typed=answers)
    tally.check(done.returncode == 0 and not done.stderr, "piped", done.stderr.decode())
    tally.check(b"\nname: \n" in done.stdout, "piped: prompts on lines of their own")
    draft = folder / "draft.resume"
    tally.check("\nrole: Barista\n" in draft.read_text(), "piped: the draft is written")
    before = draft.read_bytes()
    refused(tally, "piped: a draft that is there", begin(folder, typed=answers), 2, "is there already")
    tally.check(draft.read_bytes() == before, "piped: it is as it was")

    other = ["-o", "other.resume"]
    refused(tally, "piped: input ends", begin(folder, other, b"1\nlab\nWren Halloran"), 1,
            "'quoin begin -o other.resume' goes on from here")
    done = begin(folder, other, b"Welding student\n>>\n")
    tally.check(done.returncode == 0, "piped: gone on with", done.stderr.decode())
    text = (folder / "other.resume").read_text()
    tally.check("name: Wren Halloran\nheadline: Welding student\n" in text, "piped: all is there", text)

    odd = b"1\nlab\n" + b"x" * 200_000 + b"\n\xff\xfe\n\x1b[A\nWr\xc3\xabn Halloran\n>>\n"
    done = begin(folder, ["-o", "odd.resume"], odd)
    shown = done.stdout.decode("utf-8", "strict")
    tally.check(done.returncode == 0, "piped: odd bytes", done.stderr.decode())
    for told in ("longer than a résumé's line", "no text in UTF-8", "signs that do not print"):
        tally.check(told in shown, f"piped: {told}", shown[-500:])
    tally.check("\nname: Wrën Halloran\n" in (folder / "odd.resume").read_text(), "piped: kept whole")


def in_the_way(folder, tally):
    """What stops it is told in one line, and nothing is lost by it."""
    refused(tally, "no answers at all", begin(folder), 1, "before the first answer")
    refused(tally, "no such stage", begin(folder, ["--stage", "freshman"]), 2, "not 'freshman'")
    refused(tally, "no such field", begin(folder, ["--field", "softwear"]), 2,
            "did you mean 'software'?")
    refused(tally, "questions to standard output", begin(folder, ["-o", "-"]), 2, "name a file")
    refused(tally, "no such folder", begin(folder, ["-o", "no/draft.resume"]), 1, "no/draft.begin")

    kept = folder / "draft.begin"
    for case, text, told in (
            ("another version", "quoin begin, version 9\n", "draft.begin:1:1: error:"),
            ("damaged", "quoin begin, version 1\nnext: Heading / 1\n", "draft.begin:2:1: error:"),
            ("empty", "", "draft.begin:1:1: error:"),
            ("not text", "\0\1\2", "draft.begin"),
    ):
        kept.write_text(text)
        done = begin(folder, typed=b"1\nlab\nWren Halloran\n>>\n")
        said = done.stderr.decode()
        tally.check(done.returncode == 1 and told in said and "nothing was changed" in said,
                    f"kept: {case}", said)
        tally.check(kept.read_text() == text, f"kept: {case}: as it was")
    kept.unlink()
    kept.mkdir()
    refused(tally, "kept: a folder", begin(folder, typed=b"1\n"), 1, "draft.begin")
    kept.rmdir()

    first = at_name(folder, "xterm")
    refused(tally, "two runs", begin(folder, typed=b"1\nlab\nOther Name\n"), 1,
            "in use by another run")
    first.type("Wren Halloran", "headline: ")
    refused(tally, "two runs, later", begin(folder, typed=b">>\n"), 1, "in use by another run")
    (folder / "draft.resume").write_text("name: Ottoline Brandt\n")
    first.press(">>\r")
    tally.check(first.end() == 1 and "is not written over" in first.shown, "a draft came meanwhile",
                first.shown[-300:])
    tally.check((folder / "draft.resume").read_text() == "name: Ottoline Brandt\n", "it is as it was")
    (folder / "draft.resume").unlink()
    done = begin(folder, typed=b">>\n")
    tally.check(done.returncode == 0, "moved away, it goes on", done.stderr.decode())
    tally.check("\nname: Wren Halloran\n" in (folder / "draft.resume").read_text(), "nothing was lost")


def unwritable(folder, tally):
    """As nobody, whom a folder's permissions hold."""
    closed = folder / "closed"
    closed.mkdir(mode=0o555)
    as_nobody = {"user": 65534, "group": 65534, "extra_groups": []} if os.geteuid() == 0 else {}
    try:
        done = begin(closed, typed=b"1\n", **as_nobody)
    except PermissionError:
        return  # the program itself is out of nobody's reach
    if done.returncode in (126, 127):
        return
    refused(tally, "a folder that cannot be written to", done, 1, "draft.begin")


def skeletons(folder, tally):
    """Without questions: to standard output, and to a file that is set at once."""
    done = begin(folder, ["--stage", "recent-graduate", "--field", "lab", "-o", "-"])
    tally.check(done.returncode == 0 and b"\nstage: recent graduate\n" in done.stdout,
                "a draft without questions", done.stderr.decode())
    done = begin(folder, ["--stage", "undergraduate", "--field", "lab", "-o", "notes.resume"])
    tally.check(done.returncode == 0 and b"quoin set notes.resume" in done.stderr, "what to run next")
    done = run([QUOIN, "set", "notes.resume"], cwd=folder, text=True)
    tally.check(done.returncode == 0 and not done.stderr, "it is set", done.stderr)


def main():
    require_quoin()
    tally = Tally()
    with tempfile.TemporaryDirectory(prefix="outside-") as name:
        folders = iter(range(100))

        def fresh():
            folder = pathlib.Path(name) / str(next(folders))
            folder.mkdir()
            return folder

        os.chmod(name, 0o755)
        for terminal in WAYS:
            to_the_end(fresh(), terminal, tally)
            leave_and_go_on(fresh(), terminal, tally)
        edit(fresh(), tally)
        for check in (piped, in_the_way, unwritable, skeletons):
            check(fresh(), tally)
    tally.finish()


if __name__ == "__main__":
    main()
