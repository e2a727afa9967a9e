import { formatPath, pathOf } from "../../../cases/index.ts";
import { organs, scaleRanges } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";

/** Numbers of the format itself are checked by the reader, whose faults carry this rule's name too. */
export const observationOutOfRange: CaseRule = {
  id: "observation-out-of-range",
  scope: "case",
  family: "scoring",
  level: "error",
  summary: "Every observation and every recorded grade lies within the range of its scale.",
  protects: "A 35 typed as 350, or a grade read on another scale, would pass into every index of the herd.",
  source: { cite: "ranges of the published scales, each beside its scale", confidence: "common-practice" },
  bad: { case: "respiratory: {turbinates: {grades: {embrapa-1993: 4}}}" },
  good: { case: "respiratory: {turbinates: {grades: {embrapa-1993: 3}}}" },
  check(one, report) {
    for (const organ of organs)
      for (const [id, grade] of Object.entries(one.organ(organ).entry?.grades ?? {})) {
        const shipped = Object.hasOwn(scaleRanges, id) ? scaleRanges[id] : undefined;
        const scale = shipped ?? one.settings.houseScales.get(id);
        if (scale?.organ !== organ.id) continue;
        const [low, high] = scale.range;
        const path = [...pathOf(organ.id), "grades", id];
        if (grade < low || grade > high)
          report(`${formatPath(path)}: ${grade} is out of range; ${id} goes from ${low} to ${high}.`, path);
        else if (scale.whole === true && !Number.isInteger(grade))
          report(`${formatPath(path)}: ${grade} is not a grade; ${id} has whole grades only.`, path);
      }
  },
};
