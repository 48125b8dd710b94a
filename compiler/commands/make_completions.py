#!/usr/bin/env python3
"""Makes the completions of shells: make_completions.py QUOIN FOLDER

QUOIN is the program: its table of verbs and options, its themes and its checks are asked of it. What bash,
zsh and fish read goes below FOLDER, where each looks for it below a `share`. Nothing that a résumé holds is
ever run: its tags and entries are read by sed, and quoted for the line they are put into.
"""
import json
import pathlib
import re
import subprocess
import sys

# What follows an option, or stands as an operand, where the table does not list the words.
BY_OPTION = {"theme": "themes .theme", "specimen": "themes .theme", "check": "checks", "for": "tags", "entry": "entries",
             "plain": ".txt", "deps": ".d", "report": ".html", "marked": ".pdf", "office": ".rules", "as": ".resume",
             "from": ".pdf .docx .odt .txt"}
OF_VERB = {("set", "output"): ".pdf", ("themes", "output"): ".pdf", ("begin", "output"): ".resume",
           ("tailor", "output"): ".resume", ("scan", "FILE"): ".pdf"}
BY_WORD = {"FILE": ".resume", "DRAFT": ".resume", "POSTING": ".txt .html .pdf", "DIR": "folders", "NAME": "checks",
           "TOPIC": "topics"}

# Lines of a résumé to its tags and to what its entries are called: sed and no reading of the whole, for
# a draft that is half written has them too.
TAGS = r"""sed -n -E -e '/^[[:space:]]*#/d' -e 's/^[Ff][Oo][Rr][[:space:]]*:[[:space:]]*(.*)$/\1/p' \
        -e 's/^.*[^\][{]([^{}]*)[}][[:space:]]*$/\1/p' -- FILES 2>/dev/null |
        tr -s ' ' '\n' | sed -E -e 's/^!//' -e '/^keep$/d' -e '/^[[:alnum:]_-]+$/!d' | sort -u"""
ENTRIES = r"""sed -n -E -e '/^(role|employer|school|project|activity|award|credential|publication|title)[[:space:]]*:/!d' \
        -e 's/^[^:]*:[[:space:]]*//' -e 's/[[:space:]]*[{][^{}]*[}][[:space:]]*$//' -e p -- FILES 2>/dev/null"""


def asked(program, *words):
    return subprocess.run([program, *words], check=True, capture_output=True, text=True).stdout


class Table:
    def __init__(self, program):
        told = json.loads(asked(program, "help", "--format", "json"))
        self.verbs = told["verbs"]
        self.lists = {"themes": [line.split()[0] for line in asked(program, "themes").splitlines()],
                      "checks": re.findall(r"^  ([a-z-]+) ", asked(program, "checks"), re.M),
                      "topics": [verb["name"] for verb in self.verbs] + told["references"]}

    def after(self, verb, option):
        """(words, kinds) that may follow an option: words themselves, and suffixes or names of lists."""
        # begin's own words stand in its notes: `Stages: undergraduate, ...`
        noted = re.search(rf"^{option['argument'].capitalize()}s: (.*?)\.$", verb["notes"], re.M)
        if option["words"] or noted:
            return option["words"] or noted[1].split(", "), []
        kinds = OF_VERB.get((verb["name"], option["name"])) or BY_OPTION.get(option["name"]) \
            or BY_WORD.get(option["argument"], "")
        return self.spread(kinds.split())

    def operands(self, verb):
        names = re.findall(r"\w+", verb["operands"])
        kinds = [kind for name in names for kind in (OF_VERB.get((verb["name"], name)) or BY_WORD.get(name, "")).split()]
        return self.spread(kinds)

    def spread(self, kinds):
        return [word for kind in kinds for word in self.lists.get(kind, [])], [kind for kind in kinds if kind not in self.lists]


def quoted(text):
    return "'" + text.replace("'", "'\\''") + "'"


# --- bash

BASH = r"""# Completion of quoin's command line for bash.
_quoin_offer() { # the lines of standard input that begin as the word does, as they are to be typed
    local line
    while IFS= read -r line; do
        [[ $line == "${cur//\\/}"* ]] || continue
        printf -v line %q "$line"
        COMPREPLY+=("$line")
    done
}
_quoin_files() { # folders, and files with one of these suffixes
    local suffix found
    compopt -o filenames
    while IFS= read -r found; do COMPREPLY+=("$found"); done < <(
        compgen -d -- "$cur"
        for suffix in "$@"; do compgen -f -X "!*$suffix" -- "$cur"; done)
}
_quoin_resumes() { # those that stand on the line
    local word
    resumes=()
    for word in "${COMP_WORDS[@]}"; do
        word=${word//\\/}
        [[ $word == *.resume ]] && resumes+=("${word/#\~\//$HOME/}")
    done
}
_quoin_tags() {
    local resumes
    _quoin_resumes
    ((${#resumes[@]})) && _quoin_offer < <(
        TAGS)
}
_quoin_entries() {
    local resumes
    _quoin_resumes
    ((${#resumes[@]})) && _quoin_offer < <(
        ENTRIES)
}
_quoin() {
    local cur=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} verb='' at
    COMPREPLY=()
    if [[ $before == '=' ]]; then before=${COMP_WORDS[COMP_CWORD - 2]}; fi
    if [[ $cur == '=' ]]; then cur=''; fi
    for ((at = 1; at < COMP_CWORD; at++)); do
        if [[ ${COMP_WORDS[at]} != -* ]]; then verb=${COMP_WORDS[at]} && break; fi
    done
    case $verb:$before in
VALUES    esac
    case $verb:$cur in
WORDS    esac
}
complete -F _quoin quoin
"""


