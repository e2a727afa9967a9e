import type { FormatRule } from "../../rule.ts";

export const acceptedWithoutReason: FormatRule = {
  id: "accepted-without-reason",
  scope: "format",
  family: "format",
  level: "error",
  locked: true,
  summary: "An accepted finding says why it is accepted.",
  protects:
    "Next year nobody knows whether a finding was weighed or only silenced; without a reason the finding stays.",
  source: {
    cite: "an exception in a record carries its reason; common practice",
    confidence: "common-practice",
  },
  bad: { case: "accepted: [{rule: treated-pig, at: selection.treated}]" },
  good: {
    case: "selection: {treated: {with: amoxicillin by mouth, last: 12 h}}\naccepted: [{rule: treated-pig, at: selection.treated, because: only treated pigs were left}]",
  },
};
