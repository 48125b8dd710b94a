#!/usr/bin/env python3
"""Makes an adviser's folder of résumés, all invented, with its history in git.

    make_caseload.py FOLDER COUNT [--seed N] [--no-git]

COUNT résumés lie in FOLDER/COHORT/NAME.resume, a hundred a cohort; each has one to six drafts over
three terms, committed on the days they were written (the last on 2026-11-20), each mending some of
what was wrong in the one before. The same seed gives the same bytes and the same commits. Some are
at fault: a label that is none, an email that is missing, words misspelled; some are long ago.
"""
import argparse
import datetime
import pathlib
import random
import subprocess

FIRST = """Ottoline Maren Tobias Isolde Linnea Cormac Perpetua Anselm Oriel Bram Sunniva Eluned Casimir
Thandeka Yara Ruben Hester Ingrid Lucian Marisol Nerys Oskar Petra Quillan Rosalba Soren Tamsin Ulric
Verity Wendel Xanthe Yorick Zelda Amparo Benedikt Clemency Dunstan Elspeth Florian Griet""".split()
LAST = """Brandt Tolliver Averell Kestrel Maddern Fenwick Lindqvist Orozco Pellow Quennell Ravenscar
Sandoval Thistlewood Umber Vasquine Wexcombe Yarrow Zennor Ashgrove Birchall Corvane Dunmore Ellory
Farrant Gorse Hallam Ivens Jessop Kellaway Lorimer Mossman Nankivell Osgathorp Penhale""".split()
PLACE = ["Port Ellery, WA", "Anacortes, WA", "Astoria, OR", "Coos Bay, OR", "Neah Bay, WA"]
MAJOR = ["Marine Biology", "Accounting", "Nursing", "Computer Science", "Environmental Chemistry",
         "Global Studies", "Theatre Design", "Social Work", "Sport Science", "Geology"]
ROLE = ["Field Survey Intern", "Laboratory Assistant", "Shift Lead", "Peer Tutor", "Desk Assistant",
        "Data Entry Clerk", "Camp Counselor", "Kitchen Assistant", "Lifeguard", "Stage Manager"]
EMPLOYER = ["Salish Tidal Trust", "Ellery Harbor Clinic", "Skerry Market", "Cape Fennel Library",
            "Lantern Row Theatre", "Tern Island Oysters", "Port Ellery Food Shelf", "Gull Rock Camp"]
VERB = """Counted Trained Logged Built Drafted Sorted Repaired Scheduled Measured Taught Guided Mapped
Cleaned Tested Served Organized Recorded Prepared Planned Painted Edited Photographed""".split()
THING = ["eelgrass quadrats", "new volunteers", "water samples", "supply orders", "stage lamps",
         "intake forms", "bird counts", "tide charts", "café orders", "library returns",
         "invoices", "lab notebooks", "safety checks", "field trips", "set pieces", "ledger entries"]
WHERE = ["across 9 sites", "for a crew of 6", "in one season", "with a shared datasheet",
         "before each opening", "under a permit", "for two departments", "by hand and by scanner"]
RESULT = ["cut entry time *{n}%*", "saved {n} hours a term", "raised returns from {n} to {m}",
          "kept errors under {n} in 1,000", "served {m} visitors a week", "trained {n} others"]
WEAK = ["Responsible for", "Helped with", "Worked on", "Assisted with"]
SLIP = ["recieved", "seperate", "accomodate", "occured", "managment"]
SKILL = ["pH meter", "titration", "R", "Python", "spreadsheets", "GIS", "inventory", "Spanish menus",
         "lighting plots", "bookkeeping", "first aid", "data entry", "microscopy", "SQL", "welding"]
START = datetime.date(2025, 9, 8)
END = datetime.date(2026, 11, 20)


