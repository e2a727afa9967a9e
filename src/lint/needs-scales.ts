/** Grades that only the scales themselves can be asked about. */
import type { Case } from "../cases/index.ts";
import { scaleRanges } from "../knowledge/index.ts";
import { placedStates } from "../record/index.ts";
import type { GradeFault } from "./grade-faults.ts";

/** What the scales say of the grades of a case. */
export type GradeCheck = (one: Case) => readonly GradeFault[];

/** The check for these cases. Scales make up much of the program and are loaded only where one of them is needed. */
export async function gradeCheckFor(cases: readonly Case[]): Promise<GradeCheck> {
  if (!cases.some(needsScales)) return () => [];
  const { gradeFaults } = await import("./grade-faults.ts");
  return gradeFaults;
}

/** Whether a grade stands under the name of a scale that is computed from parts, or of a scale of the practice. */
const needsScales = (one: Case): boolean =>
  placedStates(one).some(({ state: { entry } }) =>
    Object.keys(entry?.grades ?? {}).some((id) =>
      Object.hasOwn(scaleRanges, id) ? scaleRanges[id]?.computed === true : one.settings.houseScales.has(id),
    ),
  );
