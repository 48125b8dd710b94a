import sys, cairo
W, H = 612, 792
surf = cairo.PDFSurface(sys.argv[1], W, H)
c = cairo.Context(surf)
def font(size, bold=False, fam="DejaVu Sans"):
    c.select_font_face(fam, cairo.FONT_SLANT_NORMAL, cairo.FONT_WEIGHT_BOLD if bold else cairo.FONT_WEIGHT_NORMAL)
    c.set_font_size(size)
def w(s): return sum(c.text_extents(k).x_advance for k in s)
def at(x, y, s):
    # every letter drawn singly
    for k in s:
        if k != " ":
            c.move_to(x, y); c.show_text(k)
        x += c.text_extents(k).x_advance
    return x
def right(x, y, s): at(x - w(s), y, s)
def wrap(x, y, width, s, lead):
    line = ""
    for q in s.split():
        t = (line + " " + q).strip()
        if w(t) > width:
            at(x, y, line); y += lead; line = q
        else: line = t
    at(x, y, line)
    return y + lead
L, R = 60, 552
font(20, True); at(L, 70, "Jun-ho Castellane")
font(9); right(R, 58, "junho.castellane@example.com"); right(R, 70, "360 555 0190"); right(R, 82, "code.example.org/junhoc")
y = 112
def head(s):
    global y
    c.set_source_rgb(.1, .35, .45); font(11, True); at(L, y, s); c.set_source_rgb(0, 0, 0); y += 16
def job(title, org, place, dates):
    global y
    font(9.5, True); x = at(L, y, title); font(9.5); at(x, y, ", " + org + (", " + place if place else "")); right(R, y, dates); y += 13
def bullet(s):
    global y
    font(9.5); at(L + 6, y, "–"); y = wrap(L + 18, y, R - L - 18, s, 12.5)
def text(s):
    global y
    font(9.5); y = wrap(L, y, R - L, s, 12.5)
head("Education")
job("AAS-T, Software Development", "Marrow Bay College", "Port Ansel, WA", "Sep 2020 – Jun 2022")
bullet("GPA 3.58. Courses: data structures, databases, networks, web programming, operating systems.")
y += 8
head("Projects")
job("Tide Board", "class project, CS 240", "", "Winter 2022")
bullet("Wrote a small web page that shows the next four tides and the ferry times for three docks; about 200 people used it each week.")
bullet("Stored readings in SQL and tested the parser with 90 unit tests.")
job("Locker Finder", "student government", "", "Spring 2021")
bullet("Replaced a paper list of 640 lockers with a searchable table; assignment time went from two days to an hour.")
y += 8
head("Work")
job("Help Desk Assistant", "Marrow Bay College Library", "Port Ansel, WA", "Jan 2021 – Jun 2022")
bullet("Answered 15 to 25 requests a shift about printing, passwords and wireless.")
bullet("Re-imaged 48 laptops over one summer and wrote the checklist for it.")
job("Dishwasher, then Line Cook", "Cormorant Hotel", "Gullhaven, WA", "2018 – 2020")
bullet("Worked the grill four nights a week in a 90-seat dining room.")
y += 8
head("Technical skills")
for s in ("Languages: Python, JavaScript, SQL, C++", "Systems: Linux, networking, version control", "Spoken: English, Korean, some French"):
    text(s)
y += 8
head("Activities")
job("Vice President", "Computing Club", "", "2021–22")
job("Second trumpet", "Port Ansel Town Band", "", "2017 – now")
surf.finish()
