/** What a case stands in: the settings, farm and visit files of its folder and the folders above, each read once. */
import { dirname, join, resolve, sep } from "node:path";
import type { FarmFile } from "../../generated/farm.types.ts";
import type { ResultsFile } from "../../generated/results.types.ts";
import type { SettingsFile } from "../../generated/settings.types.ts";
import type { VisitFile } from "../../generated/visit.types.ts";
import { type Fault, placedFault } from "../faults/fault.ts";
import type { Farm, HouseScale, Results, VisitContext } from "../model/model.ts";
import type { Path } from "../model/path.ts";
import { questionFaults } from "../model/question.ts";
import { type ReadScale, readHouseScales } from "../settings/house-scales.ts";
import { legibleSettings } from "../settings/legible-settings.ts";
import { buildSettings, defaultSettings, type Settings } from "../settings/settings.ts";
import { settingsFaults } from "../settings/settings-faults.ts";
import type { SourceDocument } from "../yaml/document.ts";
import { kindOf, resultsIn } from "./file-kind.ts";
import { type Beside, isBeside } from "./found.ts";
import { isIgnored, type Level, levelOf } from "./ignore-rules.ts";
import { checkDocument, type KeyedDocument, readDocument } from "./read-file.ts";
import { Repository } from "./repository.ts";
import { ShownPaths } from "./shown-paths.ts";
import { isResults } from "./whose.ts";
import { note, Remembered } from "./witness.ts";

export const settingsName = "carcase.yaml";

export class ArchiveContext {
  /** Faults of files that could not be read or, for settings, used. */
  readonly unreadable: Fault[] = [];
  /** Scale files that the settings name. */
  readonly scales: HouseScale[] = [];
  readonly repository: Repository;
  readonly beside: Beside = new Map();
  readonly #paths: ShownPaths;
  readonly #fixed: Settings | undefined;
  readonly #settings = new Map<string, Remembered<Settings>>();
  readonly #written = new WeakMap<Settings, SourceDocument>();
  readonly #excluding = new Map<Settings, Level>();
  readonly #scaleFiles = new Map<string, Remembered<ReadScale>>();
  readonly #farms = new Map<string, Remembered<Farm | undefined>>();
  readonly #farmFolders = new Map<string, Remembered<string | undefined>>();
  readonly #visits = new Map<string, Remembered<VisitContext | undefined>>();
  readonly #visitFolders = new Map<string, Remembered<string | undefined>>();

  /**
   * @param from the folder that shown paths start from; @param config a settings file that holds for everything, or false for none
   * @param asked the paths that were asked about, as written
   */
  constructor(from: string, config?: string | false, asked: readonly string[] = ["."]) {
    const written = typeof config === "string" ? [...asked, config] : asked;
    this.#paths = new ShownPaths(from, written);
    this.repository = new Repository(from, written);
    if (config === undefined) return;
    if (config === false) {
      this.#fixed = defaultSettings;
      return;
    }
    const location = resolve(from, config);
    this.#fixed = this.#readSettings(location, this.show(location));
  }

  /** The path of a file as shown to people. */
  show(location: string): string {
    return this.#paths.show(location);
  }

  settings(folder: string): Settings {
    if (this.#fixed !== undefined) return this.#fixed;
    return cached(this.#settings, folder, () => {
      const location = join(folder, settingsName);
      if (this.#has(folder, settingsName)) return this.#readSettings(location, this.show(location));
      return this.#isTop(folder) ? defaultSettings : this.settings(dirname(folder));
    });
  }

  /** The text in which settings were written; undefined for the program's own. */
  written(settings: Settings): SourceDocument | undefined {
    return this.#written.get(settings);
  }

  /** What the settings exclude of the files in a folder. */
  excluding(folder: string): Level | undefined {
    return this.#excluding.get(this.settings(folder));
  }

  farm(folder: string): Farm | undefined {
    return cached(this.#farms, folder, () => {
      if (this.#has(folder, "farm.yaml")) return this.#readFarm(join(folder, "farm.yaml"));
      const stop = this.#isTop(folder) || this.#has(folder, settingsName);
      return stop ? undefined : this.farm(dirname(folder));
    });
  }

  /** The folder of the farm that what lies in a folder belongs to; without any, the folder itself. */
  farmFolder(folder: string): string {
    return this.#farmAbove(folder) ?? folder;
  }

  #farmAbove(folder: string): string | undefined {
    return cached(this.#farmFolders, folder, () => {
      if (this.#has(folder, "farm.yaml")) return folder;
      const stop = this.#isTop(folder) || this.#has(folder, settingsName);
      return stop ? undefined : this.#farmAbove(dirname(folder));
    });
  }

  /** Whether a visit is recorded in a folder, if only in a file that cannot be read. */
  hasVisit(folder: string): boolean {
    return this.visit(folder) !== undefined || this.#has(folder, "visit.yaml");
  }

