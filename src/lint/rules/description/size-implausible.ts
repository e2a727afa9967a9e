import { formatPath } from "../../../cases/index.ts";
import { description } from "../../../knowledge/index.ts";
import { findingsOf, sizesMm } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const sizeImplausible: CaseRule = {
  id: "size-implausible",
  scope: "case",
  family: "description",
  level: "error",
  summary: "A lesion is not larger than the part of a pig it lies in; a lymph node is no longer than a hand.",
  protects: "Centimetres typed for millimetres make a pea of a fist, in every table that follows.",
  source: description.source,
  bad: {
    case: "liver_pancreas: {liver: [{process: nodule, distribution: focal, size: 90 cm, colour: tan}]}",
  },
  good: {
    case: "liver_pancreas: {liver: [{process: nodule, distribution: focal, size: 90 mm, colour: tan}]}",
  },
  check(one, report) {
    for (const { organ, finding, path } of findingsOf(one)) {
      const longest = Math.max(0, ...sizesMm(finding));
      const limit = description.largest_of[organ.id] ?? description.largest_mm;
      if (longest > limit && !description.without_limit.includes(organ.system))
        report(
          `${formatPath([...path, "size"])}: ${finding.size} is larger than the organ can be (${limit} mm at most). Check mm and cm.`,
          [...path, "size"],
        );
    }
  },
};
