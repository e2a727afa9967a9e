/** Scale files of a practice, as the settings name them: `scales: [scales/our-snout.yaml]`, or a folder. */
import { basename, dirname, join, resolve } from "node:path";
import type { SettingsFile } from "../../generated/settings.types.ts";
import type { Scale } from "../../knowledge/index.ts";
import { type Fault, placedFault } from "../faults/fault.ts";
import { kindOf, namesIn, sameFile } from "../files/file-kind.ts";
import { checkDocument, readDocument } from "../files/read-file.ts";
import type { Repository } from "../files/repository.ts";
import { isYaml } from "../files/walk.ts";
import { Remembered } from "../files/witness.ts";
import type { HouseScale } from "../model/model.ts";
import type { Path } from "../model/path.ts";
import { scaleFaults } from "./scale-faults.ts";
import type { HouseFiles } from "./settings.ts";
import { isScalePath } from "./settings-faults.ts";

/** A scale file before it is known which settings it belongs to. */
type ScaleFile = Omit<HouseScale, "settings">;

export interface HouseScales extends HouseFiles {
  readonly files: readonly ScaleFile[];
  /** Scale files of which nothing could be made. */
  readonly unreadable: readonly Fault[];
  /** Entries that lead nowhere, by their place in the settings. */
  readonly missing: readonly { readonly path: Path; readonly message: string }[];
}

export interface HouseScaleOptions {
  /** The path of a file as shown to people. */
  show(location: string): string;
  /** Scale files that were read before, by real path; those read now are added. */
  readonly known: Map<string, Remembered<ReadScale>>;
  readonly repository: Repository;
}

/** The rule of the linter that reports scale files. */
const scaleRule = "scale-format";

/**
 * Reads the scale files that settings name. What is wrong with one hides no other.
 * @param location of the settings file; entries are relative to its folder
 */
export function readHouseScales(
  settings: SettingsFile,
  location: string,
  { show, known, repository }: HouseScaleOptions,
): HouseScales {
  const files = new Map<string, ScaleFile>();
  const scales = new Map<string, Scale>();
  const unreadable: Fault[] = [];
  const missing: { path: Path; message: string }[] = [];
  const shown: string[] = [];
  for (const [index, entry] of (settings.scales ?? []).entries()) {
    if (!isScalePath(entry)) shown.push(entry);
    else {
      const found = filesAt(resolve(dirname(location), entry));
      if (found.length === 0)
        missing.push({
          path: ["scales", index],
          message: `scales[${index}]: there is no scale file at "${entry}"; the path starts from the folder of carcase.yaml.`,
        });
      for (const one of found) {
        const key = sameFile(one);
        if (files.has(key)) continue;
        const others = [...files.values()].map(({ id }) => id);
        const before = known.get(key);
        const now = new Remembered(() => readScale(one, show(one), others, repository));
        const isUsed = before !== undefined && isRead(before.value) && !others.includes(before.value.id);
        const read = isUsed ? before.value : now.value;
        if (!isRead(read)) {
          unreadable.push(...read.faults);
          continue;
        }
        if (before === undefined) known.set(key, now);
        files.set(key, read);
        if (read.scale !== undefined) scales.set(read.id, read.scale);
        shown.push(read.id);
      }
    }
  }
  const whole = unreadable.length === 0 && missing.length === 0;
  return {
    files: [...files.values()],
    scales,
    unreadable,
    missing,
    shown: [...new Set(shown)],
    names: whole ? [...files.values()].map(({ id }) => id) : null,
  };
}

/** The file, or the YAML files of a folder by name; none when nothing is there. */
function filesAt(location: string): string[] {
  const kind = kindOf(location);
  if (kind !== "folder") return kind === "nothing" ? [] : [location];
  return namesIn(location)
    .filter((name) => isYaml(name) && !name.startsWith("."))
    .map((name) => join(location, name));
}

/** A scale file, or why nothing could be made of it. */
export type ReadScale = ScaleFile | { readonly faults: readonly Fault[] };

const isRead = (read: ReadScale): read is ScaleFile => "document" in read;

function readScale(
  location: string,
  file: string,
  others: readonly string[],
  repository: Repository,
): ReadScale {
  const read = readDocument(file, location, repository);
  if (!read.ok) return { faults: read.faults };
  const { document } = read.result;
  const { placed, record } = checkDocument("scale", file, read.result);
  const written = record as Partial<Scale>;
  const faults = placed.map((fault) => ({ ...fault, message: withHint(fault), rule: scaleRule }));
  if (faults.length === 0)
    for (const { path, message } of scaleFaults(written as Scale, others))
      faults.push({ ...placedFault({ file, document }, path, message), rule: scaleRule });
  return {
    file,
    document,
    record: written,
    faults,
    id: written.id ?? basename(file).replace(/\.ya?ml$/i, ""),
    scale: faults.length === 0 ? (written as Scale) : undefined,
  };
}

/** What a scale must say, in words; the schema alone only says that it is missing. */
const hints: Readonly<Record<string, string>> = {
  source: "Write who says so: source: {cite: practice of H. Marlow 2026, confidence: common-practice}.",
  cite: "Write who says so: an author with year, a book, or your practice with the year.",
  confidence: "Write how sure it is: verified, derived, common-practice or from-memory.",
  boundary: "Write what happens exactly at a cut point, and who says so.",
  examples: "Write one worked example at least, with its value; the linter works it out.",
};

function withHint({ message, path }: Fault): string {
  const hint = hints[String(path.at(-1))];
  return hint === undefined ? message : message.replace(/( is (?:missing|left blank)\.)[^\n]*/, `$1 ${hint}`);
}
