import { unknownName } from "../../../cases/index.ts";
import { samplesOf } from "../../../record/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const pooledWithUnknown: VisitRule = {
  id: "pooled-with-unknown",
  scope: "visit",
  family: "sampling",
  level: "error",
  summary: "A pool names cases of this visit.",
  protects:
    "A pool with a pig that does not exist has no known denominator, and its result belongs to nobody.",
  lookAlike:
    "A pool with pen mates that were never opened: no case of theirs exists, so accept the finding and say how many they were.",
  source: practice("a pool is a list of its pigs; common practice"),
  bad: {
    case: "samples: [{id: 01-A, from: blood, into: edta-tube, for: [pcr], pooled_with: [birch-2026-04-20-20]}]",
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
  },
  good: {
    case: "samples: [{id: 01-A, from: blood, into: edta-tube, for: [pcr], pooled_with: [birch-2026-04-20-02]}]",
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
  },
  check(visit, _reportVisit, reportCase) {
    if (!visit.complete) return;
    let known: readonly string[] | undefined;
    for (const one of visit.cases)
      for (const { sample, index } of samplesOf(one))
        for (const [place, id] of (sample.pooled_with ?? []).entries()) {
          known ??= [...new Set([...visit.cases.map((other) => other.id), ...(visit.record.cases ?? [])])];
          if (id === one.id || !known.includes(id))
            reportCase(one)(
              `samples[${index}].pooled_with[${place}]: ${id === one.id ? "this is the case itself; name the other pigs" : unknownName(id, known, "case of this visit")}`,
              ["samples", index, "pooled_with", place],
            );
        }
  },
};
