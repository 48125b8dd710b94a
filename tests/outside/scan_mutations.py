#!/usr/bin/python3
"""Damaged and hostile PDFs through `quoin scan`: none crashes it, hangs it, or costs much memory.

    tests/outside/scan_mutations.py [COUNT] [--seed N] [--only N --keep FILE]

Mutant N of a seed is always the same file; --only writes that one to FILE and scans it. COUNT is 300
unless given; 20000 takes an hour or so. Two run at a time.
"""

import argparse
import concurrent.futures
import io
import json
import os
import pathlib
import random
import re
import subprocess
import sys
import tempfile
import threading
import zlib

import pikepdf

import check_scan
from common import QUOIN, Tally, require_quoin

PATIENCE = 120  # seconds; the tools' own limits end them long before
MOST_MEMORY = 640  # MiB of any one process: the tools' 512 of address space, and quoin's own less

NUMBERS = [b"0", b"-1", b"1", b"65536", b"2147483647", b"-2147483648", b"4294967296",
           b"99999999999999999999", b"1e400", b"0.0000000001", b"."]
TOKENS = [b"<<", b">>", b"[", b"]", b"(", b")", b"<", b">", b"null", b"endobj", b"endstream", b"stream\n",
          b"/Length 99999999", b"/Filter/FlateDecode", b"/Filter/ASCIIHexDecode", b"/Filter/LZWDecode",
          b"/DecodeParms<</Predictor 15/Columns 2000000000>>", b"/Kids[1 0 R]", b"/Parent 1 0 R",
          b"1 0 R", b"9999999 0 R", b"BT", b"ET", b"Do", b"q ", b"Q ", b"1e9 Tc", b"0 0 0 0 0 0 Tm",
          b"trailer", b"startxref\n0", b"%%EOF", b"\x00", b"\xff\xfe", b"/ObjStm", b"/Lang", b"/EF<<"]


# --- seeds


def seeds():
    """Small PDFs of many kinds, each as it is saved and with its streams unpacked."""
    found = []
    for _, make, _, save in check_scan.CASES:
        plain = io.BytesIO()
        pdf = make()
        pdf.save(plain, **save)
        found.append(plain.getvalue())
        if not save:
            unpacked = io.BytesIO()
            pdf.save(unpacked, qdf=True, object_stream_mode=pikepdf.ObjectStreamMode.disable,
                     stream_decode_level=pikepdf.StreamDecodeLevel.all)
            if len(unpacked.getvalue()) < 200_000:
                found.append(unpacked.getvalue())
    return found


# --- mutations of bytes


def flip(data, rand, _):
    for _ in range(rand.choice((1, 4, 16, 64))):
        data[rand.randrange(len(data))] ^= 1 << rand.randrange(8)
    return data


def overwrite(data, rand, _):
    for _ in range(rand.choice((1, 4, 16))):
        at = rand.randrange(len(data))
        data[at: at + rand.randrange(1, 9)] = rand.randbytes(rand.randrange(9))
    return data


def truncate(data, rand, _):
    return data[: rand.randrange(9, len(data))]


def cut(data, rand, _):
    begin = rand.randrange(9, len(data))
    del data[begin: begin + rand.randrange(1, len(data))]
    return data


def splice(data, rand, others):
    other = rand.choice(others)
    return data[: rand.randrange(9, len(data))] + other[rand.randrange(len(other)):]


def number(data, rand, _):
    return replace(rb"-?\d+\.?\d*", NUMBERS, data, rand)


def token(data, rand, _):
    for _ in range(rand.choice((1, 2, 8))):
        at = rand.randrange(9, len(data) + 1)
        data[at:at] = b" " + rand.choice(TOKENS) + b" "
    return data


def reference(data, rand, _):
    targets = [b"%d 0 R" % n for n in range(12)]
    return replace(rb"\d+ 0 R", targets, data, rand)


def name(data, rand, _):
    names = list(set(re.findall(rb"/[A-Za-z0-9]+", bytes(data)))) or [b"/A"]
    return replace(rb"/[A-Za-z0-9]+", names, data, rand)


def replace(pattern, choices, data, rand):
    places = [match.span() for match in re.finditer(pattern, bytes(data))]
    chosen = sorted(rand.sample(places, min(len(places), rand.choice((1, 2, 5)))), reverse=True)
    for begin, end in chosen:
        data[begin:end] = rand.choice(choices)
    return data


BYTES = [flip, overwrite, truncate, cut, splice, number, token, reference, name]


# --- whole files made to hurt


def built(*objects, trailer=b"<</Root 1 0 R>>"):
    body = b"".join(b"%d 0 obj\n%s\nendobj\n" % (i, o) for i, o in enumerate(objects, 1))
    return b"%PDF-1.7\n" + body + b"trailer\n" + trailer + b"\n%%EOF\n"


