/** What a pig is, as far as it matters for comparing: each as one word, undefined where it is not recorded. */
import { dirname } from "node:path";
import { type Case, unknownName } from "../../cases/index.ts";

export const facets = {
  farm: (one: Case): string | undefined => one.farm?.id,
  visit: (one: Case): string | undefined => one.visit?.id,
  group: (one: Case): string | undefined => one.record.pig?.group,
  age_class: (one: Case): string | undefined => one.ageClass,
  basis: (one: Case): string | undefined => one.record.selection?.basis,
  reader: (one: Case): string | undefined => one.record.examiner?.trim().replaceAll(/\s+/g, " "),
  place: (one: Case): string | undefined => {
    const manner = one.record.death?.manner;
    if (manner === undefined) return undefined;
    return manner === "slaughtered" ? "slaughter line" : "table";
  },
} as const;

export type Facet = keyof typeof facets;
export const facetNames = Object.keys(facets) as readonly Facet[];

/** What to keep: by facet, the values of which one must fit. */
export type Where = Partial<Readonly<Record<Facet, readonly string[]>>>;

/**
 * The cases that fit everything asked for.
 * @throws RangeError with the nearest value when no case has one that was asked for
 */
export function narrowed(cases: readonly Case[], where: Where): readonly Case[] {
  return facetNames.reduce((kept, facet) => {
    const wanted = where[facet];
    if (wanted === undefined) return kept;
    const known = [...new Set(cases.flatMap((one) => facets[facet](one) ?? []))];
    const unknown = wanted.find((value) => !known.includes(value));
    if (unknown !== undefined)
      throw new RangeError(
        known.length === 0
          ? `no case says its ${facet.replace("_", " ")}`
          : unknownName(unknown, known, facet.replace("_", " ")),
      );
    return kept.filter((one) => wanted.includes(facets[facet](one) ?? ""));
  }, cases);
}

/** Folder of the visit, or of the case file where there is no visit. */
export const visitFolder = (one: Case): string => one.visit?.folder ?? dirname(one.file);
