import { containerRule } from "../../shared/container-rule.ts";

export const histologyOfFrozen = containerRule({
  id: "histology-of-frozen",
  level: "error",
  summary: "Tissue for histology is fixed, never frozen.",
  protects: "Ice crystals tear the cells, and the slide shows holes instead of a lesion.",
  bad: { case: "samples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [histology]}]" },
  good: {
    case: "samples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [toxicology], amount: 50 g}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
  },
});
