/** What is linted anew when files change. */
import { existsSync } from "node:fs";
import { basename, dirname, join, relative } from "node:path";
import { isInside } from "../cases/files/shown-paths.ts";

/** What of an archive is linted. */
export interface Part {
  /** Folders by their real paths; with all that lies below them. */
  readonly within: readonly string[];
  /** The folder in whose place the archive is read. */
  readonly from?: string;
  /** Cases whose findings are shown; all where it is left out. */
  readonly shown?: readonly string[];
  /** What to say where there is no such folder. */
  readonly nothing?: string;
}

export const isWithin = (folder: string, within: readonly string[]): boolean =>
  within.some((one) => isInside(relative(one, folder)));

/** Files that a lint reads: cases and what stands around them, tracings, and what git ignores. */
export const isRead = (file: string): boolean =>
  /\.(?:ya?ml|svg|geojson|json)$|^\.gitignore$/i.test(basename(file));

const around = ["visit.yaml", "farm.yaml", "carcase.yaml"];

/**
 * A case is judged with its visit, so the folder of the visit is linted; where there is none, or a farm, settings, a scale
 * or a tracing changed, the folder of the nearest visit, farm or settings.
 */
export function affectedFolders(files: readonly string[]): string[] {
  return [...new Set(files.filter(isRead).map((file) => recordAround(dirname(file)) ?? dirname(file)))];
}

function recordAround(folder: string): string | undefined {
  if (around.some((name) => existsSync(join(folder, name)))) return folder;
  const isTop = dirname(folder) === folder || existsSync(join(folder, ".git"));
  return isTop ? undefined : recordAround(dirname(folder));
}
