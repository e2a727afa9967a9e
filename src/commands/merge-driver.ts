/**
 * `carcase merge-driver`: what git calls for a record that two people changed. The file named second gets the result; the exit
 * code is 1 where a person has to decide.
 */
import { readFileSync } from "node:fs";
import { kindOfText, mergeRecords } from "../history/index.ts";
import { runGit } from "./git.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";

export function mergeDriver(run: Run<CommonOptions>): number {
  const [base, ours, theirs, size = "7", path] = run.paths;
  if (base === undefined || ours === undefined || theirs === undefined)
    throw new UsageError("carcase merge-driver is called by git; carcase git enable sets it up");
  const markSize = Math.min(Math.max(Number.parseInt(size, 10) || 7, 1), 100);
  const before = readFileSync(ours);
  const write = (bytes: string | Uint8Array): void =>
    run.replace(ours, bytes, (there) =>
      there?.equals(before) === true ? undefined : `${ours} was changed by somebody else meanwhile`,
    );
  const name = path ?? ours;
  const merged = byParts({ base, ours, theirs }, markSize);
  if (merged !== undefined) {
    write(merged.text);
    for (const conflict of merged.conflicts) run.say(`${name}: ${conflict}`);
    return merged.conflicts.length > 0 ? 1 : 0;
  }
  // As if there were no driver.
  const labels = ["ours", "base", "theirs"].flatMap((label) => ["-L", label]);
  const files = [ours, base, theirs];
  const { status, stdout } = runGit([
    "merge-file",
    "-p",
    `--marker-size=${markSize}`,
    ...labels,
    "--",
    ...files,
  ]);
  const isText = status !== null && status < 128;
  if (isText) write(stdout);
  const isSound = status === 0 && isReadable(stdout) === isReadable(before);
  if (!isSound)
    run.say(`${name}: merged line by line, because it could not be taken apart; look at it whole`);
  return isSound ? 0 : 1;
}

type Files = Readonly<Record<"base" | "ours" | "theirs", string>>;

/** Undefined where one of them is no record that can be taken apart. */
function byParts(files: Files, markSize: number): { text: string; conflicts: readonly string[] } | undefined {
  const mark = "\ufeff";
  const read = (file: string): string => readFileSync(file, "utf8");
  const ours = read(files.ours);
  const plain = (text: string): string => text.replace(mark, "");
  const texts = { base: plain(read(files.base)), ours: plain(ours), theirs: plain(read(files.theirs)) };
  const kind = kindOfText(texts.ours);
  if (kind === undefined || kind !== kindOfText(texts.theirs)) return undefined;
  const merged = mergeRecords(kind, texts, markSize);
  return merged.ok ? { ...merged, text: `${ours.startsWith(mark) ? mark : ""}${merged.text}` } : undefined;
}

const isReadable = (bytes: Buffer): boolean => kindOfText(bytes.toString()) !== undefined;
