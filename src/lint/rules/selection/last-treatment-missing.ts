import { isUntreated } from "../../../record/index.ts";
import { type CaseRule, fromMemory } from "../../rule.ts";
import { isAgentInQuestion } from "../../shared/asked-of-laboratory.ts";

export const lastTreatmentMissing: CaseRule = {
  id: "last-treatment-missing",
  scope: "case",
  family: "selection",
  level: "warning",
  summary: "A treated pig says when it was last treated.",
  protects:
    "A culture twelve hours after an antibiotic means nothing; after two weeks it means nearly everything.",
  lookAlike:
    "Medicine in the water until the last day: last: 0 h says so. Iron, vitamins and electrolytes are passed with antimicrobial: no beside them; so is a pig in which no agent is looked for or named.",
  source: fromMemory(
    "Animal Health Laboratory, University of Guelph, submission of treated animals; the intervals from memory",
  ),
  bad: {
    case: "selection: {treated: {with: amoxicillin by mouth}}\naccepted: [{rule: treated-pig, because: the whole room is on it}]",
  },
  good: {
    case: "selection: {treated: {with: amoxicillin by mouth, last: 12 h}}\naccepted: [{rule: treated-pig, because: the whole room is on it}]",
  },
  check(one, report) {
    const treated = one.record.selection?.treated;
    if (
      typeof treated === "object" &&
      treated.last === undefined &&
      !isUntreated(one) &&
      isAgentInQuestion(one)
    )
      report(
        `selection.treated: ${treated.with}, and nothing says when it was last given. Add last: 12 h, or the day.`,
        ["selection", "treated"],
      );
  },
};
