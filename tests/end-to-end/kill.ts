/**
 * Kills runs with signal 9: from outside after some time or after one of their calls that change files began, or by themselves
 * before such a call or in the midst of what it writes. Most of the moments lie where a run writes.
 */
import { spawn } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { expect } from "vitest";
import { runs } from "../random.ts";
import { root } from "./run.ts";

/** 500 in a long search, else a few. */
export const kills = (few: number): number => (runs(50) > 50 ? runs(50) : few);

/** In milliseconds after the program began, or after a call did; or a call that is not made, or only by half. */
type Moment =
  | { readonly milliseconds: number }
  | { readonly call: number; readonly later: number }
  | { readonly call: number; readonly isByHalf: boolean };

// It goes with the temporary folder of the whole run: one process may run several test files.
const script = join(mkdtempSync(join(tmpdir(), "carcase-kill-")), "kill.cjs");
const pipe = 3;
writeFileSync(
  script,
  `const fs = require("node:fs");
  const write = fs.writeSync;
  const tell = (sign) => write(${pipe}, sign);
  const end = () => process.kill(process.pid, "SIGKILL");
  const at = Number(process.env.KILLED_AT);
  let [calls, inside] = [0, false];
  tell(process.pid + ":");
  for (const name of ["mkdirSync", "openSync", "writeFileSync", "fsyncSync", "chmodSync", "linkSync", "rmdirSync", "renameSync"]) {
    const call = fs[name];
    fs[name] = (...all) => {
      if (inside || (name === "openSync" && all[1] !== "wx")) return call(...all);
      calls++;
      if (calls === at) end();
      tell("(");
      if (calls + 0.5 === at && name === "writeFileSync") {
        const bytes = Buffer.from(all[1]);
        call(all[0], bytes.subarray(0, bytes.length / 2));
      }
      if (calls + 0.5 === at) end();
      inside = true;
      try {
        return call(...all);
      } finally {
        inside = false;
        tell(")");
      }
    };
  }
  process.on("exit", () => tell("."));`,
);

/** What is run, where it is not carcase itself. */
interface Program {
  readonly command: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
}

const itself: Program = { command: [process.execPath, join(root, "bin/carcase.js")] };

interface Ended {
  readonly wasKilled: boolean;
  /** Calls that it began, and those that it ended. */
  readonly began: number;
  readonly ended: number;
  /** When it first and last said so, in milliseconds after it began. */
  readonly from: number;
  readonly to: number;
  readonly took: number;
}

function runUntil(
  args: readonly string[],
  cwd: string,
  moment: Moment | undefined,
  { command, env }: Program,
): Promise<Ended> {
  const [file = "", ...before] = command;
  const at = moment !== undefined && "isByHalf" in moment ? moment.call + (moment.isByHalf ? 0.5 : 0) : 0;
  return new Promise((done) => {
    const child = spawn(file, [...before, ...args], {
      cwd,
      stdio: ["ignore", "ignore", "ignore", "pipe"],
      env: { ...process.env, CI: "", ...env, NODE_OPTIONS: `--require "${script}"`, KILLED_AT: String(at) },
    });
    let [told, start, from, to] = ["", 0, 0, 0];
    let timer: NodeJS.Timeout | undefined;
    const count = (sign: string): number => told.split(sign).length - 1;
    let isSent = false;
    const kill = (): void => {
      // Once: afterwards the number may be that of nobody, or of somebody else.
      if (isSent || told.endsWith(".")) return;
      isSent = true;
      try {
        process.kill(Number.parseInt(told, 10), "SIGKILL");
      } catch (error) {
        // It had ended already, and its last sign is on the way.
        if ((error as NodeJS.ErrnoException).code !== "ESRCH") throw error;
      }
    };
    const after = (milliseconds: number): void => {
      if (milliseconds < 0.5) kill();
      else timer ??= setTimeout(kill, milliseconds);
    };
    child.stdio[pipe]?.on("data", (signs: Buffer) => {
      if (told === "") start = performance.now();
      told += signs.toString();
      if (moment !== undefined && "milliseconds" in moment) after(moment.milliseconds);
      const calls = count("(");
      to = performance.now() - start;
      if (calls > 0) from ||= to;
      if (moment !== undefined && "later" in moment && calls >= moment.call) after(moment.later);
    });
    child.once("exit", () => clearTimeout(timer));
    child.once("close", () =>
      done({
        wasKilled: !told.endsWith("."),
        began: count("("),
        ended: count(")"),
        from,
        to,
        took: performance.now() - start,
      }),
    );
  });
}

