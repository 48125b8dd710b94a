#!/usr/bin/python3
"""Takes each list of words away, one at a time, and says what `quoin proof` makes of that.

usage: ablate.py [ROOM[/FILE]...]        (advice, unless told; the unit tests do it for english)

A list without which no finding on any labelled page or bullet changes, and which the tables of the
unit tests do not miss either, is no help and is to be taken out. It builds in build/, which
`cmake -DQUOIN_TESTS=ON` has made: each list's room is compiled anew with one word that nobody
writes in the list's place, and linked before the library. The held-back bullets are left alone.
"""

import json
import pathlib
import re
import shlex
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[2]
BUILD = ROOT / "build"
FULL = re.compile(r"\[([a-z_]+)(: [a-z ]+)?\]\s*")
ABSENT = "zzyzx"


def lists_of(path):
    return [m[1] for line in path.read_text().splitlines() if (m := FULL.fullmatch(line.strip()))]


def without(text, name):
    """The file's text with the list's words gone."""
    out, within = [], False
    for line in text.splitlines():
        opening = FULL.fullmatch(line.strip())
        if opening:
            within = opening[1] == name
            out += [line] + [ABSENT] * within
        elif not within or line.startswith("#"):
            out.append(line)
    return "\n".join(out) + "\n"


def page_of(bullets):
    """A source whose entries hold the labelled bullets, those of ended jobs apart."""
    lines = ["name: Ottoline Brandt", "email: o.brandt@ellerystate.example",
             "phone: (360) 555-0142", "", "section: Experience", ""]
    for context, dates in (("ended", "May 2024 – Aug 2025"), ("current", "Sep 2025 – present")):
        texts = [text for kind, text in bullets if kind == context]
        for i in range(0, len(texts), 5):
            lines += ["role: Assistant", "employer: Skerry House", f"dates: {dates}"]
            lines += [f"- {text}" for text in texts[i:i + 5]] + [""]
    return "\n".join(lines)


def material(folder):
    pages = sorted((ROOT / "tests/advice/pages").glob("*/*.resume"))
    rows = []
    for name in ("bullets_tuning.tsv", "bullets_hard_half.tsv"):
        for line in (ROOT / "tests/advice" / name).read_text().splitlines():
            columns = line.split("\t")
            if not line.startswith("#") and len(columns) > 1:
                rows.append(columns[:2])
    for number in range(0, len(rows), 200):
        path = folder / f"bullets{number}.resume"
        path.write_text(page_of(rows[number:number + 200]))
        pages.append(path)
    return pages


def findings(program, pages):
    done = subprocess.run([program, "proof", "--format", "json", *pages], capture_output=True,
                          text=True, check=False)
    said = set()
    for file in json.loads(done.stdout)["files"]:
        for finding in file["findings"]:
            place = finding["place"]
            said.add((file["file"], place["line"], finding["check"], finding["text"],
                      finding["suggestion"]))
    return said


class Ablation:
    def __init__(self, folder):
        self.folder = folder
        self.compile = {command["file"]: command["command"]
                        for command in json.loads((BUILD / "compile_commands.json").read_text())}
        self.links = {name: subprocess.run(["ninja", "-C", BUILD, "-t", "commands", f"bin/{name}"],
                                           capture_output=True, text=True,
                                           check=True).stdout.splitlines()[-1]
                      for name in ("quoin", "quoin_tests")}

    def make_object(self, room, source, name):
        words = self.folder / "words"
        subprocess.run(["rm", "-rf", words], check=True)
        subprocess.run(["cp", "-r", source.parent, words], check=True)
        (words / source.name).write_text(without(source.read_text(), name))
        made = self.folder / "lists.cpp"
        subprocess.run([sys.executable, "-B", ROOT / "compiler/base/make_lists.py", room, words,
                        self.folder / "lists.hpp", made], check=True)
        command = shlex.split(self.compile[str(BUILD / f"made/compiler/{room}/lists.cpp")])
        command[command.index("-o") + 1] = str(self.folder / "lists.o")
        command[-1] = str(made)
        subprocess.run(command, cwd=BUILD, check=True)

    def link(self, name):
        """In bin/, for the program finds its data beside itself. Of two definitions the first is taken."""
        out = BUILD / "bin" / f"{name}-ablated"
        compiler, rest = self.links[name].removeprefix(": && ").removesuffix(" && :").split(" ", 1)
        command = f"{compiler} -Wl,-z,muldefs {self.folder}/lists.o {rest}"
        command = command.replace(f"-o bin/{name} ", f"-o {out} ")
        subprocess.run(command, cwd=BUILD, shell=True, check=True)
        return out


def failing_tests(program):
    done = subprocess.run([program, "-m", "-tce=*200 résumés*,*grid*,hostile*"], capture_output=True,
                          text=True, check=False, cwd=ROOT)
    return set(re.findall(r"^TEST CASE: +(.*)$", done.stdout, re.M))


def main(rooms):
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        ablation, pages = Ablation(folder), material(folder)
        before = findings(BUILD / "bin/quoin", pages)
        failing = failing_tests(BUILD / "bin/quoin_tests")
        for room, _, file in (one.partition("/") for one in rooms):
            for source in sorted((ROOT / f"compiler/{room}/words").glob(f"{file or '*'}.txt")):
                for one in lists_of(source):
                    ablation.make_object(room, source, one)
                    changed = len(before ^ findings(ablation.link("quoin"), pages))
                    missed = [] if changed else \
                        sorted(failing_tests(ablation.link("quoin_tests")) - failing)
                    print(f"{room}/{source.name}: {one}: {changed} findings" +
                          (f", {len(missed)} tests: {missed[:2]}" if not changed else ""),
                          flush=True)


if __name__ == "__main__":
    main(sys.argv[1:] or ["advice"])
