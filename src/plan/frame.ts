/** The list that pigs are drawn from: ear tags from a file, or the pigs or pens of a farm's groups. */
import type { FarmFile } from "../generated/farm.types.ts";
import { choosingPigs } from "../knowledge/index.ts";
import { count, listing } from "../words/listing.ts";
import { nearest } from "../words/nearest.ts";

/** One thing that can be drawn. */
export interface Unit {
  /** As written in the list, or `nursery-1 pig 57`. */
  readonly tag: string;
  /** The group it belongs to; null in a list of tags. */
  readonly group: string | null;
}

/** More units than this are a mistake. */
const mostUnits = 1_000_000;

/**
 * Ear tags from a text, one a line; blanks around a tag and empty lines are dropped.
 *
 * @throws RangeError when there is no tag, a line is the heading of a table or has several columns, or a tag stands
 *   there twice (the lines are named).
 */
export function tagsFrame(text: string): Unit[] {
  const lineOf = new Map<string, number>();
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    const tag = line.trim();
    if (tag === "") continue;
    requireTag(tag, index + 1, lineOf.size === 0);
    const before = lineOf.get(tag);
    if (before !== undefined) {
      throw new RangeError(
        `line ${index + 1}: the tag ${tag} stands in line ${before} already; a pig that is listed twice would be drawn twice as often, so take one line out`,
      );
    }
    lineOf.set(tag, index + 1);
  }
  if (lineOf.size === 0) throw new RangeError("there is no tag in the list; write one tag a line");
  return [...lineOf.keys()].map((tag) => ({ tag, group: null }));
}

/** Whether a line names the column and no pig. */
export function isHeading(line: string): boolean {
  const words = line.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  return choosingPigs.headings.words.includes(words.join(" "));
}

function requireTag(tag: string, line: number, first: boolean): void {
  if (/[,;\t]/.test(tag))
    throw new RangeError(
      `line ${line}: "${tag}" has several columns, and the whole line would be drawn as a tag; write the tags alone, one a line`,
    );
  if (first && isHeading(tag))
    throw new RangeError(
      `line ${line}: "${tag}" looks like the heading of the list and would be drawn as a pig; take the line out`,
    );
}

/** What may be drawn from a farm. */
export interface FarmFrameOptions {
  /** Names of groups; all groups when left out. */
  readonly groups?: readonly string[];
  /** Single pigs, numbered through each group, or whole pens. */
  readonly unit: "pigs" | "pens";
}

/**
 * The pigs, numbered from 1 to the head count of each group, or the pens of a farm.
 *
 * @throws RangeError when a group does not exist, or its heads or pens are not given.
 */
export function farmFrame(farm: Pick<FarmFile, "groups">, { groups, unit }: FarmFrameOptions): Unit[] {
  const known = farm.groups ?? {};
  const names = groups ?? Object.keys(known);
  if (names.length === 0) {
    throw new RangeError(
      groups === undefined
        ? "the farm file has no groups; write them under groups:"
        : `no group is named; the farm file has ${listing(Object.keys(known))}`,
    );
  }
  const key = unit === "pens" ? "pens" : "head";
  const sizes = names.map((name) => {
    const group = Object.hasOwn(known, name) ? known[name] : undefined;
    if (group === undefined) throw new RangeError(unknownGroup(name, Object.keys(known)));
    const size = group[key];
    if (size === undefined)
      throw new RangeError(
        `the group ${name} has no ${key}: in the farm file; write how many there are, or leave the group out`,
      );
    return { name, size };
  });
  const all = sizes.reduce((sum, { size }) => sum + size, 0);
  if (all > mostUnits)
    throw new RangeError(`the groups hold ${count(all, "pig")}; at most ${mostUnits} can be drawn from`);
  const word = unit === "pens" ? "pen" : "pig";
  return sizes.flatMap(({ name, size }) =>
    Array.from({ length: size }, (_, i) => ({ tag: `${name} ${word} ${i + 1}`, group: name })),
  );
}

function unknownGroup(name: string, known: readonly string[]): string {
  const near = nearest(name, known);
  const hint = near === undefined ? `the farm file has ${listing(known)}` : `did you mean ${near}?`;
  return `there is no group ${name}; ${hint}`;
}
