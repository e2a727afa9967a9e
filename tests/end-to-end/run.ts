/** Runs the built program as a user would. */
import { spawnSync } from "node:child_process";
import { closeSync, existsSync, openSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { checkedOutput } from "./outputs.ts";
import { warm } from "./warm.ts";

export const root = fileURLToPath(new URL("../..", import.meta.url));
const program = join(root, "bin/carcase.js");

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export interface RunOptions {
  readonly cwd?: string;
  readonly input?: string | Uint8Array;
  readonly env?: Readonly<Record<string, string>>;
  /** Files that the streams go to instead of being read. */
  readonly stdout?: string;
  readonly stderr?: string;
}

/** Where a whole message is looked for: no line is broken. */
export const wide = { COLUMNS: "9999" };

/** What may change from call to call in a process that stays. */
const ordinary = new Set(["COLUMNS", "SOURCE_DATE_EPOCH"]);

/** @throws Error when the program was not built (npm test builds it), or prints JSON that does not fit its schema */
export function carcase(args: readonly string[], options: RunOptions = {}): Ran {
  const ran = started(args, options);
  checkedOutput(ran.out);
  return ran;
}

function started(args: readonly string[], options: RunOptions): Ran {
  const { cwd = root, input = "", env = {}, stdout, stderr } = options;
  if (!existsSync(join(root, "dist/program/main.cjs")))
    throw new Error("dist/program/main.cjs is missing; run npm run build");
  if (stdout === undefined && stderr === undefined && Object.keys(env).every((name) => ordinary.has(name))) {
    const ran = warm({ args, cwd, env, input: Buffer.from(input) });
    if (ran !== undefined) return ran;
  }
  const { NO_COLOR: _no, FORCE_COLOR: _force, COLUMNS: _width, ...plain } = process.env;
  const files = [stdout, stderr].map((file) => (file === undefined ? "pipe" : openSync(file, "a")));
  const ran = spawnSync(process.execPath, [program, ...args], {
    stdio: ["pipe", ...files],
    cwd,
    input,
    encoding: "utf8",
    env: { ...plain, ...env },
    timeout: 30_000,
    maxBuffer: 1 << 26,
  });
  for (const file of files) if (typeof file === "number") closeSync(file);
  return { code: ran.status, out: ran.stdout ?? "", err: ran.stderr ?? "" };
}