/** Runs a program to its end, to see how long it takes and where it writes. */
export async function measured(args: readonly string[], cwd: string, program = itself): Promise<Ended> {
  const whole = await runUntil(args, cwd, undefined, program);
  expect(whole).toMatchObject({ wasKilled: false, began: whole.ended });
  expect(whole.ended).toBeGreaterThan(2);
  return whole;
}

const moments = (many: number, { took, from, to, ended: calls }: Ended): Moment[] => {
  const call = fc.oneof(
    fc.integer({ min: 1, max: calls }),
    fc.integer({ min: Math.max(1, calls - 8), max: calls }),
  );
  const time = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  return fc.sample(
    fc.oneof(
      { weight: 1, arbitrary: fc.record({ milliseconds: time(0, took) }) },
      { weight: 1, arbitrary: fc.record({ milliseconds: time(from, to) }) },
      { weight: 2, arbitrary: fc.record({ call, later: time(0, 2) }) },
      { weight: 2, arbitrary: fc.record({ call, isByHalf: fc.boolean() }) },
    ),
    many,
  );
};

/** What a killed run left: all as it was, all as it was to be, a state between of whole files; or what is neither, in words. */
type Left = "old" | "new" | "between" | { readonly half: string };

interface Killing {
  readonly what: string;
  readonly many: number;
  readonly args: readonly string[];
  readonly program?: Program;
  /** A run of the same files that nobody killed. */
  readonly whole: Ended;
  /** Lays the files. @returns their folder */
  made(): string;
  /** Looks at what was left. @param told what to say where it is not as it should be */
  seen(folder: string, told: string): Left | Promise<Left>;
}

/** Kills a run until so many were really killed and had not ended before. */
export async function killOften({
  what,
  many,
  args,
  program = itself,
  whole,
  made,
  seen,
}: Killing): Promise<void> {
  const hits = { before: 0, in: 0, after: 0 };
  const left = { old: 0, between: 0, new: 0 };
  const half: string[] = [];
  let killed = 0;
  for (const moment of moments(many * 3 + 20, whole)) {
    if (killed === many) break;
    const folder = made();
    const { wasKilled, began, ended } = await runUntil(args, folder, moment, program);
    const told = JSON.stringify({ what, moment, wasKilled, began, ended, of: whole.ended });
    const found = await seen(folder, told);
    if (typeof found !== "string") half.push(`${found.half}: ${told}`);
    if (!wasKilled) continue;
    killed++;
    hits[began === 0 ? "before" : ended < whole.ended ? "in" : "after"]++;
    if (typeof found === "string") left[found]++;
  }
  console.info(
    `${killed} kills of ${what}: ${hits.before} before it wrote, ${hits.in} while, ${hits.after} after; ` +
      `they left ${left.old} old, ${left.between} between, ${left.new} new, ${half.length} half`,
  );
  expect(half).toEqual([]);
  expect(killed).toBe(many);
  if (many >= 100) expect(Math.min(hits.before, left.old, left.new, hits.in - many / 2)).toBeGreaterThan(0);
}

/** What lies in a folder, each file against what it was and what it was to be. */
export function leftOf(now: Files, old: Files, young: Files): Left {
  if (isEqual(now, young)) return "new";
  if (isEqual(now, old)) return "old";
  const names = [...new Set([...Object.keys(now), ...Object.keys(old), ...Object.keys(young)])];
  const half = names.filter((name) => now[name] !== old[name] && now[name] !== young[name]);
  return half.length === 0 ? "between" : { half: half.join(", ") };
}

/** What killed runs left over beside their files. */
export const leftovers = (folder: string): string[] =>
  (readdirSync(folder, { recursive: true }) as string[]).filter((name) =>
    /(?:^|[\\/])\.[^\\/]*\.tmp$/.test(name),
  );

const isInLeft = (name: string): boolean => /(?:^|[\\/])\.[^\\/]*\.tmp(?:$|[\\/])/.test(name);

/** All files below a folder by their paths, but for what a killed run left over. */
export const tree = (folder: string): Files =>
  Object.fromEntries(
    (readdirSync(folder, { recursive: true }) as string[])
      .filter((name) => !isInLeft(name) && statSync(join(folder, name)).isFile())
      .sort()
      .map((name) => [name.replaceAll("\\", "/"), readFileSync(join(folder, name), "utf8")]),
  );

export const isEqual = (a: Files, b: Files): boolean => isDeepStrictEqual({ ...a }, { ...b });

export type Files = Readonly<Record<string, string>>;
