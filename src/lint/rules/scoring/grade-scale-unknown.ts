import { type Case, formatPath, pathOf, unknownName } from "../../../cases/index.ts";
import { organs, recordedGrades, scaleIds } from "../../../knowledge/index.ts";
import type { CaseRule, Report } from "../../rule.ts";

export const gradeScaleUnknown: CaseRule = {
  id: "grade-scale-unknown",
  scope: "case",
  family: "scoring",
  level: "error",
  summary:
    "A recorded grade stands under the name of a scale that grades this organ, and a grade of another reader under that of any scale.",
  protects: "A grade under a mistyped name would count nowhere, and nobody would notice.",
  source: {
    cite: "a grade feeds the scale it was read on and no other; common practice",
    confidence: "common-practice",
  },
  bad: { case: "respiratory: {turbinates: {grades: {maff-1987: 2}}}" },
  good: { case: "respiratory: {turbinates: {grades: {maff-1978: 2}}}" },
  check(one, report) {
    reportReadings(one, report);
    for (const organ of organs) {
      const own = [...one.settings.houseScales.values()].filter((scale) => scale.organ === organ.id);
      const known = [...(recordedGrades[organ.id] ?? []), ...own.map(({ id }) => id)];
      for (const id of Object.keys(one.organ(organ).entry?.grades ?? {})) {
        const path = [...pathOf(organ.id), "grades", id];
        // A scale file at fault is reported itself.
        const { houseScales, houseScaleNames: names } = one.settings;
        if (!known.includes(id) && !houseScales.has(id) && (names === null || names.includes(id))) continue;
        if (known.length === 0)
          report(`${formatPath(path)}: no scale grades this organ as a whole.`, path, "key");
        else if (!known.includes(id))
          report(`${formatPath(path)}: for this organ ${unknownName(id, known, "scale")}`, path, "key");
      }
    }
  },
};

/** Grades that others gave the pig. */
function reportReadings({ record, settings }: Case, report: Report): void {
  const { houseScaleNames: names, houseScales } = settings;
  const known = [...scaleIds, ...houseScales.keys()];
  // The name may be that of a scale file which is at fault or cannot be read; that is reported itself.
  const isKnown = (id: string): boolean => known.includes(id) || names === null || names.includes(id);
  for (const [index, { grades }] of (record.readings ?? []).entries())
    for (const id of Object.keys(grades)) {
      const path = ["readings", index, "grades", id];
      if (!isKnown(id)) report(`${formatPath(path)}: ${unknownName(id, known, "scale")}`, path, "key");
    }
}
