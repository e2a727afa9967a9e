import type { FormatRule } from "../../rule.ts";

/** Asked by whoever has the scales loaded: see grade-faults.ts. */
export const gradeContradictsParts: FormatRule = {
  id: "grade-contradicts-parts",
  scope: "format",
  family: "scoring",
  level: "error",
  summary: "A grade recorded under a scale is what the recorded parts of that scale give.",
  protects:
    "One of the two was typed wrongly; the score is refused, and the pig is missing from every table of that scale.",
  lookAlike:
    "A grade read by another person than the lobes: it belongs under readings with the reader's name, and is compared with nothing here.",
  source: {
    cite: "two readings of one organ agree; how parts make a grade is said on the page of each scale",
    confidence: "common-practice",
  },
  bad: { case: "respiratory: {lungs: {grades: {goodwin-1971: 40}}}" },
  good: { case: "respiratory: {lungs: {grades: {goodwin-1971: 13.75}}}" },
};
