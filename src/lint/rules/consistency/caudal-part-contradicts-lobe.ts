import { plausible } from "../../../knowledge/index.ts";
import { lobes } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

const share = plausible.caudal_part_share / 100;

export const caudalPartContradictsLobe: CaseRule = {
  id: "caudal-part-contradicts-lobe",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "The cranial part of a caudal lobe fits the whole lobe.",
  protects:
    "The part lies in the lobe: nothing in the lobe is nothing in the part, and a lobe nearly all solid has a solid cranial part.",
  lookAlike:
    "Two estimates by eye, some per cent apart: the limits are wide; where the caudal lobe is small or partly lost, take the cranial part out, which one scale alone asks for.",
  source: {
    cite: "arithmetic; that the cranial part is 15 % of the lobe or more is the project’s own wide guess",
    confidence: "derived",
  },
  bad: {
    case: "respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 0, accessory: 10}, caudal_cranial_part: {left: 0, right: 15}}}",
  },
  good: {
    case: "respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 5, accessory: 10}, caudal_cranial_part: {left: 0, right: 15}}}",
  },
  check(one, report) {
    const graded = lobes(one);
    if (graded === undefined) return;
    for (const [side, part] of graded.cranialParts) {
      const lobe = graded.values.get(`${side}_caudal`);
      if (lobe === undefined) continue;
      // The part is at least `share` of the lobe: so much of the lobe it fills, and so much it leaves free.
      const low = share * part;
      const high = 100 - share * (100 - part);
      if (lobe < low || lobe > high)
        report(
          `respiratory.lungs.caudal_cranial_part.${side}: ${part} % of the cranial part and ${lobe} % of the whole ${side} caudal lobe cannot both be right. Look again and correct one; with ${part} % of the part, the lobe has ${Math.ceil(low)} to ${Math.floor(high)} %.`,
          ["respiratory", "lungs", "caudal_cranial_part", side],
        );
    }
  },
};
