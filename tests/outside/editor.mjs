// An editor as far as the language server sees one: Microsoft's own client library of the protocol,
// vscode-jsonrpc with vscode-languageserver-protocol, and quoin as its server.
import { spawn } from "node:child_process";
import { root, quoin, need } from "./common.mjs";
import { join } from "node:path";

const rpc = need("vscode-jsonrpc/node");
export const lsp = need("vscode-languageserver-protocol/node");

export class Editor {
  constructor(settings = {}) {
    this.process = spawn(quoin, ["language-server"], {
      stdio: ["pipe", "pipe", "inherit"],
      env: { ...process.env, SOURCE_DATE_EPOCH: "1793577600", ...settings.env },
    });
    this.ended = new Promise((done) => this.process.on("exit", done));
    this.connection = rpc.createMessageConnection(
      new rpc.StreamMessageReader(this.process.stdout),
      new rpc.StreamMessageWriter(this.process.stdin));
    this.published = new Map();
    this.waiting = [];
    this.logged = [];
    this.connection.onNotification("textDocument/publishDiagnostics", (params) => {
      this.published.set(params.uri, params);
      this.waiting = this.waiting.filter((one) => !one(params));
    });
    this.connection.onNotification("window/logMessage", (params) => this.logged.push(params));
    this.connection.onRequest("workspace/applyEdit", (params) => {
      this.applied = params.edit;
      return { applied: true };
    });
    this.connection.onUnhandledNotification(() => {});
    this.connection.listen();
  }

  async start(encodings = ["utf-16"], folder = root) {
    const answer = await this.request("initialize", {
      processId: process.pid,
      rootUri: `file://${folder}`,
      capabilities: {
        general: { positionEncodings: encodings },
        textDocument: { completion: { completionItem: { snippetSupport: true } } },
      },
    });
    await this.tell("initialized", {});
    return answer;
  }

  request(method, params) { return this.connection.sendRequest(method, params); }
  tell(method, params) { return this.connection.sendNotification(method, params); }

  // Resolves with the diagnostics of that version.
  diagnostics(uri, version) {
    const known = this.published.get(uri);
    if (known && (version === undefined || known.version >= version)) return Promise.resolve(known);
    return new Promise((done) => this.waiting.push((params) => {
      const is = params.uri === uri && (version === undefined || params.version >= version);
      if (is) done(params);
      return is;
    }));
  }

  open(uri, text, version = 1) {
    this.tell("textDocument/didOpen", { textDocument: { uri, languageId: "resume", version, text } });
    return this.diagnostics(uri, version);
  }
  change(uri, version, contentChanges) {
    this.tell("textDocument/didChange", { textDocument: { uri, version }, contentChanges });
    return this.diagnostics(uri, version);
  }

  // As one that crashes.
  hang_up() {
    this.connection.dispose();
    this.process.stdin.destroy();
    this.process.stdout.destroy();
    return this.ended;
  }

  async end() {
    await this.request("shutdown");
    await this.tell("exit");
    return this.ended;
  }
}

export const sample = (name) => join(root, "samples", name);
