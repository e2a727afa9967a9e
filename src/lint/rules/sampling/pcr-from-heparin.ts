import { containerRule } from "../../shared/container-rule.ts";

export const pcrFromHeparin = containerRule({
  id: "pcr-from-heparin",
  level: "warning",
  summary: "Blood for PCR is not in a heparin tube.",
  protects: "Heparin inhibits the reaction, and a viraemic pig comes back negative.",
  bad: { case: "samples: [{id: 01-A, from: blood, into: heparin-tube, for: [pcr]}]" },
  good: { case: "samples: [{id: 01-A, from: blood, into: edta-tube, for: [pcr]}]" },
});