def bash_offer(words, kinds):
    done = [f"_quoin_offer < <(printf '%s\\n' {' '.join(map(quoted, words))})"] if words else []
    suffixes = [kind for kind in kinds if kind.startswith(".")]
    if suffixes or "folders" in kinds:
        done.append(" ".join(["_quoin_files", *suffixes]))
    return done + [f"_quoin_{kind}" for kind in kinds if kind in ("tags", "entries")]


def bash_case(pattern, done):
    return "".join([f"    {pattern})\n", *(f"        {line}\n" for line in done), "        ;;\n"])


def bash(table):
    values, words = "", ""
    for verb in table.verbs:
        name = verb["name"]
        for option in verb["options"]:
            if option["argument"]:
                patterns = [f"{name}:{form}" for form in (option["letter"], "--" + option["name"]) if form]
                values += bash_case(" | ".join(patterns), [*bash_offer(*table.after(verb, option)), "return"])
        options = ["--" + option["name"] for option in verb["options"]] + ["--help"]
        words += bash_case(f"{name}:-*", bash_offer(options, []))
        words += bash_case(f"{name}:*", bash_offer(*table.operands(verb)) or [":"])
    verbs = [verb["name"] for verb in table.verbs] + ["--help", "--version"]
    words += bash_case(":*", bash_offer(verbs, []))
    files = '"${resumes[@]}"'
    return BASH.replace("TAGS)", TAGS.replace("FILES", files) + ")").replace(
        "ENTRIES)", ENTRIES.replace("FILES", files) + ")").replace("VALUES", values).replace("WORDS    ", words + "    ")


# --- zsh

ZSH = r"""#compdef quoin
# Completion of quoin's command line for zsh.
_quoin_from() { # the lines that a command makes of the résumés that stand on the line
    local -a resumes found
    local word
    for word in ${(Q)words}; do
        [[ $word == *.resume ]] && resumes+=("${word/#\~\//$HOME/}")
    done
    (( $#resumes )) || return 1
    found=(${(f)"$($1 $resumes)"})
    compadd -a found
}
_quoin_tags_in() {
    TAGS
}
_quoin_entries_in() {
    ENTRIES
}
_quoin_either() { # one of these words, or a file: the last two of what it is given
    compadd -- ${=@[-2]}
    _files -g "$@[-1]"
}
_quoin_tags() { _quoin_from _quoin_tags_in }
_quoin_entries() { _quoin_from _quoin_entries_in }
_quoin() {
    local curcontext=$curcontext state line ret=1
    local -a verbs
    verbs=(
VERBS    )
    _arguments -C '(-h --help)'{-h,--help}'[print help and exit]' \
        '(-V --version)'{-V,--version}'[print the version and exit]' \
        '1:verb:->verb' '*::rest:->rest' && ret=0
    case $state in
    verb) _describe -t verbs verb verbs && ret=0 ;;
    rest)
        case $words[1] in
RESTS        esac
        ;;
    esac
    return ret
}
_quoin "$@"
"""


def zsh_text(text):
    return re.sub(r"([\\:\[\]])", r"\\\1", text)


def zsh_files(suffixes):
    # one alternative in parentheses would be a qualifier
    return f'"*{suffixes[0]}"' if len(suffixes) == 1 else f'"*({"|".join(suffixes)})"'


def zsh_action(words, kinds):
    suffixes = [kind for kind in kinds if kind.startswith(".")]
    listed = " ".join(re.sub(r"([ :])", r"\\\1", word) for word in words)
    if words and suffixes:
        return f'_quoin_either "{listed}" {zsh_files(suffixes)}'
    if words:
        return f"({listed})"
    if suffixes:
        return f"_files -g {zsh_files(suffixes)}"
    if "folders" in kinds:
        return "_files -/"
    return next((f"_quoin_{kind}" for kind in kinds), " ")


