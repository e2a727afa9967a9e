import { isFreshTissue, isGut, samplesOf } from "../../../record/index.ts";

import { listing } from "../../../words/listing.ts";
import type { CaseRule } from "../../rule.ts";

export const gutPooledAcrossPigs: CaseRule = {
  id: "gut-pooled-across-pigs",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "Fresh gut of several pigs is not pooled.",
  protects: "One pig with many germs answers for all, and the lesion of one is laid to another.",
  source: {
    cite: "convet.net, animal pathology; pooling of faeces for PCR is another matter",
    confidence: "common-practice",
  },
  bad: {
    case: "samples: [{id: 01-A, from: intestine.ileum, into: chilled, for: [culture], pooled_with: [birch-2026-04-20-02]}]",
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
  },
  good: {
    case: "samples: [{id: 01-A, from: faeces, into: chilled, for: [pcr], pooled_with: [birch-2026-04-20-02]}]",
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
  },
  check(one, report) {
    for (const { sample, index } of samplesOf(one))
      if (isFreshTissue(sample) && isGut(sample.from) && sample.pooled_with !== undefined)
        report(
          `samples[${index}].pooled_with: gut ${sample.id} shares its bag with ${listing(sample.pooled_with)}. Bag each pig's gut apart; the laboratory can still pool for PCR.`,
          ["samples", index, "pooled_with"],
        );
  },
};
