import { formatPath } from "../../../cases/index.ts";
import { findingsOf, namedSide, namesBoth } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const distributionSideContradiction: CaseRule = {
  id: "distribution-side-contradiction",
  scope: "case",
  family: "description",
  level: "error",
  summary: "Unilateral means one side, bilateral and symmetrical mean both, and the site says the same.",
  protects: "Cause, sampling and surgery differ by side; the reader cannot know which word is the slip.",
  source: { cite: "meaning of the words", confidence: "common-practice" },
  bad: {
    case: "external: {eyes: [{process: discharge, site: left eye, distribution: bilateral, volume: 1 ml, exudate: serous}]}",
  },
  good: {
    case: "external: {eyes: [{process: discharge, site: both eyes, distribution: bilateral, volume: 1 ml, exudate: serous}]}",
  },
  check(one, report) {
    for (const { finding, path } of findingsOf(one)) {
      const { distribution, site } = finding;
      const key = path.find((step) => step === "left" || step === "right");
      const oneSided = key !== undefined || namedSide(site) !== undefined;
      if ((distribution === "bilateral" || distribution === "symmetrical") && oneSided)
        report(
          `${formatPath(path)}: ${distribution}, but ${key === undefined ? `the site is ${site}` : `under ${key} alone`}. Name both sides, or write how it lies on the one.`,
          [...path, "distribution"],
        );
      else if (distribution === "unilateral" && namesBoth(site))
        report(
          `${formatPath(path)}: unilateral, but the site is ${site}. Name the one side, or write bilateral.`,
          [...path, "distribution"],
        );
    }
  },
};
