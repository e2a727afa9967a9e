/** The morphologic diagnoses of a case, with the organ that each names before its colon. */
import type { Case, Path } from "../cases/index.ts";
import type { PlacedOrgan } from "../knowledge/index.ts";
import { fact } from "./fact.ts";
import { namedOrgans } from "./named-organs.ts";

export interface MorphologicDiagnosis {
  readonly text: string;
  readonly path: Path;
  /** What stands before the colon; undefined without a colon. */
  readonly place: string | undefined;
  /** What stands behind it, or the whole. */
  readonly rest: string;
  readonly organs: readonly PlacedOrgan[];
}

export const morphologicDiagnoses = fact((one: Case): readonly MorphologicDiagnosis[] => {
  return (one.record.diagnosis?.morphologic ?? []).map((text, index) => {
    const colon = text.indexOf(":");
    const place = colon < 0 ? undefined : text.slice(0, colon).trim();
    return {
      text,
      path: ["diagnosis", "morphologic", index],
      place,
      rest: text.slice(colon + 1).trim(),
      organs: place === undefined ? [] : namedOrgans(place),
    };
  });
});

/** Causes that are named: everything under aetiologic but pending, unknown and the like. */
export function namedCauses(one: Case): { readonly text: string; readonly path: Path }[] {
  return (one.record.diagnosis?.aetiologic ?? [])
    .map((text, index) => ({ text, path: ["diagnosis", "aetiologic", index] }))
    .filter(({ text }) => !/^\s*(?:pending|open|unknown|undetermined|none|not|no)\b/i.test(text));
}

/** Whether the diagnosis waits for the laboratory. */
export const isPending = (one: Case): boolean =>
  one.record.diagnosis?.basis === "pending" ||
  (one.record.diagnosis?.aetiologic ?? []).some((text) => /^\s*pending\b/i.test(text));

/** Progressive atrophic rhinitis, called by that name: an aetiologic word, for it means the toxin. */
export const isCalledProgressive = (text: string): boolean =>
  /\bprogressive\b/i.test(text) &&
  !/\b(non|not)[\s-]+progressive\b/i.test(text) &&
  /rhinitis|atroph|conch|turbinate/i.test(text);
