import { isMaterial, nearestMaterial, samplesOf } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const sampleOrganUnknown: CaseRule = {
  id: "sample-organ-unknown",
  scope: "case",
  family: "sampling",
  level: "error",
  summary: "A sample comes from an organ of the anatomy, or from blood, csf, faeces, feed, water.",
  protects: "A result that belongs to no organ cannot be laid beside what was seen there.",
  source: { cite: "names of the anatomy file of this project", confidence: "common-practice" },
  bad: { case: "samples: [{id: 01-A, from: respiratory.lung, into: chilled, for: [pcr]}]" },
  good: { case: "samples: [{id: 01-A, from: respiratory.lungs, into: chilled, for: [pcr]}]" },
  check(one, report) {
    for (const { sample, index } of samplesOf(one)) {
      if (isMaterial(sample.from)) continue;
      const guess = nearestMaterial(sample.from);
      report(
        `samples[${index}].from: there is no organ "${sample.from}". ${guess === undefined ? "Write system.organ, such as respiratory.lungs, or blood, csf, faeces, feed, water." : `Did you mean ${guess}?`}`,
        ["samples", index, "from"],
      );
    }
  },
};
