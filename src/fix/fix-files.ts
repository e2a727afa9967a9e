/** Fixes the files of an archive that were asked for. Nothing is written here. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { find, roleOf } from "../cases/files/find.ts";
import { readText } from "../cases/files/read-text.ts";
import type { Archive, Case } from "../cases/index.ts";
import { leadsNowhere, namedSchema, schemaPlace } from "../schemas/index.ts";
import { type Sealable, sealedStateOf } from "../seals/index.ts";
import { type Fix, fixText } from "./fix-text.ts";
import type { FixedKind } from "./probe.ts";

export interface FixedFile {
  readonly file: string;
  readonly before: string;
  readonly after: string;
  readonly fixes: readonly Fix[];
}

/**
 * @param archive what was read from the paths
 * @param paths files, folders or globs; a visit or farm that a case only belongs to is not fixed
 * @returns the files of which something can be put right, in their order; those that cannot be read are not among them
 */
export function fixFiles(archive: Archive, paths: readonly string[]): FixedFile[] {
  const asked = new Set(paths.flatMap((path) => find(path, ".").files.map(({ file }) => resolve(file))));
  const files = new Map<string, FixedKind>(
    archive.cases
      .filter(isInside)
      .filter(isUnsigned)
      .map(({ file }) => [file, "case"]),
  );
  for (const { file } of [...archive.visits.filter(isUnsigned), ...archive.farms].filter(isInside)) {
    const role = roleOf(file);
    if ((role === "visit" || role === "farm") && asked.has(resolve(file))) files.set(file, role);
  }
  return [...files]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([file, kind]) => fixFile(file, kind))
    .filter((fixed) => fixed !== undefined);
}

/** Nothing is written through a link that leads out of the repository, nor shown as a difference. */
const isInside = ({ document }: Pick<Case, "document">): boolean => document.isHidden !== true;

/** What was signed off is changed by whoever signs for it, and by no program. */
const isUnsigned = (one: Sealable): boolean => ["unsealed", "broken"].includes(sealedStateOf(one).state);

/** The byte order mark of a file stays. */
const mark = "\ufeff";

function fixFile(file: string, kind: FixedKind): FixedFile | undefined {
  const read = readText(file);
  if (!read.ok) return undefined;
  const bom = readFileSync(file, "utf8").startsWith(mark) ? mark : "";
  const named = namedSchema(read.text)?.schema;
  const isWanted = named === undefined || leadsNowhere(file, named);
  const schema = isWanted ? schemaPlace(file, kind) : undefined;
  const { text, fixes } = fixText(read.text, { kind, schema });
  if (fixes.length === 0) return undefined;
  return { file, before: bom + read.text, after: bom + text, fixes };
}
