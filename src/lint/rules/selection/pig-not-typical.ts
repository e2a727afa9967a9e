import { selectionRules } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";

export const pigNotTypical: CaseRule = {
  id: "pig-not-typical",
  scope: "case",
  family: "selection",
  level: "warning",
  summary: "A pig chosen for its signs shows those of the group.",
  protects:
    "The runt with the odd disease answers a question that nobody asked, and its laboratory bill is the same.",
  source: selectionRules.source,
  bad: { case: "selection: {typical: no}" },
  good: { case: "selection: {typical: yes}" },
  check(one, report) {
    const { basis, typical } = one.record.selection ?? {};
    if (basis === "clinical" && (typical === "no" || typical === false))
      report(
        "selection.typical is no: this pig does not stand for the group. Open one that does, or file this one as culled or convenience.",
        ["selection", "typical"],
      );
  },
};
