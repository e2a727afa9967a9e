import { formatPath } from "../../../cases/index.ts";
import { findingsOf } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const findingWithoutSize: CaseRule = {
  id: "finding-without-size",
  scope: "case",
  family: "description",
  level: "error",
  summary: "Every finding says how much there is: extent, size, number or volume.",
  protects: "A lesion without a measure cannot be compared between readers, pigs or visits.",
  source: {
    cite: "size must be a number or a share of the organ: general gross-pathology teaching (pathologylive)",
    confidence: "verified",
  },
  bad: { case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal}]}" },
  good: { case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal, number: 4}]}" },
  check(one, report) {
    for (const { finding, path } of findingsOf(one)) {
      const { extent, size, number, volume } = finding;
      if (extent === undefined && size === undefined && number === undefined && volume === undefined)
        report(
          `${formatPath(path)}: how much ${finding.process} is there? Write extent: 20 %, size: 25 mm, number: 4 or volume: 40 ml.`,
          path,
        );
    }
  },
};
