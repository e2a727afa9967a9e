import { plausible } from "../../../knowledge/index.ts";
import { withArticle } from "../../../words/listing.ts";
import type { CaseRule } from "../../rule.ts";

export const parityImpossible: CaseRule = {
  id: "parity-impossible",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "Only a grown sow has farrowed.",
  protects: "Parity in a male or a weaner means that two pigs or two lines were mixed up.",
  source: plausible.source,
  bad: { case: "pig: {parity: 2}" },
  good: { case: "pig: {parity: }" },
  check(one, report) {
    const { parity, sex } = one.record.pig ?? {};
    if (parity === undefined) return;
    const young =
      (one.ageDays !== undefined && one.ageDays < plausible.parity_from_days) ||
      (one.ageClass !== undefined && one.ageClass !== "adult");
    if (sex === "male" || sex === "castrate")
      report(`pig.parity: ${parity} in ${withArticle(sex)}. Correct the sex, or take the parity out.`, [
        "pig",
        "parity",
      ]);
    else if (parity > 0 && young)
      report(
        `pig.parity: ${parity} in a pig that is too young to have farrowed. Correct the age or the class, or take the parity out.`,
        ["pig", "parity"],
      );
  },
};
