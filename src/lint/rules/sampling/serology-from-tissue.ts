import { isAmong, isFor, isTissue, samplesOf } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

const tissue = new Set(["formalin", "ethanol", "chilled", "frozen"]);
const swab = new Set(["dry-swab", "transport-medium", "charcoal-medium", "anaerobic-medium", "viral-medium"]);
/** Meat juice, fetal fluid. */
const juicy = ["locomotor.muscles", "serosa"];

export const serologyFromTissue: CaseRule = {
  id: "serology-from-tissue",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "Serology is asked of serum or fetal fluid, not of a piece or a swab of an organ.",
  protects:
    "Antibody is read in serum, in the thoracic fluid of a fetus or in meat juice; a piece of lung or a swab of the tonsil gives no titre.",
  source: {
    cite: "Animal Health Laboratory, University of Guelph, and Oregon State (fetal fluid in a plain tube); meat juice from memory",
    confidence: "verified",
  },
  bad: { case: "samples: [{id: 01-A, from: respiratory.lungs, into: chilled, for: [serology]}]" },
  good: { case: "samples: [{id: 01-A, from: serosa.pleural_space, into: plain-tube, for: [serology]}]" },
  check(one, report) {
    for (const { sample, index } of samplesOf(one))
      if (
        isFor(sample, "serology") &&
        isTissue(sample.from) &&
        (tissue.has(sample.into ?? "") || swab.has(sample.into ?? "")) &&
        !isAmong(sample.from, juicy)
      )
        report(
          `samples[${index}].for: ${sample.id} is ${swab.has(sample.into ?? "") ? "a swab" : "a piece of tissue"} (${sample.from}) and asked for serology. Send serum in a plain tube; of a fetus the fluid of chest or belly.`,
          ["samples", index, "for"],
        );
  },
};
