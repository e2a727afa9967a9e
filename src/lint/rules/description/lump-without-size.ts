import { formatPath } from "../../../cases/index.ts";
import { description } from "../../../knowledge/index.ts";
import { findingsOf, hasMeasure } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const lumpWithoutSize: CaseRule = {
  id: "lump-without-size",
  scope: "case",
  family: "description",
  level: "warning",
  summary: "An abscess, nodule, mass or cyst has a size.",
  protects:
    "Number or share alone does not tell a grain from an egg, and the next reader cannot say whether it grew.",
  source: description.source,
  bad: {
    case: "respiratory: {lungs: {findings: [{process: abscess, distribution: multifocal, number: 3}]}}",
  },
  good: {
    case: "respiratory: {lungs: {findings: [{process: abscess, distribution: multifocal, number: 3, size: 12 mm}]}}",
  },
  check(one, report) {
    for (const { finding, path } of findingsOf(one))
      if (
        description.needs.size.includes(finding.process) &&
        hasMeasure(finding) &&
        finding.size === undefined
      )
        report(
          `${formatPath(path)}: how large is the ${finding.process}? Measure the largest and write size: 12 mm.`,
          path,
        );
  },
};
