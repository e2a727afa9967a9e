import { formatPath } from "../../../cases/index.ts";
import { extentPercent, lesions, lobes } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const extentContradictsLobes: CaseRule = {
  id: "extent-contradicts-lobes",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "The share of the lung that is consolidated lies within that of its lobes.",
  protects: "No lung is more consolidated than its worst lobe; one of the figures is of something else.",
  source: { cite: "arithmetic: a mean lies between its parts", confidence: "derived" },
  bad: {
    case: "respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 5, accessory: 10}, caudal_cranial_part: {left: 0, right: 15}, findings: [{process: consolidation, distribution: cranioventral, extent: 55 %, colour: dark-red, consistency: firm}]}}",
  },
  good: {
    case: "respiratory: {lungs: {consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 5, accessory: 10}, caudal_cranial_part: {left: 0, right: 15}, findings: [{process: consolidation, distribution: cranioventral, extent: 14 %, colour: dark-red, consistency: firm}]}}",
  },
  check(one, report) {
    const graded = lobes(one);
    if (graded === undefined || !graded.complete) return;
    const worst = Math.max(...graded.values.values());
    if (worst === 0) return;
    for (const { finding, path } of lesions(one, {
      processes: ["consolidation"],
      within: ["respiratory.lungs"],
    })) {
      const extent = extentPercent(finding);
      const inOneLobe = /lobe/i.test(finding.site ?? "");
      if (extent !== undefined && extent > worst && !inOneLobe)
        report(
          `${formatPath([...path, "extent"])}: ${finding.extent} of the lung, but the worst lobe has ${worst} %. Extent is the share of the whole organ; correct it or the lobes.`,
          [...path, "extent"],
        );
    }
  },
};
