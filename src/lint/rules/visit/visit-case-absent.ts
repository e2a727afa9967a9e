import type { VisitRule } from "../../rule.ts";

export const visitCaseAbsent: VisitRule = {
  id: "visit-case-absent",
  scope: "visit",
  family: "visit",
  level: "error",
  summary: "Every case that the visit names has its file.",
  protects: "A pig that was opened and never written up drops out of every count without a trace.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]" },
  good: { visit: "cases: [birch-2026-04-20-01]" },
  check(visit, reportVisit) {
    if (!visit.complete) return;
    const present = new Set(visit.cases.map((one) => one.id));
    for (const [index, id] of (visit.record.cases ?? []).entries())
      if (!present.has(id))
        reportVisit(
          `cases: ${id} is named here and has no file in this folder. Write the case, or take the name out.`,
          ["cases", index],
        );
  },
};
