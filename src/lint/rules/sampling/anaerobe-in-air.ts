import { isFor, samplesOf } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

const inAir = new Set(["transport-medium", "charcoal-medium", "viral-medium", "dry-swab"]);
const asked = /clostrid|anaerob/i;

export const anaerobeInAir: CaseRule = {
  id: "anaerobe-in-air",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "A swab for anaerobes travels in anaerobic medium.",
  protects:
    "Twenty minutes in air may kill the clostridia that were asked for, and the plate grows whatever likes air.",
  source: {
    cite: "J. Carr, post-mortem samples: anaerobic transport medium or a tied gut loop",
    confidence: "verified",
  },
  bad: {
    case: "samples: [{id: 01-A, from: locomotor.muscles, into: transport-medium, for: [culture], note: clostridia}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: locomotor.muscles, into: anaerobic-medium, for: [culture], note: clostridia}]",
  },
  check(one, report) {
    for (const { sample, index } of samplesOf(one))
      if (isFor(sample, "culture") && inAir.has(sample.into ?? "") && asked.test(sample.note ?? ""))
        report(
          `samples[${index}].into: ${sample.id} is to be searched for anaerobes and is in ${sample.into}. Use anaerobic medium, a large chilled piece, or a tied loop of gut.`,
          ["samples", index, "into"],
        );
  },
};
