import sys, cairo
W, H = 612, 792
surf = cairo.PDFSurface(sys.argv[1], W, H)
c = cairo.Context(surf)
def font(size, bold=False, italic=False, fam="Liberation Serif"):
    c.select_font_face(fam, cairo.FONT_SLANT_ITALIC if italic else cairo.FONT_SLANT_NORMAL,
                       cairo.FONT_WEIGHT_BOLD if bold else cairo.FONT_WEIGHT_NORMAL)
    c.set_font_size(size)
def w(s): return c.text_extents(s).x_advance
def at(x, y, s):
    c.move_to(x, y); c.show_text(s)
def right(x, y, s): at(x - w(s), y, s)
L, R = 66, 546
y = 66
font(16, True); at(L, y, "SORCHA DEVLIN-AKAI"); font(10.5); right(R, y, "360-555-0196")
y += 14; at(L, y, "77 Wharf Street, Port Ansel, WA 98399"); right(R, y, "sorcha.devlinakai@example.net")
c.set_line_width(1.5); c.move_to(L, y + 6); c.line_to(R, y + 6); c.stroke()
def head(s):
    global y
    y += 10; font(10.5, True); at(L, y, s); y += 15
def job(org, place, title, dates):
    global y
    font(10.5, True); at(L, y, org); font(10.5); right(R, y, place); y += 13
    font(10.5, italic=True); at(L, y, title); font(10.5); right(R, y, dates); y += 14
def lines(*a):
    """set line by line, broken by hand"""
    global y
    font(10.5); at(L + 10, y, "o")
    for s in a:
        at(L + 24, y, s); y += 12.5
def page(n):
    font(9); at(L, 764, "Devlin-Akai"); right(R, 764, "Page %d of 2" % n); font(10.5)
y += 16
head("EDUCATION")
job("MARROW BAY COLLEGE", "Port Ansel, WA", "Bachelor of Arts in Communication", "September 2018 – June 2022")
# 
lines("Concentration in Journalism; Editor’s Medal, 2022; coursework in media law, photo-", "graphy and data reporting")
head("NEWS EXPERIENCE")
job("THE ANSEL INLET BEACON", "Port Ansel, WA", "Reporter (part-time)", "March 2021 – Present")
# 
lines("Cover port commission, fisheries and schools for a twice-weekly paper of 4,100 sub-", "scribers")
# 
lines("Broke the story of unpaid moorage fees that led to an audit; three follow-up pieces", "were picked up across the county")
# 
lines("File from the field by phone, with photographs, within an hour of a meeting’s close")
y += 4
job("THE HERON (student newspaper)", "Marrow Bay College", "Editor-in-Chief", "2021–2022")
# 
lines("Led a staff of 24 and a budget of $31,000; moved from weekly print to daily online pub-", "lication with a monthly magazine")
# 
lines("Wrote the corrections policy")
y += 4
# 
font(10.5, italic=True); at(L, y, "News Editor"); font(10.5); right(R, y, "2019–2021"); y += 14
# 
lines("Assigned and edited 12 to 15 stories a week")
y += 4
job("RADIO GULLHAVEN", "Gullhaven, WA", "Summer Intern", "June–Aug. 2020")
# 
lines("Cut tape, read the marine forecast on air each morning at six")
head("OTHER EMPLOYMENT")
job("LANTERN STREET CAFÉ", "Tidewick, WA", "Barista", "2017–2019")
page(1)
surf.show_page()
y = 60
head("SELECTED CLIPS")
def clip(t, o, d):
    global y
    font(10.5); at(L, y, t); x = L + w(t); font(10.5, italic=True); at(x, y, o); x += w(o); font(10.5); at(x, y, d); y += 15
clip("“Who owes the port?” ", "The Ansel Inlet Beacon", ", 14 October 2021")
clip("“Last boat to Tern Island” ", "The Ansel Inlet Beacon", ", 2 May 2022")
clip("“The bus that never came” ", "The Heron", ", Winter 2020")
head("AWARDS")
clip("First place, student news writing, ", "Northern Inlets College Press", ", 2021")
clip("Second place, photo essay, ", "Northern Inlets College Press", ", 2022")
head("SKILLS")
font(10.5)
for k in (("Shorthand", "Photography", "Audio editing"), ("Public records requests", "Page design", "Irish (fair)")):
    for n, s in enumerate(k): at(L + 165 * n, y, s)
    y += 14
head("REFERENCES")
font(10.5); at(L, y, "Names and numbers gladly given on request.")
page(2)
surf.finish()
