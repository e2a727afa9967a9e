/** The standard streams, which may be the log of a runner. */
import { fstatSync, writeFileSync } from "node:fs";
import { withoutCommands } from "../words/log-commands.ts";
import { UsageError } from "./usage-error.ts";

/** @throws UsageError when it is a file on a disk that is full */
export function writeStandardOutput(text: string): void {
  clearProgress();
  if (!isStandardFile()) process.stdout.write(text);
  else
    try {
      // On a disk that fills up the stream of Node would leave out the rest and say nothing.
      writeFileSync(standardOutput, text);
    } catch (error) {
      throw cannotWrite("the result to standard output", error);
    }
}

const standardOutput = 1;

/** Whether standard output goes into a plain file. */
export function isStandardFile(): boolean {
  try {
    return fstatSync(standardOutput).isFile();
  } catch {
    return false;
  }
}

/** Says something on standard error, in whole lines. */
export function speak(text: string): void {
  clearProgress();
  process.stderr.write(withoutCommands(text));
}

/** What is shown of the progress, as blanks. */
let progress = "";

function clearProgress(): void {
  if (progress !== "") process.stderr.write(`\r${progress}\r`);
  progress = "";
}

/** Milliseconds after which work is said to go on, and between two lines of it. */
const patience = 1000;
const pace = 200;

/**
 * Says in a terminal, on one line of standard error, how far work is that takes longer than a second. The line is gone
 * when the work is done, or something else is said.
 * @param what is counted: `folders`
 */
export function progressOf(what: string, start = Date.now()): (done: number, total: number) => void {
  let last = start + patience - pace;
  return (done, total) => {
    if (process.stderr.isTTY !== true) return;
    const now = Date.now();
    if (done === total) clearProgress();
    else if (now - last >= pace) {
      const line = `${done} of ${total} ${what}`;
      clearProgress();
      process.stderr.write(line);
      progress = " ".repeat(line.length);
      last = now;
    }
  };
}

const reasons: Record<string, string> = {
  EISDIR: "it is a folder",
  ENOENT: "its folder does not exist",
  ENOTDIR: "its folder does not exist",
  EACCES: "no permission",
  EPERM: "no permission",
  EROFS: "no permission",
  ENOSPC: "the disk is full",
};

/** `cannot write out.json: the disk is full (ENOSPC)` */
export function cannotWrite(what: string, error: unknown): UsageError {
  const code = (error as NodeJS.ErrnoException).code ?? "unknown reason";
  const reason = reasons[code];
  return new UsageError(`cannot write ${what}${reason === undefined ? "" : `: ${reason}`} (${code})`);
}
