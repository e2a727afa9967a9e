import type { VisitRule } from "../../rule.ts";

export const duplicateCase: VisitRule = {
  id: "duplicate-case",
  scope: "visit",
  family: "visit",
  level: "error",
  summary: "Every case of a visit has an id of its own.",
  protects: "Samples and results are joined to pigs by the case id; two pigs under one id become one.",
  source: { cite: "ids are unique; common practice", confidence: "common-practice" },
  bad: { others: ["case: birch-2026-04-20-01\npig: {tag: '902'}"] },
  good: {
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
  },
  check(visit, _reportVisit, reportCase) {
    const first = new Map<string, string>();
    for (const one of visit.cases) {
      if (one.record.case === undefined) continue;
      const other = first.get(one.id);
      if (other === undefined) first.set(one.id, one.file);
      else
        reportCase(one)(
          `case: "${one.id}" is already the case of ${other}. Give one of them another number.`,
          ["case"],
        );
    }
  },
};
