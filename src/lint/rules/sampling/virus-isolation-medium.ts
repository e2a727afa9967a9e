import { containerRule } from "../../shared/container-rule.ts";

export const virusIsolationMedium = containerRule({
  id: "virus-isolation-medium",
  level: "warning",
  summary: "A sample for virus isolation is chilled tissue, serum, or a swab in viral medium.",
  protects:
    "Virus dries out on a plain swab, sticks to charcoal, and is overgrown in media made for bacteria.",
  bad: {
    case: "samples: [{id: 01-A, from: respiratory.nares, into: dry-swab, for: [pcr, virus-isolation]}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: respiratory.nares, into: viral-medium, for: [pcr, virus-isolation]}]",
  },
});
