/** One fault of a settings file, and names that do not exist. */
import { listing } from "../../words/listing.ts";
import { nearest } from "../../words/nearest.ts";
import { formatPath, type Path } from "../model/path.ts";

export interface SettingsFault {
  readonly path: Path;
  readonly message: string;
}

/** Longer lists of names are not printed. */
const longList = 12;

/** `there is no scale "x". Did you mean y?` */
export function unknownName(name: string, known: readonly string[], what: string): string {
  const guess = nearest(name, known);
  const there =
    known.length > longList ? `None of the ${known.length} names is near.` : `There are ${listing(known)}.`;
  return `there is no ${what} "${name}". ${guess === undefined ? there : `Did you mean ${guess}?`}`;
}

export const fault = (path: Path, message: string): SettingsFault[] => [
  { path, message: `${formatPath(path)}: ${message}` },
];

export const checkName = (
  path: Path,
  name: string,
  known: readonly string[],
  what: string,
): SettingsFault[] => (known.includes(name) ? [] : fault(path, unknownName(name, known, what)));
