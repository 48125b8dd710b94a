#!/usr/bin/python3
"""`quoin scan` over whole files: quoin's own samples, and PDFs made here with one fault each.

The PDFs are written with pikepdf, which shares no code with quoin or poppler; each case says which
clause of ISO 32000-1 makes the fault, or that it is common practice among writers of such files.
"""

import json
import pathlib
import tempfile
import zlib

import pikepdf
from pikepdf import Array, Dictionary, Name, String

from common import QUOIN, SamplePdfs, Tally, quoin_set, require_quoin, run

HEAD = """BT /F1 20 Tf 72 740 Td (Ottoline Brandt) Tj ET
BT /F1 11 Tf 72 720 Td (ottoline.brandt@ellerystate.example  \\(360\\) 555-0142) Tj ET
BT /F1 13 Tf 72 690 Td (Education) Tj ET
BT /F1 11 Tf 72 674 Td (Ellery State College, Port Ellery, WA, May 2027 \\(expected\\)) Tj ET
BT /F1 13 Tf 72 650 Td (Experience) Tj ET
BT /F1 11 Tf 72 634 Td (Field Survey Intern, Salish Tidal Trust, Jun 2026 to Aug 2026) Tj ET
BT /F1 11 Tf 72 618 Td (\\225 Counted 212 quadrats at 9 sites) Tj ET
"""

# What every PDF below has, for a page that pikepdf writes has no tags.
ALWAYS = {"not-tagged"}


def text_at(x, y, text, size=11, before=""):
    return f"BT {before} /F1 {size} Tf {x} {y} Td ({text}) Tj ET\n"


def helvetica():
    return Dictionary(Type=Name.Font, Subtype=Name.Type1, BaseFont=Name.Helvetica,
                      Encoding=Name.WinAnsiEncoding)


def document(*contents, fonts=None, title="Ottoline Brandt", language="en-US"):
    pdf = pikepdf.new()
    for content in contents:
        page = pdf.add_blank_page(page_size=(612, 792))
        page.Contents = pdf.make_stream(content.encode("latin-1"))
        page.Resources = Dictionary(Font=Dictionary(F1=helvetica(), **(fonts or {})))
    if title:
        pdf.docinfo["/Title"] = title
    if language:
        pdf.Root.Lang = String(language)
    return pdf


def picture(pdf, width=1000, height=1300):
    """A page-wide picture in stripes, as a scanner gives it."""
    rows = b"".join((b"\x00" if y % 20 < 8 else b"\xff") * width for y in range(height))
    image = pikepdf.Stream(pdf, zlib.compress(rows))
    for key, value in {"/Type": Name.XObject, "/Subtype": Name.Image, "/Width": width,
                       "/Height": height, "/BitsPerComponent": 8, "/ColorSpace": Name.DeviceGray,
                       "/Filter": Name.FlateDecode}.items():
        image[key] = value
    pdf.pages[0].Resources.XObject = Dictionary(Im=pdf.make_indirect(image))
    return pdf


def image_only():
    return picture(document("q 612 0 0 792 0 0 cm /Im Do Q"))


def machine_read():
    # text rendering mode 3, ISO 32000-1, table 106
    hidden = HEAD.replace("BT", "BT 3 Tr")
    return picture(document("q 612 0 0 792 0 0 cm /Im Do Q\n" + hidden))


def without_unicode():
    """Identity codes and no ToUnicode: ISO 32000-1, section 9.10.2 has no way to Unicode."""
    descendant = Dictionary(Type=Name.Font, Subtype=Name.CIDFontType2, BaseFont=Name.Shore,
                            CIDSystemInfo=Dictionary(Registry=String("Adobe"),
                                                     Ordering=String("Identity"), Supplement=0),
                            FontDescriptor=Dictionary(Type=Name.FontDescriptor, FontName=Name.Shore,
                                                      Flags=4, FontBBox=Array([0, 0, 1000, 1000]),
                                                      ItalicAngle=0, Ascent=800, Descent=-200,
                                                      CapHeight=700, StemV=80))
    font = Dictionary(Type=Name.Font, Subtype=Name.Type0, BaseFont=Name.Shore,
                      Encoding=Name("/Identity-H"), DescendantFonts=Array([descendant]))
    return document(HEAD + "BT /F2 11 Tf 72 500 Td <002400250026> Tj ET", fonts={"F2": font})


