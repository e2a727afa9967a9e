import type { CaseRule } from "../../rule.ts";

export const basisContradictsDeath: CaseRule = {
  id: "basis-contradicts-death",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "How the pig was chosen fits how it died.",
  protects: "A pig found dead was not chosen alive for its signs; in the herd table the two count apart.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "selection: {basis: found-dead, onset: , typical: }" },
  good: {
    case: "selection: {basis: found-dead, onset: , typical: }\ndeath: {manner: found-dead, method: , note: last seen alive at 06:00}",
  },
  check(one, report) {
    const basis = one.record.selection?.basis;
    const manner = one.record.death?.manner;
    if (basis === "found-dead" && (manner === "euthanised" || manner === "slaughtered"))
      report(
        `selection.basis: found-dead, yet the pig was ${manner}. Write basis: clinical, or manner: found-dead.`,
        ["selection", "basis"],
      );
    if ((basis === "clinical" || basis === "comparison") && manner === "found-dead")
      report(
        `selection.basis: ${basis} is a pig chosen alive, and this one was found dead. Write basis: found-dead.`,
        ["selection", "basis"],
      );
  },
};
