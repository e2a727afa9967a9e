import { isUnborn } from "../../../cases/index.ts";
import { signFamilies } from "../../../knowledge/index.ts";
import { withArticle } from "../../../words/listing.ts";

import type { CaseRule } from "../../rule.ts";

export const signImpossible: CaseRule = {
  id: "sign-impossible",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "Signs of a failed pregnancy are not those of a male or a weaner.",
  protects: "The sign is the sow’s: in the wrong pig it brings the wrong organs into question.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: {
    case: "pig: {sex: castrate}\nselection: {signs: [return-to-oestrus]}\nendocrine: {thyroid: normal}",
  },
  good: { case: "pig: {sex: castrate}\nselection: {signs: [cough]}" },
  check(one, report) {
    const { ageClass } = one;
    const sex = one.record.pig?.sex;
    if (ageClass === undefined || isUnborn(ageClass) || ageClass === "suckling") return;
    const sign = one.signs.find((word) => signFamilies([word]).includes("reproductive"));
    const who = sex === "male" || sex === "castrate" ? sex : ageClass === "weaner" ? ageClass : undefined;
    if (sign !== undefined && who !== undefined)
      report(
        `selection.signs: ${sign} in ${withArticle(who)}. Correct the pig, or write the sign in visit.yaml.`,
        ["selection", "signs"],
      );
  },
};