def to_unicode(pairs):
    lines = "".join(f"<{code:02X}> <{text.encode('utf-16-be').hex()}>\n" for code, text in pairs)
    return ("/CIDInit /ProcSet findresource begin begincmap /CMapName /A def /CMapType 2 def\n"
            "1 begincodespacerange <00> <FF> endcodespacerange\n"
            f"{len(pairs)} beginbfchar\n{lines}endbfchar endcmap end").encode()


def mapped(shown, pairs):
    """A font whose ToUnicode maps single codes, ISO 32000-1, section 9.10.3."""
    pdf = document(HEAD)
    font = helvetica()
    font.ToUnicode = pdf.make_stream(to_unicode(pairs))
    pdf.pages[0].Resources.Font.F2 = font
    more = pdf.make_stream(f"BT /F2 11 Tf 72 500 Td ({shown}) Tj ET".encode())
    pdf.pages[0].Contents = Array([pdf.pages[0].Contents, more])
    return pdf


def ligatures():
    return mapped("oxce", [(ord("x"), "\uFB01"), (ord("o"), "o"), (ord("c"), "c"), (ord("e"), "e")])


def private_letters():
    return mapped("wxrd", [(ord("x"), "\uE021"), (ord("w"), "w"), (ord("r"), "r"), (ord("d"), "d")])


def replacements():
    return mapped("wxrd", [(ord("x"), "\uFFFD"), (ord("w"), "w"), (ord("r"), "r"), (ord("d"), "d")])


LEFT = ["Counted many quadrats each day", "Trained the four new volunteers", "Kept the field notebook dry",
        "Wrote the weekly site report", "Sorted samples by their depth"] * 2
RIGHT = ["Opened the library at seven", "Shelved every returned book twice", "Helped patrons find old maps",
         "Balanced the till each evening", "Mended torn pages by hand"] * 2


def columns(order):
    cells = {"left": [(72, 560 - 14 * i, t) for i, t in enumerate(LEFT)],
             "right": [(330, 560 - 14 * i, t) for i, t in enumerate(RIGHT)]}
    if order == "across":
        rows = [cell for pair in zip(cells["left"], cells["right"]) for cell in pair]
    else:
        rows = cells["left"] + cells["right"]
    return document(HEAD + "".join(text_at(*row) for row in rows))


def dates_at_the_right():
    rows = ""
    for i in range(10):
        rows += text_at(72, 560 - 14 * i, "Field Survey Intern, Salish Tidal Trust")
        rows += text_at(440, 560 - 14 * i, "Jun 2026 to Aug 2026")
    return document(HEAD + rows)


def page_header():
    """Contact details that each page repeats, and that no tag holds."""
    header = text_at(72, 765, "ottoline.brandt@ellerystate.example  \\(360\\) 555-0142", 9)
    body = without_contacts()
    return document(header + body, header + text_at(72, 600, "Counted 212 quadrats"))


def artifact_header():
    """ISO 32000-1, section 14.8.2.2: an artifact of pagination stands in no tag."""
    header = ("/Artifact <</Type/Pagination/Subtype/Header>> BDC\n"
              + text_at(72, 765, "ottoline.brandt@ellerystate.example  \\(360\\) 555-0142", 9) + "EMC\n")
    body = without_contacts()
    pdf = document(header + "/P <</MCID 0>> BDC\n" + body + "EMC")
    page = pdf.pages[0]
    page.StructParents = 0
    root = pdf.make_indirect(Dictionary(Type=Name.StructTreeRoot))
    top = pdf.make_indirect(Dictionary(Type=Name.StructElem, S=Name.Document, P=root))
    paragraph = pdf.make_indirect(Dictionary(Type=Name.StructElem, S=Name.P, P=top, Pg=page.obj, K=0))
    top.K, root.K = Array([paragraph]), Array([top])
    root.ParentTree = Dictionary(Nums=Array([0, Array([paragraph])]))
    pdf.Root.StructTreeRoot, pdf.Root.MarkInfo = root, Dictionary(Marked=True)
    return pdf


def attachment():
    pdf = document(HEAD)
    pdf.attachments["portfolio.txt"] = pikepdf.AttachedFileSpec(pdf, b"hello",
                                                                filename="portfolio.txt")
    return pdf


