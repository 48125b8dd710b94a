// How long it takes from a keystroke to what is said of it: a résumé typed from nothing, character by
// character. `node tests/outside/bench_language_server.mjs [FILE] [TIMES]`
import { readFileSync } from "node:fs";
import { Editor, sample } from "./editor.mjs";

const text = readFileSync(process.argv[2] ?? sample("marine-biology.resume"), "utf8");
const times = Number(process.argv[3] ?? 1);
const started = performance.now();
const editor = new Editor();
await editor.start();
const uri = `file://${sample("typed.resume")}`;
await editor.open(uri, "");
console.log(`start to first diagnostics: ${(performance.now() - started).toFixed(1)} ms`);
const memory = () => Number(/VmRSS:\s+(\d+)/.exec(
  readFileSync(`/proc/${editor.process.pid}/status`, "utf8"))[1]);

// of the processors, which does not hang on what else the machine does
const busy = () => {
  const fields = readFileSync(`/proc/${editor.process.pid}/stat`, "utf8").split(") ")[1].split(" ");
  return (Number(fields[11]) + Number(fields[12])) * 10;
};

let version = 1;
const took = [], full = [], completion = [];
for (let time = 0; time < times; ++time) {
  let line = 0, character = 0, typed = 0;
  for (const sign of text) {
    const at = { line, character };
    const begun = performance.now();
    await editor.change(uri, ++version, [{ range: { start: at, end: at }, text: sign }]);
    const ms = performance.now() - begun;
    took.push(ms);
    if (++typed > 0.8 * text.length) full.push(ms);
    if (sign === "\n") { ++line; character = 0; } else { character += sign.length; }
    if (typed % 10 === 0 && process.env.COMPLETION) {
      const asked = performance.now();
      await editor.request("textDocument/completion",
        { textDocument: { uri }, position: { line, character } });
      completion.push(performance.now() - asked);
    }
  }
  console.log(`${version} edits, ${memory()} kB resident`);
  await editor.change(uri, ++version, [{ text: "" }]);
}
const tell = (what, list) => {
  if (list.length === 0) return;
  list.sort((a, b) => a - b);
  const at = (part) => list[Math.min(list.length - 1, Math.floor(part * list.length))].toFixed(1);
  console.log(`${what}: median ${at(0.5)} ms, 99th percentile ${at(0.99)} ms, worst ${at(1)} ms`);
};
console.log(`of the processors: ${(busy() / took.length).toFixed(2)} ms a keystroke`);
tell("all keystrokes", took);
tell("of a full page", full);
tell("completion", completion);
process.exitCode = await editor.end();
