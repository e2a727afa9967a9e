import { formatPath } from "../../../cases/index.ts";
import { findingsOf } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const findingWithoutDistribution: CaseRule = {
  id: "finding-without-distribution",
  scope: "case",
  family: "description",
  level: "error",
  summary: "Every finding says how the lesion lies in the organ.",
  protects:
    "Focal, cranioventral and miliary lesions of one kind have different causes; without it the finding names a tissue, not a disease.",
  source: {
    cite: "standard set of descriptive fields: Caswell & Plattner 2012, University of Guelph",
    confidence: "verified",
  },
  bad: { case: "lymphoid: {spleen: [{process: infarct, size: 8 mm}]}" },
  good: { case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal, size: 8 mm}]}" },
  check(one, report) {
    for (const { finding, path } of findingsOf(one))
      if (finding.distribution === undefined)
        report(
          `${formatPath(path)}: the ${finding.process} has no distribution. Write how it lies in the organ, such as distribution: multifocal.`,
          path,
        );
  },
};
