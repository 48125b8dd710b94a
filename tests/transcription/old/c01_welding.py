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
def mid(y, s): at((W - w(s)) / 2, y, s)
def right(x, y, s): at(x - w(s), y, s)
def para(x, y, width, s, lead):
    """justified, each word placed by itself"""
    words, line = s.split(), []
    lines = []
    for q in words:
        plain = q.replace("¬", "")
        if line and w(" ".join(line + [plain])) > width:
            if "¬" in q:                      # hyphenate where a mark allows it
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
L, R = 72, 540
font(18, True); mid(80, "KWAME L. STRANDBERG")
font(10.5); mid(96, "1210 Drift Road, Port Ansel, WA 98399"); mid(109, "(360) 555-0182   kstrandberg@example.com")
y = 140
def head(s):
    global y
    font(11, True); at(L, y, s); c.set_line_width(.7); c.move_to(L, y + 3); c.line_to(R, y + 3); c.stroke(); y += 18; font(10.5)
def job(org, title, dates):
    global y
    font(10.5, True); at(L, y, org); font(10.5); right(R, y, dates); y += 13
    font(10.5, italic=True); at(L, y, title); font(10.5); y += 14
def bullet(s):
    global y
    at(L + 8, y, "•"); y = para(L + 20, y, R - L - 20, s, 13)
head("OBJECTIVE")
y = para(L, y, R - L, "Welder with shop and shipyard time seeking steady work in struc¬tural or pipe welding. De¬pend¬able, sober, own hood and leathers, willing to travel and to work nights or weekends when the job needs it.", 13) + 8
head("EXPERIENCE")
job("Gullhaven Dry Dock Co.", "Apprentice Welder", "Oct. 2020 – Present")
bullet("Weld hull plate, brackets and rail in flat, ver¬ti¬cal and over¬head posi¬tions with stick and flux-core wire, and back-gouge and re-weld as the in¬spec¬tor marks.")
bullet("Read drawings and weld symbols; lay out, cut and fit parts from plate and angle, keep¬ing every meas¬ure¬ment to within a sixteenth of an inch.")
bullet("Stand fire watch and keep the hot-work log. No lost-time injuries in two years on the yard.")
y += 4
job("Kelder Mill Hardware", "Yard Hand and Forklift Operator", "2018 – 2020")
bullet("Loaded lumber and steel, cut pipe and rebar to order and kept the yard in order through two in¬ven¬tory counts.")
y += 4
job("Strandberg Fencing (family business)", "Helper", "Summers, 2015 to 2018")
bullet("Set posts, hung gates, and welded hinges and latches after my second summer.")
y += 8
head("EDUCATION AND CERTIFICATES")
job("Marrow Bay College", "Certificate of Proficiency, Welding Technology", "June 2020")
bullet("860 hours; second place, college skills contest, spring 2020")
y += 4
font(10.5); at(L, y, "Structural Welder Qualification, 3G and 4G"); right(R, y, "11/2020"); y += 14
at(L, y, "Forklift Operator Card"); right(R, y, "2019"); y += 22
head("SKILLS")
y = para(L, y, R - L, "Stick, MIG, TIG, flux-core, oxy-fuel and plasma cutting, blueprint reading, grinding, rigging, basic machining, overhead crane, aluminum sheet repair", 13) + 8
font(10.5, italic=True); mid(y + 10, "References furnished on request")
surf.finish()
