// The extension's TextMate grammar, run by the engine that editors run it with (vscode-textmate with
// vscode-oniguruma), against what the language server tells of the same file: labels, bullets, comments
// and tags are the same in every résumé of the samples and of the first drafts.
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { check, end, need, root } from "./common.mjs";
import { Editor } from "./editor.mjs";

const textmate = need("vscode-textmate"), oniguruma = need("vscode-oniguruma");
await oniguruma.loadWASM(readFileSync(need.resolve("vscode-oniguruma/release/onig.wasm")));
const path = join(root, "grammar/editors/vscode/syntaxes/resume.tmLanguage.json");
const registry = new textmate.Registry({
  onigLib: Promise.resolve({
    createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
    createOnigString: (text) => new oniguruma.OnigString(text),
  }),
  loadGrammar: async () => textmate.parseRawGrammar(readFileSync(path, "utf8"), path),
});
const grammar = await registry.loadGrammar("text.resume");

const kinds = [["comment", "comment."], ["label", "variable.other.property"],
  ["label", "keyword.control"], ["bullet", "punctuation.definition.list"]];

// "line:begin-end kind"; a label with its colon, and of tags the lines that have some
function byGrammar(lines) {
  const found = [];
  lines.forEach((line, number) => {
    for (const token of grammar.tokenizeLine(line, null).tokens) {
      const scopes = token.scopes.join(" ");
      const kind = kinds.find(([, scope]) => scopes.includes(scope))?.[0];
      if (kind) found.push(`${number}:${token.startIndex}-${token.endIndex} ${kind}`);
      if (scopes.includes("entity.name.tag")) found.push(`${number} tags`);
    }
  });
  return found;
}

function byServer(data, lines, types) {
  const found = [];
  let line = 0, character = 0;
  for (let at = 0; at < data.length; at += 5) {
    if (data[at] > 0) character = 0;
    line += data[at];
    character += data[at + 1];
    const last = character + data[at + 2], type = types[data[at + 3]];
    const text = lines[line].slice(character, last);
    if (type === "comment") found.push(`${line}:${character}-${last} comment`);
    else if (type === "keyword" && text.startsWith("-"))
      found.push(`${line}:${character}-${last} bullet`);
    else if (["keyword", "property"].includes(type))
      found.push(`${line}:${character}-${last + 1} label`);
    else if (type === "decorator" && !found.includes(`${line} tags`)) found.push(`${line} tags`);
  }
  return found;
}

const editor = new Editor();
const { capabilities } = await editor.start();
const types = capabilities.semanticTokensProvider.legend.tokenTypes;
for (const folder of ["samples", "samples/everything", "samples/shared"])
  for (const name of readdirSync(join(root, folder)).filter((one) => one.endsWith(".resume"))) {
    const uri = `file://${join(root, folder, name)}`;
    const text = readFileSync(join(root, folder, name), "utf8"), lines = text.split("\n");
    editor.open(uri, text);
    const { data } = await editor.request("textDocument/semanticTokens/full",
      { textDocument: { uri } });
    const theirs = byGrammar(lines).sort(), ours = byServer(data, lines, types).sort();
    const odd = [...theirs.filter((one) => !ours.includes(one)).map((one) => `grammar: ${one}`),
      ...ours.filter((one) => !theirs.includes(one)).map((one) => `server: ${one}`)];
    check(odd.length === 0, `${name}: ${odd.slice(0, 5).join("; ")}`);
    editor.tell("textDocument/didClose", { textDocument: { uri } });
  }
await editor.end();
end("highlighting");
