import { containerRule } from "../../shared/container-rule.ts";

export const virusIsolationInFormalin = containerRule({
  id: "virus-isolation-in-formalin",
  level: "error",
  summary: "A sample for virus isolation is not in formalin or alcohol.",
  protects: "Fixed virus infects no cell; the strain cannot be typed or compared later.",
  bad: { case: "samples: [{id: 01-A, from: lymphoid.tonsil, into: formalin, for: [virus-isolation]}]" },
  good: { case: "samples: [{id: 01-A, from: lymphoid.tonsil, into: viral-medium, for: [virus-isolation]}]" },
});
