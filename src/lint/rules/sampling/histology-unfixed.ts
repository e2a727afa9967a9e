import { containerRule } from "../../shared/container-rule.ts";

export const histologyUnfixed = containerRule({
  id: "histology-unfixed",
  level: "warning",
  summary: "Tissue for histology goes into formalin at the table.",
  protects: "Unfixed tissue rots on the way, and the pathologist reads autolysis.",
  bad: {
    case: "samples: [{id: 01-A, from: liver_pancreas.liver, into: chilled, for: [histology, culture]}]",
  },
  good: { case: "samples: [{id: 01-A, from: liver_pancreas.liver, into: chilled, for: [culture]}]" },
});
