import { formatPath } from "../../../cases/index.ts";
import { description } from "../../../knowledge/index.ts";
import { extentPercent, findingsOf } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const distributionExtentContradiction: CaseRule = {
  id: "distribution-extent-contradiction",
  scope: "case",
  family: "description",
  level: "error",
  summary: "A diffuse lesion covers much of the organ and a focal one does not cover nearly all of it.",
  protects: "One of the two figures was not looked at again, and the table will use the wrong one.",
  source: description.source,
  bad: {
    case: "liver_pancreas: {liver: [{process: necrosis, distribution: focal, extent: 90 %, colour: tan}]}",
  },
  good: {
    case: "liver_pancreas: {liver: [{process: necrosis, distribution: diffuse, extent: 90 %, colour: tan}]}",
  },
  check(one, report) {
    const { diffuse_at_least: least, focal_at_most: most } = description.distribution;
    for (const { finding, path } of findingsOf(one)) {
      const extent = extentPercent(finding);
      if (extent === undefined || extent === 0) continue;
      if (finding.distribution === "diffuse" && extent < least)
        report(
          `${formatPath(path)}: diffuse, but only ${finding.extent} of the organ. Write multifocal, patchy or locally-extensive, or correct the extent.`,
          [...path, "extent"],
        );
      if (finding.distribution === "focal" && extent > most)
        report(
          `${formatPath(path)}: focal, but ${finding.extent} of the organ. Write locally-extensive or diffuse, or correct the extent.`,
          [...path, "extent"],
        );
    }
  },
};