def zsh(table):
    verbs = "".join(f"        {quoted(verb['name'] + ':' + zsh_text(verb['does']))}\n" for verb in table.verbs)
    rests = ""
    for verb in table.verbs:
        specs = []
        for option in verb["options"]:
            tail = f"[{zsh_text(option['does'])}]"
            value = ""
            if option["argument"]:
                value = f":{option['argument']}:{zsh_action(*table.after(verb, option))}"
            for form in (option["letter"], "--" + option["name"]):
                if form:
                    specs.append(quoted(f"*{form}" + ("=" if value and form.startswith("--") else "") + tail + value))
        specs.append(quoted("(-h --help)") + "{-h,--help}" + quoted("[print help and exit]"))
        if verb["operands"]:
            specs.append(quoted(f"*:{verb['operands'].split()[0].strip('[].')}:{zsh_action(*table.operands(verb))}"))
        rests += f"        {verb['name']})\n            _arguments -s \\\n" + " \\\n".join(
            f"                {spec}" for spec in specs) + " && ret=0\n            ;;\n"
    return ZSH.replace("TAGS\n", TAGS.replace("FILES", '"$@"') + "\n").replace(
        "ENTRIES\n", ENTRIES.replace("FILES", '"$@"') + "\n").replace("VERBS    ", verbs + "    ").replace("RESTS        ", rests + "        ")


# --- fish

FISH = r"""# Completion of quoin's command line for fish.
function __quoin_verb # is it the verb of the line?
    set -l words (commandline -opc)
    test (count $words) -ge 2; and test $words[2] = $argv[1]
end
function __quoin_no_verb
    test (count (commandline -opc)) -eq 1
end
function __quoin_files # folders, and files with one of these suffixes
    set -l begun (commandline -ct | string replace -r -- '^--[a-z-]+=' '' | string unescape | string replace -r -- '^~/' "$HOME/")
    for file in $begun*
        if test -d $file
            echo $file/
        else
            for suffix in $argv
                string match -q -- "*$suffix" $file; and echo $file
            end
        end
    end
end
function __quoin_resumes # those that stand on the line
    string match -- '*.resume' (commandline -op | string unescape) | string replace -r -- '^~/' "$HOME/"
end
function __quoin_tags
    set -l resumes (__quoin_resumes)
    test -n "$resumes"; and TAGS
end
function __quoin_entries
    set -l resumes (__quoin_resumes)
    test -n "$resumes"; and ENTRIES
end
complete -c quoin -f
complete -c quoin -n __quoin_no_verb -s h -l help -d 'print help and exit'
complete -c quoin -n __quoin_no_verb -s V -l version -d 'print the version and exit'
"""


def fish_quoted(text):
    return "'" + text.replace("\\", "\\\\").replace("'", "\\'") + "'"


def fish_offer(words, kinds):
    suffixes = [kind for kind in kinds if kind.startswith(".")]
    offers = [word.replace(" ", "\\ ") for word in words] + [f"(__quoin_{kind})" for kind in kinds if kind in ("tags", "entries")]
    if suffixes or "folders" in kinds:
        offers.append(f"({' '.join(['__quoin_files', *suffixes])})")
    return f" -a {fish_quoted(' '.join(offers))}" if offers else ""


def fish(table):
    resumes = "$resumes"
    text = FISH.replace("TAGS\n", TAGS.replace("FILES", resumes) + "\n").replace("ENTRIES\n", ENTRIES.replace("FILES", resumes) + "\n")
    for verb in table.verbs:
        name = verb["name"]
        text += f"complete -c quoin -n __quoin_no_verb -a {name} -d {fish_quoted(verb['does'])}\n"
        when = f"complete -c quoin -n '__quoin_verb {name}'"
        if offer := fish_offer(*table.operands(verb)):
            text += when + offer + "\n"
        for option in verb["options"]:
            letter = f" -s {option['letter'][1:]}" if option["letter"] else ""
            value = " -x" + fish_offer(*table.after(verb, option)) if option["argument"] else ""
            text += f"{when}{letter} -l {option['name']}{value} -d {fish_quoted(option['does'])}\n"
        text += f"{when} -s h -l help -d 'print help and exit'\n"
    return text


def write(target, text):
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_text(text, encoding="utf-8")


def main():
    program, folder = sys.argv[1], pathlib.Path(sys.argv[2])
    table = Table(program)
    write(folder / "bash-completion" / "completions" / "quoin", bash(table))
    write(folder / "zsh" / "site-functions" / "_quoin", zsh(table))
    # where Debian's zsh looks below /usr
    other = folder / "zsh" / "vendor-completions" / "_quoin"
    other.parent.mkdir(parents=True, exist_ok=True)
    other.unlink(missing_ok=True)
    other.symlink_to("../site-functions/_quoin")
    write(folder / "fish" / "vendor_completions.d" / "quoin.fish", fish(table))


if __name__ == "__main__":
    main()
