import type { FormatRule } from "../../rule.ts";

export const acceptedUnknownRule: FormatRule = {
  id: "accepted-unknown-rule",
  scope: "format",
  family: "format",
  level: "error",
  locked: true,
  summary: "An accepted entry names a rule that exists.",
  protects: "A mistyped rule accepts nothing, while its author believes the matter closed.",
  source: { cite: "the list of rules of this project", confidence: "common-practice" },
  bad: { case: "accepted: [{rule: treated-pigs, because: only treated pigs were left}]" },
  good: {
    case: "selection: {treated: {with: amoxicillin by mouth, last: 12 h}}\naccepted: [{rule: treated-pig, because: only treated pigs were left}]",
  },
};
