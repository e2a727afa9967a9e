/**
 * What earlier runs of `carcase lint` found, folder by folder, for those in which nothing has changed. It is told by contents
 * and never by times. It may be deleted at any moment, and what is said is the same with it and without it.
 */
import { constants, fstatSync, openSync, readdirSync, readSync, rmSync, statSync } from "node:fs";
import { homedir } from "node:os";
import { dirname, isAbsolute, join, sep } from "node:path";
import { askAgain } from "../cases/files/file-kind.ts";
import { bytesAgain, isOfBytes } from "../cases/files/input.ts";
import type { Noted } from "../cases/index.ts";
import type { LintOptions } from "../lint/index.ts";
import { askPlaceAgain } from "../schemas/index.ts";
import { sha256 } from "../words/sha256.ts";
import { clearLeftovers } from "./leftovers.ts";
import { sources } from "./version.ts";
import { GrowingFile, makeFolder } from "./write-file.ts";

/** What was found in a folder, and all that it rests on. */
export interface Kept<Found> {
  /** Which files were asked for, and under which names. */
  readonly identity: string;
  /** The folder. */
  readonly location: string;
  /** What was asked of the file system, each once. */
  readonly noted: readonly Noted[];
  /** The day of the run, where it decides. */
  readonly day: string | undefined;
  readonly found: Found;
}

/** As it is kept: questions, paths and answers in turn, paths inside the folder as seen from there. */
interface Line<Found> extends Omit<Kept<Found>, "noted"> {
  readonly noted: readonly string[];
}

/** With fewer files than this nothing is gained. */
export const worthKeeping = 100;
/** So many files are kept: one for each folder that lint was called from, with its options. */
const mostFiles = 8;
/** A larger file is none of ours. */
const mostBytes = 2 ** 30;

const questions: Readonly<Record<string, (path: string) => string>> = { ...askAgain, ...askPlaceAgain };

const answerTo = (question: string, location: string): string | undefined =>
  isOfBytes(question) ? bytesAgain(question, location) : questions[question]?.(location);

type Known = (question: string, path: string) => string | undefined;

/** Where the line of a folder begins and ends. */
type Place = readonly [from: number, to: number];

export class LintCache<Found> {
  readonly #file: string;
  readonly #day: string | undefined;
  /** What an earlier run wrote. */
  readonly #before: number | undefined;
  readonly #lines: ReadonlyMap<string, Place>;
  /** What this run writes; undefined until there is something, and where that cannot be done. */
  #new: GrowingFile | undefined;
  #isRefused = false;
  readonly #renewed = new Set<string>();
  /** Answers about what lies outside of the folder that was asked about: it is the same for all. */
  readonly #answers = new Map<string, string | undefined>();
  readonly #known: Known;

  private constructor(folder: string, rules: LintOptions, known: Known) {
    const { today, ...options } = rules;
    const name = sha256(JSON.stringify([sources, process.version, process.cwd(), options])).slice(0, 16);
    this.#file = join(folder, `lint-${name}.ndjson`);
    this.#day = today;
    this.#before = opened(this.#file);
    this.#lines = this.#before === undefined ? new Map() : linesIn(this.#before);
    this.#known = known;
  }

  /**
   * @param known answers that need not be asked for
   * @returns undefined where there is no place for one
   */
  static open<Found>(rules: LintOptions, known: Known): LintCache<Found> | undefined {
    const folder = folderOfUser();
    return folder === undefined ? undefined : new LintCache<Found>(folder, rules, known);
  }

  /** Of how many folders an earlier run kept something. */
  get size(): number {
    return this.#lines.size;
  }

