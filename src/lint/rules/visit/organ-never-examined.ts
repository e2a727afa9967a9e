import type { Visit } from "../../../cases/index.ts";
import { organs, type PlacedOrgan, selectionRules } from "../../../knowledge/index.ts";
import { closedOrgans, placedStates } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import type { VisitRule } from "../../rule.ts";

export const organNeverExamined: VisitRule = {
  id: "organ-never-examined",
  scope: "visit",
  family: "visit",
  level: "note",
  summary: "Each organ that was due is examined in at least one pig of the visit, or the visit says why not.",
  protects:
    "A reason in every pig is still not a look: of an organ that nobody examined the visit can say nothing, and the report must say so.",
  lookAlike:
    "An organ that no pig of the visit could show, such as skulls kept closed by agreement: name it under pigs: {left_closed: …}; organs that were all rotten are passed.",
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
    if (!visit.complete || visit.cases.length < selectionRules.never_examined_from) return;
    const said = visit.record.pigs?.left_closed;
    const closed = said === undefined ? [] : closedOrgans(said);
    const never = leftUnexamined(visit).filter((organ) => {
      const due = visit.cases.filter((one) => one.due.includes(organ));
      if (due.length < selectionRules.never_examined_from || closed.includes(organ)) return false;
      const states = due.map((one) => one.organ(organ).status);
      // What was rotten or destroyed in one pig was not seen in that one either.
      return (
        states.every((state) => state === "not_examined" || state === "not_assessable") &&
        states.includes("not_examined")
      );
    });
    if (never.length === 0) return;
    const [were, them] = never.length === 1 ? ["was", "it"] : ["were", "them"];
    reportVisit(
      `${listing(never.map(({ id }) => id))} ${were} due in ${selectionRules.never_examined_from} pigs or more and examined in none${said === undefined ? "" : `, and pigs.left_closed does not name ${them}`}. Open ${them} in the next pig, or say why not under pigs: {left_closed: …}.`,
      ["pigs", "left_closed"],
      "key",
    );
  },
};

/** The organs that were left unexamined in a pig of the visit, in the order of the anatomy. */
function leftUnexamined({ cases }: Visit): PlacedOrgan[] {
  const left = new Set<PlacedOrgan>();
  for (const one of cases)
    for (const { organ, state } of placedStates(one)) if (state.status === "not_examined") left.add(organ);
  return left.size === 0 ? [] : organs.filter((organ) => left.has(organ));
}
