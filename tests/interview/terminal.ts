/** A terminal of 80 columns in which the built program runs: waits for what is seen, then types; counts every key. */
import { join } from "node:path";
import pty from "@lydell/node-pty";
import xterm from "@xterm/headless";
import { root } from "../end-to-end/run.ts";

const patience = 30_000;

export class Terminal {
  /** Keys that were pressed. */
  keys = 0;
  /** All that was written, without what moves the cursor or colours. */
  said = "";
  raw = "";
  readonly exit: Promise<number>;
  readonly #process: pty.IPty;
  readonly #screen = new xterm.Terminal({ cols: 80, rows: 24, allowProposedApi: true, scrollback: 5000 });
  #changed: () => void = () => undefined;
  /** Where in `said` the last key was pressed. */
  #from = 0;

  /** @param program what runs in it in place of the built program */
  constructor(
    args: readonly string[],
    cwd: string,
    env: Readonly<Record<string, string>> = {},
    program?: string,
  ) {
    const { FORCE_COLOR: _colour, CI: _ci, COLUMNS: _width, ...plain } = process.env;
    const [run, ...behind] =
      program === undefined ? [process.execPath, join(root, "bin/carcase.js"), ...args] : [program, ...args];
    this.#process = pty.spawn(run, behind, {
      name: env.TERM ?? "xterm",
      cols: 80,
      rows: 24,
      cwd,
      env: { ...plain, NO_COLOR: "1", TERM: "xterm", ...env },
    });
    this.#process.onData((data) => {
      this.raw += data;
      this.said += data.replaceAll(/\u001b\[[\d;?]*[A-Za-z]/g, "").replaceAll("\r", "");
      this.#screen.write(data, () => this.#changed());
    });
    this.exit = new Promise((done) => this.#process.onExit(({ exitCode }) => done(exitCode)));
  }

  /** What stands on the screen and above it. */
  get screen(): string {
    const { active } = this.#screen.buffer;
    const lines = Array.from({ length: active.length }, (_, at) =>
      active.getLine(at)?.translateToString(true),
    );
    return lines.join("\n").trimEnd();
  }

  /** What did not fit into a line of the terminal. */
  get brokenLines(): readonly string[] {
    const { active } = this.#screen.buffer;
    return Array.from({ length: active.length }, (_, at) => active.getLine(at)).flatMap((line) =>
      line?.isWrapped === true ? [line.translateToString(true)] : [],
    );
  }

  /** Waits until one of the texts is said after the last key. @returns which one */
  see(...texts: readonly string[]): Promise<string> {
    return this.#until(texts, () => this.said.slice(this.#from).replaceAll(/\s+/g, " "));
  }

  /** Waits until a text stands on the screen, however it was written there. */
  show(text: string): Promise<string> {
    return this.#until([text], () => this.screen);
  }

  async #until(texts: readonly string[], fresh: () => string): Promise<string> {
    const deadline = Date.now() + patience;
    for (;;) {
      const found = texts.find((text) => fresh().includes(text));
      if (found !== undefined) return found;
      const left = deadline - Date.now();
      if (left <= 0)
        throw new Error(`no "${texts.join('" or "')}" on the screen:\n${this.screen.slice(-3000)}`);
      await new Promise<void>((done) => {
        const timer = setTimeout(done, left);
        this.#changed = () => {
          clearTimeout(timer);
          done();
        };
      });
    }
  }

  /** Answers questions, each once, in whatever order they come; until `end` is said. */
  async play(answers: Readonly<Record<string, string>>, end: string): Promise<void> {
    const left = new Map(Object.entries(answers));
    for (;;) {
      const met = await this.see(...left.keys(), end);
      if (met === end) return;
      this.press(left.get(met) ?? "");
      left.delete(met);
    }
  }

  press(keys: string): void {
    this.keys += keys.length;
    this.#from = this.said.length;
    this.#process.write(keys);
  }

  kill(): void {
    this.#process.kill("SIGKILL");
  }
}
