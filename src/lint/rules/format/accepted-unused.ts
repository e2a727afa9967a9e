import type { FormatRule } from "../../rule.ts";

export const acceptedUnused: FormatRule = {
  id: "accepted-unused",
  scope: "format",
  family: "format",
  level: "warning",
  summary: "Every accepted entry accepts a finding that is there.",
  protects:
    "An entry left behind, or one that names the wrong place, would silence the next fault at that place unseen.",
  source: {
    cite: "an exception that is no longer needed is taken out; common practice",
    confidence: "common-practice",
  },
  bad: {
    case: "accepted: [{rule: treated-pig, at: selection.treated, because: only treated pigs were left}]",
  },
  good: {
    case: "selection: {treated: {with: amoxicillin by mouth, last: 12 h}}\naccepted: [{rule: treated-pig, at: selection.treated, because: only treated pigs were left}]",
  },
};
