import { plainName } from "../../../words/plain-name.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const duplicateTag: VisitRule = {
  id: "duplicate-tag",
  scope: "visit",
  family: "visit",
  silent: "never",
  level: "error",
  summary: "No two pigs of a visit have the same tag.",
  protects: "A copied file with the old tag mixes up the findings and samples of two pigs.",
  lookAlike:
    "Pigs without any tag, or with the mark of the whole herd: number them yourself (no tag 1, no tag 2), since the same words are the same tag.",
  source: practice("common practice of tagging: a tag is unique within a group"),
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
