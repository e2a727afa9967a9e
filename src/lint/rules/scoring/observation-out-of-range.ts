import { type Case, formatPath, type Path } from "../../../cases/index.ts";
import { scaleRanges } from "../../../knowledge/index.ts";
import { gradesOf } from "../../../record/index.ts";
import { type CaseRule, practice, type Report } from "../../rule.ts";

/** Numbers of the format itself are checked by the reader, whose faults carry this rule's name too. */
export const observationOutOfRange: CaseRule = {
  id: "observation-out-of-range",
  scope: "case",
  family: "scoring",
  level: "error",
  summary: "Every observation and every recorded grade lies within the range of its scale.",
  protects: "A 35 typed as 350, or a grade read on another scale, would go into every index of the herd.",
  lookAlike:
    "A grade between two grades, or a plus behind it: scales with whole grades have no halves; take the one that its boundary rule gives.",
  source: practice("ranges of the published scales, each beside its scale"),
  bad: { case: "respiratory: {turbinates: {grades: {embrapa-1993: 4}}}" },
  good: { case: "respiratory: {turbinates: {grades: {embrapa-1993: 3}}}" },
  check(one, report) {
    for (const { organ, ...placed } of gradesOf(one))
      reportGrade(one, { ...placed, organ: organ.id }, report);
    for (const [index, { grades }] of one.record.readings?.entries() ?? [])
      for (const [id, grade] of Object.entries(grades))
        reportGrade(one, { id, grade, path: ["readings", index, "grades", id] }, report);
  },
};

interface Grade {
  /** Name of the scale. */
  readonly id: string;
  readonly grade: number;
  /** The organ it stands below; a grade of another reader stands below none. */
  readonly organ?: string;
  readonly path: Path;
}

function reportGrade(one: Case, { id, grade, organ, path }: Grade, report: Report): void {
  const shipped = Object.hasOwn(scaleRanges, id) ? scaleRanges[id] : undefined;
  const scale = shipped ?? one.settings.houseScales.get(id);
  if (scale === undefined || (organ !== undefined && scale.organ !== organ)) return;
  const [low, high] = scale.range;
  if (grade < low || grade > high)
    report(`${formatPath(path)}: ${grade} is out of range; ${id} goes from ${low} to ${high}.`, path);
  else if (scale.whole === true && !Number.isInteger(grade))
    report(`${formatPath(path)}: ${grade} is not a grade; ${id} has whole grades only.`, path);
}
