import { samplesOf } from "../../../record/index.ts";

import { listing } from "../../../words/listing.ts";
import type { CaseRule } from "../../rule.ts";

export const pigsPooledInFormalin: CaseRule = {
  id: "pigs-pooled-in-formalin",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "A formalin pot holds the tissue of one pig.",
  protects: "Pieces of two pigs in one pot cannot be told apart under the microscope.",
  source: {
    cite: "Animal Health Laboratory, University of Guelph: one jar for each pig",
    confidence: "verified",
  },
  bad: {
    case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], pooled_with: [birch-2026-04-20-02]}]",
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
  },
  good: {
    case: "samples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [pcr], pooled_with: [birch-2026-04-20-02]}]",
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
  },
  check(one, report) {
    for (const { sample, index } of samplesOf(one))
      if (sample.into === "formalin" && sample.pooled_with !== undefined)
        report(
          `samples[${index}].pooled_with: formalin pot ${sample.id} also holds tissue of ${listing(sample.pooled_with)}. One pot for each pig; several organs of one pig may share it.`,
          ["samples", index, "pooled_with"],
        );
  },
};
