import { impossibleInLife } from "../../../knowledge/index.ts";
import { withArticle } from "../../../words/listing.ts";
import type { CaseRule } from "../../rule.ts";

export const signImpossible: CaseRule = {
  id: "sign-impossible",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "No sign is recorded that a pig of this age and sex cannot show.",
  protects: "The sign is another pig’s: in the wrong one it brings the wrong organs into question.",
  lookAlike:
    "Signs of the dam that are written of her aborted or stillborn litter: beside abortion, stillbirth or mummies they are passed, and so is vulval discharge of a young gilt.",
  source: impossibleInLife.source,
  bad: {
    case: "pig: {sex: castrate}\nselection: {signs: [return-to-oestrus]}\nendocrine: {thyroid: normal}",
  },
  good: { case: "pig: {sex: castrate}\nselection: {signs: [cough]}" },
  check(one, report) {
    const { ageClass, signs } = one;
    if (ageClass === undefined || signs.length === 0) return;
    const { sex } = one.record.pig ?? {};
    for (const { signs: denied, classes, sexes, unless, because, instead } of rows) {
      if (!classes.includes(ageClass) || signs.some((sign) => unless?.includes(sign))) continue;
      if (sexes !== undefined && (sex === undefined || !sexes.includes(sex))) continue;
      const sign = signs.find((word) => denied.includes(word));
      if (sign === undefined) continue;
      const who = sexes === undefined ? `a pig of class ${ageClass}` : withArticle(sex ?? "");
      report(`selection.signs: ${sign} in ${who}; ${because}. ${instead}.`, ["selection", "signs"]);
      return;
    }
  },
};

const rows = Object.values(impossibleInLife.signs);
