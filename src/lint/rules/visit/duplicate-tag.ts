import { plainName } from "../../../words/plain-name.ts";
import type { VisitRule } from "../../rule.ts";

export const duplicateTag: VisitRule = {
  id: "duplicate-tag",
  scope: "visit",
  family: "visit",
  level: "error",
  summary: "No tag stands on two pigs of a visit.",
  protects: "A copied file with the old tag joins two pigs' findings and samples.",
  source: { cite: "tags are unique within a group; common practice", confidence: "common-practice" },
  bad: { others: ["case: birch-2026-04-20-02"], visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]" },
  good: {
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
  },
  check(visit, _reportVisit, reportCase) {
    const first = new Map<string, string>();
    for (const one of visit.cases) {
      const tag = one.record.pig?.tag;
      if (tag === undefined) continue;
      const key = `${plainName(tag)} in ${one.record.pig?.group ?? "no group"}`;
      const other = first.get(key);
      if (other === undefined) first.set(key, one.file);
      else
        reportCase(one)(
          `pig.tag: "${tag}" is already the tag of the pig in ${other}. Look at the ear again.`,
          ["pig", "tag"],
        );
    }
  },
};
