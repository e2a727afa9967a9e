/** A YAML language server, driven as an editor drives it. */
import { type ChildProcess, spawn } from "node:child_process";
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-jsonrpc/node.js";

const server = createRequire(import.meta.url).resolve("yaml-language-server/bin/yaml-language-server");

interface Position {
  readonly line: number;
  readonly character: number;
}

export interface Underlined {
  readonly message: string;
  readonly range: { readonly start: Position };
}

export interface Offered {
  readonly label: string;
  readonly insertText: string;
}

/** An editor with one folder open. */
export class Editor {
  readonly #connection: MessageConnection;
  readonly #server: ChildProcess;
  readonly #waiting = new Map<string, (found: readonly Underlined[]) => void>();
  #opened = 0;

  /** @param settings of the folder, by name such as `yaml.schemas` */
  static async start(folder: string, settings: Readonly<Record<string, unknown>> = {}): Promise<Editor> {
    const editor = new Editor(settings);
    const rootUri = pathToFileURL(folder).href;
    await editor.#connection.sendRequest("initialize", {
      processId: process.pid,
      rootUri,
      workspaceFolders: [{ uri: rootUri, name: "cases" }],
      capabilities: {
        textDocument: {
          publishDiagnostics: {},
          completion: { completionItem: { snippetSupport: true } },
          hover: {},
        },
        workspace: { configuration: true },
      },
    });
    await editor.#connection.sendNotification("initialized", {});
    await editor.#connection.sendNotification("workspace/didChangeConfiguration", { settings: {} });
    return editor;
  }

  private constructor(settings: Readonly<Record<string, unknown>>) {
    this.#server = spawn(process.execPath, [server, "--stdio"], { stdio: ["pipe", "pipe", "inherit"] });
    const { stdin, stdout } = this.#server;
    if (stdin === null || stdout === null) throw new Error("the language server has no streams");
    this.#connection = createMessageConnection(
      new StreamMessageReader(stdout),
      new StreamMessageWriter(stdin),
    );
    const yaml = {
      // Else it asks the network.
      schemaStore: { enable: false },
      validate: true,
      completion: true,
      hover: true,
      schemas: settings["yaml.schemas"] ?? {},
    };
    this.#connection.onRequest(
      "workspace/configuration",
      ({ items }: { items: readonly { readonly section: string }[] }) =>
        items.map(({ section }) => (section === "yaml" ? yaml : {})),
    );
    this.#connection.onRequest("client/registerCapability", () => null);
    this.#connection.onRequest("custom/schema/request", () => []);
    this.#connection.onNotification(
      "textDocument/publishDiagnostics",
      ({ uri, diagnostics }: { uri: string; diagnostics: readonly Underlined[] }) =>
        this.#waiting.get(uri)?.(diagnostics),
    );
    this.#connection.onNotification(() => {});
    this.#connection.listen();
  }

  /** Opens a text as a file, which need not be on the disk. @returns what is underlined */
  underlined(file: string, text: string): Promise<readonly Underlined[]> {
    const uri = pathToFileURL(file).href;
    const found = new Promise<readonly Underlined[]>((done) => this.#waiting.set(uri, done));
    void this.#connection.sendNotification("textDocument/didOpen", {
      textDocument: { uri, languageId: "yaml", version: ++this.#opened, text },
    });
    return found;
  }

  /** What is offered at a place of a file that is open. */
  async offered(file: string, position: Position): Promise<readonly Offered[]> {
    const { items } = await this.#ask<{ readonly items: readonly Offered[] }>("completion", file, position);
    return items;
  }

  /** What is shown of a place of a file that is open. */
  async shown(file: string, position: Position): Promise<string> {
    const hover = await this.#ask<{ readonly contents: { readonly value: string } } | null>(
      "hover",
      file,
      position,
    );
    return hover?.contents.value ?? "";
  }

  /** @returns the exit code of the server */
  async stop(): Promise<number | null> {
    const ended = new Promise<number | null>((done) => this.#server.once("exit", done));
    await this.#connection.sendRequest("shutdown");
    await this.#connection.sendNotification("exit");
    this.#connection.dispose();
    return ended;
  }

  #ask<Answer>(what: string, file: string, position: Position): Promise<Answer> {
    const textDocument = { uri: pathToFileURL(file).href };
    return this.#connection.sendRequest(`textDocument/${what}`, { textDocument, position });
  }
}
