import { isFixed, samplesOf } from "../../../record/index.ts";

import { listing } from "../../../words/listing.ts";
import { isOneName } from "../../../words/plain-name.ts";
import type { CaseRule } from "../../rule.ts";

export const formalinBesideFresh: CaseRule = {
  id: "formalin-beside-fresh",
  scope: "case",
  family: "sampling",
  level: "error",
  summary: "Fixed and fresh material share no bag.",
  protects: "Formalin that leaks, or only its vapour, kills what should grow and spoils smears.",
  source: {
    cite: "vapour harms unfixed smears (veterinary laboratory guide); separate bags are common practice",
    confidence: "verified",
  },
  bad: {
    case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], bag: 1}, {id: 01-B, from: lymphoid.spleen, into: chilled, for: [culture], bag: 1}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], bag: 1}, {id: 01-B, from: lymphoid.spleen, into: chilled, for: [culture], bag: 2}]",
  },
  check(one, report) {
    const bagged = samplesOf(one).filter(
      ({ sample }) => sample.bag !== undefined && sample.into !== undefined,
    );
    for (const { sample, index } of bagged) {
      if (sample.into !== "formalin") continue;
      const fresh = bagged.filter(
        (other) => isOneName(other.sample.bag, sample.bag) && !isFixed(other.sample),
      );
      if (fresh.length > 0)
        report(
          `samples[${index}].bag: formalin pot ${sample.id} lies in bag ${sample.bag} with fresh ${listing(fresh.map((other) => other.sample.id))}. Bag them apart.`,
          ["samples", index, "bag"],
        );
    }
  },
};
