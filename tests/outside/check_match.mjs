// What `quoin posting`, `quoin match` and `quoin redline` say for programs, against the schemas of grammar/schemas, by
// npm's ajv; and the page of `match --report` in headless Chromium, by npm's axe-core (rules of WCAG
// 2.1, A and AA, and best practice), light and dark, at a phone's and a desk's width, and on paper.
// Run as the other checks are; without Chromium the page is left out, which is said.
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { check, end, need, quoin, root } from "./common.mjs";

function run(...words) {
  return spawnSync(quoin, words, { encoding: "utf8" });
}

const Ajv = need("ajv/dist/2020").default;
function validator(name) {
  const file = join(root, "grammar", "schemas", `${name}.schema.json`);
  return new Ajv({ allErrors: true }).compile(JSON.parse(readFileSync(file, "utf8")));
}

const postings = join(root, "tests", "postings", "labelled", "tuning");
const names = readdirSync(postings).filter(name => !name.endsWith(".tsv")).sort();
const resumes = readdirSync(join(root, "samples")).filter(name => name.endsWith(".resume")).sort();
check(names.length >= 24 && resumes.length >= 8, "postings and samples are there");

const postingHolds = validator("posting"), matchHolds = validator("match");
names.forEach((name, i) => {
  const told = run("posting", "--format", "json", join(postings, name));
  check(told.status === 0 && postingHolds(JSON.parse(told.stdout)),
    `posting ${name}: ${told.stderr} ${JSON.stringify(postingHolds.errors)}`);
  const resume = join(root, "samples", resumes[i % resumes.length]);
  const matched = run("match", "--format", "json", resume, join(postings, name));
  check(matched.status === 0 && matchHolds(JSON.parse(matched.stdout)),
    `match ${name}: ${matched.stderr} ${JSON.stringify(matchHolds.errors)}`);
});
const unheld = JSON.parse(run("match", "--format", "json", join(root, "samples", resumes[0]),
  join(postings, names[0])).stdout);
unheld.terms[0].kind = "of another kind";
check(!matchHolds(unheld), "a kind that is none is found by the schema");

// Of every sample and of the one before it: drafts that have little in common.
const redlineHolds = validator("redline");
resumes.forEach((name, i) => {
  const older = resumes[(i + resumes.length - 1) % resumes.length];
  const told = run("redline", "--format", "json", join(root, "samples", older), join(root, "samples", name));
  check(told.status === 0 && redlineHolds(JSON.parse(told.stdout)) && JSON.parse(told.stdout).changes.length > 0,
    `redline ${name}: ${told.stderr} ${JSON.stringify(redlineHolds.errors)}`);
});

// What is no posting is refused in one line, and so is the wrong order; a posting may be a PDF.
function tryBadInput(folder) {
  const resume = join(root, "samples", "nursing.resume");
  const put = (name, text) => {
    writeFileSync(join(folder, name), text);
    return join(folder, name);
  };
  const french = "Nous cherchons une personne pour notre laboratoire. Vous aurez une formation en " +
    "chimie et de bonnes connaissances des outils informatiques. Le poste est ouvert pour deux ans " +
    "dans une petite équipe qui aime travailler au bord de la mer.";
  for (const [file, status, said] of [
    [put("empty.txt", ""), 1, "no word in it"],
    [put("one.txt", "Welder\n"), 1, "one word is too little"],
    [put("french.txt", french), 1, "not in English"],
    [put("large.html", "<p>Weld.</p>".repeat(400000)), 1, "1 MiB"],
    [put("hidden.html", "<script>" + "weld ".repeat(99) + "</script><p hidden>weld</p>"), 1,
      "no word in it"],
    [resume, 1, "a résumé's source, not a posting"],
    [join(folder, "none.txt"), 1, "no such file"],
  ]) {
    const told = run("match", resume, file);
    const lines = told.stderr.trim().split("\n");
    check(told.status === status && lines.length === 1 && told.stderr.includes(said) &&
      told.stdout === "", `${file}: ${told.status} ${told.stderr.slice(0, 300)}`);
  }
  const turned = run("match", join(folder, "french.txt"), resume);
  check(turned.status === 2 && turned.stderr.includes("comes first"), `turned: ${turned.stderr}`);
  const text = readFileSync(join(root, "samples", "postings", "nursing-aide.txt"), "utf8");
  const piped = spawnSync(quoin, ["match", resume, "-"], { encoding: "utf8", input: text });
  check(piped.status === 0 && piped.stdout.includes("gait belt"), `piped: ${piped.stderr}`);
  run("set", join(root, "samples", "marine-biology.resume"), "-o", join(folder, "page.pdf"));
  const pdf = run("posting", join(folder, "page.pdf"));
  check(pdf.status === 0 && pdf.stdout.includes("required"), `a PDF: ${pdf.stderr}`);
}

async function lookAtPage(folder) {
  const page = join(folder, "match.html");
  run("match", "--report", page, join(root, "samples", "marine-biology.resume"),
    join(postings, "marine-lab-technician.html"));
  const { chromium } = need("playwright-core");
  const browser = await chromium.launch({
    executablePath: "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking",
      "--disable-component-update", "--disable-sync"],
  });
  for (const colorScheme of ["light", "dark"])
    for (const width of [390, 1200]) {
      const tab = await browser.newPage({ colorScheme, viewport: { width, height: 900 } });
      await tab.goto(pathToFileURL(page).href);
      await tab.addScriptTag({ path: need.resolve("axe-core/axe.min.js") });
      const { violations } = await tab.evaluate(() => axe.run());
      check(violations.length === 0, `${colorScheme}, ${width} px: ` +
        violations.map(v => `${v.id}: ${v.help} (${v.nodes[0].html})`).join("; "));
      const wide = await tab.evaluate(() => document.documentElement.scrollWidth);
      check(wide <= width, `${colorScheme}: the page is ${wide} px wide at ${width}`);
      check(await tab.evaluate(() => document.scripts.length) <= 1, "no script but axe");
      await tab.close();
    }
  const tab = await browser.newPage();
  await tab.goto(pathToFileURL(page).href);
  const sheets = (await tab.pdf({ format: "Letter" })).toString("latin1").match(/\/Type\s*\/Page\b/g);
  check(sheets?.length === 1, `it prints on ${sheets?.length} sheets`);
  await browser.close();
}

const folder = mkdtempSync(join(tmpdir(), "quoin-match-"));
try {
  tryBadInput(folder);
  if (existsSync("/usr/bin/chromium")) await lookAtPage(folder);
  else console.log("chromium is not here: the page is not looked at");
} finally {
  rmSync(folder, { recursive: true, force: true });
}
end("check_match");
