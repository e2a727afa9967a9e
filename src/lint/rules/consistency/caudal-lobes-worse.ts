import { plausible } from "../../../knowledge/index.ts";
import { lobes } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const caudalLobesWorse: CaseRule = {
  id: "caudal-lobes-worse",
  scope: "case",
  family: "consistency",
  level: "note",
  summary: "Consolidation graded by lobe is cranioventral: the caudal lobes are not the worst.",
  protects:
    "A dorsocaudal lesion put into a cranioventral score, or two columns of lobes exchanged, gives a false pneumonia score.",
  source: {
    cite: "lesions in cranial and middle lobes point to the airways, dorsocaudal ones do not; limits are the project’s own choice",
    confidence: "common-practice",
  },
  bad: {
    case: "respiratory: {lungs: {consolidation: {left_cranial: 0, left_middle: 5, left_caudal: 40, right_cranial: 0, right_middle: 5, right_caudal: 30, accessory: 0}, caudal_cranial_part: {left: 10, right: 5}}}",
  },
  good: {
    case: "respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 5, right_cranial: 30, right_middle: 40, right_caudal: 5, accessory: 10}, caudal_cranial_part: {left: 10, right: 15}}}",
  },
  check(one, report) {
    const graded = lobes(one);
    if (graded === undefined || !graded.complete) return;
    const of = (names: readonly string[]): number =>
      Math.max(...names.map((name) => graded.values.get(name) ?? 0));
    const caudal = of(["left_caudal", "right_caudal"]);
    const cranioventral = of(["left_cranial", "left_middle", "right_cranial", "right_middle"]);
    const { from, times } = plausible.caudal_lobes;
    if (caudal >= from && caudal > cranioventral * times)
      report(
        `respiratory.lungs.consolidation: the caudal lobes are far worse than those in front (${caudal} % against ${cranioventral} %). Check that the lobes are not exchanged; a dorsocaudal lesion is a finding, not cranioventral consolidation.`,
        graded.path,
      );
  },
};
