/** Reads cases, folder by folder: from paths on the command line to typed cases, with every fault placed. */
import { basename, dirname, isAbsolute, join, relative, resolve } from "node:path";
import type { CaseFile } from "../../generated/case.types.ts";
import { asWritten } from "../../words/as-written.ts";
import { grouped } from "../../words/grouped.ts";
import { hiddenCharacter } from "../../words/hidden-characters.ts";
import { sha256 } from "../../words/sha256.ts";
import { visible } from "../../words/visible.ts";
import { type Fault, fileFault } from "../faults/fault.ts";
import { buildCase } from "../model/build-case.ts";
import type { Archive, Case, Farm, HouseScale } from "../model/model.ts";
import { ArchiveContext, settingsName } from "./archive-context.ts";
import { kindOf, resultsAmong, sameFile } from "./file-kind.ts";
import { find, roleOf } from "./find.ts";
import type { FoundFile } from "./found.ts";
import { isOfBytes, readInput } from "./input.ts";
import { checkDocument, type KeyedDocument, keyedDocument, readDocument } from "./read-file.ts";
import { decode, maxBytes } from "./read-text.ts";
import { isInside } from "./shown-paths.ts";
import { hasCaseKey, isProbablyOurs, isResults, roughText, whoseDocument } from "./whose.ts";
import { type Note, witnessed } from "./witness.ts";

export interface ReadOptions {
  /** Folder that relative paths start from. Default: the current folder. */
  readonly from?: string;
  /** A settings file that holds for all cases instead of the nearest carcase.yaml. */
  readonly config?: string | false;
  /** A case given as bytes instead of a file, for the path `-`. */
  readonly input?: { readonly bytes: Uint8Array; readonly name: string };
  /** Only this of so many parts of the archive. */
  readonly shard?: Shard;
}

/** One of several parts of an archive, by whole farms: counted from 1. */
export interface Shard {
  readonly number: number;
  readonly of: number;
}

/** Told how many folders of how many are done. */
export type Told = (done: number, total: number) => void;

/**
 * Reads all cases under the paths.
 * @param paths files, folders or globs; `-` for `options.input`
 * @returns the archive; nothing is thrown for bad files, they are listed as faults
 */
export function readCases(paths: readonly string[], options: ReadOptions = {}, told?: Told): Archive {
  const reader = new ArchiveReader(paths, options);
  const parts = reader.folders.map((folder, index) => {
    const part = reader.read(folder);
    told?.(index + 1, reader.folders.length);
    return part;
  });
  const { scales, passedOver, pathsWithoutCases, ...faults } = reader.end();
  return {
    cases: parts.flatMap(({ cases }) => cases).sort(byFile),
    visits: parts.flatMap(({ visits }) => visits).sort(byFile),
    farms: [...new Set(parts.flatMap(({ farms }) => farms))].sort(byFile),
    scales,
    unreadable: allFaults([faults]),
    passedOver: [...passedOver].sort(),
    pathsWithoutCases,
  };
}

/** The one order of files, the same on every machine: by the path that is shown, whatever was asked for first. */
export const byFile = (a: { readonly file: string }, b: { readonly file: string }): number =>
  a.file < b.file ? -1 : a.file > b.file ? 1 : 0;

/** The files of one folder that were asked for; those below it as well that belong to its visit. */
export interface AskedFolder {
  readonly location: string;
  readonly files: readonly AskedFile[];
}

interface AskedFile {
  readonly location: string;
  /** As shown to people. */
  readonly file: string;
  readonly how: FoundFile["how"];
  /** The paths that led to it, by their index. */
  readonly paths: readonly number[];
  /** Bytes in place of a file that is read. */
  readonly bytes: Uint8Array | undefined;
}

/** What was read of one folder: its visit, if there is one, with the cases, and the farms around them. */
type ReadFolder = Pick<Archive, "cases" | "visits" | "farms">;

/** What can be said only when all folders were read. */
export interface ReadEnd extends ReadFaults {
  readonly scales: readonly HouseScale[];
  /** YAML files of other tools that were met on the way. */
  readonly passedOver: readonly string[];
  readonly pathsWithoutCases: readonly string[];
}

/** What reading a folder told besides its cases, as plain data: another run may be told the same without reading. */
export interface ToldBesides extends ReadFaults {
  readonly passedOver: readonly string[];
  /** Which files led to something that can be checked. */
  readonly met: readonly boolean[];
}

/** Why files could not be read. */
export interface ReadFaults {
  /** Of settings, farms, visits and scales. */
  readonly around: readonly Fault[];
  /** Of the files that were asked for. */
  readonly asked: readonly Fault[];
}