def page_of(content, extra=b"", resources=b"/Font<</F1 5 0 R>>", more=()):
    stream = b"<</Length %d%s>>stream\n%s\nendstream" % (len(content), extra, content)
    return built(b"<</Type/Catalog/Pages 2 0 R>>", b"<</Type/Pages/Kids[3 0 R]/Count 1>>",
                 b"<</Type/Page/Parent 2 0 R/MediaBox[0 0 612 792]/Contents 4 0 R/Resources<<"
                 + resources + b">>>>", stream,
                 b"<</Type/Font/Subtype/Type1/BaseFont/Helvetica/Encoding/WinAnsiEncoding>>", *more)


def deep(rand):
    depth = rand.choice((500, 5000, 100_000))
    opening, closing = rand.choice(((b"[", b"]"), (b"<</A", b">>"), (b"(", b")")))
    return built(b"<</Type/Catalog/Pages 2 0 R/X " + opening * depth + closing * depth + b">>",
                 b"<</Type/Pages/Kids[]/Count 0>>")


def loop_of_pages(rand):
    return built(b"<</Type/Catalog/Pages 2 0 R>>",
                 b"<</Type/Pages/Kids[2 0 R 3 0 R]/Count %s>>" % rand.choice(NUMBERS),
                 b"<</Type/Pages/Parent 2 0 R/Kids[2 0 R]/Count 5>>")


def many_pages(rand):
    count = rand.choice((50, 5000))
    return built(b"<</Type/Catalog/Pages 2 0 R>>",
                 b"<</Type/Pages/Kids[" + b"3 0 R " * count + b"]/Count %d>>" % count,
                 b"<</Type/Page/Parent 2 0 R/MediaBox[0 0 612 792]>>")


