/** Writing files as a whole or not at all: every file that carcase writes goes through here. */
import {
  accessSync,
  closeSync,
  constants,
  existsSync,
  fchmodSync,
  fstatSync,
  fsyncSync,
  linkSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join, relative, resolve } from "node:path";
import { isInside } from "../cases/files/shown-paths.ts";
import { realTarget } from "./file-identity.ts";
import { temporaryName } from "./leftovers.ts";
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
 * @param newMode permissions of a file that was not there
 * @throws FileKept when what is there must stay; @throws UsageError when the file cannot be written
 */
export function writeWhole(file: string, text: string | Uint8Array, keeps: Keeps, newMode?: number): void {
  try {
    const status = statOf(file);
    if (isStream(file, status)) writeFileSync(file, text, { flag: "a" });
    else replace(realTarget(file), text, status?.mode ?? newMode, keeps);
  } catch (error) {
    throw error instanceof FileKept ? error : cannotWrite(file, error);
  }
}

function replace(target: string, text: string | Uint8Array, mode: number | undefined, keeps: Keeps): void {
  // A rename would replace a file that its owner has protected.
  if (statOf(target) !== undefined) accessSync(target, constants.W_OK);
  const made = new GrowingFile(target, mode);
  try {
    made.add(text);
    made.end(keeps);
  } catch (error) {
    made.drop();
    throw error;
  }
}

/** A file that grows beside its place, and gets its name when it is whole. Where something is thrown, `drop` clears it away. */
export class GrowingFile {
  readonly #target: string;
  readonly #temporary: string;
  readonly #mode: number | undefined;
  #open: number | undefined;
  #isBegun = false;

  constructor(target: string, mode?: number) {
    this.#target = target;
    this.#temporary = join(dirname(target), temporaryName(basename(target)));
    this.#mode = mode;
  }