def script():
    pdf = document(HEAD)
    pdf.Root.OpenAction = Dictionary(S=Name.JavaScript, JS=String("app.alert(1)"))
    return pdf


def form():
    pdf = document(HEAD)
    pdf.Root.AcroForm = Dictionary(Fields=Array([pdf.make_indirect(Dictionary(
        FT=Name.Tx, T=String("phone"), Type=Name.Annot, Subtype=Name.Widget,
        Rect=Array([72, 400, 200, 420])))]))
    return pdf


def without_contacts():
    return "".join(line + "\n" for line in HEAD.splitlines() if "@" not in line)


def linked_address():
    body = without_contacts()
    pdf = document(body + text_at(72, 720, "Write to me \\(360\\) 555-0142"))
    pdf.pages[0].Annots = Array([pdf.make_indirect(Dictionary(
        Type=Name.Annot, Subtype=Name.Link, Rect=Array([70, 715, 200, 735]),
        A=Dictionary(S=Name.URI, URI=String("mailto:ottoline.brandt@ellerystate.example"))))])
    return pdf


# (name, maker, checks beside ALWAYS, how it is saved)
CASES = [
    ("nothing but untagged", lambda: document(HEAD), set(), {}),
    ("object streams", lambda: document(HEAD), set(),
     {"object_stream_mode": pikepdf.ObjectStreamMode.generate}),
    ("object streams, no language", lambda: document(HEAD, language=None), {"no-language"},
     {"object_stream_mode": pikepdf.ObjectStreamMode.generate}),
    ("no title", lambda: document(HEAD, title=None), {"no-title"}, {}),
    ("no language", lambda: document(HEAD, language=None), {"no-language"}, {}),
    ("image only", image_only, {"no-text"}, {}),
    ("machine-read scan", machine_read, {"machine-read-scan"}, {}),
    ("empty page", lambda: document(""), {"no-text"}, {}),
    ("font without Unicode", without_unicode, {"font-without-unicode"}, {}),
    ("ligatures", ligatures, {"ligatures"}, {}),
    ("private letters", private_letters, {"private-characters"}, {}),
    ("replacement characters", replacements, {"unreadable-characters"}, {}),
    ("tracked heading",  # Tc, ISO 32000-1, section 9.3.2
     lambda: document(HEAD + text_at(72, 500, "VOLUNTEERING", before="3 Tc")), {"split-words"}, {}),
    ("typed spaces", lambda: document(HEAD + text_at(72, 500, "S K I L L S")), {"split-words"}, {}),
    ("a list of letters", lambda: document(HEAD + text_at(72, 500, "Vitamins A B C D E")), set(), {}),
    ("no spaces", lambda: document(HEAD + text_at(72, 500, "ManagedTheFieldNotebookAndLogs")),
     {"glued-words"}, {}),
    ("columns read across", lambda: columns("across"), {"interleaved-columns"}, {}),
    ("columns read in turn", lambda: columns("in turn"), {"two-columns"}, {}),
    ("dates at the right", dates_at_the_right, {"dates-apart"}, {}),
    ("page header, repeated", page_header, {"contact-in-page-header"}, {}),
    ("page header, artifact", artifact_header, {"contact-in-page-header"}, {}),
    ("white text", lambda: document(HEAD + "1 g " + text_at(72, 500, "leadership teamwork python")),
     {"hidden-text"}, {}),
    ("white text on a dark field",
     lambda: document(HEAD + "0 0 .4 rg 60 480 300 50 re f 1 g " + text_at(72, 500, "leadership teamwork")),
     set(), {}),
    ("covered text",
     lambda: document(HEAD + text_at(72, 500, "leadership teamwork python", before="3 Tr")),
     {"hidden-text"}, {}),
    ("tiny text", lambda: document(HEAD + text_at(72, 500, "leadership teamwork python", 2)),
     {"tiny-text"}, {}),
    ("small text", lambda: document(HEAD + "".join(
        text_at(72, 580 - 9 * i, "Counted the quadrats and kept the notebook", 7) for i in range(4))),
     {"small-text"}, {}),
    ("three pages", lambda: document(HEAD, text_at(72, 400, "More"), text_at(72, 400, "And more")),
     {"pages"}, {}),
    ("attachment", attachment, {"attachments"}, {}),
    ("script", script, {"script"}, {}),
    ("form", form, {"form"}, {}),
    ("address only behind a link", linked_address, {"no-email"}, {}),
    ("encrypted, opens freely", lambda: document(HEAD), {"encrypted"},
     {"encryption": pikepdf.Encryption(owner="x", user="")}),
    ("copying forbidden", lambda: document(HEAD), {"copying-forbidden"},
     {"encryption": pikepdf.Encryption(owner="x", user="",
                                       allow=pikepdf.Permissions(extract=False))}),
]


