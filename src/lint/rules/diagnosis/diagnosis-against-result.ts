import { agents, isAgentOf } from "../../../knowledge/agents.ts";
import { wordIn } from "../../../notes/index.ts";
import { resultsOfCase, type StatedDiagnosis, statedDiagnoses } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";
import { resultName } from "../../shared/result-words.ts";

export const diagnosisAgainstResult: CaseRule = {
  id: "diagnosis-against-result",
  scope: "case",
  family: "diagnosis",
  level: "warning",
  silent: "never",
  summary: "A diagnosis does not name an agent that was looked for in this pig and not found.",
  protects:
    "The negative result is filed, the suspicion goes into the letter, and the farmer pays for the vaccine.",
  lookAlike:
    "A negative that says little, such as culture after treatment or PCR of fixed tissue: say under comment why the cause stands all the same.",
  source: practice("a negative result is answered, not passed over; common practice"),
  bad: {
    case: "diagnosis: {aetiologic: [Mycoplasma hyopneumoniae], basis: histology, differentials: [influenza A virus]}",
    results:
      "entries: [{sample: 01-A, test: histology, text: lymphocytic cuffs around bronchi}, {sample: 01-B, test: pcr, agent: mycoplasma-hyopneumoniae, interpretation: negative}]",
  },
  good: {
    case: "diagnosis: {aetiologic: [Mycoplasma hyopneumoniae], basis: histology, differentials: [influenza A virus]}",
    results:
      "entries: [{sample: 01-A, test: histology, text: lymphocytic cuffs around bronchi}, {sample: 01-B, test: pcr, agent: mycoplasma-hyopneumoniae, interpretation: positive}]",
  },
  check(one, report) {
    if (one.record.diagnosis === undefined || one.record.diagnosis.comment !== undefined) return;
    const results = resultsOfCase(one);
    if (results.length === 0) return;
    const found = (agent: string): boolean =>
      results.some(
        ({ entry }) =>
          entry.interpretation === "positive" &&
          entry.agent !== undefined &&
          (isAgentOf(entry.agent, agent) || isAgentOf(agent, entry.agent)),
      );
    for (const stated of statedDiagnoses(one)) {
      if (stated.comment !== undefined) continue;
      const against = results.find(
        ({ entry }) =>
          entry.interpretation === "negative" &&
          entry.agent !== undefined &&
          names(stated, entry.agent) &&
          !found(entry.agent),
      );
      if (against !== undefined)
        report(
          `"${stated.text}", yet ${resultName(against)} is negative. Correct the diagnosis, or say under comment why it stands all the same.`,
          stated.path,
        );
    }
  },
};

/** Whether a diagnosis names an agent, or a narrower one of it. */
function names({ agent: named, said }: StatedDiagnosis, agent: string): boolean {
  if (named !== undefined) return isAgentOf(named, agent);
  const { name = agent, short = [] } = agents.get(agent) ?? {};
  return (
    wordIn(said, [name.replace(/ \(.*\)$/, ""), ...short]) !== undefined &&
    !/\b(?:no|not|non|without)\b/i.test(said)
  );
}
