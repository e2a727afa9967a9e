import { samplesOf } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const bloodChilledBeforeClotting: CaseRule = {
  id: "blood-chilled-before-clotting",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "Blood for serum clots before it is chilled.",
  protects: "Chilled too early it never clots properly, the red cells burst and the serum is useless.",
  source: {
    cite: "UK pig text, sampling and post-mortem examination: do not chill until clotted",
    confidence: "verified",
  },
  bad: { case: "samples: [{id: 01-A, from: blood, into: plain-tube, for: [serology], clotted: no}]" },
  good: { case: "samples: [{id: 01-A, from: blood, into: plain-tube, for: [serology], clotted: yes}]" },
  check(one, report) {
    for (const { sample, index } of samplesOf(one))
      if (sample.into === "plain-tube" && (sample.clotted === "no" || sample.clotted === false))
        report(
          `samples[${index}].clotted: ${sample.id} was chilled before it clotted. Leave the tube at room temperature for an hour or two first, or pour off the serum; take it again if the pig or its mates still live.`,
          ["samples", index, "clotted"],
        );
  },
};