/** Reads an archive folder by folder, so that what was read can be let go. */
export class ArchiveReader {
  /** In the order of their files. */
  readonly folders: readonly AskedFolder[];
  readonly #context: ArchiveContext;
  readonly #paths: readonly string[];
  readonly #faults: Fault[] = [];
  readonly #passedOver: string[] = [];
  /** By folder, what the settings exclude of its files. */
  readonly #excluded = new Map<string, string[]>();
  /** Paths that led to something that can be checked, by their index. */
  readonly #met = new Set<number>();
  /** Files of the last folder that led to it. */
  readonly #metLast = new Set<AskedFile>();
  /** What decides, besides the files, how a folder is read and what is said of it. */
  readonly #asked: readonly unknown[];

  constructor(paths: readonly string[], options: ReadOptions = {}) {
    const from = options.from ?? ".";
    const { bytes: input, name } = options.input ?? { bytes: new Uint8Array(), name: "standard input" };
    this.#paths = paths;
    this.#context = new ArchiveContext(
      from,
      options.config,
      paths.map((path) => (path === "-" ? dirname(name) : path)),
    );
    const isBelow = (path: string): boolean =>
      !isAbsolute(path) && isInside(relative(resolve(from), resolve(from, path)));
    // Below the starting folder a file has one name, whatever was asked for.
    const named = paths.every(isBelow) ? [] : [...paths].sort();
    this.#asked = [resolve(from), options.config, named, this.#context.repository.tops];
    const asked = new Map<string | number, AskedFile>();
    const led = paths.map((_, index) => [index]);
    const isSingle = paths.length === 1;
    const add = (
      path: number,
      { file: found, location = resolve(from, found), how }: FoundFile,
      bytes?: Uint8Array,
    ): void => {
      const one = { location, file: this.#context.show(location), how, paths: led[path] ?? [], bytes };
      // Several paths may lead to a case, each under a name of its own; all else is what it is by its name.
      const isCase = bytes !== undefined || roleOf(location) === "other";
      const real = isSingle ? asked.size : isCase ? sameFile(location) : `${path} ${location}`;
      const other = asked.get(real);
      asked.set(real, other === undefined ? one : oneOfTwo(one, other, String(real)));
    };
    for (const [index, path] of paths.entries()) {
      if (path === "-") {
        this.#met.add(index);
        add(index, { file: name, how: "named" }, input);
        continue;
      }
      const excluding = (folder: string) => this.#context.excluding(folder);
      const found = find(path, from, excluding, this.#context.beside);
      for (const { file, message } of found.faults)
        this.#faults.push(fileFault(this.#context.show(resolve(from, file)), message));
      if (found.faults.length > 0) this.#met.add(index);
      for (const one of found.files) add(index, one);
      for (const file of found.excluded) {
        const location = resolve(from, file);
        const folder = this.#context.visitFolder(dirname(location));
        this.#excluded.set(folder, [...(this.#excluded.get(folder) ?? []), this.#context.show(location)]);
      }
    }
    let [last, visit] = ["", ""];
    const folders = grouped([...asked.values()].sort(byFile), ({ location }) => {
      const folder = dirname(location);
      // Mostly that of the file before.
      if (folder !== last) [last, visit] = [folder, this.#context.visitFolder(folder)];
      return visit;
    });
    const { shard } = options;
    const isOurs = (location: string): boolean =>
      shard === undefined || this.#shardOf(location, shard.of) === shard.number;
    this.folders = [...folders]
      .map(([location, files]) => ({ location, files }))
      .filter(({ location }) => isOurs(location));
    // What another part holds is not missing.
    if (shard !== undefined)
      for (const one of asked.values()) for (const path of one.paths) this.#met.add(path);
  }

  /** The same on every machine: by the path of the farm as it is shown, and so by nothing that other farms change. */
  #shardOf(location: string, of: number): number {
    const farm = this.#context.show(this.#context.farmFolder(location));
    return (Number.parseInt(sha256(asWritten(farm)).slice(0, 12), 16) % of) + 1;
  }

  /** Reads the files of one folder. */
  read({ location: folder, files }: AskedFolder): ReadFolder {
    const cases: Case[] = [];
    const farms = new Set<Farm>();
    let isBroken = false;
    let visitIs: FoundFile["how"] | "not asked for" = "not asked for";
    for (const asked of files) {
      const { location, how } = asked;
      const role = asked.bytes === undefined ? roleOf(location) : "other";
      if (role === "visit" && visitIs !== "walked") visitIs = how;
      const farm = role === "farm" ? this.#context.farm(folder) : undefined;
      if (farm !== undefined) farms.add(farm);
      if (role === "settings" && how === "named") this.#context.settings(folder);
      if (role === "results" && this.#isOfVisit(asked, folder)) {
        if (how === "named") this.#meet(asked);
        if (visitIs !== "walked") visitIs = how;
        continue;
      }
      if (role !== "other" && role !== "results") {
        if (how === "named" && kindOf(location) !== "nothing") this.#meet(asked);
        continue;
      }
      const result = this.#readCase(asked, folder, role === "results");
      if (result === "no case") continue;
      this.#meet(asked);
      if (result === "unreadable") isBroken = true;
      else if (result !== "left out") {
        cases.push(result);
        if (result.farm !== undefined) farms.add(result.farm);
      }
    }
    const visit = this.#context.visit(folder);
    const isJoined = visit !== undefined && (visitIs !== "not asked for" || cases.length > 0);
    // A case that could not be read, or whose name could not, is not absent.
    const isNameless = cases.some((one) => one.faults.some(({ path }) => path[0] === "case"));
    const complete = visitIs === "walked" && !isBroken && !isNameless;
    const read = new Set(cases.map(({ file }) => file));
    const excluded = [...new Set(this.#excluded.get(folder))].filter((file) => !read.has(file)).sort();
    const visits = isJoined ? [{ ...visit, cases, complete, excluded }] : [];
    return { cases, visits, farms: [...farms] };
  }

  /** Two folders of one identity are read alike where the same answers are given. */
  identityOf({ location, files }: AskedFolder): string {
    const asked = files.flatMap((one) => [one.location.slice(location.length), one.how]);
    return JSON.stringify([this.#asked, location, asked, this.#excluded.get(location)]);
  }

  /** Reads a folder as `read` does, and says what was told besides and what was asked for it. */
  readNoting(folder: AskedFolder): {
    readonly read: ReadFolder;
    readonly told: ToldBesides;
    readonly notes: readonly Note[];
  } {
    const [faults, passedOver] = [this.#faults.length, this.#passedOver.length];
    this.#metLast.clear();
    const { value: read, notes } = witnessed(() => this.read(folder));
    const asked = new Set(
      this.#context.unreadable.length === 0
        ? []
        : notes.flatMap(({ question, location }) =>
            isOfBytes(question) ? [this.#context.show(location)] : [],
          ),
    );
    return {
      read,
      notes,
      told: {
        around: this.#context.unreadable.filter(({ file }) => asked.has(file)),
        asked: this.#faults.slice(faults),
        passedOver: this.#passedOver.slice(passedOver),
        met: folder.files.map((one) => this.#metLast.has(one)),
      },
    };
  }

  /** By folder that was looked through, what stands in it around records. */
  get beside(): ReadonlyMap<string, readonly string[]> {
    return this.#context.beside;
  }

  /** The answer to a question about the file system, as far as the way to the files gave it. */
  answerTo(question: string, path: string): string | undefined {
    if (question === "kind")
      return this.#context.isAbsent(dirname(path), basename(path)) ? "nothing" : undefined;
    const names = question === "results" ? this.beside.get(path) : undefined;
    return names && resultsAmong(names);
  }

  /** Takes what was told of a folder in place of reading it. @param read the files that were read for it */
  tell({ files }: AskedFolder, told: ToldBesides, read: readonly string[]): void {
    this.#context.unreadable.push(...told.around);
    this.#faults.push(...told.asked);
    this.#passedOver.push(...told.passedOver);
    for (const [index, one] of files.entries()) if (told.met[index]) this.#meet(one);
    for (const location of read)
      if (basename(location) === settingsName) this.#context.settings(dirname(location));
  }

  /** Lets go of what was read around the folders, but for what the next one stands in. */
  letGo(next: AskedFolder | undefined): void {
    this.#context.letGo(next?.location);
  }

  end(): ReadEnd {
    return {
      scales: [...this.#context.scales].sort(byFile),
      around: this.#context.unreadable,
      asked: this.#faults,
      passedOver: this.#passedOver,
      pathsWithoutCases: this.#paths.filter((_, index) => !this.#met.has(index)).map(visible),
    };
  }

  /** Whether a file was read as results with the visit beside it. */
  #isOfVisit({ file }: AskedFile, folder: string): boolean {
    return this.#context.visit(folder)?.results.some((one) => one.file === file) === true;
  }

  #passOver(file: string): "no case" {
    this.#passedOver.push(file);
    return "no case";
  }

  #meet(one: AskedFile): void {
    this.#metLast.add(one);
    for (const path of one.paths) this.#met.add(path);
  }

  #readCase(
    { location, file, how, bytes }: AskedFile,
    folder: string,
    isNamedResults: boolean,
  ): Case | "no case" | "unreadable" | "left out" {
    if (bytes === undefined && (hiddenCharacter.test(file) || /[\n\t]/.test(file))) {
      this.#faults.push(fileFault(file, "its path holds characters that cannot be seen; rename it"));
      return "left out";
    }
    const read =
      bytes === undefined
        ? readDocument(file, location, this.#context.repository)
        : keyedDocument(file, decode(bytes));
    const hasVisit = this.#context.hasVisit(dirname(location));
    const isAsked = !isNamedResults && (how === "named" || hasVisit);
    if (!read.ok) {
      if (!isAsked && isAnotherTools(location)) return this.#passOver(file);
      this.#faults.push(...read.faults);
      return "unreadable";
    }
    if (isNamedResults && !isResults(read.result) && !hasCaseKey(read.result)) return "no case";
    const looksLike = isNamedResults && isResults(read.result) ? "results" : whoseDocument(read.result);
    const whose = isAsked && looksLike !== "results" ? "a case" : looksLike;
    if (whose === "another tool's") return this.#passOver(file);
    if (whose === "ours beside cases") return "no case";
    if (whose === "results") {
      const isBeside = kindOf(join(dirname(location), "visit.yaml")) !== "nothing";
      if (isNamedResults && isBeside) return "no case";
      this.#faults.push(fileFault(file, isNamedResults ? withoutVisit : namedOtherwise));
      return "left out";
    }
    if (whose !== "a case") {
      const name = whose === "a visit" ? "visit.yaml" : "farm.yaml";
      this.#faults.push(
        fileFault(
          file,
          `by its keys it is ${whose}, which is read only from a file called ${name}; rename it`,
        ),
      );
      return "left out";
    }
    return toCase(file, folder, read.result, this.#context);
  }
}

/**
 * A file that two paths led to: standard input stands for the file of its name, then what was found by its own path goes
 * before what was found by a link.
 */
function oneOfTwo(one: AskedFile, other: AskedFile, real: string): AskedFile {
  const rank = ({ bytes, location }: AskedFile): number =>
    bytes !== undefined ? 0 : location === real ? 1 : 2;
  const [first] = [one, other].sort((a, b) => rank(a) - rank(b) || byFile(a, b));
  const how = (["named", "walked", "matched"] as const).find((way) => [one.how, other.how].includes(way));
  return { ...one, ...first, how: how ?? one.how, paths: [...other.paths, ...one.paths] };
}

function toCase(file: string, folder: string, read: KeyedDocument, context: ArchiveContext): Case {
  const { placed, record, raw } = checkDocument("case", file, read);
  const visit = context.visit(folder);
  return buildCase({
    file,
    document: read.document,
    record: record as unknown as CaseFile,
    raw,
    faults: placed,
    settings: context.settings(folder),
    visit,
    farm: visit?.farm ?? context.farm(folder),
  });
}

const withoutVisit =
  "it holds results of a laboratory, and no visit.yaml lies beside it; put it into the folder of the visit that its samples are of";
const namedOtherwise =
  "by its keys it holds results of a laboratory, which are read only from a file whose name begins with results, such as results.yaml or results-pcr.yaml; rename it";

/** Whether a file that cannot be read is none of ours. Of one that is empty, or no plain file, nobody can tell. */
function isAnotherTools(location: string): boolean {
  const read = readInput(location, maxBytes);
  const text = read.ok ? roughText(read.bytes) : read.start === undefined ? "" : roughText(read.start);
  return text.trim() !== "" && !isProbablyOurs(text);
}

/**
 * All faults of what was read, in the order of files. Each comes once: a broken scale file is met by the settings that
 * name it, and again on the way through its folder.
 */
export function allFaults(read: readonly ReadFaults[]): Fault[] {
  const inOrder = (faults: Fault[]): Fault[] =>
    faults.sort((a, b) => byFile(a, b) || a.line - b.line || a.column - b.column);
  const faults = [
    ...inOrder(read.flatMap(({ around }) => around)),
    ...inOrder(read.flatMap(({ asked }) => asked)),
  ];
  const known = new Map(
    faults.map((fault) => [JSON.stringify([fault.file, fault.line, fault.column, fault.message]), fault]),
  );
  return [...known.values()];
}
