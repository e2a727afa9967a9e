/** What laboratories answered about the agents of a disease. A positive alone does not prove it, and a negative alone does not exclude it. */
import { isAgentOf } from "../knowledge/agents.ts";
import type { Criterion, Disease } from "../knowledge/diseases.ts";
import type { Subject } from "../patterns/index.ts";
import { type PlacedResult, resultsOf, resultsOfCase, samplesOf, speaksOf } from "../record/index.ts";
import { isOf } from "./samples.ts";
import { casesOf } from "./statements.ts";

export interface ResultsInHand {
  readonly positive: readonly PlacedResult[];
  readonly negative: readonly PlacedResult[];
  /** Whether all of its agents were looked for, and none was found. */
  readonly isNegative: boolean;
}

const resultsIn = (subject: Subject): readonly PlacedResult[] =>
  "cases" in subject ? resultsOf(subject) : resultsOfCase(subject);

export function resultsInHand({ agents }: Disease, subject: Subject): ResultsInHand {
  const results = resultsIn(subject);
  const positive = results.filter((one) => isPositive(one) && agents.some((agent) => speaksOf(one, agent)));
  const negative = results.filter((one) => agents.some((agent) => denies(one, agent)));
  const isNegative =
    positive.length === 0 &&
    negative.length > 0 &&
    agents.every((agent) => negative.some((one) => denies(one, agent)));
  return { positive, negative, isNegative };
}

const isPositive = ({ entry }: PlacedResult): boolean => entry.interpretation === "positive";

/** Where the wider agent is not there, no narrower one is. */
const denies = ({ entry }: PlacedResult, agent: string): boolean =>
  entry.interpretation === "negative" && entry.agent !== undefined && isAgentOf(agent, entry.agent);

/** How the results answer a criterion that only a laboratory can answer. */
export function answered(
  { test, agent, sample }: Criterion,
  subject: Subject,
): { readonly is: "met" | "not-met" | "to-read"; readonly results: readonly PlacedResult[] } | undefined {
  const ids = new Set(
    casesOf(subject).flatMap((one) =>
      samplesOf(one).flatMap(({ sample: { id, from } }) =>
        id !== undefined && sample !== undefined && isOf(from, sample) ? [id] : [],
      ),
    ),
  );
  const results = resultsIn(subject).filter(({ samples }) => samples.some((id) => ids.has(id)));
  if (agent === undefined) {
    const read = results.filter(({ entry }) => entry.test === test);
    return read.length === 0 ? undefined : { is: "to-read", results: read };
  }
  const positive = results.filter((one) => isPositive(one) && speaksOf(one, agent));
  if (positive.length > 0) return { is: "met", results: positive };
  const negative = results.filter((one) => denies(one, agent));
  return negative.length === 0 ? undefined : { is: "not-met", results: negative };
}
