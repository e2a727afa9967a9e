import { containerRule } from "../../shared/container-rule.ts";

export const pcrFromFormalin = containerRule({
  id: "pcr-from-formalin",
  level: "warning",
  summary: "A sample for PCR is not in formalin.",
  protects: "Formalin breaks nucleic acid; a negative result is then no result.",
  bad: { case: "samples: [{id: 01-A, from: lymphoid.tonsil, into: formalin, for: [histology, pcr]}]" },
  good: {
    case: "samples: [{id: 01-A, from: lymphoid.tonsil, into: formalin, for: [histology, immunohistochemistry]}]",
  },
});
