import { formatPath } from "../../../cases/index.ts";
import { lesions, lungRegions } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const distributionContradictsLobes: CaseRule = {
  id: "distribution-contradicts-lobes",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "A consolidation called caudodorsal or cranioventral lies where its lobes were graded.",
  protects:
    "Cranioventral points to the airways, caudodorsal to the blood or to pleuropneumonia; the word and the lobes send to different laboratories.",
  source: { cite: "meaning of the words", confidence: "common-practice" },
  bad: {
    case: "respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 0, accessory: 10}, caudal_cranial_part: {left: 0, right: 0}, findings: [{process: consolidation, distribution: caudodorsal, extent: 12 %, colour: dark-red, consistency: firm}]}}\ndiagnosis: ",
  },
  good: {
    case: "respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 0, accessory: 10}, caudal_cranial_part: {left: 0, right: 0}, findings: [{process: consolidation, distribution: cranioventral, extent: 12 %, colour: dark-red, consistency: firm}]}}\ndiagnosis: ",
  },
  check(one, report) {
    const regions = lungRegions(one);
    if (regions === undefined) return;
    const found = lesions(one, { processes: ["consolidation"], within: ["respiratory.lungs"] });
    const { onlyCranioventral, onlyCaudal } = regions;
    // A second consolidation may be the one that the lobes speak of.
    for (const { word, against, lobes } of [
      { word: "caudodorsal", against: onlyCranioventral, lobes: "both caudal lobes are 0" },
      { word: "cranioventral", against: onlyCaudal, lobes: "only the caudal lobes are above 0" },
    ])
      if (against && found.every(({ finding }) => finding.distribution === word))
        for (const { path } of found)
          report(
            `${formatPath([...path, "distribution"])}: ${word}, but ${lobes} in consolidation. Correct the word or the lobes.`,
            [...path, "distribution"],
          );
  },
};
