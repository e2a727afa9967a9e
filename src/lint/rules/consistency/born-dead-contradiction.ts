import { isUnborn } from "../../../cases/index.ts";

import type { CaseRule } from "../../rule.ts";

export const bornDeadContradiction: CaseRule = {
  id: "born-dead-contradiction",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "A fetus or stillborn piglet is born dead, and no other pig is.",
  protects: "Class and manner decide what is due and where the pig is counted; here they exclude each other.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "death: {manner: born-dead, method: }" },
  good: {
    case: "death: {manner: found-dead, method: , note: last seen alive at 06:00}\nselection: {basis: found-dead, onset: , typical: }",
  },
  check(one, report) {
    const { ageClass } = one;
    const manner = one.record.death?.manner;
    if (ageClass === undefined || manner === undefined) return;
    const wrong = isUnborn(ageClass)
      ? manner === "euthanised" || manner === "slaughtered"
      : manner === "born-dead";
    if (wrong)
      report(
        `death.manner: ${manner} does not go with ${ageClass}. ${isUnborn(ageClass) ? "Write manner: born-dead, or class: suckling if it lived." : "Correct the manner, or write class: stillborn."}`,
        ["death", "manner"],
      );
  },
};
