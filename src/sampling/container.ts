/** Containers that spoil a test, from the table of the knowledge files. */
import type { Case } from "../cases/index.ts";
import { sampleRules } from "../knowledge/index.ts";
import { isSentWhole, type Sample } from "../record/index.ts";

export interface UnfitUse {
  /** Name of the entry in the table, and of the rule. */
  readonly id: string;
  readonly into: string;
  readonly tests: readonly string[];
  readonly worth: "reduced" | "doubtful";
  readonly why: string;
  readonly instead: string;
}

/** What one entry of the table says against the container of a sample, for the tests asked of it. */
export function unfitUse(one: Case, sample: Sample, id: string): UnfitUse | undefined {
  const entry = sampleRules.unfit[id];
  const { into, for: asked } = sample;
  if (entry === undefined || into === undefined || asked === undefined || !entry.into.includes(into))
    return undefined;
  const tests = entry.tests.filter((test) => asked.some((wanted) => wanted === test));
  // What is sent whole the laboratory fixes itself.
  if (tests.length === 0 || (id === "histology-unfixed" && isSentWhole(one, sample))) return undefined;
  const { worth, why, instead } = entry;
  return { id, into, tests, worth, why, instead };
}

/** What is wrong with the container of a sample for the tests asked of it. */
export const unfitContainers = (one: Case, sample: Sample): UnfitUse[] =>
  Object.keys(sampleRules.unfit).flatMap((id) => unfitUse(one, sample, id) ?? []);

/** Grams or millilitres of an amount such as `20 g`, `1 kg`, `5 ml`, `1 l`. */
export function amountOf(text: string | undefined): number | undefined {
  const match = text === undefined ? null : /^(\d+(?:\.\d+)?)\s*(g|kg|ml|l)$/.exec(text);
  if (match === null) return undefined;
  return Number(match[1]) * (match[2] === "kg" || match[2] === "l" ? 1000 : 1);
}
