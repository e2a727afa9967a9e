/** Who the pigs of the sides are: how old, and whether one stands on both. */
import type { Case } from "../../cases/index.ts";
import { summarise } from "../../statistics/index.ts";
import { grouped } from "../../words/grouped.ts";
import type { Ages } from "../comparison.ts";
import type { Side } from "./blocks.ts";

/** Ages in days; null where none is recorded. */
export function agesOf(cases: readonly Case[]): Ages | null {
  const days = cases.flatMap(({ ageDays }) => ageDays ?? []);
  const { median, min, max } = summarise(days);
  if (median === null || min === null || max === null) return null;
  return { median, least: min, greatest: max, not_recorded: cases.length - days.length };
}

/** An age class in which the sides have other ages, with the ages of each side that has it. */
export interface AgesApart {
  readonly ageClass: string;
  readonly sides: readonly { readonly title: string; readonly median: number }[];
}

/** Classes in which the medians of two sides lie more than so many days apart. */
export function agesApart(sides: readonly Side[], days: number): AgesApart[] {
  const classes = new Set(sides.flatMap(({ cases }) => cases.flatMap((one) => one.ageClass ?? [])));
  return [...classes].flatMap((ageClass) => {
    const found = sides.flatMap(({ title, cases }) => {
      const ages = agesOf(cases.filter((one) => one.ageClass === ageClass));
      return ages === null ? [] : [{ title, median: ages.median }];
    });
    const medians = found.map(({ median }) => median);
    return Math.max(...medians) - Math.min(...medians) > days ? [{ ageClass, sides: found }] : [];
  });
}

/** Tags that stand on two sides or more. */
export function recurring(sides: readonly Side[]): string[] {
  const places = sides.flatMap(({ cases }, place) =>
    cases.flatMap(({ record }) =>
      record.pig?.tag === undefined ? [] : [{ tag: String(record.pig.tag), place }],
    ),
  );
  return [...grouped(places, ({ tag }) => tag)]
    .filter(([, some]) => new Set(some.map(({ place }) => place)).size > 1)
    .map(([tag]) => tag);
}
