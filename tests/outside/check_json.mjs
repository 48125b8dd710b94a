// What `quoin set`, `proof`, `glance`, `scan`, `themes` and `help` say for programs, against the schemas of
// grammar/schemas, by npm's ajv: of every sample, of what does not fit, of what is wrong; and each schema
// refuses what is altered. Those of posting, match and redline are in check_match.mjs.
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { check, end, need, quoin, root } from "./common.mjs";

const Ajv = need("ajv/dist/2020").default;
const folder = mkdtempSync(join(tmpdir(), "quoin-json-"));
const samples = readdirSync(join(root, "samples")).filter(name => name.endsWith(".resume")).sort();

function told(status, ...words) {
  const done = spawnSync(quoin, [...words, "--format", "json"], { encoding: "utf8" });
  const verb = words.includes("--summary") ? `${words[0]}-summary` : words[0];
  check(done.status === status, `${words.join(" ")}: ${done.status} ${done.stderr}`);
  const json = JSON.parse(done.stdout);
  const file = join(root, "grammar", "schemas", `${verb}.schema.json`);
  const holds = new Ajv({ allErrors: true, allowUnionTypes: true }).compile(JSON.parse(readFileSync(file, "utf8")));
  check(holds(json), `${words.join(" ")}: ${JSON.stringify(holds.errors)}`);
  check(!holds({ ...json, version: 0 }) && !holds({ ...json, more: 1 }), `${verb}: what is altered is refused`);
  return json;
}

function put(name, text) {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
}

// The first sample on one page is as the file says; asked for larger than fits, the cuts are told.
function checkSet() {
  const all = samples.map(name => join(root, "samples", name));
  const { files } = told(0, "set", ...all, "-o", folder, "--deps", folder);
  check(files.length === all.length, `${files.length} files of ${all.length}`);
  for (const [i, { file, fit, outputs, cuts }] of files.entries()) {
    check(file === all[i] && fit.pages <= fit.allowed && cuts === null, `${file}: ${JSON.stringify(fit)}`);
    check(outputs.plain === null && existsSync(outputs.pdf) && existsSync(outputs.deps), `${file}: its outputs`);
  }
  const nursing = readFileSync(join(root, "samples", "nursing.resume"), "utf8");
  const long = put("long.resume", `size: 11.5\nmargins: 0.8\n${nursing}`), wrong = put("wrong.resume", "nam: Juniper\n");
  const [tooLong] = told(3, "set", long).files;
  check(tooLong.status === "does not fit" && tooLong.cuts.lines > 0, JSON.stringify(tooLong));
  check(tooLong.cuts.words.length + tooLong.cuts.pieces.length > 0, "cuts are named");
  check(!existsSync(join(folder, "long.pdf")), "nothing is written of it");
  const [draft] = told(0, "set", long, "--draft").files;
  check(draft.status === "done" && draft.outputs.pdf !== null && draft.cuts.lines === tooLong.cuts.lines, "a draft");
  const [bad] = told(1, "set", wrong).files;
  check(bad.status === "errors" && bad.fit === null && bad.outputs.pdf === null, JSON.stringify(bad));
}

// Of samples, of first drafts with their slips, by an office's rules, and of what cannot be read.
function checkReports() {
  const drafts = join(root, "tests", "first_hour");
  const slips = readdirSync(drafts).filter(name => name.endsWith(".resume")).map(name => join(drafts, name));
  const all = samples.map(name => join(root, "samples", name));
  const wrong = put("wrong.resume", "nam: Juniper\n");
  const rules = join(root, "samples", "office", "office.rules");
  const { files } = told(1, "proof", ...all, ...slips, wrong, "--office", rules);
  check(files.length === all.length + slips.length + 1 && files.some(file => file.findings.length > 0) &&
    files.some(file => file.office !== undefined) && !files.at(-1).read, "every file is told of");
  const summary = told(1, "proof", "--summary", ...all, ...slips, wrong).files;
  check(summary.some(file => file.verdict === "ready") && summary.at(-1).verdict === "not ready", "verdicts");
  check(told(0, "glance", ...all).files.every(file => file.looks.length > 0), "something is seen");
  const pdfs = samples.map(name => join(folder, name.replace(".resume", ".pdf")));
  const scans = told(1, "scan", ...pdfs, put("torn.pdf", "%PDF-1.7 torn")).files;
  check(scans.filter(file => file.readable).length === pdfs.length, "every page is read, and what is none is not");
}

function checkHelp() {
  const { verbs, program } = told(0, "help");
  const version = spawnSync(quoin, ["--version"], { encoding: "utf8" }).stdout;
  check(version.startsWith(`quoin ${program}`), `${program} is the program's version`);
  for (const { name, options } of verbs) {
    const help = spawnSync(quoin, [name, "--help"], { encoding: "utf8" }).stdout;
    for (const option of options) check(help.includes(`--${option.name}`), `${name} --${option.name} is in its help`);
  }
}

try {
  checkSet();
  checkReports();
  checkHelp();
  const { themes } = told(0, "themes");
  const files = readdirSync(join(root, "themes")).filter(name => name.endsWith(".theme"));
  check(themes.map(theme => `${theme.name}.theme`).join() === files.sort().join(), "every theme is listed");
} finally {
  rmSync(folder, { recursive: true, force: true });
}
end("check_json");
