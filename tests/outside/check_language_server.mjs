// The language server by an editor that quoin did not write: the client library of the Language Server
// Protocol 3.17, which also tells whether what came has the protocol's types. What is told of a résumé
// is what `quoin proof` finds in it.
import { spawnSync } from "node:child_process";
import { readFileSync, readdirSync, writeFileSync, mkdtempSync, rmSync, renameSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { check, end, quoin } from "./common.mjs";
import { Editor, lsp, sample } from "./editor.mjs";

const folder = mkdtempSync(join(tmpdir(), "quoin-editor-"));
const uriOf = (name) => `file://${join(folder, name)}`;
const environment = { ...process.env, SOURCE_DATE_EPOCH: "1793577600" };

// "4:12 doubled-word", with columns in characters from 1, by `quoin proof` and by the server
function proofOf(path) {
  const run = spawnSync(quoin, ["proof", "--format", "json", path],
    { env: environment, encoding: "utf8" });
  return JSON.parse(run.stdout).files[0].findings.filter((one) => one.place.file === path)
    .map((one) => `${one.place.line}:${one.place.column} ${one.check}`);
}

function told(diagnostics, text) {
  const lines = text.split("\n");
  return diagnostics.filter((one) => !["markup", "too-long"].includes(one.code)).map((one) => {
    const { line, character } = one.range.start;
    return `${line + 1}:${[...lines[line].slice(0, character)].length + 1} ${one.code}`;
  });
}

const editor = new Editor();
const answer = await editor.start();
check(answer.serverInfo.name === "quoin", "who it is");
check(answer.capabilities.positionEncoding === "utf-16", "positions in UTF-16");

// every sample: the same findings as proof, at the same places, in the protocol's types
for (const name of readdirSync(sample(".")).filter((one) => one.endsWith(".resume"))) {
  const text = readFileSync(sample(name), "utf8");
  const uri = `file://${sample(name)}`;
  const { diagnostics } = await editor.open(uri, text);
  for (const one of diagnostics)
    check(lsp.Diagnostic.is(one), `${name}: ${JSON.stringify(one)} is no Diagnostic`);
  const mine = told(diagnostics, text).join("\n"), wanted = proofOf(sample(name)).join("\n");
  check(mine === wanted, `${name}:\n${mine}\nis told, and proof finds\n${wanted}`);
  editor.tell("textDocument/didClose", { textDocument: { uri } });
}

// all that is asked of a document: every answer has the protocol's types, wherever it is asked
const isItem = ({ label, kind, textEdit, insertTextFormat, documentation }) => typeof label === "string" &&
  (kind === undefined || kind >= 1 && kind <= 25) && (textEdit === undefined || lsp.TextEdit.is(textEdit)) &&
  [undefined, 1, 2].includes(insertTextFormat) &&
  (["undefined", "string"].includes(typeof documentation) || lsp.MarkupContent.is(documentation));
const Completions = { is: ({ isIncomplete, items }) => typeof isIncomplete === "boolean" && items.every(isItem) };
const types = { Hover: lsp.Hover, Completions, Symbol: lsp.DocumentSymbol,
  Fold: lsp.FoldingRange, Selection: lsp.SelectionRange, Edit: lsp.TextEdit, Link: lsp.DocumentLink,
  Lens: lsp.CodeLens, Hint: lsp.InlayHint, Location: lsp.Location, Action: lsp.CodeAction,
  Tokens: lsp.SemanticTokens, Change: lsp.WorkspaceEdit };
const asked = [ // method, type of the answer or of its items, what goes with the document
  ["hover", "Hover", at => ({ position: at })], ["completion", "Completions", at => ({ position: at })],
  ["documentSymbol", "Symbol"], ["foldingRange", "Fold"], ["documentLink", "Link"], ["codeLens", "Lens"],
  ["selectionRange", "Selection", at => ({ positions: [at] })], ["semanticTokens/full", "Tokens"],
  ["formatting", "Edit", () => ({ options: { tabSize: 2, insertSpaces: true } })],
  ["onTypeFormatting", "Edit", at => ({ position: at, ch: "\n", options: { tabSize: 2, insertSpaces: true } })],
  ["inlayHint", "Hint", at => ({ range: { start: { line: 0, character: 0 }, end: at } })],
  ["definition", "Location", at => ({ position: at })],
  ["references", "Location", at => ({ position: at, context: { includeDeclaration: true } })],
  ["codeAction", "Action", at => ({ range: { start: at, end: at }, context: { diagnostics: [] } })],
  ["rename", "Change", at => ({ position: at, newName: "lab2" })]];

const places = [[0, 1], [1, 8], [3, 9], [3, 22], [5, 2], [5, 9], [6, 0], [6, 9], [7, 7], [9, 3], [99, 9]];
const told_of = "name: Ottoline Brandt\ntheme: turnstone\n\nsection: Experience {lab}\n\nrol: Intern\n" +
  "dates: Jun 2026 - present\n- Responsible for for 9 plots {lab}\n\tTabbed\n• foreign\n\n" +
  "section: Honors {!lab}\n\ninclude: part.resume\naward: Prize <https://prize.example>\n";
for (const [name, text] of [["types.resume", told_of], ["types.theme", "based-on: turnstone\nsizee: 11\nsize: 11\n"],
  ["office.rules", "office: Ellery State\nmust: no-such\ngpa-show: 3.2\n"]]) {
  const uri = uriOf(name);
  const { diagnostics } = await editor.open(uri, text);
  check(diagnostics.length > 0 && diagnostics.every(one => lsp.Diagnostic.is(one)), `${name}: diagnostics`);
  let answers = 0;
  for (const [method, type, more] of asked)
    for (const [line, character] of more ? places : [[0, 0]]) {
      const params = { textDocument: { uri }, ...more?.({ line, character }) };
      const answer = await editor.request(`textDocument/${method}`, params).catch(fault => {
        check(method === "rename" && fault.code === -32803 || fault.code === -32602, `${name} ${method}: ${fault.message}`);
        return null;
      });
      if (answer === null) continue;
      ++answers;
      for (const one of Array.isArray(answer) ? answer : [answer])
        check(types[type].is(one), `${name} ${method}: ${JSON.stringify(one)} is no ${type}`);
    }
  check(answers > (name === "types.resume" ? 60 : 5), `${name}: ${answers} answers`);
  editor.tell("textDocument/didClose", { textDocument: { uri } });
}

// the page for a posting is the one that `set --posting` makes
const everything = join(folder, "everything.resume"), posting = join(folder, "intern.txt");
writeFileSync(everything, readFileSync(sample("everything/marine-biology.resume")));
writeFileSync(posting, readFileSync(sample("postings/field-technician.txt")));
await editor.open(`file://${everything}`, readFileSync(everything, "utf8"));
const made = await editor.request("workspace/executeCommand", { command: "quoin.set",
  arguments: [{ uri: `file://${everything}`, posting: `file://${posting}` }] });
check(made.uri === uriOf("everything.for-intern.pdf"), `its name: ${made.uri}`);
spawnSync(quoin, ["set", everything, "--posting", posting, "-o", join(folder, "same.pdf")], { env: environment });
check(readFileSync(join(folder, "everything.for-intern.pdf")).equals(readFileSync(join(folder, "same.pdf"))),
  "the page for a posting, to the byte");
editor.tell("textDocument/didClose", { textDocument: { uri: `file://${everything}` } });

// a draft typed by edits is the same as one opened
const draft = uriOf("draft.resume");
await editor.open(draft, "name: Ottoline Brandt\n");
let state = await editor.change(draft, 2, [
  { range: { start: { line: 1, character: 0 }, end: { line: 1, character: 0 } }, text: "nam: 😀x\n" },
  { range: { start: { line: 1, character: 5 }, end: { line: 1, character: 7 } }, text: "" },
]);
check(state.version === 2, "the version is told");
check(state.diagnostics.some((one) => one.severity === 1 && one.range.start.line === 1),
  "a label that is unknown is an error");
state = await editor.change(draft, 3, [{ text: "name: Ottoline Brandt\n" }]);
check(!state.diagnostics.some((one) => one.severity === 1), "and gone when it is mended");

// what it takes in, changed on the disk by a rename, as editors save
writeFileSync(join(folder, "part.resume"), "section: Honors\n\naward: Best\n");
await editor.change(draft, 4, [{ text: "name: Ottoline Brandt\ninclude: part.resume\n" }]);
const before = editor.published.get(uriOf("part.resume"));
check(!before || !before.diagnostics.some((one) => one.severity === 1), "the part is sound");
writeFileSync(join(folder, "part.new"), "section: Honors\n\nawarrd: Best\n");
const after = new Promise((done) => editor.waiting.push((params) => {
  const is = params.uri === uriOf("part.resume") &&
    params.diagnostics.some((one) => one.severity === 1);
  if (is) done(params);
  return is;
}));
renameSync(join(folder, "part.new"), join(folder, "part.resume"));
check((await after).diagnostics[0].range.start.line === 2, "the part is read anew");

// bad input
await editor.change(draft, 5, [{
  range: { start: { line: 4e9, character: 4e9 }, end: { line: 0, character: 0 } }, text: "x" }]);
state = await editor.change(draft, 6, [{ text: "x".repeat(50 * 1024 * 1024) }]);
check(state.diagnostics.some((one) => one.message.includes("1 MiB")), "50 MB are refused");
state = await editor.change(draft, 7, [{ text: "include: draft.resume\n" }]);
check(state.diagnostics.some((one) => one.message.includes("draft.resume -> draft.resume")),
  "a circle is told");
await editor.request("textDocument/hover", { textDocument: { uri: "no uri" } })
  .then(() => check(false, "no URI"), (fault) => check(fault.code === -32602, "no URI is told"));
editor.tell("textDocument/didOpen",
  { textDocument: { uri: "file:///%zz", languageId: "x", version: 1, text: "" } });
state = await editor.change(draft, 8, [{ text: "name: Ottoline Brandt\n" }]);
check(state.version === 8, "and it lives");
check(editor.logged.some((one) => one.message.includes("%zz")), "a bad URI is logged");
check((await editor.end()) === 0, "shutdown and exit end it with 0");

// an editor that hangs up
const dead = new Editor();
await dead.start();
check((await dead.hang_up()) === 1, "an editor that hangs up ends it with 1");

rmSync(folder, { recursive: true });
end("language server");
