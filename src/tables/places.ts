/** Where the rows of a folder belong, and the numbers that are written with a unit. */
import { dirname } from "node:path";
import type { Case, VisitContext } from "../cases/index.ts";
import type { Placed } from "./table.ts";

export interface OfCase extends Placed {
  readonly one: Case;
}

export const ofCase = (one: Case): OfCase => ({
  one,
  farm: one.farm?.id,
  visit: one.visit?.id,
  day: one.visit?.record.date ?? one.record.opened?.at ?? one.record.death?.at,
});

export const ofVisit = (visit: VisitContext): Placed => ({
  farm: visit.farm?.id,
  visit: visit.id,
  day: visit.record.date,
});

/** What tells the samples, bags and groups of one visit from those of another. */
export const visitPlace = ({ farm, visit, one }: Placed & { readonly one?: Case }): string =>
  JSON.stringify([farm, visit ?? (one === undefined ? null : dirname(one.file))]);

/** A value as a number, with what stands before it where it is a limit: `< 0.5`, `1:160`. */
export function measured(value: string | number | undefined): {
  readonly number: number | undefined;
  readonly limit: string | undefined;
} {
  if (typeof value === "number") return { number: value, limit: undefined };
  const [, limit, digits] = /^([<>≤≥])?\s*(?:1:)?(\d+(?:\.\d+)?)$/.exec(value ?? "") ?? [];
  return { number: digits === undefined ? undefined : Number(digits), limit };
}

/** The limits that may stand before a number. */
export const limits: readonly string[] = ["<", ">", "≤", "≥"];
