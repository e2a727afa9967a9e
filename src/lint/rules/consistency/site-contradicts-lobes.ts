import { formatPath } from "../../../cases/index.ts";
import { lesions, lobes, namedSide } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

const positions = [
  ["cranial", /\b(cranial|apical)\b/i],
  ["middle", /\b(middle|cardiac)\b/i],
  ["caudal", /\b(caudal|diaphragmatic)\b/i],
] as const;

export const siteContradictsLobes: CaseRule = {
  id: "site-contradicts-lobes",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "A consolidation lies in a lobe, or on a side, that was graded above zero.",
  protects:
    "Left and right exchanged in one of two places: nobody can tell later which one was typed in a hurry.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: {
    case: "respiratory: {lungs: {consolidation: {left_cranial: 0, left_middle: 0, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 5, accessory: 10}, caudal_cranial_part: {left: 0, right: 15}, findings: [{process: consolidation, site: left middle lobe, distribution: cranioventral, extent: 8 %, colour: dark-red, consistency: firm}]}}",
  },
  good: {
    case: "respiratory: {lungs: {consolidation: {left_cranial: 0, left_middle: 0, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 5, accessory: 10}, caudal_cranial_part: {left: 0, right: 15}, findings: [{process: consolidation, site: right middle lobe, distribution: cranioventral, extent: 8 %, colour: dark-red, consistency: firm}]}}",
  },
  check(one, report) {
    const graded = lobes(one);
    if (graded === undefined || !graded.complete) return;
    if ([...graded.values.values()].every((value) => value === 0)) return;
    for (const { finding, path } of lesions(one, {
      processes: ["consolidation"],
      within: ["respiratory.lungs"],
    })) {
      const side = namedSide(finding.site);
      if (side === undefined) continue;
      const named = positions
        .filter(([, words]) => words.test(finding.site ?? ""))
        .map(([name]) => `${side}_${name}`);
      const meant = named.length > 0 ? named : positions.map(([name]) => `${side}_${name}`);
      if (meant.every((lobe) => graded.values.get(lobe) === 0))
        report(
          `${formatPath([...path, "site"])}: ${finding.site}, but ${named.length > 0 ? `${named.join(" and ")} is 0` : `every ${side} lobe is 0`}. Left and right or two lobes are exchanged here or in consolidation.`,
          [...path, "site"],
        );
    }
  },
};
