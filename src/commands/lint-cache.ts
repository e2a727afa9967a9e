/**
 * What earlier runs of `carcase lint` found, folder by folder, for those in which nothing has changed. It is told by contents
 * and never by times. It may be deleted at any moment, and what is said is the same with it and without it.
 */
import { readdirSync, rmSync, statSync } from "node:fs";
import { homedir } from "node:os";
import { isAbsolute, join, sep } from "node:path";
import { askAgain } from "../cases/files/file-kind.ts";
import { bytesAgain, isOfBytes, readInput } from "../cases/files/input.ts";
import type { Noted } from "../cases/index.ts";
import type { LintOptions } from "../lint/index.ts";
import { askPlaceAgain } from "../schemas/index.ts";
import { sha256 } from "../words/sha256.ts";
import { clearLeftovers } from "./leftovers.ts";
import { sources } from "./version.ts";
import { makeFolder, writeWhole } from "./write-file.ts";

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

/** With fewer files than this nothing is gained. */
export const worthKeeping = 100;
/** So many files are kept: one for each folder that lint was called from, with its options. */
const mostFiles = 8;
/** A larger file is none of ours. */
const mostBytes = 2 ** 30;

const questions: Readonly<Record<string, (path: string) => string>> = { ...askAgain, ...askPlaceAgain };

const answerTo = (question: string, location: string): string | undefined =>
  isOfBytes(question) ? bytesAgain(question, location) : questions[question]?.(location);

export class LintCache<Found> {
  readonly #file: string;
  readonly #day: string | undefined;
  readonly #bytes: Buffer;
  /** By folder, where its line begins and ends. */
  readonly #lines = new Map<string, readonly [from: number, to: number]>();
  readonly #new = new Map<string, Buffer>();
  /** Answers about what lies outside of the folder that was asked about: it is the same for all. */
  readonly #answers = new Map<string, string | undefined>();

  private constructor(folder: string, rules: LintOptions) {
    const { today, ...options } = rules;
    const name = sha256(JSON.stringify([sources, process.version, process.cwd(), options])).slice(0, 16);
    this.#file = join(folder, `lint-${name}.ndjson`);
    this.#day = today;
    const read = readInput(this.#file, mostBytes);
    this.#bytes = read.ok ? read.bytes : Buffer.alloc(0);
    for (let from = 0; from < this.#bytes.length; ) {
      const to = this.#bytes.indexOf("\n", from) + 1;
      const end = this.#bytes.indexOf(" ", from);
      if (to === 0 || end < 0 || end > to) break;
      this.#lines.set(this.#bytes.toString("latin1", from, end), [from, to]);
      from = to;
    }
  }

  /** @returns undefined where there is no place for one */
  static open<Found>(rules: LintOptions): LintCache<Found> | undefined {
    const folder = folderOfUser();
    return folder === undefined ? undefined : new LintCache<Found>(folder, rules);
  }

  /** What was found in a folder, where everything that it rests on is still the same. */
  find(identity: string, location: string): Kept<Found> | undefined {
    const kept = this.#keptOf(location);
    if (kept?.identity !== sha256(identity)) return undefined;
    if (kept.day !== undefined && kept.day !== this.#day) return undefined;
    const inside = location + sep;
    const noted = kept.noted.map(([question, path, answer]): Noted => {
      return [question, isAbsolute(path) ? path : inside + path, answer];
    });
    const isSame = noted.every(([question, path, answer]) => {
      if (path.startsWith(inside)) return answerTo(question, path) === answer;
      const key = `${question} ${path}`;
      if (!this.#answers.has(key)) this.#answers.set(key, answerTo(question, path));
      return this.#answers.get(key) === answer;
    });
    return isSame ? { ...kept, noted } : undefined;
  }

  #keptOf(location: string): Kept<Found> | undefined {
    const [from, to] = this.#lines.get(nameOf(location)) ?? [];
    if (from === undefined || to === undefined) return undefined;
    const [, sum = "", json = ""] = split(this.#bytes.toString("utf8", from, to - 1));
    // Whatever happened to the file: what is damaged was never kept.
    return sha256(json) === sum ? (JSON.parse(json) as Kept<Found>) : undefined;
  }

  keep(kept: Kept<Found>): void {
    const { identity, noted, day, ...rest } = kept;
    const inside = kept.location + sep;
    const each = new Map(
      noted.map(([question, path, answer]) => [
        `${question} ${path}`,
        [question, path.startsWith(inside) ? path.slice(inside.length) : path, answer],
      ]),
    );
    const json = JSON.stringify({
      ...rest,
      identity: sha256(identity),
      noted: [...each.values()],
      ...(day !== undefined && { day }),
    });
    const name = nameOf(kept.location);
    this.#new.set(name, Buffer.from(`${name} ${sha256(json)} ${json}\n`));
  }

  /** Writes what is new beside what was there. Where that cannot be done, the next run takes as long as this one. */
  write(): void {
    if (this.#new.size === 0) return;
    const before = [...this.#lines].filter(([name]) => !this.#new.has(name) && isFolder(name));
    const folder = join(this.#file, "..");
    try {
      // It quotes records, so it is for nobody else to read.
      makeFolder(folder, 0o700);
      clearLeftovers(folder);
      writeWhole(
        this.#file,
        [...before.map(([, [from, to]]) => this.#bytes.subarray(from, to)), ...this.#new.values()],
        () => undefined,
      );
      clearOld(folder);
    } catch {
      // Nothing rests on it.
    }
  }
}

/** One word for a folder. */
const nameOf = (location: string): string => Buffer.from(location).toString("base64url");

const isFolder = (name: string): boolean =>
  statSync(Buffer.from(name, "base64url").toString(), { throwIfNoEntry: false })?.isDirectory() === true;

/** A line up to its third word. */
function split(line: string): readonly string[] {
  const first = line.indexOf(" ");
  const second = line.indexOf(" ", first + 1);
  return [line.slice(0, first), line.slice(first + 1, second), line.slice(second + 1)];
}

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
