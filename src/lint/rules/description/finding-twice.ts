import { formatPath, type Path } from "../../../cases/index.ts";
import { findingsOf } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const findingTwice: CaseRule = {
  id: "finding-twice",
  scope: "case",
  family: "description",
  level: "warning",
  summary: "No lesion is written down twice.",
  protects: "A copied line counts one lesion as two in every table.",
  lookAlike:
    "Two lesions that are alike to the millimetre: one entry with number: 2, or a site for each, says so.",
  source: practice("common practice of keeping records: one entry a lesion"),
  bad: {
    case: "lymphoid: {spleen: [{process: infarct, distribution: focal, size: 8 mm}, {process: infarct, distribution: focal, size: 8 mm}]}",
  },
  good: {
    case: "lymphoid: {spleen: [{process: infarct, site: tip, distribution: focal, size: 8 mm}, {process: infarct, site: middle, distribution: focal, size: 8 mm}]}",
  },
  check(one, report) {
    const seen = new Map<string, Path>();
    for (const { finding, path, state } of findingsOf(one)) {
      if (state.findings.length < 2) continue;
      const place = JSON.stringify([path.slice(0, -1), Object.entries(finding).sort()]);
      const first = seen.get(place);
      if (first === undefined) seen.set(place, path);
      else
        report(
          `${formatPath(path)}: word for word the same as ${formatPath(first)}. Take one out, or say by site or number that there are two.`,
          path,
        );
    }
  },
};
