/** Containers that spoil a test, from the table of the knowledge files. */
import { sampleRules } from "../knowledge/index.ts";
import type { Sample } from "../record/index.ts";

export interface UnfitUse {
  /** Name of the entry in the table, and of the rule. */
  readonly id: string;
  readonly into: string;
  readonly tests: readonly string[];
  readonly worth: "reduced" | "doubtful";
  readonly why: string;
  readonly instead: string;
}

/** What is wrong with the container of a sample for the tests asked of it. */
export function unfitContainers(sample: Sample): UnfitUse[] {
  const { into, for: asked = [] } = sample;
  if (into === undefined) return [];
  return Object.entries(sampleRules.unfit).flatMap(
    ([id, { tests, into: containers, worth, why, instead }]) => {
      const spoilt = tests.filter((test) => asked.some((one) => one === test));
      if (spoilt.length === 0 || !containers.includes(into)) return [];
      return [{ id, into, tests: spoilt, worth, why, instead }];
    },
  );
}

/** Grams or millilitres of an amount such as `20 g`, `1 kg`, `5 ml`, `1 l`. */
export function amountOf(text: string | undefined): number | undefined {
  const match = text === undefined ? null : /^(\d+(?:\.\d+)?)\s*(g|kg|ml|l)$/.exec(text);
  if (match === null) return undefined;
  return Number(match[1]) * (match[2] === "kg" || match[2] === "l" ? 1000 : 1);
}
