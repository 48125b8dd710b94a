// Starts `quoin language-server` and speaks with it, for as long as a résumé is open.
const { window, workspace } = require("vscode");
const { LanguageClient } = require("vscode-languageclient/node");

let client;

const start = async () => {
  const program = workspace.getConfiguration("quoin").get("program") || "quoin";
  client = new LanguageClient("quoin", "quoin", { command: program, args: ["language-server"] },
    { documentSelector: [{ language: "resume" }], initializationFailedHandler: () => false });
  try {
    await client.start();
  } catch (fault) {
    client = undefined;
    window.showErrorMessage(`'${program}' cannot be started: ${fault.message} Install quoin, or write where it ` +
      "is into the setting 'quoin.program'.");
  }
};

const stop = async () => {
  await client?.stop();
  client = undefined;
};

exports.activate = async (context) => {
  context.subscriptions.push(workspace.onDidChangeConfiguration(async (change) => {
    if (!change.affectsConfiguration("quoin.program")) return;
    await stop();
    await start();
  }));
  await start();
};
exports.deactivate = stop;
