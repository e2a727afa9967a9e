import type { Case } from "../../../cases/index.ts";
import { samplesOf } from "../../../record/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const duplicateSampleInVisit: VisitRule = {
  id: "duplicate-sample-in-visit",
  scope: "visit",
  family: "sampling",
  level: "error",
  summary: "No sample number is used for two pigs of a visit.",
  protects:
    "Samples of all the pigs travel in one parcel, and a result for a number that two pigs share belongs to neither.",
  lookAlike:
    "One pot with pieces of two pigs: it is one sample, in one case, with pooled_with: and the id of the other.",
  source: practice("numbers are unique within a submission; common practice"),
  bad: {
    others: [
      "case: birch-2026-04-20-02\npig: {tag: '902'}\nsamples: [{id: 01-A, from: blood, into: plain-tube, for: [serology]}]",
    ],
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
  },
  good: {
    others: [
      "case: birch-2026-04-20-02\npig: {tag: '902'}\nsamples: [{id: 02-A, from: blood, into: plain-tube, for: [serology]}]",
    ],
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
  },
  check(visit, _reportVisit, reportCase) {
    const first = new Map<string, Case>();
    for (const one of visit.cases)
      for (const { sample, index } of samplesOf(one)) {
        const earlier = first.get(sample.id) ?? one;
        first.set(sample.id, earlier);
        if (earlier !== one)
          reportCase(one)(
            `samples[${index}].id: ${sample.id} is already the number of a sample in ${earlier.file}. Number by pig, such as 02-A, and correct the label.`,
            ["samples", index, "id"],
          );
      }
  },
};
