import { practice, type VisitRule } from "../../rule.ts";

export const visitCaseAbsent: VisitRule = {
  id: "visit-case-absent",
  scope: "visit",
  family: "visit",
  level: "error",
  summary: "Every case that the visit lists has its file.",
  protects: "A pig that was opened and never written up drops out of every count without trace.",
  source: practice("common practice of record keeping: every pig opened is written up"),
  bad: { visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]" },
  good: { visit: "cases: [birch-2026-04-20-01]" },
  check(visit, reportVisit) {
    const listed = visit.record.cases;
    if (listed === undefined || !visit.complete) return;
    const present = new Set(visit.cases.map((one) => one.id));
    for (const [index, id] of listed.entries())
      if (!present.has(id))
        reportVisit(
          `cases: ${id} is listed here but has no file in this folder. Write up the case, or take it off the list.`,
          ["cases", index],
        );
  },
};
