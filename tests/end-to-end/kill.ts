/** Kills a run at any moment: from outside after some time, or by itself before one of its calls that change files. */
import { spawn } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { root } from "./run.ts";

type Moment = { readonly milliseconds: number } | { readonly call: number };

// It goes with the temporary folder of the whole run: one process may run several test files.
const folder = mkdtempSync(join(tmpdir(), "carcase-kill-"));
const script = join(folder, "kill.cjs");
const counted = join(folder, "calls");
writeFileSync(
  script,
  `const fs = require("node:fs");
  const write = fs.writeFileSync;
  const before = Number(process.env.KILLED_BEFORE);
  let calls = 0;
  for (const name of ["mkdirSync", "openSync", "writeFileSync", "fsyncSync", "rmdirSync", "renameSync", "rmSync"]) {
    const call = fs[name];
    fs[name] = (...all) => {
      const changes = name !== "openSync" || all[1] === "wx" || fs.statSync(all[0], { throwIfNoEntry: false })?.isDirectory();
      if (changes && ++calls === before) process.kill(process.pid, "SIGKILL");
      return call(...all);
    };
  }
  process.on("exit", () => write(${JSON.stringify(counted)}, String(calls)));`,
);

/** What is run, where it is not carcase itself. */
export interface Program {
  readonly file: string;
  readonly env?: Readonly<Record<string, string>>;
}

const itself: Program = { file: join(root, "bin/carcase.js") };

/** @returns whether it was killed */
export function killed(
  args: readonly string[],
  cwd: string,
  moment: Moment,
  program = itself,
): Promise<boolean> {
  const env = { ...process.env, CI: "", ...program.env };
  return new Promise((done) => {
    const child = spawn(process.execPath, [program.file, ...args], {
      cwd,
      stdio: "ignore",
      env:
        "call" in moment
          ? { ...env, NODE_OPTIONS: `--require "${script}"`, KILLED_BEFORE: String(moment.call) }
          : env,
    });
    const timer =
      "milliseconds" in moment ? setTimeout(() => child.kill("SIGKILL"), moment.milliseconds) : undefined;
    child.once("exit", (_, signal) => {
      clearTimeout(timer);
      done(signal === "SIGKILL");
    });
  });
}

/** How long a whole run takes, and in how many calls that change files. */
export async function measured(args: readonly string[], cwd: string, program = itself): Promise<Whole> {
  const start = performance.now();
  await killed(args, cwd, { call: 0 }, program);
  return { took: performance.now() - start, calls: Number(readFileSync(counted, "utf8")) };
}

interface Whole {
  readonly calls: number;
  readonly took: number;
}

/** Moments of a run: by the clock, by its calls, and by the last of them, where names are given. */
export const moments = (many: number, { calls, took }: Whole): Moment[] =>
  fc.sample(
    fc.oneof(
      fc.double({ min: 0, max: 1.1, noNaN: true }).map((share) => ({ milliseconds: share * took })),
      fc.integer({ min: 1, max: calls }).map((call) => ({ call })),
      fc.integer({ min: Math.max(1, calls - 8), max: calls }).map((call) => ({ call })),
    ),
    many,
  );

/** All files below a folder by their paths, but for what a killed run left over. */
export const tree = (folder: string): Record<string, string> =>
  Object.fromEntries(
    (readdirSync(folder, { recursive: true }) as string[])
      .filter((name) => !/(?:^|[\\/])\.[^\\/]*\.tmp(?:$|[\\/])/.test(name))
      .filter((name) => statSync(join(folder, name)).isFile())
      .sort()
      .map((name) => [name.replaceAll("\\", "/"), readFileSync(join(folder, name), "utf8")]),
  );

export const isEqual = (a: Files, b: Files): boolean => isDeepStrictEqual({ ...a }, { ...b });

type Files = Readonly<Record<string, string>>;
