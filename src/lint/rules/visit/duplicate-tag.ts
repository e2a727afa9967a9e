import { plainName } from "../../../words/plain-name.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const duplicateTag: VisitRule = {
  id: "duplicate-tag",
  scope: "visit",
  family: "visit",
  silent: "never",
  level: "error",
  summary: "No two pigs of a visit have the same numbered tag, unless they are of two litters.",
  protects: "A copied file with the old tag mixes up the findings and samples of two pigs.",
  lookAlike:
    "Piglets notched alike in two litters: name the sow under pig.litter. Words without a digit (no tag, red ear) are no tag, and not held against each other.",
  source: practice("common practice of tagging: a tag is unique within a group"),
  bad: { others: ["case: birch-2026-04-20-02"], visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]" },
  good: {
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
  },
  check(visit, _reportVisit, reportCase) {
    const first = new Map<string, string>();
    for (const one of visit.cases) {
      const { tag, group, litter } = one.record.pig ?? {};
      // Words are no number: `no tag` is true of any pig without one.
      if (tag === undefined || !/\d/.test(`${tag}`)) continue;
      const key = plainName(`${tag} of ${litter ?? "no litter"} in ${group ?? "no group"}`);
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
