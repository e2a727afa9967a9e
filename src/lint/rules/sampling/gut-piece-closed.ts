import { isFixed, isGut, samplesOf } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const gutPieceClosed: CaseRule = {
  id: "gut-piece-closed",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "A piece of gut is slit or snipped before it goes into formalin.",
  protects:
    "Formalin does not cross the wall fast enough; the mucosa, which is the question, rots in a closed tube.",
  source: {
    cite: "Animal Health Laboratory, University of Guelph; field manual, 3rd ed., p. 517",
    confidence: "verified",
  },
  bad: {
    case: "samples: [{id: 01-A, from: intestine.ileum, into: formalin, for: [histology], at: 2026-04-20T09:40, lumen_opened: no}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: intestine.ileum, into: formalin, for: [histology], at: 2026-04-20T09:40, lumen_opened: yes}]",
  },
  check(one, report) {
    for (const { sample, index } of samplesOf(one))
      if (
        isFixed(sample) &&
        isGut(sample.from) &&
        (sample.lumen_opened === "no" || sample.lumen_opened === false)
      )
        report(
          `samples[${index}].lumen_opened: ${sample.id} was fixed as a closed tube. Snip one end or slit it lengthwise now, so that formalin reaches the mucosa.`,
          ["samples", index, "lumen_opened"],
        );
  },
};
