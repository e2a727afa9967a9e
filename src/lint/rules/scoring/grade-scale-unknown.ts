import { type Case, formatPath, unknownName } from "../../../cases/index.ts";
import { recordedGrades, scaleIds } from "../../../knowledge/index.ts";
import { gradesOf } from "../../../record/index.ts";
import { type CaseRule, practice, type Report } from "../../rule.ts";

export const gradeScaleUnknown: CaseRule = {
  id: "grade-scale-unknown",
  scope: "case",
  family: "scoring",
  level: "error",
  summary:
    "A recorded grade stands under the name of a scale that grades this organ, and another reader's grade under the name of any scale.",
  protects: "A grade under a mistyped name would count nowhere, and nobody would notice.",
  lookAlike:
    "A scale of your practice: once its file is named under scales in carcase.yaml, grades may stand under its name.",
  source: practice("common practice of scoring: a grade feeds the scale it was read on and no other"),
  bad: { case: "respiratory: {turbinates: {grades: {maff-1987: 2}}}" },
  good: { case: "respiratory: {turbinates: {grades: {maff-1978: 2}}}" },
  check(one, report) {
    reportReadings(one, report);
    const { houseScales, houseScaleNames: names } = one.settings;
    for (const { organ, id, path } of gradesOf(one)) {
      if (recordedGrades[organ.id]?.includes(id)) continue;
      const own = [...houseScales.values()].filter((scale) => scale.organ === organ.id);
      const known = [...(recordedGrades[organ.id] ?? []), ...own.map((scale) => scale.id)];
      // A scale file at fault is reported itself.
      if (known.includes(id) || (!houseScales.has(id) && (names === null || names.includes(id)))) continue;
      report(
        known.length === 0
          ? `${formatPath(path)}: no scale grades this organ as a whole.`
          : `${formatPath(path)}: for this organ ${unknownName(id, known, "scale")}`,
        path,
        "key",
      );
    }
  },
};

/** Grades that others gave the pig. */
function reportReadings({ record, settings }: Case, report: Report): void {
  if (record.readings === undefined) return;
  const { houseScaleNames: names, houseScales } = settings;
  const known = [...scaleIds, ...houseScales.keys()];
  // The name may be that of a scale file which is at fault or cannot be read; that is reported itself.
  const isKnown = (id: string): boolean => known.includes(id) || names === null || names.includes(id);
  for (const [index, { grades }] of record.readings.entries())
    for (const id of Object.keys(grades)) {
      const path = ["readings", index, "grades", id];
      if (!isKnown(id)) report(`${formatPath(path)}: ${unknownName(id, known, "scale")}`, path, "key");
    }
}
