/** What the results of a laboratory answer to a question about one pig. */
import type { Case } from "../cases/index.ts";
import { isAgentOf } from "../knowledge/agents.ts";
import type { Indicator } from "../knowledge/index.ts";
import { resultsOfCase, samplesOf } from "../record/index.ts";
import type { Answer } from "./answer.ts";

export type ResultQuestion = NonNullable<Indicator["result"]>;

/**
 * What the results of its own samples say of a pig: yes with a positive, no with a negative and no positive. Not graded where
 * there is nothing clear, or only a pool; not examined where nothing of the agent was tested.
 */
export function resultAnswer({ agent, test }: ResultQuestion, one: Case): Answer {
  const shared = new Set(samplesOf(one).flatMap(({ sample }) => (sample.pooled_with ? [sample.id] : [])));
  const asked = resultsOfCase(one).filter(
    ({ entry }) =>
      entry.agent !== undefined &&
      (test === undefined || entry.test === test) &&
      (isAgentOf(entry.agent, agent) || isAgentOf(agent, entry.agent)),
  );
  const single = asked.filter(({ isPool, samples }) => !isPool && !samples.some((id) => shared.has(id)));
  const said = (word: string, fits: (of: string) => boolean): boolean =>
    single.some(
      ({ entry }) => entry.interpretation === word && entry.agent !== undefined && fits(entry.agent),
    );
  // A positive of a narrower agent is one of the wider; a negative of the wider is one of the narrower.
  if (said("positive", (of) => isAgentOf(of, agent))) return "yes";
  if (said("negative", (of) => isAgentOf(agent, of))) return "no";
  return asked.length > 0 ? "not graded" : "not examined";
}
