import { samplesOf } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const sampleWithoutTest: CaseRule = {
  id: "sample-without-test",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "Every sample asks for a test, or is kept as archive.",
  protects: "A sample without a request is stored, billed or thrown away; the question is not answered.",
  source: {
    cite: "Animal Health Laboratory, University of Guelph: no plan for the samples is a common fault",
    confidence: "verified",
  },
  bad: { case: "samples: [{id: 01-A, from: lymphoid.spleen, into: chilled}]" },
  good: { case: "samples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [archive]}]" },
  check(one, report) {
    for (const { sample, index } of samplesOf(one))
      if (sample.for === undefined)
        report(
          `samples[${index}].for is missing for ${sample.id}. Write for: [pcr], [culture], [histology] …, or [archive] to keep it.`,
          ["samples", index],
        );
  },
};