  add(text: string | Uint8Array): void {
    this.#open ??= openSync(this.#temporary, "wx", this.#mode);
    this.#isBegun = true;
    writeFileSync(this.#open, text);
  }

  /** @param keeps is asked at the last moment */
  end(keeps: Keeps): void {
    if (this.#open === undefined) return;
    settle(this.#open, this.#mode);
    this.#close();
    ask(keeps, this.#target);
    renameSync(this.#temporary, this.#target);
    syncFolder(dirname(this.#target));
  }

  drop(): void {
    if (!this.#isBegun) return;
    this.#close();
    rmSync(this.#temporary, { force: true });
  }

  #close(): void {
    if (this.#open !== undefined) closeSync(this.#open);
    this.#open = undefined;
  }
}

/** Writes a file that must be new, through to the disk. */
function writeNewFile(file: string, text: string | Uint8Array): void {
  const open = openSync(file, "wx");
  try {
    writeFileSync(open, text);
    settle(open);
  } finally {
    closeSync(open);
  }
}

/** Sees a file that is open through to the disk. */
function settle(open: number, mode = 0o666): void {
  if (mode !== 0o666 && fstatSync(open).mode !== mode) fchmodSync(open, mode);
  unlessUnknown(() => fsyncSync(open));
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
 * @param mode permissions of those that are made, from their first moment
 */
export function makeFolder(folder: string, mode?: number): void {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder), mode);
  try {
    mkdirSync(folder, mode);
  } catch (error) {
    throw cannotWrite(`into ${folder}`, error);
  }
}

export interface NewFile {
  readonly file: string;
  readonly text: string;
}

/**
 * Where new cases of a visit are written, so that all of them can get there in one step: the folder of the visit where
 * that is new, else one in it. A single file needs none.
 */
export function folderForNew(folder: string, numbers: readonly number[]): string {
  if (isFree(folder) || (numbers.length === 1 && isThere(join(folder, "visit.yaml")))) return folder;
  const ends = [Math.min(...numbers), Math.max(...numbers)].map((one) => String(one).padStart(2, "0"));
  return join(folder, `pigs-${[...new Set(ends)].join("-")}`);
}

/** Whether a folder can still be put there as a whole. The one that somebody stands in cannot. */
const isFree = (folder: string): boolean =>
  !isThere(folder) ||
  (resolve(folder) !== process.cwd() && lstatSync(folder).isDirectory() && readdirSync(folder).length === 0);

/** What gets its name for files to be there: the uppermost folder that is not there yet. */
export function newFolder(folder: string): string {
  const at = resolve(folder);
  return existsSync(dirname(at)) ? at : newFolder(dirname(at));
}

/**
 * Writes files that are not there yet, in one step of the file system: they lie in a folder that gets its name when all of
 * them are on the disk. Whatever moment a run is cut off at, all of them are there or none.
 * @param files the first of them may belong above the folder, where a visit or a farm is not recorded yet: they come in it,
 *   where they say the same of its cases, and are then put into their place
 * @param folder as `folderForNew` says
 * @throws FileKept when one of them is there; @throws UsageError when one cannot be written
 */
export function writeNew(files: readonly NewFile[], folder: string): void {
  const [first] = files;
  if (first !== undefined && files.length === 1 && !isFree(folder)) {
    writeWhole(first.file, first.text, (now) => (now === undefined ? undefined : kept(first.file)));
    return;
  }
  const unit = newFolder(folder);
  const places = files.map(({ file, text }) => {
    const inside = relative(unit, resolve(file));
    return { file, text, inside: isInside(inside) ? inside : basename(file) };
  });
  const raised = places.filter(({ file, inside }) => resolve(file) !== join(unit, inside));
  const temporary = join(dirname(unit), temporaryName(basename(unit)));
  try {
    for (const { file } of files) keepThere(file);
    mkdirSync(temporary);
    for (const { inside, text } of places) {
      mkdirSync(dirname(join(temporary, inside)), { recursive: true });
      writeNewFile(join(temporary, inside), text);
    }
    for (const one of new Set(places.map(({ inside }) => dirname(join(temporary, inside))))) syncFolder(one);
    syncFolder(temporary);
    // Not every system puts a folder in the place of an empty one.
    if (isThere(unit)) rmdirSync(unit);
    renameSync(temporary, unit);
    syncFolder(dirname(unit));
  } catch (error) {
    rmSync(temporary, { recursive: true, force: true });
    throw refused(error, unit);
  }
  raise(raised, unit);
}

/** Puts files that came in a folder into their place above it. */
function raise(files: readonly { readonly file: string; readonly inside: string }[], folder: string): void {
  const done: string[] = [];
  try {
    for (const { file, inside } of files) {
      keepThere(file);
      renameSync(join(folder, inside), file);
      done.push(file);
      syncFolder(dirname(file));
    }
  } catch (error) {
    for (const one of [folder, ...done]) rmSync(one, { recursive: true, force: true });
    throw refused(error, folder);
  }
}

/** A file of a folder that is written as a whole. */
export interface PageFile {
  /** With `/` between folders. */
  readonly name: string;
  readonly text: string | Uint8Array;
  /** The file goes on with this text, and may go on later. */
  readonly grows?: true;
}

/** How a folder is known for an earlier one: by the names in it, and by the text of one file. */
export interface KnownBy {
  readonly file: string;
  isOurs(names: readonly string[], text: string): boolean;
}

/**
 * Writes a folder as a whole: beside its place first, then swapped in. A file whose text is as it was is linked and not
 * written again, unless it grows.
 * @returns how many files were written anew
 * @throws FileKept when a folder is there that is none of ours; @throws UsageError when it cannot be written
 */
export function writeFolder(folder: string, files: Iterable<PageFile>, known: KnownBy): number {
  const target = resolve(folder);
  const next = join(dirname(target), temporaryName(basename(target)));
  const last = join(dirname(target), temporaryName(`${basename(target)}-before`));
  const earlier = isThere(target);
  if (earlier && !isFree(folder) && !isEarlier(target, known))
    throw new FileKept(
      `${folder} is there already and was not written by this command; nothing was written. Name another folder`,
    );
  let written = 0;
  const growing = new Map<string, number>();
  try {
    mkdirSync(next, { recursive: true });
    const folders = new Set([next]);
    for (const { name, text, grows } of files) {
      const file = join(next, name);
      if (!folders.has(dirname(file))) mkdirSync(dirname(file), { recursive: true });
      folders.add(dirname(file));
      if (grows) {
        const open = growing.get(file) ?? openSync(file, "wx");
        if (!growing.has(file)) written++;
        growing.set(file, open);
        writeFileSync(open, text);
      } else if (bytesOf(join(target, name))?.equals(Buffer.from(text)) === true)
        linkSync(join(target, name), file);
      else {
        writeNewFile(file, text);
        written++;
      }
    }
    for (const open of growing.values()) unlessUnknown(() => fsyncSync(open));
    for (const one of folders) syncFolder(one);
    if (earlier) renameSync(target, last);
    renameSync(next, target);
    syncFolder(dirname(target));
  } catch (error) {
    if (!isThere(target) && isThere(last)) renameSync(last, target);
    rmSync(next, { recursive: true, force: true });
    // What goes wrong while the text is made is no fault of the disk.
    if (error instanceof UsageError || (error as NodeJS.ErrnoException).code === undefined) throw error;
    throw cannotWrite(`into ${dirname(target)}`, error);
  } finally {
    for (const open of growing.values()) closeSync(open);
  }
  rmSync(last, { recursive: true, force: true });
  return written;
}

const isEarlier = (folder: string, { file, isOurs }: KnownBy): boolean =>
  lstatSync(folder).isDirectory() &&
  isOurs(readdirSync(folder), bytesOf(join(folder, file))?.toString() ?? "");

const refused = (error: unknown, folder: string): UsageError => {
  const { code = "" } = error as NodeJS.ErrnoException;
  if (error instanceof FileKept) return error;
  return ["ENOTEMPTY", "EEXIST"].includes(code)
    ? new FileKept(kept(folder))
    : cannotWrite(`into ${dirname(folder)}`, error);
};

const isThere = (file: string): boolean => lstatSync(file, { throwIfNoEntry: false }) !== undefined;

function keepThere(file: string): void {
  if (isThere(file)) throw new FileKept(kept(file));
}

const kept = (file: string): string =>
  `${file} is there already, and nothing is overwritten; nothing was written`;
