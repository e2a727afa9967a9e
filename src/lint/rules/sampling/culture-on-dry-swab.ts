import { containerRule } from "../../shared/container-rule.ts";

export const cultureOnDrySwab = containerRule({
  id: "culture-on-dry-swab",
  level: "warning",
  summary: "A swab for culture is in transport medium.",
  protects:
    "The agents that matter in pigs die on a dry swab within hours; what still grows is the hardy rest.",
  bad: { case: "samples: [{id: 01-A, from: respiratory.bronchi, into: dry-swab, for: [culture]}]" },
  good: { case: "samples: [{id: 01-A, from: respiratory.bronchi, into: dry-swab, for: [pcr]}]" },
});