def scan(*files):
    done = run([QUOIN, "scan", "--format", "json", *files])
    return done.returncode, json.loads(done.stdout), done.stderr.decode()


def check_cases(tally, folder):
    for number, (name, make, expected, save) in enumerate(CASES):
        path = folder / f"case-{number}.pdf"
        make().save(path, **save)
        code, report, messages = scan(path)
        [file] = report["files"]
        if not tally.check(file["readable"], f"{name} is read", messages):
            continue
        # what another poppler draws or leaves out may differ with its version
        found = {fault["check"] for fault in file["faults"]}
        wanted = expected | (ALWAYS - ({"not-tagged"} if "artifact" in name else set()))
        tally.check(found == wanted, f"{name}: checks", f"expected {sorted(wanted)}, got {sorted(found)}")
        heavy = any(fault["weight"] != "consider" for fault in file["faults"])
        tally.check(code == int(heavy), f"{name}: exit code", f"{code}")
        if name == "nothing but untagged":
            check_found(tally, file)


def check_found(tally, file):
    found = file["found"]
    tally.check(found["name"] == "Ottoline Brandt", "name", str(found["name"]))
    tally.check(found["emails"] == ["ottoline.brandt@ellerystate.example"], "email", str(found["emails"]))
    tally.check(found["phones"] == ["(360) 555-0142"], "phone", str(found["phones"]))
    tally.check([s["title"] for s in found["sections"]] == ["Education", "Experience"], "sections")
    entry = found["entries"][-1]
    tally.check((entry["title"], entry["edtf"], entry["bullets"])
                == ("Field Survey Intern, Salish Tidal Trust", "2026-06/2026-08", 1), "entry", str(entry))


def check_unreadable(tally, folder):
    locked = folder / "locked.pdf"
    document(HEAD).save(locked, encryption=pikepdf.Encryption(owner="x", user="y"))
    junk = folder / "junk.pdf"
    junk.write_bytes(b"%PDF-1.7\n" + bytes(range(256)) * 40)
    for path, part in ((locked, "password"), (junk, "damaged"), (folder, "folder"),
                       (folder / "none.pdf", "no such file")):
        code, report, messages = scan(path)
        [file] = report["files"]
        tally.check(code == 1 and not file["readable"] and part in file["error"],
                    f"unreadable: {part}", f"{code} {file}")
        tally.check(messages == f"{path}: error: {file['error']}\n", f"message: {part}", messages)
    # one that cannot be read does not stop the others
    good = folder / "case-0.pdf"
    code, report, _ = scan(locked, good)
    tally.check([f["readable"] for f in report["files"]] == [False, True], "the rest are read")


def check_samples(tally):
    for name, source, tags, pdf in SamplePdfs(tally):
        code, report, messages = scan(pdf)
        file = report["files"][0]
        faults = [f["check"] for f in file.get("faults", []) if f["weight"] != "consider"]
        tally.check(code == 0 and not faults, f"sample {name} has no faults", f"{faults} {messages}")
        found = file.get("found", {})
        tally.check(found.get("name") and found.get("emails") and found.get("phones"),
                    f"sample {name}: who it is from", str(found))
        verified = pdf.with_suffix(".verified.pdf")
        done = quoin_set(source, verified, tags, ["--verify"], text=True)
        tally.check(done.returncode == 0, f"sample {name} is verified", done.stderr)
        tally.check(verified.exists() and verified.read_bytes() == pdf.read_bytes(),
                    f"sample {name}: verifying changes nothing")


def main():
    require_quoin()
    tally = Tally()
    with tempfile.TemporaryDirectory(prefix="outside-") as name:
        folder = pathlib.Path(name)
        check_cases(tally, folder)
        check_unreadable(tally, folder)
    check_samples(tally)
    tally.finish()


if __name__ == "__main__":
    main()
