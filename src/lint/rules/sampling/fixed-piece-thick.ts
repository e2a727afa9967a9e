import { quantity } from "../../../cases/index.ts";
import { sampleRules } from "../../../knowledge/index.ts";
import { samplesOf } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const fixedPieceThick: CaseRule = {
  id: "fixed-piece-thick",
  scope: "case",
  family: "sampling",
  level: "note",
  summary: "A piece for histology is cut 5 mm thick.",
  protects: "Formalin needs about an hour for each millimetre; in thick pieces autolysis is faster.",
  source: sampleRules.formalin.source,
  bad: {
    case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], thickness: 8 mm}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], thickness: 5 mm}]",
  },
  check(one, report) {
    const { formalin } = sampleRules;
    for (const { sample, index } of samplesOf(one)) {
      const mm = quantity("length", sample.thickness);
      if (mm === undefined || sample.into !== "formalin" || formalin.thick_allowed.includes(sample.from))
        continue;
      if (mm > formalin.thickness && mm <= formalin.thickness_most)
        report(
          `samples[${index}].thickness: ${sample.id} is ${sample.thickness} thick; ${formalin.thickness} mm fix better. Cut it thinner while it is still soft.`,
          ["samples", index, "thickness"],
        );
    }
  },
};