  /** The visit of a folder, without its cases. */
  visit(folder: string): VisitContext | undefined {
    return cached(this.#visits, folder, () => {
      const location = join(folder, "visit.yaml");
      return this.#has(folder, "visit.yaml") ? this.#readVisit(location) : undefined;
    });
  }

  /**
   * Where the visit of what lies in a folder is recorded: there, or in the nearest folder above that has a visit, on this
   * side of the farm, the settings and the top. Without any, the folder itself.
   */
  visitFolder(folder: string): string {
    return this.#visitAbove(folder) ?? folder;
  }

  #visitAbove(folder: string): string | undefined {
    return cached(this.#visitFolders, folder, () => {
      const has = (name: string): boolean => this.#has(folder, name);
      if (has("visit.yaml")) return folder;
      const stop = has("farm.yaml") || has(settingsName) || this.#isTop(folder);
      return stop ? undefined : this.#visitAbove(dirname(folder));
    });
  }

  /** Forgets the files of all folders but those that the next one lies in. */
  letGo(next: string | undefined): void {
    for (const store of [this.#settings, this.#farms, this.#visits, this.#visitFolders])
      for (const folder of store.keys())
        if (next === undefined || (next !== folder && !next.startsWith(join(folder, sep))))
          store.delete(folder);
  }

  /** Links that lead nowhere count too, so that a file which was meant to be there is not passed over in silence. */
  #has(folder: string, name: string): boolean {
    const location = join(folder, name);
    if (!this.isAbsent(folder, name)) return kindOf(location) !== "nothing";
    note("kind", location, () => "nothing");
    return false;
  }

  /** Whether the way to the files led through a folder, and something of this name was not there. */
  isAbsent(folder: string, name: string): boolean {
    // Not every file system tells capitals apart.
    const is = (other: string): boolean => other.toLowerCase() === name.toLowerCase();
    return isBeside(name) && this.beside.get(folder)?.some(is) === false;
  }

  /** The top of the file system, or of a git repository. */
  #isTop(folder: string): boolean {
    return dirname(folder) === folder || this.#has(folder, ".git");
  }

  #read(location: string): { file: string; document: KeyedDocument } | undefined {
    const file = this.show(location);
    const read = readDocument(file, location, this.repository);
    if (read.ok) return { file, document: read.result };
    this.unreadable.push(...read.faults);
    return undefined;
  }

  /** Settings with a fault are not used in part: what they change is not known. Whom to call is told all the same. */
  #readSettings(location: string, file: string): Settings {
    const read = readDocument(file, location, this.repository);
    if (!read.ok) {
      this.unreadable.push(...read.faults);
      return defaultSettings;
    }
    const { document } = read.result;
    const { placed, record } = checkDocument("settings", file, read.result);
    const value = record as unknown as SettingsFile;
    const faults: Fault[] = placed.map((fault) => ({ ...fault, kind: "unreadable" }));
    const place = ({ path, message }: { path: Path; message: string }): Fault =>
      placedFault({ file, document }, path, message, { kind: "unreadable" });
    const house =
      faults.length > 0
        ? undefined
        : readHouseScales(value, location, {
            show: (at) => this.show(at),
            known: this.#scaleFiles,
            repository: this.repository,
          });
    if (house !== undefined) faults.push(...settingsFaults(value, house.names).map(place));
    this.unreadable.push(...faults, ...(house?.unreadable ?? []), ...(house?.missing ?? []).map(place));
    const settings = faults.length > 0 ? legibleSettings(document.value) : buildSettings(value, file, house);
    this.#written.set(settings, document);
    if (settings.exclude.length > 0)
      this.#excluding.set(settings, levelOf(dirname(location), settings.exclude));
    for (const one of house?.files ?? [])
      if (!this.scales.some((other) => other.file === one.file)) this.scales.push({ ...one, settings });
    return settings;
  }

  #readFarm(location: string): Farm | undefined {
    const read = this.#read(location);
    if (read === undefined) return undefined;
    const { placed, record } = checkDocument("farm", read.file, read.document);
    const farm = record as unknown as FarmFile;
    const folder = dirname(location);
    return {
      file: read.file,
      document: read.document.document,
      record: farm,
      faults: placed,
      settings: this.settings(folder),
      id: farm.farm ?? read.file,
      folder,
    };
  }

  #readVisit(location: string): VisitContext | undefined {
    const read = this.#read(location);
    if (read === undefined) return undefined;
    const { placed, record } = checkDocument("visit", read.file, read.document);
    const visit = record as unknown as VisitFile;
    const folder = dirname(location);
    const settings = this.settings(folder);
    const { document } = read.document;
    const asked = questionFaults(visit, settings).map(({ path, message }) =>
      placedFault({ file: read.file, document }, path, message),
    );
    return {
      file: read.file,
      document,
      record: visit,
      faults: [...placed, ...asked],
      settings,
      id: visit.visit ?? read.file,
      folder,
      farm: this.farm(folder),
      results: this.#readResults(folder),
    };
  }

  /** The files of a folder that by name and keys hold results. */
  #readResults(folder: string): Results[] {
    const excludes = this.excluding(folder);
    return resultsIn(folder)
      .map((name) => join(folder, name))
      .filter((location) => excludes === undefined || !isIgnored(location, false, [excludes]))
      .flatMap((location) => {
        const read = this.#read(location);
        if (read === undefined || !isResults(read.document)) return [];
        const { placed, record } = checkDocument("results", read.file, read.document);
        return {
          file: read.file,
          document: read.document.document,
          record: { ...record, entries: record.entries ?? [] } as unknown as ResultsFile,
          faults: placed,
          settings: this.settings(folder),
        };
      });
  }
}

function cached<T>(store: Map<string, Remembered<T>>, key: string, make: () => T): T {
  const one = store.get(key) ?? new Remembered(make);
  store.set(key, one);
  return one.value;
}
