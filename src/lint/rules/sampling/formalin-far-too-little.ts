import { sampleRules } from "../../../knowledge/index.ts";
import { samplesOf } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const formalinFarTooLittle: CaseRule = {
  id: "formalin-far-too-little",
  scope: "case",
  family: "sampling",
  level: "error",
  summary: "No piece lies in less than five parts of formalin.",
  protects: "Below five parts the piece is not fixed at all: it is spoilt like an unfixed one.",
  source: sampleRules.formalin.source,
  bad: {
    case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], formalin_ratio: 3}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], formalin_ratio: 10}]",
  },
  check(one, report) {
    const { formalin } = sampleRules;
    for (const { sample, index } of samplesOf(one)) {
      const ratio = sample.formalin_ratio;
      if (ratio !== undefined && ratio < formalin.ratio_least)
        report(
          `samples[${index}].formalin_ratio: ${sample.id} has only ${ratio} parts of formalin to one of tissue and will not fix. Put it into ${formalin.ratio} parts now.`,
          ["samples", index, "formalin_ratio"],
        );
    }
  },
};
