import { formatPath } from "../../../cases/index.ts";
import { extentPercent, findingsOf, sizesMm, volumeMl } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const measureZero: CaseRule = {
  id: "measure-zero",
  scope: "case",
  family: "description",
  level: "error",
  summary: "A finding has a measure above zero.",
  protects: "Nothing of it is no finding; it is either a slip or a normal organ.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "liver_pancreas: {liver: [{process: milk-spots, distribution: multifocal, extent: 0 %}]}" },
  good: { case: "liver_pancreas: {liver: [{process: milk-spots, distribution: multifocal, extent: 1 %}]}" },
  check(one, report) {
    for (const { finding, path } of findingsOf(one)) {
      const zero = [extentPercent(finding), volumeMl(finding), ...sizesMm(finding)].includes(0);
      if (zero)
        report(
          `${formatPath(path)}: a measure of nothing for ${finding.process}. Write what was measured, or take the finding out.`,
          path,
        );
    }
  },
};
