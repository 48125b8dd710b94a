import sys, cairo
W, H = 612, 792
surf = cairo.PDFSurface(sys.argv[1], W, H)
c = cairo.Context(surf)
def font(size, bold=False, fam="Carlito"):
    c.select_font_face(fam, cairo.FONT_SLANT_NORMAL, cairo.FONT_WEIGHT_BOLD if bold else cairo.FONT_WEIGHT_NORMAL)
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
# left band, empty picture box
c.set_source_rgb(.88, .94, .95); c.rectangle(0, 0, 190, H); c.fill()
c.set_source_rgb(.55, .72, .76); c.rectangle(40, 40, 110, 120); c.fill()
c.set_source_rgb(0, 0, 0)
y = 190
def side(s):
    global y
    font(12, True); at(30, y, s); y += 17; font(10)
def sline(s):
    global y
    y = wrap(30, y, 145, s, 13)
side("Contact")
for s in ("360 555 0174", "yesenia.flood@example.com", "12 Dune Court, Saltmarsh Point, WA"): sline(s)
y += 12
side("Skills")
for s in ("Four-handed dentistry", "Digital x-rays", "Impressions", "Sterilization", "Insurance coding"): sline("• " + s)
y += 12
side("Languages")
for s in ("English", "Spanish"): sline("• " + s)
y += 12
side("Certificates")
sline("Radiation Safety, 2021"); sline("CPR, valid to 9/23")
# main column
X, R = 215, 570
font(26, True); at(X, 70, "YESENIA FLOOD")
font(13); c.set_source_rgb(.2, .45, .5); at(X, 90, "Dental Assistant"); c.set_source_rgb(0, 0, 0)
y = 125
def head(s):
    global y
    font(13, True); c.set_source_rgb(.2, .45, .5); at(X, y, s); c.set_source_rgb(0, 0, 0); y += 18
def job(title, org, dates):
    global y
    font(10.5, True); at(X, y, title); y += 13; font(10.5); at(X, y, org + "  |  " + dates); y += 14
def bullet(s):
    global y
    font(10.5); at(X + 4, y, "▪"); y = wrap(X + 16, y, R - X - 16, s, 13)
head("Profile")
font(10.5); y = wrap(X, y, R - X, "Registered dental assistant with two years of chairside work and a steady hand with nervous children. Bilingual.", 13) + 10
head("Experience")
job("Dental Assistant", "Bright Cove Family Dentistry, Tidewick", "07.2021 – present")
bullet("Assist two dentists with fillings, crowns and extractions, about eleven patients a day.")
bullet("Take and mount x-rays; retakes under 3%.")
bullet("Started a picture chart that lets small children point to what worries them.")
y += 6
job("Extern", "Port Ansel Dental Clinic", "03.2021 – 05.2021")
bullet("300 hours in operatory and sterilization.")
y += 6
job("Waitress", "Pier Five Chowder, Saltmarsh Point", "2017 – 2020")
bullet("Carried six plates and a smile; trained new hires.")
y += 12
head("Education")
job("Certificate, Dental Assisting", "Marrow Bay College", "2021")
job("Diploma", "Saltmarsh Point H.S.", "2017")
y += 8
head("Volunteer")
job("Free Smile Saturday helper", "Tidewick Free Clinic", "twice a year since 2020")
surf.finish()
