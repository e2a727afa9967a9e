/** What carcase asks git: its plumbing only, without a shell, names that end with a zero byte, never what it says to people. */
import type * as Processes from "node:child_process";
import { createRequire } from "node:module";
import { sameFile } from "../cases/files/file-kind.ts";
import { UsageError } from "./usage-error.ts";

/** Loaded when it is asked for: it costs time, and nothing else of carcase starts another program. */
const processes = () => createRequire(import.meta.url)("node:child_process") as typeof Processes;

interface GitRan {
  readonly status: number | null;
  readonly stdout: Buffer;
  readonly stderr: Buffer;
  readonly error?: Error;
}

export function runGit(args: readonly string[], cwd = ".", input = ""): GitRan {
  // Nothing that a repository sets is run, no lock is taken, and messages are those that are looked for.
  return processes().spawnSync("git", ["-c", "core.fsmonitor=false", ...args], {
    cwd,
    input,
    env: { ...process.env, LC_ALL: "C", GIT_OPTIONAL_LOCKS: "0" },
    maxBuffer: 1 << 30,
  });
}

/** A commit as git keeps it. */
export interface Commit {
  readonly id: string;
  readonly author: string;
  /** As the author's clock showed it: `2026-03-14 18:02`. */
  readonly at: string;
  /** The first line of its message. */
  readonly subject: string;
}

export type Git = ReturnType<typeof gitFor>;

/**
 * @param option what asks, as it was typed
 * @param instead what to do where there is no repository
 * @throws UsageError outside a repository
 */
export function gitFor(option: string, instead: string) {
  const bytes = (args: readonly string[], cwd?: string, input?: string): Buffer => {
    const { status, stdout, stderr, error } = runGit(args, cwd, input);
    if (error !== undefined) throw new UsageError(`${option}: git cannot be started; is it installed?`);
    if (status === 0) return stdout;
    const [why = ""] = stderr
      .toString()
      .replace(/^fatal: /, "")
      .split("\n");
    throw new UsageError(
      why.startsWith("not a git repository")
        ? `${option}: this folder lies in no git repository; ${instead}`
        : `${option}: git says: ${why}`,
    );
  };
  const asked = (...given: Parameters<typeof bytes>): string => bytes(...given).toString();
  const top = sameFile(asked(["rev-parse", "--show-toplevel"]).replace(/\r?\n$/, ""));
  const commit = (name: string): string | undefined => {
    const found = runGit(["rev-parse", "--verify", "--quiet", "--end-of-options", `${name}^{commit}`]);
    return found.status === 0 ? found.stdout.toString().trim() : undefined;
  };
  const names = (command: string, ...args: string[]): string[] =>
    asked([command, "-z", ...args], top)
      .split("\0")
      .filter((name) => name !== "");
  /** What git keeps under names such as an id or `commit:path`; what it does not know is left out. */
  const objects = (wanted: readonly string[]): Map<string, Buffer> => {
    const all = [...new Set(wanted)].filter((name) => !name.includes("\n"));
    const found = new Map<string, Buffer>();
    if (all.length === 0) return found;
    const out = bytes(["cat-file", "--batch"], top, all.map((name) => `${name}\n`).join(""));
    let at = 0;
    for (const name of all) {
      const feed = out.indexOf(0x0a, at);
      const head = out.subarray(at, feed).toString();
      at = feed + 1;
      const size = /^[0-9a-f]+ \w+ (\d+)$/.exec(head)?.[1];
      if (size === undefined) continue;
      found.set(name, out.subarray(at, at + Number(size)));
      at += Number(size) + 1;
    }
    return found;
  };
  return {
    top,
    asked,
    names,
    commit,
    objects,
    /** Commits by their ids. */
    commits: (ids: readonly string[]): Map<string, Commit> =>
      new Map([...objects(ids)].map(([id, raw]) => [id, commitOf(id, raw.toString())])),
  };
}

function commitOf(id: string, raw: string): Commit {
  const [head = "", ...message] = raw.split("\n\n");
  const line = head.split("\n").find((one) => one.startsWith("author ")) ?? "";
  const author = line.slice("author ".length, Math.max(line.lastIndexOf("<"), 0)).trim();
  const [seconds = "0", zone = "+0000"] = line
    .slice(line.lastIndexOf(">") + 1)
    .trim()
    .split(" ");
  const minutes = Number(`${zone[0] ?? "+"}1`) * (Number(zone.slice(1, 3)) * 60 + Number(zone.slice(3)));
  const at = new Date((Number(seconds) + minutes * 60) * 1000).toISOString();
  const [subject = ""] = message.join("\n\n").trim().split("\n");
  return { id, author, at: `${at.slice(0, 10)} ${at.slice(11, 16)}`, subject };
}

/** A file that differs between two trees, or between a tree and the folder. */
export interface RawChange {
  /** From the top of the repository. */
  readonly name: string;
  /** The object that it was and is: undefined where it was or is no plain file; null for what lies in the folder. */
  readonly before: string | undefined;
  readonly after: string | null | undefined;
}

/** `:100644 100644 id id M` and a name, in turn, from `diff-index` or `diff-tree` with `--raw -z --no-renames`. */
export function rawChanges(fields: readonly string[]): RawChange[] {
  const changes: RawChange[] = [];
  for (let at = 0; at + 1 < fields.length; at += 2) {
    const [from = "", to = "", before = "", after = ""] = (fields[at] ?? "").slice(1).split(" ");
    const isPlain = (mode: string): boolean => mode.startsWith("100");
    changes.push({
      name: fields[at + 1] ?? "",
      before: isPlain(from) ? before : undefined,
      after: !isPlain(to) ? undefined : /^0+$/.test(after) ? null : after,
    });
  }
  return changes;
}
