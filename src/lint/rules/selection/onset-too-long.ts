import { selectionRules } from "../../../knowledge/index.ts";
import { acuteHours, hoursIll, isLongStanding } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const onsetTooLong: CaseRule = {
  id: "onset-too-long",
  scope: "case",
  family: "selection",
  level: "warning",
  summary:
    "A pig chosen for its signs is opened within two days of their onset, unless they are of long standing or the record says why not.",
  protects:
    "After the first few days the agent that started it is often gone, and what grows is what came later; the lesion in a chronic case is a scar.",
  lookAlike:
    "A disease of weeks, such as wasting or crooked snouts: its signs are known as long-standing; for others say under selection.note why this pig.",
  source: selectionRules.source,
  bad: { case: "selection: {onset: 6 d}" },
  good: {
    case: "selection: {onset: 6 d, note: conchae take weeks to shrink and their state is the question}",
  },
  check(one, report) {
    const { basis, onset, note } = one.record.selection ?? {};
    if (basis !== "clinical" || onset === undefined || note !== undefined || isLongStanding(one)) return;
    // A sign that cannot be read may be the one of long standing.
    if (one.faults.some(({ intended }) => intended[0] === "selection" && intended[1] === "signs")) return;
    const hours = hoursIll(one);
    if (hours !== undefined && hours > acuteHours)
      report(
        `selection.onset: this pig had been ill for more than ${selectionRules.acute_within} (${onset}). Add one in the first two days of its signs, or write under selection.note why this one stands for the problem.`,
        ["selection", "onset"],
      );
  },
};
