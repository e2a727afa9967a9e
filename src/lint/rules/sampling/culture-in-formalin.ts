import { containerRule } from "../../shared/container-rule.ts";

export const cultureInFormalin = containerRule({
  id: "culture-in-formalin",
  level: "error",
  summary: "A sample for culture is not in formalin or alcohol.",
  protects: "Nothing grows from fixed tissue, and the agent that was there is lost for good.",
  bad: { case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [culture]}]" },
  good: { case: "samples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [culture]}]" },
});