class Student:
    def __init__(self, number, chance):
        self.chance = chance
        self.first, self.last = chance.choice(FIRST), chance.choice(LAST)
        self.slug = f"{self.first}-{self.last}-{number:05}".lower()
        self.cohort = f"cohort-{number // 100:03}"
        self.major = chance.choice(MAJOR)
        self.roles = chance.sample(ROLE, chance.choice([2, 2, 3]))
        self.gpa = chance.uniform(2.4, 4.0)
        self.year = chance.choice([2026, 2027, 2028])
        self.skills = chance.sample(SKILL, 7)
        self.stage = chance.choices(["undergraduate", "recent graduate", "experienced"], [8, 2, 1])[0]
        self.bullets = [[self.bullet() for _ in range(chance.choice([2, 3, 3, 4, 6]))]
                        for _ in self.roles]
        self.faults = {fault for fault in ("email", "weak", "slip", "pronoun", "gpa", "order", "label")
                       if chance.random() < {"label": 0.03, "email": 0.1}.get(fault, 0.35)}
        self.drafts = sorted(START + datetime.timedelta(chance.randrange((END - START).days))
                             for _ in range(chance.choice([1, 2, 3, 3, 4, 6])))

    def bullet(self):
        chance = self.chance
        figure, more = chance.randrange(3, 40), chance.randrange(41, 400)
        result = chance.choice(RESULT).format(n=figure, m=more)
        return (f"{chance.choice(VERB)} {chance.randrange(2, 900)} {chance.choice(THING)} "
                f"{chance.choice(WHERE)} and {result}")

    def entry(self, i):
        year = 2025 - i
        yield f"role: {self.roles[i]}\nemployer: {EMPLOYER[(len(self.slug) + i) % len(EMPLOYER)]}\n"
        yield f"place: {PLACE[(len(self.slug) * 3 + i) % len(PLACE)]}\ndates: Jun {year} - Aug {year}\n"
        for j, bullet in enumerate(self.bullets[i]):
            if i == 0 and j == 1 and "weak" in self.faults:
                verb, rest = bullet.split(" ", 1)
                bullet = f"{WEAK[len(self.slug) % 4]} {rest}"
            if i == 1 and j == 0 and "pronoun" in self.faults:
                bullet = f"I {bullet[0].lower()}{bullet[1:]} with my team"
            if i == 0 and j == 0 and "slip" in self.faults:
                bullet += f" and {SLIP[len(self.slug) % 5]} thanks"
            yield f"- {bullet}\n"
        yield "\n"

    def text(self, date):
        """The résumé as its faults are now."""
        first, last = self.first, self.last
        address = "" if "email" in self.faults else f"email: {first}.{last}@ellerystate.example\n".lower()
        gpa = f"{self.gpa:.3f}" if "gpa" in self.faults else f"{self.gpa:.2f} / 4.00"
        order = range(len(self.roles)) if "order" not in self.faults else reversed(range(len(self.roles)))
        label = "rol: Aide\n" if "label" in self.faults else ""
        return (f"name: {first} {last}\naddress: {PLACE[len(self.slug) % 5]}\n"
                f"phone: (360) 555-01{len(self.slug) * 7 % 100:02}\n{address}stage: {self.stage}\n"
                f"updated: {date}\n\nsection: Education\n\nschool: Ellery State College\n"
                f"place: Port Ellery, WA\ndegree: Bachelor of Science in {self.major}\n"
                f"graduation: May {self.year}\ngpa: {gpa}\nhonors: Dean's List (2 terms)\n"
                f"courses: Applied Regression; Technical Writing; Field Methods\n\n"
                f"section: Experience\n\n{label}" + "".join("".join(self.entry(i)) for i in order) +
                f"section: Skills\n\nTechnical: {', '.join(self.skills)}\n")

    def write_drafts(self):
        """(date, path, text) of each draft; one more thing is mended in each."""
        for i, date in enumerate(self.drafts):
            yield date, f"{self.cohort}/{self.slug}.resume", self.text(date)
            if self.faults and i % 2 == 0:
                self.faults.discard(self.chance.choice(sorted(self.faults)))
            self.bullets[-1].append(self.bullet())


def fast_import(folder, drafts):
    """A commit a day, of all that was written on it."""
    days = {}
    for date, path, text in drafts:
        days.setdefault(date, {})[path] = text
    stream = []
    for date, files in sorted(days.items()):
        noon = int(datetime.datetime(date.year, date.month, date.day, 12,
                                     tzinfo=datetime.timezone.utc).timestamp())
        message = f"drafts of {date}"
        stream.append(f"commit refs/heads/main\ncommitter Adviser <adviser@ellerystate.example> {noon} "
                      f"+0000\ndata {len(message)}\n{message}\n")
        for path, text in sorted(files.items()):
            stream.append(f"M 644 inline {path}\ndata {len(text.encode())}\n{text}\n")
    quiet = {"cwd": folder, "check": True, "stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL}
    subprocess.run(["git", "init", "-q", "-b", "main"], **quiet)
    subprocess.run(["git", "fast-import", "--quiet"], input="".join(stream).encode(), **quiet)
    subprocess.run(["git", "reset", "-q", "--hard"], **quiet)


def main():
    options = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    options.add_argument("folder", type=pathlib.Path)
    options.add_argument("count", type=int)
    options.add_argument("--seed", type=int, default=1)
    options.add_argument("--no-git", action="store_true")
    given = options.parse_args()
    given.folder.mkdir(parents=True, exist_ok=True)
    drafts = [draft for number in range(given.count)
              for draft in Student(number, random.Random(f"{given.seed}/{number}")).write_drafts()]
    if not given.no_git:
        fast_import(given.folder, drafts)
        return
    for _, path, text in drafts:
        (given.folder / path).parent.mkdir(exist_ok=True)
        (given.folder / path).write_text(text, encoding="utf-8")


main()
