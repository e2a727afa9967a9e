import { sampleRules } from "../../../knowledge/index.ts";
import { samplesOf } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const formalinTooLittle: CaseRule = {
  id: "formalin-too-little",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "A piece lies in at least ten parts of formalin.",
  protects: "In too little formalin the middle of the piece rots while its edge looks fixed.",
  source: sampleRules.formalin.source,
  bad: {
    case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], formalin_ratio: 8}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], formalin_ratio: 12}]",
  },
  check(one, report) {
    const { formalin } = sampleRules;
    for (const { sample, index } of samplesOf(one)) {
      const ratio = sample.formalin_ratio;
      if (ratio !== undefined && ratio < formalin.ratio && ratio >= formalin.ratio_least)
        report(
          `samples[${index}].formalin_ratio: ${sample.id} has ${ratio} parts of formalin to one of tissue. Pour it over into ${formalin.ratio} parts or more, or cut the piece smaller.`,
          ["samples", index, "formalin_ratio"],
        );
    }
  },
};
