import { isFor, samplesOf } from "../../../record/index.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const cultureOfTreatedPig: CaseRule = {
  id: "culture-of-treated-pig",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "When culture is asked of a treated pig the drug is recorded.",
  protects:
    "A negative culture after an antibiotic means nothing unless the laboratory knows what was given and when.",
  lookAlike:
    "Iron, vitamins or electrolytes given to the pig hide no germ: write them, treated: {with: iron}; plain yes or unknown is asked about.",
  source: verified(
    "Handbook of Laboratory Diagnosis in Swine, sampling at necropsy: avoid systemically treated pigs",
  ),
  bad: {
    case: "selection: {treated: unknown}\naccepted: [{rule: treated-pig, because: the only pig that was left}]",
  },
  good: {
    case: "selection: {treated: {with: amoxicillin by mouth, last: 12 h}}\naccepted: [{rule: treated-pig, because: the only pig that was left}]",
  },
  check(one, report) {
    const treated = one.record.selection?.treated;
    if (treated !== "yes" && treated !== true && treated !== "unknown") return;
    const culture = samplesOf(one).find(({ sample }) => isFor(sample, "culture"));
    if (culture !== undefined)
      report(
        `samples[${culture.index}].for: culture is asked of a pig that was ${treated === "unknown" ? "perhaps treated" : "treated"}, and the drug is not recorded. Write selection.treated: {with: …, last: 12 h}, and ask for PCR as well.`,
        ["samples", culture.index, "for"],
      );
  },
};