def packed_bomb(rand):
    size = rand.choice((1 << 20, 50 << 20, 200 << 20))
    packer = zlib.compressobj(9)
    block = rand.choice((b"\0", b" ", b"(a) Tj ", b"q ")) * (1 << 14)
    packed = b"".join(packer.compress(block) for _ in range(size // len(block))) + packer.flush()
    for _ in range(rand.randrange(2)):
        packed = zlib.compress(packed, 9)
        return page_of(packed, b"/Filter[/FlateDecode/FlateDecode]")
    return page_of(packed, b"/Filter/FlateDecode")


def doubling_forms(rand):
    """Each form draws the next twice: 2 to the power of the depth."""
    depth = rand.choice((8, 20, 40))
    forms = []
    for i in range(depth):
        inner = b"/X Do /X Do" if i + 1 < depth else b"BT /F1 9 Tf (a) Tj ET"
        forms.append(b"<</Type/XObject/Subtype/Form/BBox[0 0 9 9]/Resources<</Font<</F1 5 0 R>>/XObject<</X "
                     b"%d 0 R>>>>/Length %d>>stream\n%s\nendstream" % (7 + i, len(inner), inner))
    return page_of(b"/X Do", resources=b"/Font<</F1 5 0 R>>/XObject<</X 6 0 R>>", more=forms)


def many_words(rand):
    count = rand.choice((5_000, 100_000, 1_000_000))
    words = b"".join(b"1 0 0 1 %d %d Tm (w%d) Tj " % (i * 7 % 600, i * 13 % 780, i) for i in range(count))
    return page_of(zlib.compress(b"BT /F1 9 Tf " + words + b"ET"), b"/Filter/FlateDecode")


def one_long_word(rand):
    return page_of(b"BT /F1 1 Tf 0.0001 Tz 9 9 Td (" + rand.choice((b"a", b"@", b"1", b"A b ", b"\\225 "))
                   * 200_000 + b") Tj ET")


def huge_page(rand):
    box = b" ".join(rand.choice(NUMBERS) for _ in range(4))
    return page_of(b"1 g BT /F1 20 Tf 9 9 Td (white upon white to be drawn) Tj ET").replace(
        b"0 0 612 792", box)


def many_object_streams(rand):
    one = b"/Type/ObjStm stream\n" + zlib.compress(b"\0" * (1 << 22), 9) + b"\n"
    return page_of(b"") + one * rand.choice((10, 500))


def spoofed_title(rand):
    title = rand.choice((b"</title></head><doc><page width='1' height='1'>", b"\x1b[2J\x07", b"a\nEncrypted: yes",
                         b"Pages: -5", b"%s%n" * 50, b"\xfe\xff" + b"\xd8\x00" * 50))
    return built(b"<</Type/Catalog/Pages 2 0 R>>", b"<</Type/Pages/Kids[]/Count 0>>",
                 b"<</Title<%s>>>" % title.hex().encode(), trailer=b"<</Root 1 0 R/Info 3 0 R>>")


def evil_characters(rand):
    """A font whose codes stand for markup, controls, half characters."""
    values = [b"003C", b"003E", b"0026", b"000A", b"000C", b"0000", b"001B", b"D800", b"FFFE", b"202E",
              b"003C002F0077006F00720064003E", b"0022", b"FB01", b"E000", b"DBC0DC01"]
    lines = b"\n".join(b"<%02X> <%s>" % (65 + i, rand.choice(values)) for i in range(26))
    cmap = (b"begincmap 1 begincodespacerange <00> <FF> endcodespacerange 26 beginbfchar\n" + lines
            + b"\nendbfchar endcmap")
    return page_of(b"BT /F1 11 Tf 72 700 Td (ABCDEFGH IJKLMNOP QRSTUVWXYZ) Tj ET",
                   more=[b"<</Length %d>>stream\n%s\nendstream" % (len(cmap), cmap)]).replace(
        b"/Encoding/WinAnsiEncoding", b"/Encoding/WinAnsiEncoding/ToUnicode 6 0 R")


def not_a_pdf(rand):
    return rand.choice((b"", b"%PDF-", b"PK\x03\x04", b"%PDF-1.7" + rand.randbytes(5000),
                        rand.randbytes(3000), b"%PDF-1.7\n" + b"1 0 obj " * 10_000))


WHOLE = [deep, loop_of_pages, many_pages, packed_bomb, doubling_forms, many_words, one_long_word, huge_page,
         many_object_streams, spoofed_title, evil_characters, not_a_pdf]


def mutant(seed, index, originals):
    rand = random.Random(f"{seed}/{index}")
    if index % 20 == 0:
        # each in turn, so that a short run has every kind
        return WHOLE[index // 20 % len(WHOLE)](rand)
    data = bytearray(rand.choice(originals))
    for _ in range(rand.choice((1, 1, 2, 4))):
        if len(data) > 20:
            data = rand.choice(BYTES)(data, rand, originals)
    return bytes(data)


# --- running


def scan(path):
    """What is wrong with how quoin took it; empty if nothing."""
    command = [QUOIN, "scan", "--format", "json", path]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
        timer = threading.Timer(PATIENCE, process.kill)
        timer.start()
        errors = []
        reader = threading.Thread(target=lambda: errors.append(process.stderr.read()))
        reader.start()
        output = process.stdout.read()
        reader.join()
        _, status, usage = os.wait4(process.pid, 0)
        process.returncode = os.waitstatus_to_exitcode(status)
        hung = timer.finished.is_set()
        timer.cancel()
    memory = usage.ru_maxrss // 1024
    if hung:
        return f"no end after {PATIENCE} s"
    if process.returncode not in (0, 1):
        return f"exit code {process.returncode}: {errors[0][-500:]}"
    if memory > MOST_MEMORY:
        return f"{memory} MiB"
    if b"internal error" in errors[0]:
        return str(errors[0])
    try:
        json.loads(output)
    except ValueError as fault:
        return f"not JSON: {fault}"
    return ""


def try_one(folder, seed, index, originals):
    path = folder / f"{index}.pdf"
    path.write_bytes(mutant(seed, index, originals))
    fault = scan(path)
    path.unlink()
    return index, fault


def main():
    arguments = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    arguments.add_argument("count", nargs="?", type=int, default=300)
    arguments.add_argument("--seed", type=int, default=1)
    arguments.add_argument("--only", type=int)
    arguments.add_argument("--keep", type=pathlib.Path)
    chosen = arguments.parse_args()
    require_quoin()
    sys.stdout.reconfigure(line_buffering=True)  # a long run is watched
    originals = seeds()
    tally = Tally()
    if chosen.only is not None:
        path = chosen.keep or pathlib.Path(tempfile.gettempdir(), "mutant.pdf")
        path.write_bytes(mutant(chosen.seed, chosen.only, originals))
        fault = scan(path)
        tally.check(not fault, f"mutant {chosen.only} of seed {chosen.seed}, {path}", fault)
        tally.finish()
    with tempfile.TemporaryDirectory(prefix="outside-") as name, \
            concurrent.futures.ThreadPoolExecutor(2) as hands:
        folder = pathlib.Path(name)
        for index, fault in hands.map(lambda i: try_one(folder, chosen.seed, i, originals),
                                      range(chosen.count)):
            tally.check(not fault, f"mutant {index} of seed {chosen.seed}", fault)
            if (index + 1) % 1000 == 0:
                print(f"{index + 1} of {chosen.count} scanned", file=sys.stderr)
    tally.finish()


if __name__ == "__main__":
    main()
