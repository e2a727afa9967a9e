/** Reads cases, folder by folder: from paths on the command line to typed cases, with every fault placed. */
import { dirname, join, resolve } from "node:path";
import type { CaseFile } from "../../generated/case.types.ts";
import { systems } from "../../knowledge/index.ts";
import { hiddenCharacter } from "../../words/hidden-characters.ts";
import { visible } from "../../words/visible.ts";
import { type Fault, fileFault } from "../faults/fault.ts";
import { buildCase } from "../model/build-case.ts";
import type { Archive, Case, Farm, HouseScale } from "../model/model.ts";
import { ArchiveContext } from "./archive-context.ts";
import { kindOf, sameFile } from "./file-kind.ts";
import { find, roleOf } from "./find.ts";
import type { FoundFile } from "./found.ts";
import { checkDocument, type KeyedDocument, keyedDocument, readDocument } from "./read-file.ts";
import { decode } from "./read-text.ts";

export interface ReadOptions {
  /** Folder that relative paths start from. Default: the current folder. */
  readonly from?: string;
  /** A settings file that holds for all cases instead of the nearest carcase.yaml. */
  readonly config?: string;
  /** A case given as bytes instead of a file, for the path `-`. */
  readonly input?: { readonly bytes: Uint8Array; readonly name: string };
}

/**
 * Reads all cases under the paths.
 * @param paths files, folders or globs; `-` for `options.input`
 * @returns the archive; nothing is thrown for bad files, they are listed as faults
 */
export function readCases(paths: readonly string[], options: ReadOptions = {}): Archive {
  const reader = new ArchiveReader(paths, options);
  const parts = reader.folders.map((folder) => reader.read(folder));
  const { scales, pathsWithoutCases, ...faults } = reader.end();
  const asAsked = inOrder(reader.order());
  return {
    cases: parts.flatMap(({ cases }) => cases).sort(asAsked),
    visits: parts.flatMap(({ visits }) => visits).sort(asAsked),
    farms: [...new Set(parts.flatMap(({ farms }) => farms))],
    scales,
    unreadable: allFaults([faults]),
    pathsWithoutCases,
  };
}

/** Where files come in what is said of an archive. */
export type FileOrder = ReadonlyMap<string, number>;

/** Sorts what is said of files into their order. */
export const inOrder =
  (order: FileOrder) =>
  (a: { readonly file: string }, b: { readonly file: string }): number =>
    (order.get(a.file) ?? 0) - (order.get(b.file) ?? 0);

/** The files of one folder that were asked for: a visit, if it is one, stands in one folder with its cases. */
export interface AskedFolder {
  readonly location: string;
  readonly files: readonly AskedFile[];
}

interface AskedFile {
  readonly location: string;
  readonly how: FoundFile["how"];
  /** Where it comes among all files that were asked for. */
  readonly place: number;
  /** The path that led to it, by its index. */
  readonly path: number;
  /** Bytes in place of a file that is read. */
  readonly bytes?: Uint8Array;
}

/** What was read of one folder: its visit, if there is one, with the cases, and the farms around them. */
type ReadFolder = Pick<Archive, "cases" | "visits" | "farms">;

/** What can be said only when all folders were read. */
export interface ReadEnd extends ReadFaults {
  readonly scales: readonly HouseScale[];
  readonly pathsWithoutCases: readonly string[];
}

/** Why files could not be read. */
export interface ReadFaults {
  /** Of settings, farms, visits and scales. */
  readonly around: readonly Fault[];
  /** Of the files that were asked for, and where each comes among them. */
  readonly asked: readonly { readonly fault: Fault; readonly place: number }[];
}

/** Reads an archive folder by folder, so that what was read can be let go. */
export class ArchiveReader {
  /** In the order in which they were asked for. */
  readonly folders: readonly AskedFolder[];
  readonly #context: ArchiveContext;
  readonly #paths: readonly string[];
  readonly #faults: { readonly fault: Fault; readonly place: number }[] = [];
  /** Paths that led to something that can be checked, by their index. */
  readonly #met = new Set<number>();
  #count = 0;

