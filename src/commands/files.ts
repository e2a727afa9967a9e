/** The standard streams, which may be the log of a runner, and writing files as a whole or not at all. */
import {
  accessSync,
  chmodSync,
  constants,
  fstatSync,
  lstatSync,
  readlinkSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { withoutCommands } from "../words/log-commands.ts";
import { UsageError } from "./usage-error.ts";

/** @throws UsageError when it is a file on a disk that is full */
export function writeStandardOutput(text: string): void {
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
  process.stderr.write(withoutCommands(text));
}

/**
 * Writes a text: beside its place first, then renamed. A link keeps pointing where it points, and a file that was there
 * keeps its permissions. A pipe or a device stays what it is and is written into.
 * @throws UsageError when the file cannot be written
 */
export function writeWhole(file: string, text: string): void {
  try {
    const status = statOf(file);
    if (isStream(file, status)) writeFileSync(file, text, { flag: "a" });
    else replace(realTarget(file), text, status?.mode);
  } catch (error) {
    throw cannotWrite(file, error);
  }
}

function replace(target: string, text: string, mode: number | undefined): void {
  const temporary = `${target}.${process.pid}-${Date.now().toString(36)}.tmp`;
  try {
    // A rename would replace a file that its owner has protected.
    if (mode !== undefined) accessSync(target, constants.W_OK);
    writeFileSync(temporary, text, { flag: "wx" });
    if (mode !== undefined) chmodSync(temporary, mode);
    renameSync(temporary, target);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
}

/** No chain of links is longer. */
const mostLinks = 40;

/** The file behind links, the last of which may lead to a file that is still to be made. */
export function realTarget(file: string, links = mostLinks): string {
  try {
    return realpathSync(file);
  } catch {
    const link = lstatSync(file, { throwIfNoEntry: false })?.isSymbolicLink()
      ? readlinkSync(file)
      : undefined;
    if (link !== undefined && links > 0) return realTarget(resolve(dirname(file), link), links - 1);
    return inRealFolder(resolve(file));
  }
}

function inRealFolder(file: string): string {
  try {
    return join(realpathSync(dirname(file)), basename(file));
  } catch {
    return file;
  }
}

/**
 * Finds out early what would keep a file from being written, where something else must not be done then.
 * @throws UsageError when the file or its folder cannot be written
 */
export function checkWritable(file: string): void {
  try {
    const status = statOf(file);
    if (status !== undefined) accessSync(file, constants.W_OK);
    if (isStream(file, status)) return;
    const folder = dirname(realTarget(file));
    if (!statSync(folder).isDirectory()) throw Object.assign(new Error(), { code: "ENOTDIR" });
    accessSync(folder, constants.W_OK);
  } catch (error) {
    throw cannotWrite(file, error);
  }
}

/** Whether a path is a pipe, a device, or one of the names under which a program's own streams go. */
function isStream(file: string, status: Stats | undefined): boolean {
  if (status?.isDirectory()) throw Object.assign(new Error(), { code: "EISDIR" });
  return /^\/(?:dev\/(?:fd\/|std(?:out|err)$)|proc\/)/.test(resolve(file)) || status?.isFile() === false;
}

const statOf = (file: string): Stats | undefined => statSync(file, { throwIfNoEntry: false });

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
