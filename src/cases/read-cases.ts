/** Reads an archive: from paths on the command line to typed cases, with every fault placed. */
import { dirname, resolve } from "node:path";
import type { CaseFile } from "../generated/case.types.ts";
import { systems } from "../knowledge/index.ts";
import { visible } from "../words/visible.ts";
import { buildCase } from "./build-case.ts";
import { type Fault, fileFault } from "./fault.ts";
import { type Found, find, roleOf } from "./find.ts";
import type { Archive, Case, Visit } from "./model.ts";
import { checkDocument, type KeyedDocument, keyedDocument, readDocument } from "./read-file.ts";
import { controlCharacter, decode } from "./read-text.ts";
import { Surroundings } from "./surroundings.ts";

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
  const from = options.from ?? ".";
  const surroundings = new Surroundings(from, options.config);
  const unreadable: Fault[] = [];
  const pathsWithoutCases: string[] = [];
  const cases: Case[] = [];
  const walkedVisits = new Set<string>();
  const walkedFarms = new Set<string>();
  const done = new Set<string>();

  const add = (
    file: string,
    folder: string,
    read: ReturnType<typeof readDocument>,
    named: boolean,
  ): boolean => {
    if (!read.ok) {
      unreadable.push(...read.faults);
      return true;
    }
    if (!named && !looksLikeCase(read.result) && surroundings.visit(folder) === undefined) return false;
    cases.push(toCase(file, folder, read.result, surroundings));
    return true;
  };

  const addFile = (file: string, named: boolean): boolean => {
    const location = resolve(from, file);
    const role = roleOf(file);
    const folder = dirname(location);
    if (role === "visit" && !named) walkedVisits.add(folder);
    if (role === "farm" && !named) walkedFarms.add(folder);
    if (role !== "other") return false;
    if (done.has(location)) return true;
    done.add(location);
    if (controlCharacter.test(file)) {
      unreadable.push(fileFault(file, "its name holds control characters; rename it"));
      return true;
    }
    return add(file, folder, readDocument(file, location), named);
  };

  for (const path of paths) {
    if (path === "-") {
      const { bytes, name } = options.input ?? { bytes: new Uint8Array(), name: "standard input" };
      add(name, dirname(resolve(from, name)), keyedDocument(name, decode(bytes)), true);
      continue;
    }
    const found: Found = find(path, from);
    unreadable.push(...found.faults.map(({ file, message }) => fileFault(file, message)));
    const any = found.files.map(({ file, named }) => addFile(file, named)).some(Boolean);
    if (!any && found.faults.length === 0) pathsWithoutCases.push(visible(path));
  }

  const visits = joinVisits(cases, walkedVisits, surroundings);
  const farms = [...walkedFarms].map((folder) => surroundings.farm(folder));
  const touched = new Set([...farms, ...cases.map((one) => one.farm)].filter((farm) => farm !== undefined));
  return {
    cases,
    visits,
    farms: [...touched],
    unreadable: [...surroundings.unreadable, ...unreadable],
    pathsWithoutCases,
  };
}

function toCase(file: string, folder: string, read: KeyedDocument, surroundings: Surroundings): Case {
  const { placed, record, raw } = checkDocument("case", file, read);
  const visit = surroundings.visit(folder);
  return buildCase({
    file,
    document: read.document,
    record: record as unknown as CaseFile,
    raw,
    faults: placed,
    settings: surroundings.settings(folder),
    visit,
    farm: visit?.farm ?? surroundings.farm(folder),
  });
}

/** Visits with the cases of their folder, in the order of the cases, then visits without any. */
function joinVisits(
  cases: readonly Case[],
  walked: ReadonlySet<string>,
  surroundings: Surroundings,
): Visit[] {
  const byFolder = new Map<string, Case[]>();
  for (const folder of walked) byFolder.set(folder, []);
  for (const one of cases) {
    if (one.visit === undefined) continue;
    const folder = one.visit.folder;
    byFolder.set(folder, [...(byFolder.get(folder) ?? []), one]);
  }
  return [...byFolder].flatMap(([folder, inVisit]) => {
    const visit = surroundings.visit(folder);
    return visit === undefined ? [] : [{ ...visit, cases: inVisit, complete: walked.has(folder) }];
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