  constructor(paths: readonly string[], options: ReadOptions = {}) {
    const from = options.from ?? ".";
    const { bytes, name } = options.input ?? { bytes: new Uint8Array(), name: "standard input" };
    this.#paths = paths;
    this.#context = new ArchiveContext(
      from,
      options.config,
      paths.map((path) => (path === "-" ? dirname(name) : path)),
    );
    const folders = new Map<string, AskedFile[]>();
    const done = new Set<string>();
    const add = (location: string, rest: Pick<AskedFile, "how" | "path" | "bytes">): void => {
      // One path leads to each file once.
      if (paths.length > 1 && rest.bytes === undefined && roleOf(location) === "other") {
        const same = sameFile(location);
        if (done.has(same)) {
          this.#met.add(rest.path);
          return;
        }
        done.add(same);
      }
      const folder = dirname(location);
      const files = folders.get(folder) ?? [];
      files.push({ location, place: this.#count++, ...rest });
      folders.set(folder, files);
    };
    for (const [index, path] of paths.entries()) {
      if (path === "-") {
        this.#met.add(index);
        add(resolve(from, name), { how: "named", path: index, bytes });
        continue;
      }
      const found = find(path, from);
      for (const { file, message } of found.faults)
        this.#fault(fileFault(this.#context.show(resolve(from, file)), message), this.#count);
      if (found.faults.length > 0) this.#met.add(index);
      for (const { file, how } of found.files) add(resolve(from, file), { how, path: index });
    }
    this.folders = [...folders].map(([location, files]) => ({ location, files }));
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
      if (role !== "other") {
        if (how === "named" && role !== "results" && kindOf(location) !== "nothing")
          this.#met.add(asked.path);
        continue;
      }
      const result = this.#readCase(asked, folder);
      if (result === "no case") continue;
      this.#met.add(asked.path);
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
    return { cases, visits: isJoined ? [{ ...visit, cases, complete }] : [], farms: [...farms] };
  }

  /** Lets go of what was read around the folders, but for what the next one stands in. */
  letGo(next: AskedFolder | undefined): void {
    this.#context.letGo(next?.location);
  }

  /**
   * Where each case and each visit comes in what is said: cases as they were asked for; visits whose whole folder was
   * first, then those named, then those that a case led to.
   */
  order(): FileOrder {
    const order = new Map<string, number>();
    for (const { location: folder, files } of this.folders) {
      let ofVisit = Number.POSITIVE_INFINITY;
      for (const { location, how, place, bytes } of files) {
        const isVisit = bytes === undefined && roleOf(location) === "visit";
        const later = !isVisit ? 2 : how === "walked" ? 0 : 1;
        ofVisit = Math.min(ofVisit, later * this.#count + place);
        const file = this.#context.show(location);
        if (!isVisit && !order.has(file)) order.set(file, place);
      }
      order.set(this.#context.show(join(folder, "visit.yaml")), ofVisit);
    }
    return order;
  }

  end(): ReadEnd {
    return {
      scales: this.#context.scales,
      around: this.#context.unreadable,
      asked: this.#faults,
      pathsWithoutCases: this.#paths.filter((_, index) => !this.#met.has(index)).map(visible),
    };
  }

  #fault(fault: Fault, place: number): void {
    this.#faults.push({ fault, place });
  }

  #readCase(
    { location, how, place, bytes }: AskedFile,
    folder: string,
  ): Case | "no case" | "unreadable" | "left out" {
    const file = this.#context.show(location);
    if (bytes === undefined && (hiddenCharacter.test(file) || /[\n\t]/.test(file))) {
      this.#fault(fileFault(file, "its path holds characters that cannot be seen; rename it"), place);
      return "left out";
    }
    const read = bytes === undefined ? readDocument(file, location) : keyedDocument(file, decode(bytes));
    if (!read.ok) {
      for (const fault of read.faults) this.#fault(fault, place);
      return "unreadable";
    }
    if (how !== "named" && !looksLikeCase(read.result) && this.#context.visit(folder) === undefined)
      return "no case";
    return toCase(file, folder, read.result, this.#context);
  }
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

const caseKeys = [
  "case",
  "pig",
  "selection",
  "death",
  "opened",
  "alarm_check",
  ...systems.map((system) => system.id),
];

/** Other YAML files lie in a repository too; a case has at least one of the keys of a case. */
function looksLikeCase({ value }: KeyedDocument): boolean {
  return caseKeys.some((key) => Object.hasOwn(value, key));
}

/**
 * All faults of what was read, in order. Each comes once: a broken scale file is met by the settings that name it, and
 * again on the way through its folder.
 */
export function allFaults(read: readonly ReadFaults[]): Fault[] {
  const asked = read.flatMap((one) => one.asked).sort((a, b) => a.place - b.place);
  const faults = [...read.flatMap(({ around }) => around), ...asked.map(({ fault }) => fault)];
  const known = new Map(
    faults.map((fault) => [JSON.stringify([fault.file, fault.line, fault.column, fault.message]), fault]),
  );
  return [...known.values()];
}
