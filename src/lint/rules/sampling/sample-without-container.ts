import { samplesOf } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const sampleWithoutContainer: CaseRule = {
  id: "sample-without-container",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "Every sample says what it was put into.",
  protects:
    "Without the container nobody can tell what the sample is still good for, and the laboratory may open it in vain.",
  source: {
    cite: "common faults named by the Animal Health Laboratory, University of Guelph: wrong sample",
    confidence: "verified",
  },
  bad: { case: "samples: [{id: 01-A, from: lymphoid.spleen, for: [pcr]}]" },
  good: { case: "samples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [pcr]}]" },
  check(one, report) {
    for (const { sample, index } of samplesOf(one))
      if (sample.into === undefined)
        report(
          `samples[${index}].into is missing for ${sample.id}. Write into: formalin, chilled, dry-swab, plain-tube …`,
          ["samples", index],
        );
  },
};
