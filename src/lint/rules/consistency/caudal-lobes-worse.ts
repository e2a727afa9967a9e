import { plausible } from "../../../knowledge/index.ts";
import { lobes } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

const { from, times } = plausible.caudal_lobes;
const caudalLobes = ["left_caudal", "right_caudal"];
const cranioventralLobes = ["left_cranial", "left_middle", "right_cranial", "right_middle"];

export const caudalLobesWorse: CaseRule = {
  id: "caudal-lobes-worse",
  scope: "case",
  family: "consistency",
  level: "note",
  summary: "Consolidation graded by lobe is cranioventral: the caudal lobes are not the worst.",
  protects:
    "A dorsocaudal lesion put into a cranioventral score, or two columns of lobes swapped, gives a false pneumonia score.",
  lookAlike:
    "Pleuropneumonia of the caudal lobes is true and rare in this score: describe it as a finding with distribution: caudodorsal, and accept this note.",
  source: practice(
    "lesions in cranial and middle lobes point to the airways, dorsocaudal ones do not; limits are the project’s own choice",
  ),
  bad: {
    case: "respiratory: {lungs: {consolidation: {left_cranial: 0, left_middle: 5, left_caudal: 40, right_cranial: 0, right_middle: 5, right_caudal: 30, accessory: 0}, caudal_cranial_part: {left: 10, right: 5}}}",
  },
  good: {
    case: "respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 5, right_cranial: 30, right_middle: 40, right_caudal: 5, accessory: 10}, caudal_cranial_part: {left: 10, right: 15}}}",
  },
  check(one, report) {
    const graded = lobes(one);
    if (graded === undefined || !graded.complete) return;
    const worst = (names: readonly string[]): number =>
      names.reduce((most, name) => Math.max(most, graded.values.get(name) ?? 0), 0);
    const caudal = worst(caudalLobes);
    if (caudal < from) return;
    const cranioventral = worst(cranioventralLobes);
    if (caudal > cranioventral * times)
      report(
        `respiratory.lungs.consolidation: the caudal lobes are far worse than those in front (${caudal} % against ${cranioventral} %). Check that the lobes were not swapped; a dorsocaudal lesion is a finding, not cranioventral consolidation.`,
        graded.path,
      );
  },
};
