#!/usr/bin/python3 -B
"""The completions, as they were built, in real shells: bash, zsh and fish (the Debian packages of these
names), each on a terminal of its own, with the keys that a user presses.

A case is what is typed before the key, what is then offered and what is not. A shell that is not on the
machine is named and passed over.
"""

import os
import pathlib
import pty
import re
import select
import signal
import tempfile
import time

from common import QUOIN, Tally, has, require_quoin, run

SHARE = QUOIN.parents[1] / "share"
FILES = ["draft.resume", "old.pdf", "posting.txt", "mine.theme", "office.rules", "$(touch run).resume"]
DRAFT = """\
name: Ottoline Brandt

section: Experience

role: Deckhand
employer: Port Ellery Ferry {field}
- Counted 212 quadrats {lab !winter}

for: harbour
role: $(touch run)
employer: `touch run`
"""

# (typed, offered, not offered)
CASES = [
    ("quoin ", "set proof mend caseload themes help", "draft.resume dunlin"),
    ("quoin re", "redline", "set"),
    ("quoin set --", "--paper --theme --output --help", "--strict"),
    ("quoin set ", "draft.resume", "old.pdf posting.txt"),
    ("quoin set d", "draft.resume", "old.pdf"),
    ("quoin scan ", "old.pdf", "draft.resume"),
    ("quoin set draft.resume --paper ", "letter a4", "draft.resume"),
    ("quoin set draft.resume --paper=", "letter a4", "draft.resume"),
    ("quoin set draft.resume --theme ", "dunlin turnstone mine.theme", "office.rules"),
    ("quoin set draft.resume --for ", "field lab winter harbour", "old.pdf"),
    ("quoin set draft.resume --plain x --entry ", "Deckhand touch", "posting.txt"),
    ("quoin tailor draft.resume p", "posting.txt", "old.pdf"),
    ("quoin checks w", "weak-opening word-slip", "tense"),
    ("quoin caseload --check w", "weak-opening word-slip", "tense"),
    ("quoin caseload . --needs ", "must should reading", "text"),
    ("quoin begin --field ", "outdoors trades", "undergraduate"),
    ("quoin proof --format ", "sarif json", "csv"),
    ("quoin proof --office ", "office.rules", "draft.resume"),
    ("quoin help o", "office", "markup"),
]

BASH = ["bash", "--noprofile", "--norc", "-i"]
ZSH = ["zsh", "-f", "-i"]
FISH = ["fish", "--no-config", "-i"]
BASH_READY = f"""bind 'set show-all-if-ambiguous on'; bind 'set completion-query-items 0'; bind 'set page-completions off'
bind 'set enable-bracketed-paste off'; source {SHARE}/bash-completion/completions/quoin
"""
ZSH_READY = f"""unsetopt zle_bracketed_paste prompt_sp; LISTMAX=1000; fpath=({SHARE}/zsh/site-functions $fpath)
autoload -Uz compinit; compinit -u -D; setopt list_ambiguous no_list_beep; unsetopt list_ambiguous
"""


class Shell:
    """One at its prompt, which is `>>>`."""

    def __init__(self, command, ready, folder):
        environment = {"PATH": f"{QUOIN.parent}:{os.environ['PATH']}", "HOME": str(folder), "TERM": "dumb", "PS1": ">>>",
                       "LC_ALL": "C.UTF-8", "COLUMNS": "200", "LINES": "200", "PROMPT": ">>>"}
        self.pid, self.master = pty.fork()
        if self.pid == 0:
            os.chdir(folder)
            os.execvpe(command[0], command, environment)
        self.until_quiet()
        for line in ready.splitlines():
            self.press(line + "; echo go''on\n", until="goon")

    def press(self, keys, until=""):
        os.write(self.master, keys.encode())
        return self.until_quiet(until)

    def until_quiet(self, until="", patience=20.0, quiet=0.3):
        """What it says until it has said that, and has nothing more to say."""
        said, end = b"", time.monotonic() + patience
        while time.monotonic() < end:
            ready, _, _ = select.select([self.master], [], [], quiet if said else 2.0)
            if not ready and until.encode() in said:
                break
            if not ready:
                continue
            try:
                said += os.read(self.master, 65536)
            except OSError:
                break
        return re.sub(r"\x1b\[[0-9;?]*[A-Za-z]", "", said.decode(errors="replace"))

    def offered(self, typed):
        self.press(typed, until=typed[-1])
        said = self.press("\t")
        self.press("\x15\n", until=">>>")  # ^U: the line is thrown away
        return said

    def leave(self):
        os.kill(self.pid, signal.SIGKILL)
        os.waitpid(self.pid, 0)
        os.close(self.master)


def check_shell(tally, name, offered):
    for typed, wanted, unwanted in CASES:
        said = offered(typed)
        # of a word that is completed at once a terminal gets the rest
        begun = typed.split()[-1] if not typed.endswith(" ") else ""
        listed = re.sub(r">>>.*\Z", "", said, flags=re.S)
        found = set(re.findall(r"[\w.-]+", listed)) | {begun + said.strip(" \b")}
        missing = set(wanted.split()) - found
        tally.check(not missing, f"{name}: '{typed}' offers {' '.join(missing)}", repr(said[-400:]))
        strange = set(unwanted.split()) & found
        tally.check(not strange, f"{name}: '{typed}' does not offer {' '.join(strange)}", repr(said[-400:]))


def on_terminal(command, ready):
    def check(tally, name, folder):
        shell = Shell(command, ready, folder)
        check_shell(tally, name, shell.offered)
        shell.leave()
    return check


def by_fish(tally, name, folder):
    script = SHARE / "fish" / "vendor_completions.d" / "quoin.fish"
    environment = {"PATH": f"{QUOIN.parent}:{os.environ['PATH']}", "HOME": str(folder), "LC_ALL": "C.UTF-8"}

    def offered(typed):
        return run(["fish", "--no-config", "-c", 'source $argv[1]; complete -C "$argv[2]"', script, typed],
                   cwd=folder, env=environment, text=True).stdout

    def first_words(typed):
        return "\n".join(line.split("\t")[0] for line in offered(typed).splitlines())
    check_shell(tally, name, first_words)


SHELLS = {"bash": on_terminal(BASH, BASH_READY), "zsh": on_terminal(ZSH, ZSH_READY), "fish": by_fish}


def main():
    require_quoin()
    tally = Tally()
    for name, check in SHELLS.items():
        if not has(name):
            print(f"not tried: {name} is not on this machine")
            continue
        with tempfile.TemporaryDirectory(prefix="outside-") as made:
            folder = pathlib.Path(made)
            for file in FILES:
                (folder / file).write_text(DRAFT)
            check(tally, name, folder)
            tally.check(not (folder / "run").exists(), f"{name} runs nothing of a résumé")
    tally.finish()


if __name__ == "__main__":
    main()
