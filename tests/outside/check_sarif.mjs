// SARIF from `quoin proof`, validated against the published schema of SARIF 2.1.0 (OASIS), as npm's
// @microsoft/jest-sarif carries it, by the validator that comes with it. Run as the other checks are;
// node_modules is in build/, or in the folder that QUOIN_NODE_MODULES names.
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const quoin = process.env.QUOIN ?? join(root, "build", "bin", "quoin");
const modules = process.env.QUOIN_NODE_MODULES ?? join(root, "build", "node_modules");
const sarif = join(modules, "@microsoft", "jest-sarif");
for (const needed of [quoin, sarif])
  if (!existsSync(needed)) {
    console.error(`${needed} is missing; build quoin, or run tests/outside/run, which installs it`);
    process.exit(1);
  }

const Ajv = createRequire(join(sarif, "package.json"))("ajv");
const schema = JSON.parse(
  readFileSync(join(sarif, "lib", "schemas", "sarif-2.1.0-rtm.5.json"), "utf8"));
const validator = new Ajv({ schemaId: "auto", allErrors: true });
try {
  validator.addMetaSchema(
    createRequire(join(sarif, "package.json"))("ajv/lib/refs/json-schema-draft-04.json"));
} catch (fault) { /* it knows that one already */ }
const validate = validator.compile(schema);

let passed = 0, failed = 0;
function check(holds, complaint) {
  holds ? ++passed : ++failed;
  if (!holds) console.log("FAILED", complaint);
}

function proof(...files) {
  const done = spawnSync(quoin, ["proof", "--format", "sarif", ...files],
    { encoding: "utf8", env: { ...process.env, SOURCE_DATE_EPOCH: "1795000000" } });
  check(done.status === 0 || done.status === 1, `${files}: exit status ${done.status}`);
  return JSON.parse(done.stdout);
}

function conforms(log, what) {
  check(validate(log), `${what}: ${JSON.stringify(validate.errors?.slice(0, 3))}`);
}

const folder = mkdtempSync(join(tmpdir(), "quoin-sarif-"));
try {
  const samples = readdirSync(join(root, "samples")).filter((name) => name.endsWith(".resume"))
    .map((name) => join(root, "samples", name));
  conforms(proof(...samples), "all samples");

  // a tab, é, a character beyond 16 bits and a wide one before the place; a file name to be encoded;
  // something set aside; something that can be mended
  const line = "- Mapped\té 𐐀 界  34 acres";
  const odd = join(folder, "a draft, é.resume");
  writeFileSync(odd, "name: Ottoline Brandt\naccept: voicemail (checked)\nphone: (360) 555-0142\n" +
    `\nsection: Experience\n\nrole: Field Intern\n${line}\n`);
  const log = proof(odd);
  conforms(log, "an odd file");
  const spacing = log.runs[0].results.find((result) => result.ruleId === "spacing");
  const region = spacing.locations[0].physicalLocation.region;
  // columns are of Unicode characters, as columnKind says: a second way of counting them
  const before = [...line.slice(0, line.indexOf("  34"))].length;
  check(log.runs[0].columnKind === "unicodeCodePoints", "columnKind");
  check(region.startColumn === before + 1, `column ${region.startColumn}, not ${before + 1}`);
  check(log.runs[0].results.some((result) => result.suppressions?.length === 1), "suppression");

  const wrong = join(folder, "wrong.resume");
  writeFileSync(wrong, "name: A\nfone: 1\n");
  conforms(proof(wrong, join(folder, "none.resume")), "files with errors");

  // the validator must be able to fail
  const broken = structuredClone(log);
  broken.runs[0].results[0].level = "must";
  check(!validate(broken), "a level that is none was let through");
} finally {
  rmSync(folder, { recursive: true });
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
