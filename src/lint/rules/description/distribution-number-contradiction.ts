import { formatPath } from "../../../cases/index.ts";
import { findingsOf } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

const many = ["multifocal", "multifocal-to-coalescing", "miliary"];

export const distributionNumberContradiction: CaseRule = {
  id: "distribution-number-contradiction",
  scope: "case",
  family: "description",
  level: "error",
  summary: "Focal is one, multifocal and miliary are many, and the number says the same.",
  protects:
    "One abscess and nine abscesses have different histories; the reader cannot know which of the two words is the slip.",
  source: { cite: "meaning of the words", confidence: "common-practice" },
  bad: {
    case: "respiratory: {lungs: {findings: [{process: abscess, distribution: focal, number: 4, size: 12 mm}]}}",
  },
  good: {
    case: "respiratory: {lungs: {findings: [{process: abscess, distribution: multifocal, number: 4, size: 12 mm}]}}",
  },
  check(one, report) {
    for (const { finding, path } of findingsOf(one)) {
      const { distribution, number } = finding;
      if (number === undefined || distribution === undefined) continue;
      if (distribution === "focal" && number > 1)
        report(`${formatPath(path)}: focal, but number ${number}. Write multifocal, or one entry for each.`, [
          ...path,
          "number",
        ]);
      if (many.includes(distribution) && number === 1)
        report(`${formatPath(path)}: ${distribution}, but only one. Write focal, or correct the number.`, [
          ...path,
          "number",
        ]);
    }
  },
};
