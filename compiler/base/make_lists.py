#!/usr/bin/python3
"""Writes a room's lists of words as C++, from the plain files of its folder words/.

usage: make_lists.py ROOM FOLDER HEADER OUTPUT

In a file, `[name]` opens a list of words parted by blanks, `[name: phrases]` one of phrases, one a
line. ` = ` parts what is said of all words of its line; what is said of a word twice is joined. With
`as written` words are looked up in small letters, and how they are written is said of them. With `in
order` a list keeps its order, and cannot be searched. `#` opens a comment.
"""

import itertools
import pathlib
import re
import sys

HEADER = """// Written by make_lists.py from {folder}.
#pragma once

#include "compiler/base/lists.hpp"

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace quoin::{room} {{

enum class List : std::uint8_t {{
{names}
}};
constexpr std::size_t list_count = {count};

Lines lines_of(List list);
std::string_view name_of(List list);

}}
"""

SOURCE = """// Written by make_lists.py from {folder}.
#include "compiler/{room}/lists.hpp"

namespace quoin::{room} {{
namespace {{

// One text and numbers into it: pointers would cost the loader a relocation each.
constexpr std::uint32_t begins[] = {{{begins}}};
constexpr std::uint32_t name_begins[] = {{{name_begins}}};
constexpr std::uint32_t slot_begins[] = {{{slot_begins}}};
constexpr std::uint32_t slots[] = {{{slots}}};
constexpr std::string_view all_names = "{all_names}";
constexpr std::string_view all_lines =
{lines};

std::string_view piece(std::string_view text, const std::uint32_t* at) {{
    return text.substr(at[0], at[1] - at[0]);
}}

}}

Lines lines_of(List list) {{
    const auto at = static_cast<std::size_t>(list);
    return {{piece(all_lines, begins + at),
            std::span(slots).subspan(slot_begins[at], slot_begins[at + 1] - slot_begins[at])}};
}}

std::string_view name_of(List list) {{
    return piece(all_names, name_begins + static_cast<std::size_t>(list));
}}

}}
"""


def entries(line, kind):
    words, _, said = (part.strip() for part in line.partition(" = "))
    for word in [words] if "phrases" in kind else words.split():
        yield (word.lower(), word) if "as written" in kind else (word, said)


def read(path, lists):
    """Adds the file's lists, by name: what is said of each word, in the order of the lines."""
    rows, kind = None, ""
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        where = f"{path}:{number}"
        line = line.partition("#")[0].strip()
        opening = re.fullmatch(r"\[([a-z_]+)(?:: ([a-z ]+))?\]", line)
        if opening:
            if opening[1] in lists:
                sys.exit(f"{where}: there is a list '{opening[1]}' already")
            kind, rows = lists.setdefault(opening[1], (opening[2] or "", {}))
        elif line and rows is None:
            sys.exit(f"{where}: expected '[name]' of a list before its words")
        elif line:
            for word, said in entries(line, kind):
                if word in rows and not said:
                    sys.exit(f"{where}: '{word}' is in the list already")
                rows[word] = " ".join(filter(None, [rows.get(word), said]))


def lines_of(kind, rows):
    order = rows if "in order" in kind else sorted(rows, key=str.encode)
    return "".join(word + ("\t" + rows[word] if rows[word] else "") + "\n" for word in order)


def put(path, text):
    """Leaves a file as it is that would not change, so that nothing is compiled again."""
    path.parent.mkdir(parents=True, exist_ok=True)
    if not path.exists() or path.read_text(encoding="utf-8") != text:
        path.write_text(text, encoding="utf-8")


def hash_of(word):
    """As base/lists.cpp has it: FNV-1a, of 32 bits."""
    number = 2166136261
    for byte in word.encode():
        number = (number ^ byte) * 16777619 % (1 << 32)
    return number


def slots_of(body):
    """Where each line begins, from 1, at its word's hash or the next slot that is free; at most half are taken."""
    lines = body.splitlines(keepends=True)
    slots = [0] * (1 << (2 * len(lines)).bit_length())
    begin = 1
    for line in lines:
        at = hash_of(re.split("[\t\n]", line)[0]) % len(slots)
        while slots[at]:
            at = (at + 1) % len(slots)
        slots[at] = begin
        begin += len(line.encode())
    return slots


def offsets(sizes):
    return ", ".join(map(str, itertools.accumulate(sizes, initial=0)))


def sizes(texts):
    return [len(text.encode()) for text in texts]


def write(room, folder, header, output):
    lists = {}
    for path in sorted(folder.glob("*.txt")):
        read(path, lists)
    bodies = [lines_of(*one) for one in lists.values()]
    quoted = ['    "' + body.replace('"', '\\"').replace("\t", "\\t").replace("\n", "\\n") + '"'
              for body in bodies]
    slots = [slots_of(body) for body in bodies]
    facts = {"room": room, "folder": f"compiler/{room}/words", "count": len(lists),
             "names": "\n".join(f"    {name}," for name in lists), "begins": offsets(sizes(bodies)),
             "slot_begins": offsets(map(len, slots)), "slots": ", ".join(map(str, sum(slots, []))),
             "name_begins": offsets(sizes(lists)), "all_names": "".join(lists), "lines": "\n".join(quoted)}
    put(header, HEADER.format(**facts))
    put(output, SOURCE.format(**facts))


if __name__ == "__main__":
    if len(sys.argv) != 5:
        sys.exit(__doc__)
    write(sys.argv[1], *map(pathlib.Path, sys.argv[2:]))
