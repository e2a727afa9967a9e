/** The built program in a process of its own that runs many commands, counts their steps, and is killed when it hangs. */
import { type ChildProcess, fork } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";

export interface Job {
  readonly args: readonly string[];
  readonly cwd: string;
  /** Standard input. */
  readonly input?: Uint8Array;
  /** Variables for this one command. */
  readonly env?: Readonly<Record<string, string>>;
}

export interface Done {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  /** Seconds of processor time. */
  readonly cpu: number;
  /** Blocks of the program that ran; undefined where they are not counted. */
  readonly steps: number | undefined;
}

const runner = fileURLToPath(new URL("runner.cjs", import.meta.url));
const built = fileURLToPath(new URL("../../dist/program/main.cjs", import.meta.url));

/** Seconds of the clock after which a command is given up. */
const patience = 120;

export class Program {
  readonly #mode: string;
  #child: ChildProcess | undefined;

  constructor({ counted = false } = {}) {
    if (!existsSync(built)) throw new Error("dist is missing: run `npm run build` before these tests");
    this.#mode = counted ? "counted" : "plain";
  }

  /** @throws Error when the command does not end, or takes the process with it */
  run(job: Job): Promise<Done> {
    this.#child ??= fork(runner, [this.#mode], {
      stdio: ["ignore", "ignore", "ignore", "ipc"],
      serialization: "advanced",
      execArgv: ["--max-old-space-size=1500"],
      env: { ...process.env, NO_COLOR: "1", COLUMNS: "80" },
    });
    const child = this.#child;
    return new Promise((done, fail) => {
      const end = (finish: () => void): void => {
        clearTimeout(timer);
        child.off("message", onMessage).off("exit", onExit);
        finish();
      };
      const onMessage = (message: unknown): void => end(() => done(message as Done));
      const onExit = (code: number | null, signal: string | null): void => {
        this.#child = undefined;
        end(() => fail(new Error(`the program died (${signal ?? code})`)));
      };
      const timer = setTimeout(() => {
        this.stop();
        end(() => fail(new Error(`the program did not end in ${patience} s`)));
      }, patience * 1000);
      child.on("message", onMessage).on("exit", onExit);
      child.send(job);
    });
  }

  stop(): void {
    this.#child?.kill("SIGKILL");
    this.#child = undefined;
  }
}
