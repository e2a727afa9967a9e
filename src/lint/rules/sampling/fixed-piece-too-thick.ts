import { quantity } from "../../../cases/index.ts";
import { sampleRules } from "../../../knowledge/index.ts";
import { samplesOf } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const fixedPieceTooThick: CaseRule = {
  id: "fixed-piece-too-thick",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "No piece for histology is thicker than 10 mm.",
  protects: "Formalin does not reach the middle in time: the middle rots, and it is the middle that is cut.",
  source: sampleRules.formalin.source,
  bad: {
    case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], thickness: 25 mm}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], thickness: 4 mm}]",
  },
  check(one, report) {
    const { formalin } = sampleRules;
    for (const { sample, index } of samplesOf(one)) {
      const mm = quantity("length", sample.thickness);
      if (mm === undefined || sample.into !== "formalin" || formalin.thick_allowed.includes(sample.from))
        continue;
      if (mm > formalin.thickness_most)
        report(
          `samples[${index}].thickness: ${sample.id} is ${sample.thickness} thick and will rot in the middle. Slice it to ${formalin.thickness} mm, or slit it so that formalin gets in.`,
          ["samples", index, "thickness"],
        );
    }
  },
};
