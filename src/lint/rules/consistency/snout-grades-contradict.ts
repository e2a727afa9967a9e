import { formatPath } from "../../../cases/index.ts";
import { plausible } from "../../../knowledge/index.ts";
import { conchae } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const snoutGradesContradict: CaseRule = {
  id: "snout-grades-contradict",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "Two grades of one snout tell the same story.",
  protects:
    "A snout that is normal on one scale and severe on another was read by two people, or typed by one in a hurry.",
  lookAlike:
    "Two readers one grade apart: the scales may differ so much and are passed; a second reader's grade belongs under readings.",
  source: plausible.source,
  bad: {
    case: "respiratory: {turbinates: {left: {dorsal: 1, ventral: 2}, right: {dorsal: 1, ventral: 2}, grades: {maff-1978: 3, embrapa-1993: 0}}}",
  },
  good: {
    case: "respiratory: {turbinates: {left: {dorsal: 1, ventral: 2}, right: {dorsal: 1, ventral: 2}, grades: {maff-1978: 3, embrapa-1993: 2}}}",
  },
  check(one, report) {
    const nose = conchae(one);
    if (nose === undefined) return;
    for (const { scale, grades, other, other_grades } of plausible.grade_pairs)
      if (isBetween(nose.grades[scale], grades) && isBetween(nose.grades[other], other_grades)) {
        const path = ["respiratory", "turbinates", "grades", scale];
        report(
          `${formatPath(path)}: grade ${nose.grades[scale]}, but ${other} is ${nose.grades[other]}. Read the cut again on both scales and correct one.`,
          path,
        );
      }
  },
};

const isBetween = (grade: number | undefined, [low, high]: readonly number[]): boolean =>
  grade !== undefined && low !== undefined && high !== undefined && grade >= low && grade <= high;
