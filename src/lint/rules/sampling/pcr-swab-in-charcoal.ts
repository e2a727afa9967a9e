import { containerRule } from "../../shared/container-rule.ts";

export const pcrSwabInCharcoal = containerRule({
  id: "pcr-swab-in-charcoal",
  level: "warning",
  summary: "A swab for PCR is dry or in viral medium, not in charcoal.",
  protects: "Charcoal inhibits the reaction; a swab with too much of it is negative whatever was there.",
  bad: { case: "samples: [{id: 01-A, from: respiratory.nares, into: charcoal-medium, for: [culture, pcr]}]" },
  good: { case: "samples: [{id: 01-A, from: respiratory.nares, into: charcoal-medium, for: [culture]}]" },
});
