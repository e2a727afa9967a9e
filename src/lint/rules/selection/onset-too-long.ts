import { quantity } from "../../../cases/index.ts";
import { selectionRules } from "../../../knowledge/index.ts";
import { hoursIll } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const onsetTooLong: CaseRule = {
  id: "onset-too-long",
  scope: "case",
  family: "selection",
  level: "warning",
  summary: "A pig chosen for its signs is in their first two days, or the record says why it is not.",
  protects:
    "After the first days the agent that began it is often gone, and what grows is what came later; the lesion of a chronic pig is a scar.",
  source: selectionRules.source,
  bad: { case: "selection: {onset: 6 d}" },
  good: {
    case: "selection: {onset: 6 d, note: conchae take weeks to shrink and their state is the question}",
  },
  check(one, report) {
    const { basis, onset, note } = one.record.selection ?? {};
    const hours = hoursIll(one);
    const limit = quantity("duration", selectionRules.acute_within) ?? 0;
    if (basis === "clinical" && note === undefined && hours !== undefined && hours > limit)
      report(
        `selection.onset: this pig was ill for longer than ${selectionRules.acute_within} (${onset}). Add one in the first two days of its signs, or write under selection.note why this one stands for the problem.`,
        ["selection", "onset"],
      );
  },
};
