import { besideCase, isElsewhere, photographs } from "../../../record/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const photoInTwoCases: VisitRule = {
  id: "photo-in-two-cases",
  scope: "visit",
  family: "photographs",
  silent: "never",
  level: "warning",
  summary: "A photograph belongs to one pig.",
  protects: "A copied line passes one pig's lung off as another's, and no reader can tell.",
  lookAlike: "One picture of two pigs side by side: keep a copy beside each case under its own name.",
  source: practice("common practice of filing"),
  bad: {
    case: "photos: [01-lungs.jpg]",
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}\nphotos: [01-lungs.jpg]"],
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
    files: ["01-lungs.jpg"],
  },
  good: {
    case: "photos: [01-lungs.jpg]",
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}\nphotos: [02-lungs.jpg]"],
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
    files: ["01-lungs.jpg", "02-lungs.jpg"],
  },
  check(visit, _reportVisit, reportCase) {
    const first = new Map<string, string>();
    for (const one of visit.cases)
      for (const { file, path } of photographs(one)) {
        if (isElsewhere(file)) continue;
        const name = besideCase(one, file);
        const other = first.get(name) ?? one.file;
        first.set(name, other);
        if (other !== one.file)
          reportCase(one)(
            `${file} is already a photograph of the pig in ${other}. Find out whose it is, and take it out of the other case.`,
            path,
          );
      }
  },
};
