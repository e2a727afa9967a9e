import { containerRule } from "../../shared/container-rule.ts";

export const cultureOfFrozen = containerRule({
  id: "culture-of-frozen",
  level: "warning",
  summary: "What is to be cultured is chilled, not frozen.",
  protects:
    "The frost takes the delicate agent and leaves the hardy ones; nothing grown then reads as nothing there.",
  bad: { case: "samples: [{id: 01-A, from: respiratory.lungs, into: frozen, for: [culture]}]" },
  good: { case: "samples: [{id: 01-A, from: respiratory.lungs, into: frozen, for: [pcr]}]" },
});
