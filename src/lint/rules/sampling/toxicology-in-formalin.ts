import { containerRule } from "../../shared/container-rule.ts";

export const toxicologyInFormalin = containerRule({
  id: "toxicology-in-formalin",
  level: "error",
  summary: "A sample for toxicology is fresh or frozen, not in formalin.",
  protects:
    "Formalin washes poisons out and disturbs the measurement, and the dead pig cannot be asked again.",
  bad: {
    case: "samples: [{id: 01-A, from: urinary.kidneys, into: formalin, for: [toxicology]}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: urinary.kidneys, into: frozen, for: [toxicology]}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
  },
});
