/** Reads an archive: from paths on the command line to typed cases, with every fault placed. */
import { dirname, resolve } from "node:path";
import type { CaseFile } from "../../generated/case.types.ts";
import { systems } from "../../knowledge/index.ts";
import { hiddenCharacter } from "../../words/hidden-characters.ts";
import { visible } from "../../words/visible.ts";
import { type Fault, fileFault } from "../faults/fault.ts";
import type { Validated } from "../faults/validate.ts";
import { buildCase } from "../model/build-case.ts";
import type { Archive, Case } from "../model/model.ts";
import { asIntended } from "../slips/as-intended.ts";
import { ArchiveContext } from "./archive-context.ts";
import { kindOf, sameFile } from "./file-kind.ts";
import { find, roleOf } from "./find.ts";
import type { Found, FoundFile } from "./found.ts";
import { joinVisits } from "./join-visits.ts";
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
  const from = options.from ?? ".";
  const { bytes, name } = options.input ?? { bytes: new Uint8Array(), name: "standard input" };
  const inputFolder = dirname(name);
  const asked = paths.map((path) => (path === "-" ? inputFolder : path));
  const context = new ArchiveContext(from, options.config, asked);
  const unreadable: Fault[] = [];
  const pathsWithoutCases: string[] = [];
  const cases: Case[] = [];
  const walkedVisits = new Set<string>();
  const askedVisits = new Set<string>();
  const brokenFolders = new Set<string>();
  const askedFarms = new Set<string>();
  const done = new Set<string>();

  const add = (
    file: string,
    folder: string,
    read: ReturnType<typeof readDocument>,
    how: FoundFile["how"],
  ): boolean => {
    if (!read.ok) {
      unreadable.push(...read.faults);
      brokenFolders.add(folder);
      return true;
    }
    if (how !== "named" && !looksLikeCase(read.result) && context.visit(folder) === undefined) return false;
    cases.push(toCase(file, folder, read.result, context));
    return true;
  };

  /** @returns whether the file is, or was to be, something that can be checked */
  const addFile = ({ file: found, how }: FoundFile): boolean => {
    const location = resolve(from, found);
    const file = context.show(location);
    const folder = dirname(location);
    const role = roleOf(file);
    if (role === "visit") (how === "walked" ? walkedVisits : askedVisits).add(folder);
    if (role === "farm") askedFarms.add(folder);
    if (role === "settings" && how === "named") context.settings(folder);
    if (role !== "other") return how === "named" && role !== "results" && kindOf(location) !== "nothing";
    const same = sameFile(location);
    if (done.has(same)) return true;
    done.add(same);
    if (hiddenCharacter.test(file) || /[\n\t]/.test(file)) {
      unreadable.push(fileFault(file, "its path holds characters that cannot be seen; rename it"));
      return true;
    }
    return add(file, folder, readDocument(file, location), how);
  };

  for (const path of paths) {
    if (path === "-") {
      const location = resolve(from, name);
      const file = context.show(location);
      add(file, dirname(location), keyedDocument(file, decode(bytes)), "named");
      continue;
    }
    const found: Found = find(path, from);
    unreadable.push(
      ...found.faults.map(({ file, message }) => fileFault(context.show(resolve(from, file)), message)),
    );
    const any = found.files.map(addFile).some(Boolean);
    if (!any && found.faults.length === 0) pathsWithoutCases.push(visible(path));
  }

  const visits = joinVisits(cases, {
    walked: walkedVisits,
    asked: askedVisits,
    broken: brokenFolders,
    visit: (folder) => context.visit(folder),
  });
  const farms = [...askedFarms].map((folder) => context.farm(folder));
  const touched = new Set([...farms, ...cases.map((one) => one.farm)].filter((farm) => farm !== undefined));
  return {
    cases,
    visits,
    farms: [...touched],
    scales: context.scales,
    unreadable: once([...context.unreadable, ...unreadable]),
    pathsWithoutCases,
  };
}

function toCase(file: string, folder: string, read: KeyedDocument, context: ArchiveContext): Case {
  const { placed, record, raw } = checkDocument("case", file, read);
  const visit = context.visit(folder);
  const build = (valid: Pick<Validated, "record" | "raw">, meant: Case | undefined): Case =>
    buildCase({
      file,
      document: read.document,
      record: valid.record as unknown as CaseFile,
      raw: valid.raw,
      faults: placed,
      settings: context.settings(folder),
      visit,
      farm: visit?.farm ?? context.farm(folder),
      asIntended: meant,
    });
  return build(
    { record, raw },
    placed.length === 0 ? undefined : build(asIntended("case", read.value), undefined),
  );
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

/** Each fault once: a broken scale file is met by the settings that name it, and again on the way through its folder. */
function once(faults: readonly Fault[]): Fault[] {
  const known = new Map(
    faults.map((fault) => [JSON.stringify([fault.file, fault.line, fault.column, fault.message]), fault]),
  );
  return [...known.values()];
}
