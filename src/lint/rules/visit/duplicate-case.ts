import { ownCopy } from "../../../words/own-copy.ts";
import { type ArchiveRule, practice } from "../../rule.ts";

export const duplicateCase: ArchiveRule = {
  id: "duplicate-case",
  scope: "archive",
  family: "visit",
  level: "error",
  summary: "Every case has an id of its own, whichever folder it is in.",
  protects:
    "Samples and results are joined to pigs by the case id; two pigs under one id become one, and a copied file is one pig counted twice.",
  lookAlike:
    "One pig opened at two times: it is one case, in one file; what the second look showed stands under the organs or in a note.",
  source: practice("common practice of record keeping: ids are unique"),
  bad: { others: ["case: birch-2026-04-20-01\npig: {tag: '902'}"] },
  good: {
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
  },
  begin() {
    const first = new Map<string, string>();
    return (one, report) => {
      if (one.record.case === undefined) return;
      const other = first.get(one.id);
      if (other === undefined) first.set(ownCopy(one.id), one.file);
      else
        report(
          `case: "${one.id}" is already the case of ${other}. Delete the copy, or give one of the two pigs an id of its own.`,
          ["case"],
        );
    };
  },
};
