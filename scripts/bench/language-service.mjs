// YAML language server as a library: what an editor would underline, as lines, for each file. It has no command of its own.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";

const [schema, ...files] = process.argv.slice(2);
const load = createRequire(pathToFileURL(`${process.cwd()}/`));
const { getLanguageService } = load("yaml-language-server");
const { TextDocument } = load("vscode-languageserver-textdocument");
const nothing = () => undefined;
const service = getLanguageService({
  schemaRequestService: async (uri) => readFileSync(new URL(uri), "utf8"),
  workspaceContext: { resolveRelativePath: (path, base) => new URL(path, base).href },
  telemetry: { send: nothing, sendError: nothing, sendTrack: nothing },
  connection: { onRequest: nothing, sendNotification: nothing },
});
service.configure({
  validate: true,
  schemas: [{ uri: pathToFileURL(schema).href, fileMatch: ["*.yaml"] }],
});
for (const file of files) {
  const text = TextDocument.create(pathToFileURL(file).href, "yaml", 1, readFileSync(file, "utf8"));
  for (const { range, message } of await service.doValidation(text, false)) {
    const { line, character } = range.start;
    console.log(`${file}:${line + 1}:${character + 1} ${message}`);
    process.exitCode = 1;
  }
}
