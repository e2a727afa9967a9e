import { organs, selectionRules } from "../../../knowledge/index.ts";
import { closedOrgans } from "../../../record/index.ts";

import type { VisitRule } from "../../rule.ts";

export const organNeverExamined: VisitRule = {
  id: "organ-never-examined",
  scope: "visit",
  family: "visit",
  level: "note",
  summary: "Each organ that was due is seen in at least one pig of the visit, or the visit says why in none.",
  protects:
    "A reason in every pig is still no look: of an organ that nobody opened, the visit can say nothing, and the report must.",
  source: selectionRules.source,
  bad: {
    case: "liver_pancreas: {pancreas: {not_examined: gut bagged whole}}",
    others: [
      "case: birch-2026-04-20-02\npig: {tag: '902'}\nliver_pancreas: {pancreas: {not_examined: gut bagged whole}}",
      "case: birch-2026-04-20-03\npig: {tag: '903'}\nliver_pancreas: {pancreas: {not_examined: gut bagged whole}}",
    ],
    visit:
      "cases: [birch-2026-04-20-01, birch-2026-04-20-02, birch-2026-04-20-03]\npigs: {comparison: none well, left_closed: }",
  },
  good: {
    case: "liver_pancreas: {pancreas: {not_examined: gut bagged whole}}",
    others: [
      "case: birch-2026-04-20-02\npig: {tag: '902'}",
      "case: birch-2026-04-20-03\npig: {tag: '903'}\nliver_pancreas: {pancreas: {not_examined: gut bagged whole}}",
    ],
    visit:
      "cases: [birch-2026-04-20-01, birch-2026-04-20-02, birch-2026-04-20-03]\npigs: {comparison: none well, left_closed: jaws}",
  },
  check(visit, reportVisit) {
    if (!visit.complete) return;
    const said = visit.record.pigs?.left_closed;
    const closed = closedOrgans(said ?? "");
    for (const organ of organs) {
      const due = visit.cases.filter((one) => one.due.includes(organ));
      if (due.length < selectionRules.never_examined_from || closed.includes(organ)) continue;
      const states = due.map((one) => one.organ(organ).status);
      // What was rotten or destroyed in one pig was not seen in that one either.
      const unseen = states.every((state) => state === "not_examined" || state === "not_assessable");
      if (unseen && states.includes("not_examined"))
        reportVisit(
          `${organ.id} was due in ${due.length} pigs and ${said === undefined ? "examined in none. Open it in the next pig, or say why not under pigs: {left_closed: …}" : "seen in none, and pigs.left_closed does not name it. Open it in the next pig, or name it there with the reason"}.`,
          ["pigs", "left_closed"],
          "key",
        );
    }
  },
};
