import { isFreshTissue, isGut, materialTitle, samplesOf } from "../../../record/index.ts";

import { listing } from "../../../words/listing.ts";
import { isOneName } from "../../../words/plain-name.ts";
import type { CaseRule } from "../../rule.ts";

export const gutWithOtherOrgans: CaseRule = {
  id: "gut-with-other-organs",
  scope: "case",
  family: "sampling",
  level: "error",
  summary: "Gut shares no fresh bag with other organs.",
  protects: "The germs of the gut grow over the whole bag on the way, and no culture of it means anything.",
  source: {
    cite: "convet.net, animal pathology: gut in its own bag, mesenteric node and liver apart",
    confidence: "verified",
  },
  bad: {
    case: "samples: [{id: 01-A, from: intestine.ileum, into: chilled, for: [pcr], bag: 1}, {id: 01-B, from: liver_pancreas.liver, into: chilled, for: [culture], bag: 1}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: intestine.ileum, into: chilled, for: [pcr], bag: 1}, {id: 01-B, from: liver_pancreas.liver, into: chilled, for: [culture], bag: 2}]",
  },
  check(one, report) {
    const fresh = samplesOf(one).filter(({ sample }) => isFreshTissue(sample) && sample.bag !== undefined);
    for (const { sample, index } of fresh) {
      if (!isGut(sample.from)) continue;
      const others = fresh.filter(
        (other) => isOneName(other.sample.bag, sample.bag) && !isGut(other.sample.from),
      );
      if (others.length > 0)
        report(
          `samples[${index}].bag: ${sample.id} (${materialTitle(sample.from)}) lies in bag ${sample.bag} with ${listing(others.map((other) => other.sample.id))}. Give the gut a bag of its own, and each other organ as well.`,
          ["samples", index, "bag"],
        );
    }
  },
};
