import { count } from "../../../words/listing.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const randomDrawUnsaid: VisitRule = {
  id: "random-draw-unsaid",
  scope: "visit",
  family: "selection",
  level: "note",
  summary: "Where pigs are drawn at random, the visit or the pig says how.",
  protects: "The first pig at the gate is not a random one; a prevalence is only as good as the draw.",
  lookAlike:
    "A draw that was noted with each pig: selection.note of every one of them is enough, and the visit need not repeat it.",
  source: practice("probability sampling; general epidemiology"),
  bad: { case: "selection: {basis: random}", visit: "pigs: {drawn: }" },
  good: { case: "selection: {basis: random, note: drawn by lot}", visit: "pigs: {drawn: }" },
  check(visit, reportVisit) {
    if (visit.record.pigs?.drawn !== undefined) return;
    const unsaid = visit.cases.filter(
      ({ record }) => record.selection?.basis === "random" && record.selection.note === undefined,
    );
    if (unsaid.length > 0)
      reportVisit(
        `${count(unsaid.length, "pig")} drawn at random, and nothing says how. Write it here once, pigs: {drawn: by lot, pen then pig}, or under selection.note of each pig.`,
        ["pigs", "drawn"],
        "key",
      );
  },
};