  /**
   * What was found in a folder, where everything that it rests on is still the same.
   * @returns with it the files that were read for it
   */
  find(identity: string, location: string) {
    const kept = this.#keptOf(location);
    if (kept?.identity !== sha256(identity)) return undefined;
    if (kept.day !== undefined && kept.day !== this.#day) return undefined;
    const read: string[] = [];
    const { found, noted } = kept;
    for (let index = 0; index < noted.length; index += 3) {
      const question = noted[index] ?? "";
      const written = noted[index + 1] ?? "";
      const path = isAbsolute(written) ? written : location + sep + written;
      if (this.#answerTo(question, path, path !== written) !== noted[index + 2]) return undefined;
      if (isOfBytes(question)) read.push(path);
    }
    return { found, read };
  }

  #answerTo(question: string, path: string, isInside: boolean): string | undefined {
    const known = this.#known(question, path);
    if (known !== undefined) return known;
    if (isInside) return answerTo(question, path);
    const key = `${question} ${path}`;
    if (!this.#answers.has(key)) this.#answers.set(key, answerTo(question, path));
    return this.#answers.get(key);
  }

  #keptOf(location: string): Line<Found> | undefined {
    const place = this.#lines.get(nameOf(location));
    if (place === undefined) return undefined;
    const bytes = this.#bytesAt(place);
    const sum = bytes.indexOf(" ") + 1;
    const from = bytes.indexOf(" ", sum) + 1;
    const json = bytes.subarray(from, -1);
    // Whatever happened to the file: what is damaged was never kept.
    const isWhole = sha256(json) === bytes.toString("latin1", sum, from - 1);
    return isWhole ? (JSON.parse(json.toString()) as Line<Found>) : undefined;
  }

  #bytesAt([from, to]: Place): Buffer {
    const bytes = Buffer.alloc(to - from);
    if (this.#before !== undefined) readSync(this.#before, bytes, 0, bytes.length, from);
    return bytes;
  }

  /** Writes it down at once: all of an archive together would take much memory. */
  keep(kept: Kept<Found>): void {
    const { identity, noted, day, ...rest } = kept;
    const inside = kept.location + sep;
    const each = new Map(
      noted.map(([question, path, answer]) => [
        `${question} ${path}`,
        [question, path.startsWith(inside) ? path.slice(inside.length) : path, answer],
      ]),
    );
    const line: Line<Found> = {
      ...rest,
      identity: sha256(identity),
      noted: [...each.values()].flat(),
      day,
    };
    const json = JSON.stringify(line);
    const name = nameOf(kept.location);
    this.#write((file) => file.add(`${name} ${sha256(json)} ${json}\n`));
    this.#renewed.add(name);
  }

  /** Puts what is new, with the rest of what was there, into its place. */
  end(): void {
    if (this.#new === undefined) return;
    this.#write((file) => {
      for (const [name, place] of this.#lines)
        if (!this.#renewed.has(name) && isFolder(name)) file.add(this.#bytesAt(place));
      file.end(() => undefined);
      clearOld(dirname(this.#file));
    });
  }

  /** Where that cannot be done, the next run takes as long as this one: nothing rests on it. */
  #write(work: (file: GrowingFile) => void): void {
    if (this.#isRefused) return;
    try {
      this.#new ??= begun(this.#file);
      work(this.#new);
    } catch {
      this.#isRefused = true;
      this.#new?.drop();
    }
  }
}

function begun(file: string): GrowingFile {
  const folder = dirname(file);
  // It quotes records, so it is for nobody else to read.
  makeFolder(folder, 0o700);
  clearLeftovers(folder);
  return new GrowingFile(file);
}

function opened(file: string): number | undefined {
  try {
    // A pipe in its place is not waited for.
    const open = openSync(file, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    const status = fstatSync(open);
    return status.isFile() && status.size <= mostBytes ? open : undefined;
  } catch {
    return undefined;
  }
}

/** By the name of its folder, where each line begins and ends. */
function linesIn(file: number): Map<string, Place> {
  const lines = new Map<string, Place>();
  const chunk = Buffer.allocUnsafeSlow(1 << 20);
  let begun = Buffer.alloc(0);
  for (let at = 0, read = readSync(file, chunk); read > 0; read = readSync(file, chunk)) {
    const bytes = Buffer.concat([begun, chunk.subarray(0, read)]);
    let from = 0;
    for (let to = bytes.indexOf("\n") + 1; to > 0; to = bytes.indexOf("\n", from) + 1) {
      const end = bytes.indexOf(" ", from);
      if (end < 0 || end > to) return lines;
      lines.set(bytes.toString("latin1", from, end), [at + from, at + to]);
      from = to;
    }
    begun = bytes.subarray(from);
    at += from;
  }
  return lines;
}

/** One word for a folder. */
const nameOf = (location: string): string => Buffer.from(location).toString("base64url");

const isFolder = (name: string): boolean =>
  statSync(Buffer.from(name, "base64url").toString(), { throwIfNoEntry: false })?.isDirectory() === true;

function folderOfUser(): string | undefined {
  const { XDG_CACHE_HOME: set = "" } = process.env;
  try {
    return join(isAbsolute(set) ? set : join(homedir(), ".cache"), "carcase");
  } catch {
    return undefined;
  }
}

/** Of files that no run has written for long, only the room that they take matters. */
function clearOld(folder: string): void {
  const files = readdirSync(folder)
    .filter((name) => /^lint-[0-9a-f]{16}\.ndjson$/.test(name))
    .map((name) => ({ file: join(folder, name), written: statSync(join(folder, name)).mtimeMs }));
  for (const { file } of files.sort((a, b) => b.written - a.written).slice(mostFiles)) rmSync(file);
}
