/** What lies in one bag and should not. */
import {
  isFixed,
  isFreshTissue,
  isGut,
  materialTitle,
  type Sample,
  samplesOf,
} from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { isOneName } from "../../../words/plain-name.ts";
import { type CaseRule, verified } from "../../rule.ts";

interface Row extends Omit<CaseRule, "scope" | "family" | "check"> {
  readonly concerns: (sample: Sample) => boolean;
  /** Whether another sample must not be in the same bag. */
  readonly isBarred: (other: Sample) => boolean;
  readonly says: (sample: Sample, others: string) => string;
}

const rows: readonly Row[] = [
  {
    id: "gut-with-other-organs",
    level: "error",
    summary: "Fresh gut does not share a bag with other organs.",
    protects: "Gut bacteria overgrow the whole bag on the way, and no culture from it means anything.",
    lookAlike:
      "Bags within a bag: bag is the innermost, so give each its own number; stomach and gut may share one.",
    source: verified(
      "Animal pathology (guide for senders of samples; author and year not noted): gut in its own bag, mesenteric node and liver apart",
    ),
    bad: {
      case: "samples: [{id: 01-A, from: intestine.ileum, into: chilled, for: [pcr], bag: 1}, {id: 01-B, from: liver_pancreas.liver, into: chilled, for: [culture], bag: 1}]",
    },
    good: {
      case: "samples: [{id: 01-A, from: intestine.ileum, into: chilled, for: [pcr], bag: 1}, {id: 01-B, from: liver_pancreas.liver, into: chilled, for: [culture], bag: 2}]",
    },
    concerns: (sample) => isFreshTissue(sample) && isGut(sample.from),
    isBarred: (other) => isFreshTissue(other) && !isGut(other.from),
    says: ({ id, from, bag }, others) =>
      `${id} (${materialTitle(from)}) is in bag ${bag} with ${others}. Give the gut a bag of its own, and each other organ as well.`,
  },
  {
    id: "formalin-beside-fresh",
    level: "error",
    summary: "Fixed and fresh material do not share a bag.",
    protects: "Formalin that leaks, or just its vapour, kills what should grow and spoils smears.",
    lookAlike:
      "A sealed pot in the same carton: bag is the bag round the pot and not the carton, so give it a number of its own.",
    source: verified(
      "vapour harms unfixed smears (veterinary laboratory guide); separate bags are common practice",
    ),
    bad: {
      case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], bag: 1}, {id: 01-B, from: lymphoid.spleen, into: chilled, for: [culture], bag: 1}]",
    },
    good: {
      case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], bag: 1}, {id: 01-B, from: lymphoid.spleen, into: chilled, for: [culture], bag: 2}]",
    },
    concerns: ({ into }) => into === "formalin",
    isBarred: (other) => other.into !== undefined && !isFixed(other),
    says: ({ id, bag }, others) =>
      `formalin pot ${id} is in bag ${bag} with fresh ${others}. Bag them separately.`,
  },
];

export const sharedBags: readonly CaseRule[] = rows.map(({ concerns, isBarred, says, ...text }) => ({
  ...text,
  scope: "case",
  family: "sampling",
  check(one, report) {
    if (one.record.samples === undefined) return;
    for (const { sample, index } of samplesOf(one)) {
      if (sample.bag === undefined || !concerns(sample)) continue;
      const others = samplesOf(one).filter(
        ({ sample: other }) => isBarred(other) && isOneName(other.bag, sample.bag),
      );
      if (others.length > 0)
        report(
          `samples[${index}].bag: ${says(sample, listing(others.map(({ sample: other }) => other.id)))}`,
          ["samples", index, "bag"],
        );
    }
  },
}));
