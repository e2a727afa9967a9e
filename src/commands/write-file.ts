/** Writing files as a whole or not at all: every file that carcase writes goes through here. */
import {
  accessSync,
  closeSync,
  constants,
  existsSync,
  fchmodSync,
  fstatSync,
  fsyncSync,
  lstatSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { realTarget } from "./file-identity.ts";
import { isTemporary, mayRun, runName, temporaryName } from "./leftovers.ts";
import { cannotWrite } from "./streams.ts";
import { UsageError } from "./usage-error.ts";

/**
 * Whether what is there now may be replaced.
 * @param there the bytes of the file; undefined where there is none
 * @returns why it must stay, in a sentence; undefined where it may go
 */
export type Keeps = (there: Buffer | undefined) => string | undefined;

/** A file was left as it is. */
export class FileKept extends UsageError {}

/**
 * Writes a text: beside its place first, then renamed. A link keeps pointing where it points, and a file that was there
 * keeps its permissions. A pipe or a device stays what it is and is written into.
 * @param keeps is asked at the last moment
 * @throws FileKept when what is there must stay; @throws UsageError when the file cannot be written
 */
export function writeWhole(file: string, text: string, keeps: Keeps): void {
  try {
    const status = statOf(file);
    if (isStream(file, status)) writeFileSync(file, text, { flag: "a" });
    else replace(realTarget(file), text, status?.mode, keeps);
  } catch (error) {
    throw error instanceof FileKept ? error : cannotWrite(file, error);
  }
}

function replace(target: string, text: string, mode: number | undefined, keeps: Keeps): void {
  const temporary = join(dirname(target), temporaryName(basename(target)));
  try {
    // A rename would replace a file that its owner has protected.
    if (mode !== undefined) accessSync(target, constants.W_OK);
    writeNew(temporary, text, mode);
    ask(keeps, target);
    renameSync(temporary, target);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
  syncFolder(dirname(target));
}

/** Writes a file that must be new, through to the disk. */
function writeNew(file: string, text: string, mode = 0o666): void {
  const open = openSync(file, "wx", mode);
  try {
    writeFileSync(open, text);
    if (mode !== 0o666 && fstatSync(open).mode !== mode) fchmodSync(open, mode);
    unlessUnknown(() => fsyncSync(open));
  } finally {
    closeSync(open);
  }
}

/** So that the new name is on the disk as well. Not every system opens folders; the file is whole without. */
function syncFolder(folder: string): void {
  try {
    const open = openSync(folder, "r");
    try {
      fsyncSync(open);
    } finally {
      closeSync(open);
    }
  } catch {
    // Nothing is lost that was there.
  }
}

/** Some file systems know no such call. */
function unlessUnknown(call: () => void): void {
  try {
    call();
  } catch (error) {
    if (!["EINVAL", "ENOSYS", "ENOTSUP", "EOPNOTSUPP"].includes((error as NodeJS.ErrnoException).code ?? ""))
      throw error;
  }
}

function ask(keeps: Keeps, target: string): void {
  const why = keeps(bytesOf(target));
  if (why !== undefined) throw new FileKept(why);
}

function bytesOf(file: string): Buffer | undefined {
  try {
    return readFileSync(file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
    throw error;
  }
}

/**
 * Finds out early what would keep a file from being written, where something else must not be done then.
 * @throws FileKept when what is there must stay; @throws UsageError when the file or its folder cannot be written
 */
export function checkWritable(file: string, keeps: Keeps): void {
  try {
    const status = statOf(file);
    if (status !== undefined) accessSync(file, constants.W_OK);
    if (isStream(file, status)) return;
    const target = realTarget(file);
    const folder = dirname(target);
    if (!statSync(folder).isDirectory()) throw Object.assign(new Error(), { code: "ENOTDIR" });
    accessSync(folder, constants.W_OK);
    ask(keeps, target);
  } catch (error) {
    throw error instanceof FileKept ? error : cannotWrite(file, error);
  }
}

/** The folder that a file is written in; undefined where it is none that is replaced. */
export function folderOf(file: string): string | undefined {
  try {
    return isStream(file, statOf(file)) ? undefined : dirname(realTarget(file));
  } catch {
    return undefined;
  }
}

/** Whether a path is a pipe, a device, or one of the names under which a program's own streams go. */
function isStream(file: string, status: Stats | undefined): boolean {
  if (status?.isDirectory()) throw Object.assign(new Error(), { code: "EISDIR" });
  return /^\/(?:dev\/(?:fd\/|std(?:out|err)$)|proc\/)/.test(resolve(file)) || status?.isFile() === false;
}

const statOf = (file: string): Stats | undefined => statSync(file, { throwIfNoEntry: false });

/**
 * Makes a folder and those above it that are not there, one level after the other: Node's own way to make them all never
 * ends where a file system has none.
 * @returns those that were made, the uppermost first
 */
export function makeFolder(folder: string): string[] {
  if (existsSync(folder)) return [];
  const above = makeFolder(dirname(folder));
  try {
    mkdirSync(folder);
  } catch (error) {
    throw cannotWrite(`into ${folder}`, error);
  }
  return [...above, folder];
}

/**
 * Writes files that are not there yet, all of them or none.
 * @param write writes one of them
 * @throws FileKept when one of them is there; @throws UsageError when one cannot be written
 */
export function writeAllNew<File extends { readonly file: string }>(
  files: readonly File[],
  write: (file: File, keeps: Keeps) => void,
): void {
  const there = files.find(({ file }) => isThere(file));
  if (there !== undefined) throw new FileKept(kept(there.file));
  const made: string[] = [];
  const written: string[] = [];
  try {
    for (const one of files) made.push(...makeFolder(resolve(dirname(one.file))));
    for (const one of files) {
      write(one, (now) => (now === undefined ? undefined : kept(one.file)));
      written.push(one.file);
    }
  } catch (error) {
    for (const file of written) rmSync(file, { force: true });
    for (const folder of made.reverse()) unlessUsed(() => rmdirSync(folder));
    throw error;
  }
}

const isThere = (file: string): boolean => lstatSync(file, { throwIfNoEntry: false }) !== undefined;

const kept = (file: string): string =>
  `${file} is there already, and nothing is overwritten; nothing was written`;

/** A folder that somebody else uses by now stays. */
function unlessUsed(call: () => void): void {
  try {
    call();
  } catch {
    // It is not empty, or gone.
  }
}

/** Which files of a folder are to get their names together; it is there from the first rename to the last. */
const listName = ".carcase-unfinished.json";

interface Renaming {
  /** The run that began it. */
  readonly by: string;
  readonly files: readonly { readonly from: string; readonly to: string }[];
}

/**
 * Writes files of one folder that are not there yet, all of them or none: each beside its place, through to the disk; then a
 * list of them, and only then each gets its name. A run that is cut off before the list is there has written nothing; one
 * that is cut off after it is finished by `finishWriting`.
 * @throws FileKept when one of them is there; @throws UsageError when one cannot be written
 */
export function writeTogether(folder: string, files: readonly { name: string; text: string }[]): void {
  const made: string[] = [];
  const list = join(folder, listName);
  try {
    const renaming: Renaming = {
      by: runName(),
      files: files.map(({ name }) => ({ from: temporaryName(name), to: name })),
    };
    for (const { to } of renaming.files) keepThere(join(folder, to));
    for (const [index, { from }] of renaming.files.entries()) {
      made.push(join(folder, from));
      writeNew(join(folder, from), files[index]?.text ?? "");
    }
    const begun = join(folder, temporaryName("list"));
    made.push(begun);
    writeNew(begun, JSON.stringify(renaming));
    keepThere(list);
    renameSync(begun, list);
    made.push(list);
    syncFolder(folder);
    for (const { from, to } of renaming.files) {
      keepThere(join(folder, to));
      renameSync(join(folder, from), join(folder, to));
      made.push(join(folder, to));
    }
  } catch (error) {
    for (const file of made.reverse()) rmSync(file, { force: true });
    throw error instanceof FileKept ? error : cannotWrite(`into ${folder}`, error);
  }
  syncFolder(folder);
  rmSync(list);
}

function keepThere(file: string): void {
  if (isThere(file)) throw new FileKept(kept(file));
}

/** Whether a run was cut off while its files got their names. */
export const isUnfinished = (folder: string): boolean =>
  unfinished(folder)?.files.some(({ from }) => isTemporary(from) && existsSync(join(folder, from))) ?? false;

/** Gives the files of a run that was cut off their names. @returns those that got one now */
export function finishWriting(folder: string): string[] {
  const renaming = unfinished(folder);
  if (renaming === undefined) return [];
  const left = renaming.files.filter(
    ({ from, to }) =>
      isTemporary(from) &&
      basename(from) === from &&
      /^[A-Za-z0-9._-]+\.yaml$/.test(to) &&
      existsSync(join(folder, from)) &&
      !isThere(join(folder, to)),
  );
  for (const { from, to } of left) renameSync(join(folder, from), join(folder, to));
  syncFolder(folder);
  rmSync(join(folder, listName), { force: true });
  return left.map(({ to }) => join(folder, to));
}

function unfinished(folder: string): Renaming | undefined {
  try {
    const list = join(folder, listName);
    const status = lstatSync(list, { throwIfNoEntry: false });
    if (status?.isFile() !== true) return undefined;
    const { by, files }: Partial<Renaming> = JSON.parse(readFileSync(list, "utf8"));
    return typeof by !== "string" || mayRun(by, status.mtimeMs) || !Array.isArray(files)
      ? undefined
      : { by, files: files.filter(({ from, to }) => typeof from === "string" && typeof to === "string") };
  } catch {
    // It is none of ours, or gone by now.
    return undefined;
  }
}
