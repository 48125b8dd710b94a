import sys, cairo
W, H = 612, 792
surf = cairo.PDFSurface(sys.argv[1], W, H)
c = cairo.Context(surf)
FAM = "Liberation Sans"
page = 1
def font(size, bold=False, italic=False):
    c.select_font_face(FAM, cairo.FONT_SLANT_ITALIC if italic else cairo.FONT_SLANT_NORMAL, cairo.FONT_WEIGHT_BOLD if bold else cairo.FONT_WEIGHT_NORMAL)
    c.set_font_size(size)
def w(s): return c.text_extents(s).x_advance
def at(x, y, s):
    c.move_to(x, y); c.show_text(s)
def wrap(x, y, width, s, lead):
    line = ""
    for q in s.split():
        t = (line + " " + q).strip()
        if w(t) > width:
            at(x, y, line); y += lead; line = q
        else: line = t
    at(x, y, line)
    return y + lead
D, X, R = 54, 170, 555     # dates left, text right
def header():
    font(18, True); at(D, 62, "Bettina Ruel-Haskett")
    font(10); at(D, 78, "Berth 14, Gullhaven Marina, Gullhaven WA"); at(D, 91, "Cell (360) 555-0155"); at(X + 60, 91, "b.ruelhaskett@example.org")
header()
y = 122
def head(s):
    global y
    font(11, True); at(D, y, s); y += 17
def job(dates, title, org):
    global y
    font(10); at(D, y, dates); font(10, True); at(X, y, title); y += 13; font(10, italic=True); at(X, y, org); y += 14
def bullet(s):
    global y
    font(10); at(X, y, "*"); y = wrap(X + 12, y, R - X - 12, s, 13)
head("Professional Profile")
font(10); y = wrap(X, y, R - X, "Able seaman with six seasons on passenger ferries and a longliner, finishing a degree in marine transportation. Looking for a mate-in-training berth.", 13) + 8
head("Sea Service")
job("4/2020 – present", "Deckhand / Able Seaman", "Gullhaven Ferry Lines, M/V Petrel")
bullet("Handle lines and gangway for up to 14 landings a day, load and lash as many as 38 vehicles.")
bullet("Stand lookout and take the wheel under the mate's eye for about 300 logged hours.")
bullet("Lead the weekly fire and man-overboard drill for a crew of seven.")
y += 5
job("2018 and 2019 seasons", "Deckhand", "F/V Ada June, longline")
bullet("Baited, set and hauled gear, gaffed and dressed fish, iced the hold, cooked when it was my turn.")
y += 5
job("Summer 2017", "Dock Attendant", "Gullhaven Marina")
bullet("Fueled and tied up visiting boats; collected moorage.")
y += 8
head("Shore Employment")
job("Winters 2017–19", "Net Mender", "Ansel Twine & Web")
bullet("Hung and mended gillnet and seine web at piece rate.")
y += 8
head("Education")
job("2019 to date", "B.S. Marine Transportation (in progress)", "Marrow Bay College")
job("2017", "High School Diploma", "Gullhaven Secondary School")
y += 4
head("Documents")
for d, t in (("exp. 2/2025", "Merchant Mariner Credential, Able Seaman - Special"), ("exp. 2024", "Basic Training (firefighting, survival, first aid)"), ("2021", "Radar Observer, unlimited")):
    font(10); at(D, y, d); at(X, y, t); y += 14
font(8.5); at(D, 760, "B. Ruel-Haskett, page 1 of 2")
surf.show_page()
font(8.5); at(D, 40, "Bettina Ruel-Haskett"); at(R - w("page 2 of 2"), 40, "page 2 of 2")
y = 70
head("Skills")
font(10)
for k, (a, b) in enumerate((("Line handling", "Chart work"), ("Splicing and knots", "Small engines"), ("Crane and davit", "Galley cooking"))):
    at(X, y, a); at(X + 190, y, b); y += 14
y += 8
head("References")
font(10)
for s in ("Capt. Ewan Lisle, Gullhaven Ferry Lines, (360) 555-0156", "Prof. Nadia Thorne, Marrow Bay College, n.thorne@example.org"):
    at(X, y, s); y += 14
surf.finish()
