#!/usr/bin/env python3
"""The kits of grammar/editors in the editors themselves, without a screen: Vim knows the file, colours
its lines, folds its sections and lists what `quoin proof` says at its lines; nano colours what it shows. Where
they are on the machine, Emacs does as much, with an index of sections and entries, and Emacs (by Eglot) and
Neovim start the language server and show what it finds; where they are not, that is said.
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

from common import PATIENCE, QUOIN, ROOT, Tally, has, require_quoin, run

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


# what Emacs calls what stands at those places
FACES = ["font-lock-comment-face", "font-lock-variable-name-face", "font-lock-keyword-face", "font-lock-constant-face",
         "link", "font-lock-keyword-face", "bold"]

EMACS = """(require 'quoin-resume-mode)
(require 'imenu)
(require 'json)
(find-file "{file}")
(font-lock-ensure)
(defun face-at (line column)
  (goto-char (point-min)) (forward-line (1- line))
  (let ((face (get-text-property (+ (point) column -1) 'face))) (format "%s" (if (consp face) (car face) face))))
(defun names-of (kind) (vconcat (mapcar #'car (cdr (assoc kind (imenu--make-index-alist t))))))
(defun until (holds) (let ((left 100)) (while (and (> left 0) (not (funcall holds))) (accept-process-output nil 0.1) (setq left (1- left)))))
(let* ((resume (current-buffer)) (mode major-mode)
       (faces (vconcat (mapcar (lambda (place) (apply #'face-at place)) '{places})))
       (log (let ((compilation-ask-about-save nil)) (compile compile-command)))
       (found nil) (told nil))
  (until (lambda () (not (get-buffer-process log))))
  (with-current-buffer log
    (compilation--ensure-parse (point-max))
    (goto-char (point-min))
    (let ((match nil))
      (while (setq match (text-property-search-forward 'compilation-message))
        (push (vector (compilation--loc->line (compilation--message->loc (prop-match-value match)))) found))))
  (with-current-buffer resume
    (when (require 'eglot nil t)
      (let ((inhibit-message t)) (apply #'eglot (eglot--guess-contact)))
      (until (lambda () (flymake-diagnostics)))
      (setq told (vconcat (mapcar #'flymake-diagnostic-text (flymake-diagnostics))))
      (eglot-shutdown (eglot-current-server)))
    (with-temp-file "{out}"
      (insert (json-encode `((mode . ,(symbol-name mode)) (faces . ,faces) (found . ,(vconcat found)) (told . ,(or told 'none))
        (sections . ,(with-current-buffer resume (names-of "Sections")))
        (entries . ,(with-current-buffer resume (names-of "Entries")))))))))
"""

NVIM = """set rtp^={kits}/vim
filetype plugin on
edit {file}
lua << SCRIPT
vim.wait(20000, function() return #vim.diagnostic.get(0) > 0 end, 50)
local told = {{}}
for _, one in ipairs(vim.diagnostic.get(0)) do table.insert(told, {{ one.lnum + 1, one.message }}) end
vim.fn.writefile({{ vim.fn.json_encode({{ type = vim.bo.filetype, told = told }}) }}, '{out}')
SCRIPT
qall!
"""


def environment():
    return {**os.environ, "PATH": f"{QUOIN.parent}:{os.environ['PATH']}"}


def check_emacs(folder, file, tally):
    if not has("emacs"):
        print("emacs is not here: its kit is not tried")
        return
    out, script = folder / "emacs.json", folder / "script.el"
    places = " ".join(f"({line} {column})" for line, column, _ in COLOURS)
    script.write_text(EMACS.format(file=file, places=f"({places})", out=out))
    packages = [word for path in pathlib.Path("/usr/share/emacs/site-lisp/elpa").glob("*") for word in ("-L", path)]
    done = run(["emacs", "-Q", "--batch", *packages, "-L", KITS / "emacs", "-l", script], env=environment(), text=True)
    if not tally.check(out.exists(), "Emacs goes to the end", done.stderr):
        return
    told = json.loads(out.read_text())
    tally.check(told["mode"] == "quoin-resume-mode", "Emacs knows the file", told["mode"])
    tally.check(told["faces"] == FACES, "Emacs's colours", told["faces"])
    tally.check(told["sections"] == ["Honors and Awards {lab}"], "Emacs's index of sections", told["sections"])
    tally.check(told["entries"] == ["award: The the Tide Prize <https://prize.example>"], "and of entries", told["entries"])
    tally.check(any(one[0] == 6 for one in told["found"]), "M-x compile lists findings at their lines", told["found"])
    if told["told"] == "none":
        print("eglot is not here: the language server is not tried in Emacs")
    else:
        tally.check(any("'The the'" in one or "twice" in one for one in told["told"]), "Eglot shows findings", told["told"])
    copy = folder / "quoin-resume-mode.el"
    copy.write_text((KITS / "emacs" / copy.name).read_text())
    done = run(["emacs", "-Q", "--batch", "--eval", "(setq byte-compile-error-on-warn t)", "-f", "batch-byte-compile", copy],
               text=True)
    tally.check(done.returncode == 0, "it compiles without a warning", done.stderr)


def check_neovim(folder, file, tally):
    if not has("nvim"):
        print("nvim is not here: the language server is not tried in Neovim")
        return
    out, script = folder / "nvim.json", folder / "nvim.vim"
    script.write_text(NVIM.format(kits=KITS, file=file, out=out))
    done = run(["nvim", "--headless", "-u", "NONE", "-i", "NONE", "-S", script], env=environment(), text=True)
    if not tally.check(out.exists(), "Neovim goes to the end", done.stderr):
        return
    told = json.loads(out.read_text())
    tally.check(told["type"] == "resume", "Neovim knows the file", told["type"])
    tally.check(any(line == 6 for line, _ in told["told"]), "Neovim shows findings", told["told"])


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
        check_emacs(folder, file, tally)
        check_neovim(folder, file, tally)
    tally.finish()


main()
