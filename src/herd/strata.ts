/** Cases that may be counted together: never over different ways of choosing the pigs. */
import { dirname } from "node:path";
import type { Case } from "../cases/index.ts";
import { type AgeClass, ageClasses, selectionBases } from "../knowledge/index.ts";
import { grouped } from "../words/grouped.ts";
import { basisOf } from "./selection-basis.ts";

export type Dimension = "visit" | "group" | "age_class";

/** What the cases of a stratum share; null where it is not recorded. Only what was asked for is there. */
export interface Stratum {
  /** Id of the farm; only when the cases are of more than one. */
  readonly farm?: string | null;
  readonly visit?: string | null;
  /** Folder of the cases, for cases that belong to no visit. */
  readonly folder?: string;
  readonly group?: string | null;
  readonly age_class?: AgeClass | null;
}

export interface StratumOfCases {
  readonly stratum: Stratum;
  /** How the pigs were chosen; null where it is not recorded. */
  readonly basis: string | null;
  readonly cases: readonly Case[];
}

export const dimensions: readonly Dimension[] = ["visit", "group", "age_class"];

/**
 * Splits cases by what was asked for, and always by selection basis.
 *
 * Groups belong to a farm: those of two farms are apart even when they share a name. Cases without a visit file are taken
 * together by folder.
 * @returns in the order of visit (by date, then as read), group (as in the farm file, then by name), age class and basis (as in the knowledge
 *   files); what is not recorded comes last
 */
export function strata(cases: readonly Case[], by: readonly Dimension[] = dimensions): StratumOfCases[] {
  const farms = new Set(cases.map(farmFolder));
  const manyFarms = farms.size > 1 && (by.includes("visit") || by.includes("group"));
  const cells = grouped(cases, (one) =>
    JSON.stringify([
      manyFarms ? farmFolder(one) : null,
      by.includes("visit") ? (one.visit?.folder ?? ["none", dirname(one.file)]) : null,
      by.includes("group") ? (one.record.pig?.group ?? null) : null,
      by.includes("age_class") ? (one.ageClass ?? null) : null,
      basisOf(one),
    ]),
  );
  const order = manyFarms && !by.includes("visit") ? orderOf(cases, farmFolder) : orderOf(cases, visitOf);
  const found = [...cells.values()].map((inCell) => {
    const [first] = inCell;
    const place = placeOf(first, by, manyFarms, order);
    return { stratum: label(first, by, manyFarms), basis: basisOf(first), cases: inCell, place };
  });
  return found.sort((a, b) => comparePlaces(a.place, b.place)).map(({ place: _, ...rest }) => rest);
}

export const farmFolder = (one: Case): string | null => one.farm?.folder ?? null;

function label(one: Case, by: readonly Dimension[], manyFarms: boolean): Stratum {
  return {
    ...(manyFarms && { farm: one.farm?.id ?? null }),
    ...(by.includes("visit") && { visit: one.visit?.id ?? null }),
    ...(by.includes("visit") && one.visit === undefined && { folder: dirname(one.file) }),
    ...(by.includes("group") && { group: one.record.pig?.group ?? null }),
    ...(by.includes("age_class") && { age_class: one.ageClass ?? null }),
  };
}

/** Sort keys of a stratum, the most important first. */
type Place = readonly (string | number)[];
/** Past the end of all words. */
export const notRecorded = "\uffff";

function placeOf(
  one: Case,
  by: readonly Dimension[],
  manyFarms: boolean,
  order: (one: Case) => number,
): Place {
  const basis = basisOf(one);
  return [
    ...(by.includes("visit")
      ? [one.visit?.record.date ?? notRecorded, order(one)]
      : [manyFarms ? order(one) : 0]),
    ...(by.includes("group") ? groupPlace(one) : []),
    by.includes("age_class") ? orderIn(Object.keys(ageClasses.classes), one.ageClass ?? null) : 0,
    orderIn(Object.keys(selectionBases), basis),
  ];
}

const visitOf = (one: Case): string => one.visit?.folder ?? dirname(one.file);

/** Where the first case stands that shares a key with this one. */
function orderOf(cases: readonly Case[], keyOf: (one: Case) => string | null): (one: Case) => number {
  const first = new Map<string | null, number>();
  for (const [index, one] of cases.entries()) {
    const key = keyOf(one);
    if (!first.has(key)) first.set(key, index);
  }
  return (one) => first.get(keyOf(one)) ?? cases.length;
}

/** Groups stand as in the farm file; those it does not know by name after them. */
function groupPlace(one: Case): Place {
  const group = one.record.pig?.group ?? null;
  return [orderIn(Object.keys(one.farm?.record.groups ?? {}), group), group ?? notRecorded];
}

function orderIn(known: readonly string[], value: string | null): number {
  const index = value === null ? -1 : known.indexOf(value);
  return index < 0 ? known.length : index;
}

const words = new Intl.Collator("en", { numeric: true });

export function comparePlaces(a: Place, b: Place): number {
  for (const [index, left] of a.entries()) {
    const right = b[index];
    if (left === right || right === undefined) continue;
    if (typeof left === "number" && typeof right === "number") return left - right;
    if (left === notRecorded || right === notRecorded) return left === notRecorded ? 1 : -1;
    return words.compare(String(left), String(right));
  }
  return 0;
}
