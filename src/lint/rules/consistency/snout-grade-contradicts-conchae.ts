import { formatPath } from "../../../cases/index.ts";
import { plausible } from "../../../knowledge/index.ts";
import { conchae } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const snoutGradeContradictsConchae: CaseRule = {
  id: "snout-grade-contradicts-conchae",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "The grade of the snout fits the loss of its conchae.",
  protects:
    "Grade and conchae come from one cut; where they disagree, one was typed into the wrong pig or the wrong column.",
  lookAlike:
    "A crooked septum or a shortened snout raises the grade with whole conchae: the limits allow for it up to a point; past that, read the cut again.",
  source: plausible.source,
  bad: {
    case: "respiratory: {turbinates: {left: {dorsal: 1, ventral: 4}, grades: {maff-1978: 1, embrapa-1993: 1}}}\nsamples: [{id: 01-A, from: respiratory.nares, into: dry-swab, for: [pcr]}]",
  },
  good: {
    case: "respiratory: {turbinates: {left: {dorsal: 1, ventral: 3}, grades: {maff-1978: 3, embrapa-1993: 2}}}",
  },
  check(one, report) {
    const nose = conchae(one);
    if (nose === undefined || nose.losses.length < 4) return;
    const worst = Math.max(...nose.losses);
    for (const [scale, grade] of Object.entries(nose.grades)) {
      const limits = plausible.worst_concha[scale]?.[grade];
      if (limits === undefined || (worst >= limits[0] && worst <= limits[1])) continue;
      const path = [...nose.path, "grades", scale];
      report(
        `${formatPath(path)}: grade ${grade}, but the worst concha has a loss of ${worst}. Look at the cut again and correct one of them.`,
        path,
      );
    }
  },
};
