// What checks in JavaScript share: the program, the packages from npm, and the tally.
import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
export const quoin = process.env.QUOIN ?? join(root, "build", "bin", "quoin");
const modules = process.env.QUOIN_NODE_MODULES ?? join(root, "build", "node_modules");
export const need = createRequire(join(modules, "package.json"));
for (const needed of [quoin, join(modules, "axe-core"), join(modules, "ajv")])
  if (!existsSync(needed)) {
    console.error(`${needed} is missing; build quoin, or run tests/outside/run, which installs it`);
    process.exit(1);
  }

let passed = 0, failed = 0;

export function check(holds, complaint) {
  holds ? ++passed : ++failed;
  if (!holds) console.log("FAILED", complaint);
}

export function end(name) {
  console.log(`${name}: ${passed} passed, ${failed} failed`);
  process.exit(failed === 0 ? 0 : 1);
}
