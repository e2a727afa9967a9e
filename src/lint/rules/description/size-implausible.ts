import { formatPath } from "../../../cases/index.ts";
import { description } from "../../../knowledge/index.ts";
import { findingsOf } from "../../findings-of.ts";
import { sizesMm } from "../../measure-of.ts";
import type { CaseRule } from "../../rule.ts";

export const sizeImplausible: CaseRule = {
  id: "size-implausible",
  scope: "case",
  family: "description",
  level: "error",
  summary: "A lesion is not larger than the part of a pig it lies in.",
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
      const largest = Math.max(0, ...sizesMm(finding));
      if (largest > description.largest_mm && !description.without_limit.includes(organ.system))
        report(
          `${formatPath([...path, "size"])}: ${finding.size} is larger than the organ can be. Check mm and cm.`,
          [...path, "size"],
        );
    }
  },
};
