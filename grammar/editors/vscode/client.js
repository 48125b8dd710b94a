// Starts `quoin language-server` and speaks with it.
const { LanguageClient } = require("vscode-languageclient/node");

let client;

exports.activate = () => {
  client = new LanguageClient("quoin", "quoin", { command: "quoin", args: ["language-server"] },
    { documentSelector: [{ language: "resume" }] });
  return client.start();
};
exports.deactivate = () => client?.stop();
