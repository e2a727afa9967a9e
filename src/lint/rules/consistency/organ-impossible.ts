import { organs } from "../../../knowledge/index.ts";
import { forbids, isOfUnborn } from "../../../record/index.ts";
import { withArticle } from "../../../words/listing.ts";
import { type CaseRule, practice } from "../../rule.ts";

/** Organs that not every pig has. */
const limited = organs.filter((organ) => organ.definition.sex !== undefined || isOfUnborn(organ));

export const organImpossible: CaseRule = {
  id: "organ-impossible",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "No organ is recorded that this pig cannot have.",
  protects:
    "A uterus in a castrate or a placenta in a weaner means a wrong line, a wrong sex or the wrong pig.",
  lookAlike:
    "A testis left in a castrate, recorded with its finding, is passed. A pig of both sexes: write pig.sex after the organs that you found, and the rest in a note.",
  source: practice("anatomy of the pig"),
  bad: { case: "pig: {sex: castrate}\ngenital: {uterus: normal}" },
  good: { case: "pig: {sex: female}\ngenital: {uterus: normal}" },
  check(one, report) {
    const { ageClass } = one;
    const sex = one.record.pig?.sex;
    for (const organ of limited) {
      if (!Object.hasOwn(one.record, organ.system)) continue;
      const { status, path, bySystem } = one.organ(organ);
      if (bySystem || (status !== "normal" && status !== "recorded")) continue;
      const forbidden = forbids(one, organ);
      if (forbidden === "sex" && sex !== undefined)
        report(
          `${organ.id}: recorded in ${withArticle(sex)}, which has none. Correct pig.sex, or take the organ out.`,
          path,
        );
      else if (forbidden === "class")
        report(
          `${organ.id}: recorded in a pig of class ${ageClass}, which has none. Correct the age class, or take the organ out.`,
          path,
        );
    }
  },
};
