import { isFor, isUntreated, samplesOf } from "../../../record/index.ts";
import { type CaseRule, verified } from "../../rule.ts";
import { isAgentInQuestion } from "../../shared/asked-of-laboratory.ts";

export const treatedPig: CaseRule = {
  id: "treated-pig",
  scope: "case",
  family: "selection",
  level: "warning",
  summary: "The pig on the table was not treated.",
  protects:
    "After treatment the first agent may no longer grow, and lesions heal; an untreated acute pig from the same group says more.",
  lookAlike:
    "Iron, electrolytes or a painkiller: write antimicrobial: no beside them, and the pig counts as untreated. Where no agent is looked for or named, as in a broken leg, nothing is said.",
  source: verified(
    "Handbook of Laboratory Diagnosis in Swine, sampling at necropsy; Animal Health Laboratory, University of Guelph",
  ),
  bad: { case: "selection: {treated: {with: amoxicillin by mouth, antimicrobial: yes, last: 12 h}}" },
  good: { case: "selection: {treated: {with: iron dextran, antimicrobial: no, last: 5 d}}" },
  check(one, report) {
    const treated = one.record.selection?.treated;
    if (treated === undefined || isUntreated(one) || !isAgentInQuestion(one)) return;
    const path = ["selection", "treated"];
    const isAsked = (test: string): boolean => samplesOf(one).some(({ sample }) => isFor(sample, test));
    const pcr =
      isAsked("culture") && !isAsked("pcr")
        ? " A culture that stays sterile means nothing now: ask for PCR as well."
        : "";
    if (treated === "unknown")
      report(
        `selection.treated: nobody knows whether this pig was treated. Ask the stockperson before the pig is opened, and add an untreated one.${pcr}`,
        path,
      );
    else if (typeof treated === "object")
      report(
        `selection.treated: this pig had ${treated.with}${treated.last === undefined ? "" : ` (last: ${treated.last})`}. ${treated.antimicrobial === undefined ? "Write antimicrobial: no if that does not act on bacteria; if it does, add" : "Add"} an untreated pig in the first days of its signs, and tell the laboratory.${pcr}`,
        path,
      );
    else
      report(
        `selection.treated: say with what, and when it was last given: {with: …, last: 12 h}. Add an untreated pig in the first days of its signs.${pcr}`,
        path,
      );
  },
};
