import { isUnborn } from "../../../cases/index.ts";

import type { CaseRule } from "../../rule.ts";

export const crownRumpOfBornPig: CaseRule = {
  id: "crown-rump-of-born-pig",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "Only a fetus or a stillborn piglet has a crown-rump length.",
  protects:
    "The length dates a pregnancy; in a pig that lived, it shows that the class is wrong or the line is from another case.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "pig: {crown_rump: 27 cm}" },
  good: { case: "pig: {crown_rump: }" },
  check(one, report) {
    const { ageClass } = one;
    if (one.record.pig?.crown_rump === undefined || ageClass === undefined || isUnborn(ageClass)) return;
    report(
      `pig.crown_rump: measured in a pig of class ${ageClass}. Take it out, or write class: mummy, aborted or stillborn.`,
      ["pig", "crown_rump"],
    );
  },
};
