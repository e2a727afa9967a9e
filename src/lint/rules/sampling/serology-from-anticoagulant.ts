import { containerRule } from "../../shared/container-rule.ts";

export const serologyFromAnticoagulant = containerRule({
  id: "serology-from-anticoagulant",
  level: "warning",
  summary: "Blood for serology is in a plain tube.",
  protects: "Antibody is read in serum; additives dilute it and disturb many tests.",
  bad: { case: "samples: [{id: 01-A, from: blood, into: edta-tube, for: [serology]}]" },
  good: { case: "samples: [{id: 01-A, from: blood, into: plain-tube, for: [serology]}]" },
});
