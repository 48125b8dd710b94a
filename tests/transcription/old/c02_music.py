import sys, cairo
W, H = 612, 792
surf = cairo.PDFSurface(sys.argv[1], W, H)
c = cairo.Context(surf)
def font(size, bold=False, italic=False, fam="Linux Libertine O"):
    c.select_font_face(fam, cairo.FONT_SLANT_ITALIC if italic else cairo.FONT_SLANT_NORMAL,
                       cairo.FONT_WEIGHT_BOLD if bold else cairo.FONT_WEIGHT_NORMAL)
    c.set_font_size(size)
def w(s): return c.text_extents(s).x_advance
def at(x, y, s):
    c.move_to(x, y); c.show_text(s)
def mid(y, s): at((W - w(s)) / 2, y, s)
def right(x, y, s): at(x - w(s), y, s)
def para(x, y, width, s, lead):
    """justified, each word placed by itself, hyphens at the marks"""
    lines, line = [], []
    for q in s.split():
        plain = q.replace("¬", "")
        if line and w(" ".join(line + [plain])) > width:
            k = q.split("¬")
            for n in range(len(k) - 1, 0, -1):
                first = "".join(k[:n]) + "-"
                if w(" ".join(line + [first])) <= width:
                    line.append(first); plain = "".join(k[n:]); break
            lines.append(line); line = []
        line.append(plain)
    for l in lines:
        gap = (width - sum(w(q) for q in l)) / max(1, len(l) - 1)
        xx = x
        for q in l:
            at(xx, y, q); xx += w(q) + gap
        y += lead
    xx = x
    for q in line:
        at(xx, y, q); xx += w(q) + w(" ")
    return y + lead
L, R, X = 80, 532, 200
font(22); mid(76, "Evander Quist-Moreau")
font(11, italic=True); mid(92, "Percussionist, arranger, teacher")
font(10.5); mid(108, "Net Loft No. 6, Gullhaven, WA  ·  (360) 555-0145  ·  evander.qm@example.org")
y = 138
def head(s):
    global y
    font(12, bold=True); at(L, y, s); y += 17
def row(dates, title, org):
    global y
    font(10.5); at(L, y, dates); font(10.5, italic=True); at(X, y, title); x = X + w(title); font(10.5); at(x, y, ", " + org); y += 14
def duty(s):
    global y
    font(10.5); y = para(X, y, R - X, s, 13.5) + 3
head("Biography")
font(10.5); y = para(L, y, R - L, "Evander grew up in a house with one drum and four broth¬ers. He has played in the pit of nine mu¬si¬cals, on two re¬cord¬ings of coastal songs and, for three sum¬mers, on the deck of an ex¬cur¬sion steam¬er. He seeks a post as ac¬com¬pa¬nist or teach¬ing artist.", 13.5) + 8
head("Engagements")
row("2020–", "Principal percussion", "Port Ansel Chamber Orchestra")
duty("Tim¬pani and mal¬lets in some twelve con¬certs a year; keep and re¬pair the or¬ches¬tra’s in¬stru¬ments and han¬dle their trans¬port to out-of-town dates.")
row("Summers 2017–19", "Deck band", "Steam Yacht Halcyon")
duty("Two sets a day, six days a week, played from mem¬ory.")
row("2016 to 2021", "Pit drummer", "Lantern Street Players")
y += 6
head("Teaching")
row("Sept. 2021–June 2022", "Drumline instructor", "Brannock High School")
duty("Re¬built a line of five into a line of six¬teen, wrote all its ca¬dences and took it to the re¬gional pa¬rade.")
row("since 2018", "Private lessons", "own studio")
duty("Ages seven and up, be¬gin¬ners wel¬come.")
y += 6
head("Education")
row("2022", "B.A. in Music", "Marrow Bay College")
row("2019", "Summer certificate in arranging", "Inlet Strings Camp")
y += 6
head("Recordings and arrangements")
row("2022", "“Hauling Songs”, drums and mallets", "Inlet Records")
row("2021", "“Three Shanties for Brass”, arranger", "Inlet Press")
y += 6
head("Also")
font(10.5)
for s in ("Instruments: drum set, timpani, marimba, concertina", "Other: music copying, live sound, truck driving"):
    at(L, y, s); y += 14
surf.finish()
