import { practice, type VisitRule } from "../../rule.ts";

export const caseNotInVisit: VisitRule = {
  id: "case-not-in-visit",
  scope: "visit",
  family: "visit",
  silent: "never",
  level: "warning",
  summary: "If a visit lists its cases, every case in its folder is on the list.",
  protects: "A file left over from another day would be counted with these pigs.",
  lookAlike: "A pig that was opened later and belongs to this visit: add its id under cases in visit.yaml.",
  source: practice("common practice of record keeping: the list of a visit is complete"),
  bad: { others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"] },
  good: {
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
  },
  check(visit, _reportVisit, reportCase) {
    const named = visit.record.cases;
    if (named === undefined || visit.faults.some(({ intended }) => intended[0] === "cases")) return;
    for (const one of visit.cases)
      if (one.record.case !== undefined && !named.includes(one.id))
        reportCase(one)(
          `case: ${one.id} is not listed in ${visit.file}. Add it to the cases there, or move the file.`,
          ["case"],
        );
  },
};
