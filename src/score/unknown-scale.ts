/** What somebody meant who wrote a name that is no scale: several scales of one author are all told. */
import { listing } from "../words/listing.ts";
import { nearest } from "../words/nearest.ts";

const most = 4;

/**
 * `there is no scale "madec". Did you mean madec-kobisch-1982 or madec-leneveu-2011?` Names that have all written parts
 * (`lungs`, `leneveu`, `kobisch 1982`) come first; where there are none, the one that is few letters away.
 * @param known names of all scales
 */
export function unknownScale(written: string, known: readonly string[]): string {
  const names = alike(written, known);
  const help =
    names.length === 0
      ? `None of the ${known.length} names is near; carcase explain lists them.`
      : `Did you mean ${listing(names.slice(0, most), "or")}?`;
  return `there is no scale "${written}". ${help}`;
}

function alike(written: string, known: readonly string[]): string[] {
  const parts = partsOf(written);
  const begun = known.filter((name) =>
    parts.every((part) => partsOf(name).some((one) => one.startsWith(part))),
  );
  if (parts.some((part) => part.length > 1) && begun.length > 0) return [...begun].sort();
  const one = nearest(written, known) ?? nearest(parts[0] ?? "", known.map(firstPart));
  return known.filter((name) => name === one || (one !== undefined && firstPart(name) === one));
}

const partsOf = (name: string): string[] =>
  name
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((part) => part !== "");
const firstPart = (name: string): string => partsOf(name)[0] ?? "";
