import { formatPath } from "../../../cases/index.ts";
import { consolidations, lungRegions } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const consolidationWithoutLobes: CaseRule = {
  id: "consolidation-without-lobes",
  scope: "case",
  family: "consistency",
  silent: "alarm",
  level: "error",
  summary: "A lung with consolidation has at least one lobe above zero.",
  protects: "The finding says pneumonia and the score says none; the herd table believes the score.",
  source: practice("common practice of lung scoring: what is consolidated is graded in its lobe"),
  bad: {
    case: "respiratory: {lungs: {consolidation: {left_cranial: 0, left_middle: 0, left_caudal: 0, right_cranial: 0, right_middle: 0, right_caudal: 0, accessory: 0}, caudal_cranial_part: {left: 0, right: 0}, findings: [{process: consolidation, distribution: cranioventral, extent: 12 %, colour: dark-red, consistency: firm}]}}",
  },
  good: {
    case: "respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 5, accessory: 10}, caudal_cranial_part: {left: 0, right: 15}, findings: [{process: consolidation, distribution: cranioventral, extent: 12 %, colour: dark-red, consistency: firm}]}}",
  },
  check(one, report) {
    const regions = lungRegions(one);
    if (regions?.worst !== 0) return;
    const [lesion] = consolidations(one);
    if (lesion !== undefined)
      report(
        `${formatPath(lesion.path)}: consolidation, yet every lobe is 0. Grade the lobes, or call the lesion what it is (collapse, congestion).`,
        regions.graded.path,
      );
  },
};
